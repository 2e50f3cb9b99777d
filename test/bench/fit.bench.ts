/**
 * `fit` alone, warm, a script word of twelve letters: `node --import tsx test/bench/fit.bench.ts`.
 *
 * Each round sets another word, so that nothing is found again but what the font has drawn before; the room stays, as it does
 * while somebody types a name. From the curves of the word to its fitted shape; time in ms: p10, p50 and p95. On a machine with other
 * work, p10 comes nearest to what a quiet one takes.
 */

import { union } from '../../src/geometry/clipper.ts';
import { makePlate } from '../../src/tag/shapes/plates.ts';
import { centredOutline } from '../../src/tag/curve-outline.ts';
import { setAt } from '../../src/tag/lettering/lettering.ts';
import { sizeAndGrow } from '../../src/tag/size.ts';
import { fitted } from '../../src/tag/fit/fitted.ts';
import { roomIn } from '../../src/tag/fit/room.ts';
import { FontLibrary } from '../../src/text/font-library.ts';
import type { Region } from '../../src/geometry/types.ts';
import { packagedFontFiles } from '../fonts/font-files.ts';

const rounds = 150;
const words = ['Wordsmithing', 'Marigoldseed', 'Hollyhockbed', 'Chrysanthemu', 'Lavenderhill', 'Pennyroyalty'];

const circle = (x: number, y: number, diameter: number): Region =>
  makePlate({ kind: 'ellipse', width: diameter, height: diameter }).map((ring) =>
    ring.map((point) => ({ x: point.x + x, y: point.y + y })),
  );

const rooms = [
  { name: 'a heart', plate: makePlate({ kind: 'heart', width: 60, height: 60 * 0.95 }), obstacles: [], most: Infinity },
  {
    name: 'a plate beside a hole',
    plate: makePlate({ kind: 'rectangle', width: 90, height: 40, radius: 5 }),
    obstacles: [circle(20, 12, 9)],
    most: Infinity,
  },
  {
    name: 'a label with a limit',
    plate: makePlate({ kind: 'label', width: 96, height: 42, cut: 12, end: 'left' }),
    obstacles: [circle(-40, 0, 9)],
    most: 7,
  },
  { name: 'a circle', plate: circle(0, 0, 60), obstacles: [], most: Infinity },
];

const percentile = (values: readonly number[], share: number): string =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))]!.toFixed(1);

const answer = await new FontLibrary(packagedFontFiles()).load({ family: 'Pacifico', weight: 400, italic: false });
if (!('face' in answer)) throw new Error(answer.problem.message);
const { face } = answer;
const checkpoint = () => Promise.resolve();

for (const { name, plate, obstacles, most } of rooms) {
  const room = roomIn(plate, 4, union(obstacles), { by: 'eye' });
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const word = words[round % words.length]!;
    const text = word.slice(0, -1) + 'abcdefghijklmnopqrstuvwxyz'[Math.floor(round / words.length)]!;
    const wording = { text, align: 'center', letterSpacingMm: 0, features: {} } as const;
    const start = performance.now();
    const set = setAt(face, wording, Infinity);
    if ('problem' in set) throw new Error(set.problem);
    const outline = centredOutline({ ...set, xHeight: face.xHeight, path: [] }, set.band!);
    const found = await fitted(outline, {
      modifiers: { corners: 'round', fit: undefined as never },
      rooms: { free: room, outer: room },
      most: most / face.xHeight,
      sized: (scale) => sizeAndGrow(outline, { scale, corners: 'round' }, checkpoint),
      checkpoint,
    });
    const took = performance.now() - start;
    if (!found) throw new Error(`“${text}” does not fit into ${name}`);
    times.push(took);
  }
  const warm = times.slice(rounds / 3);
  console.log(`${name.padEnd(24)} ${[0.1, 0.5, 0.95].map((share) => percentile(warm, share).padStart(7)).join('')}`);
}
