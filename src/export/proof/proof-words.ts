/** The words on a tag as they are spelt, large enough to check letter by letter. */

import { capitalised } from '../../core/names.ts';
import { union } from '../../geometry/clipper.ts';
import { fitContours } from '../../geometry/fit-contours.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Lettering } from '../../tag/lettering/letters.ts';
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

/** The words alone, among those of other tags. */
export function drawWordsBriefly(flow: Flow, job: Pick<Job, 'tag' | 'fonts'>): void {
  for (const words of wordsOn(job)) for (const line of words.lines) writeLine(flow, line, words, briefSizeMm);
}

export function drawWords(flow: Flow, job: Pick<Job, 'tag' | 'fonts'>): void {
  const all = wordsOn(job);
  if (all.length === 0) return;
  flow.write('The words, as they are spelt', { size: 2.8, fill: quiet });
  flow.skip(1);
  const lines = all.reduce((sum, each) => sum + each.lines.length, 0);
  const { size } = sizes.find(({ upTo }) => lines <= upTo)!;
  for (const [index, words] of all.entries()) {
    for (const line of words.lines) writeLine(flow, line, words, size);
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

function writeLine(flow: Flow, line: string, words: WordsOn, size: number): void {
  const { plain } = flow.faces;
  if (!flow.canWrite(line) && words.lettering) {
    drawLetters(flow, words.lettering, size);
    return;
  }
  const longest = Math.max(...line.split(/\s+/).map((word) => captionWidth(plain, word)));
  const spelt = flow.canWrite(line) ? line : withFractionsInFigures(line);
  flow.write(spelt, { size: Math.max(leastSizeMm, Math.min(size, flow.width / longest)), lead: 1.25 });
}

/** Text that the caption font has no glyphs for is drawn in the tag's own lettering. */
function drawLetters(flow: Flow, lettering: Lettering, size: number): void {
  const region = union(lettering.toRead());
  const bounds = boundsOf(region);
  if (!bounds) return;
  const [wide, high] = [bounds.maxX - bounds.minX, bounds.maxY - bounds.minY];
  const scale = Math.min(size / high, flow.width / wide);
  flow.skip(high * scale + 2);
  flow.page.draw(curvesOf(fitContours(region), scale, flow.left - bounds.minX * scale, flow.y - bounds.minY * scale), {
    fill: '#222222',
  });
  flow.skip(1);
}
