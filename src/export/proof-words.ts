/** The words of a tag as they are spelt, large enough to be checked letter by letter. */

import { union } from '../geometry/clipper.ts';
import { fitContours } from '../geometry/fit-contours.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Lettering } from '../tag/letters.ts';
import type { Flow } from './flow.ts';
import type { Job } from './job.ts';
import { captionWidth, curvesOf } from './page.ts';
import { wordsOn } from './words-on.ts';
import type { WordsOn } from './words-on.ts';

const quiet = '#666666';

/** The em of words in mm: of one or two texts, of a few, and of many. */
const sizes = [
  { upTo: 2, size: 9 },
  { upTo: 5, size: 6.5 },
  { upTo: Infinity, size: 5 },
] as const;

/** A word that is too long for its line is set smaller, down to this. */
const leastSizeMm = 4.5;

export function drawWords(flow: Flow, job: Pick<Job, 'tag' | 'fonts'>): void {
  const all = wordsOn(job);
  if (all.length === 0) return;
  flow.write('The words, as they are spelt', { size: 2.8, fill: quiet });
  flow.skip(1);
  const lines = all.reduce((sum, each) => sum + each.lines.length, 0);
  const { size } = sizes.find(({ upTo }) => lines <= upTo)!;
  for (const [index, words] of all.entries()) {
    for (const line of words.lines) writeLine(flow, line, words, size);
    // What is made alike says so once.
    const next = all[index + 1];
    if (next?.way === words.way && next.font === words.font) continue;
    const how = `${words.way.charAt(0).toUpperCase()}${words.way.slice(1)}, in ${words.font}`;
    flow.write(how, { size: 2.8, fill: quiet });
    flow.skip(1.5);
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
  flow.write(line, { size: Math.max(leastSizeMm, Math.min(size, flow.width / longest)), lead: 1.25 });
}

/** What the captions' font has no letters for is shown in the tag's own. */
function drawLetters(flow: Flow, lettering: Lettering, size: number): void {
  const region = union(lettering.letters.map((letter) => letter.region));
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
