/** The words on a tag as they are spelt, large enough to check letter by letter. */

import { capitalised } from '../../core/names.ts';
import { union } from '../../geometry/clipper.ts';
import { fitContours } from '../../geometry/fit-contours.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { FontFace } from '../../text/font-face.ts';
import { canWrite } from '../page/flow.ts';
import type { Flow } from '../page/flow.ts';
import type { Job } from '../job/job.ts';
import { captionWidth, curvesOf } from '../page/page.ts';
import { withFractionsInFigures } from '../../text/fractions.ts';
import { wordsOn } from '../words/words-on.ts';
import type { WordsOn } from '../words/words-on.ts';

const quiet = '#666666';

/** Em in mm, by the number of texts. */
const sizes = [
  { upTo: 2, size: 9 },
  { upTo: 5, size: 6.5 },
  { upTo: Infinity, size: 5 },
] as const;

const briefSizeMm = 5;

/** Smallest em for a word too long for its line, in mm. */
const leastSizeMm = 4.5;

/** A line as it is spelt. */
export interface SpeltLine {
  readonly text: string;
  /** In the tag's own lettering, where the caption font lacks glyphs for it. */
  readonly drawn?: Region;
}

export function speltLines({ lines, lettering }: WordsOn, captions: FontFace): SpeltLine[] {
  return lines.map((text) =>
    lettering && !canWrite(captions, text) ? { text, drawn: union(lettering.toRead()) } : { text },
  );
}

/** The words alone, among those of other tags. */
export function drawWordsBriefly(flow: Flow, lines: readonly SpeltLine[]): void {
  for (const line of lines) writeLine(flow, line, briefSizeMm);
}

export function drawWords(flow: Flow, job: Pick<Job, 'tag' | 'fonts'>): void {
  const all = wordsOn(job);
  if (all.length === 0) return;
  flow.write('The words, as they are spelt', { size: 2.8, fill: quiet });
  flow.skip(1);
  const lines = all.reduce((sum, each) => sum + each.lines.length, 0);
  const { size } = sizes.find(({ upTo }) => lines <= upTo)!;
  for (const [index, words] of all.entries()) {
    for (const line of speltLines(words, flow.faces.plain)) writeLine(flow, line, size);
    // The note is written once for consecutive words made in the same way.
    const next = all[index + 1];
    if (next?.way === words.way && next.font === words.font && next.isMirrored === words.isMirrored) continue;
    const how = `${capitalised(words.way)}${words.isMirrored ? ', mirrored' : ''}, in ${words.font}`;
    // Nearer to its own words than to the next.
    flow.skip(-1.4);
    flow.write(how, { size: 2.8, fill: quiet });
    flow.skip(2.9);
  }
  flow.skip(2);
}

function writeLine(flow: Flow, { text, drawn }: SpeltLine, size: number): void {
  if (drawn) {
    drawLetters(flow, drawn, size);
    return;
  }
  const longest = Math.max(...text.split(/\s+/).map((word) => captionWidth(flow.faces.plain, word)));
  const spelt = flow.canWrite(text) ? text : withFractionsInFigures(text);
  flow.write(spelt, { size: Math.max(leastSizeMm, Math.min(size, flow.width / longest)), lead: 1.25 });
}

/** Below the line where `flow` is. */
export function drawLetters(flow: Flow, region: Region, size: number): void {
  const bounds = boundsOf(region);
  if (!bounds) return;
  const [wide, high] = [bounds.maxX - bounds.minX, bounds.maxY - bounds.minY];
  const scale = Math.min(size / high, flow.width / wide);
  flow.skip(high * scale + 2);
  flow.page.draw(curvesOf(fitContours(region), scale, flow.left - bounds.minX * scale, flow.y - bounds.minY * scale), {
    fill: '#222222',
  });
  // What follows is drawn as near as to the descenders of written words.
  flow.skip(3.4);
}
