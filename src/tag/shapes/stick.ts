/** Sticks that carry a shape: as deep in its material as it takes to hold, or on a foot under letters, and blunt at the end. */

import { rotation, transform } from '../../geometry/affine.ts';
import { difference, intersection, union } from '../../geometry/clipper.ts';
import { area, boundsOf, boxRing, centroid, widened } from '../../geometry/measure.ts';
import type { Bounds, Region, Ring } from '../../geometry/types.ts';
import type { StickGenerator } from '../../spec/model/shape-model.ts';
import type { MadeShape } from '../made-shape.ts';
import { footUnder } from './stick-foot.ts';

/** A point narrower than this, in mm, breaks off and pricks; our own judgement. */
const bluntMm = 1.5;

/** Tolerance of a stick's depth, in mm. */
const depthToleranceMm = 0.005;

/** Clockwise rotation that makes each direction point down, in degrees. */
const turns = { down: 0, right: 90, up: 180, left: -90 } as const;

/** Less of the room between letters than this may be filled, in mm²: what crumbs of it are worth. */
const fillsMm2 = 0.1;

type Upright = Omit<StickGenerator, 'shape' | 'towards'>;

/** The stick in the coordinates of what it carries; empty if it would not meet it. */
export function stickOf(
  { region, lettering = [] }: Pick<MadeShape, 'region' | 'lettering'>,
  { towards, ...stick }: Omit<StickGenerator, 'shape'>,
): Region {
  const about = { x: 0, y: 0 };
  const turn = rotation(turns[towards], about);
  const carried = transform(region, turn);
  const boxes = lettering
    .filter(({ as }) => as === 'material')
    .map((each) => each.mapped(turn))
    .flatMap(({ letters, grow }) => letters.map((letter) => widened(boundsOf(letter.region)!, grow)));
  return transform(downwards(carried, boxes, stick), rotation(-turns[towards], about));
}

function downwards(carried: Region, letters: readonly Bounds[], stick: Upright): Region {
  const deep = deepStick(carried, stick);
  if (!fillsLetters(deep, carried, letters)) return deep;
  const foot = footUnder(
    carried,
    letters.map(({ minY }) => minY),
    stick,
  );
  if (!foot) return deep;
  const end = boundsOf(carried)!.minY - stick.length;
  return union([[shaft({ x: foot.x, top: foot.top, end }, stick)], foot.region]);
}

/** Whether it fills counters, bays or gaps of letters. */
function fillsLetters(stick: Region, carried: Region, letters: readonly Bounds[]): boolean {
  if (letters.length === 0) return false;
  const filled = difference(stick, [carried]);
  return letters.some((box) => area(intersection(filled, [boxRing(box)])) > fillsMm2);
}

/** Under the balance, as deep in the material as it takes. */
function deepStick(carried: Region, { length, lap, ...about }: Upright): Region {
  const balance = centroid(carried);
  const bounds = boundsOf(carried);
  if (!balance || !bounds) return [];
  const { x } = balance;
  const { width } = about;
  const upTo = (top: number): Region => [
    boxRing({ minX: x - width / 2, maxX: x + width / 2, minY: bounds.minY - 1, maxY: top }),
  ];
  const met = intersection(carried, upTo(bounds.maxY + 1));
  const material = boundsOf(met);
  if (!material) return [];
  // The deeper it goes the more material it meets, so its depth is found by bisection.
  let [low, high] = [material.minY, material.maxY];
  while (high - low > depthToleranceMm) {
    const middle = (low + high) / 2;
    if (area(intersection(met, upTo(middle))) < lap * width) low = middle;
    else high = middle;
  }
  return [shaft({ x, top: high, end: bounds.minY - length }, about)];
}

function shaft(
  { x, top, end }: { readonly x: number; readonly top: number; readonly end: number },
  { width, point }: Pick<Upright, 'width' | 'point'>,
): Ring {
  const [left, right] = [x - width / 2, x + width / 2];
  const blunt = Math.min(bluntMm, width) / 2;
  const tip =
    point > 0
      ? [
          { x: left, y: end + point },
          { x: x - blunt, y: end },
          { x: x + blunt, y: end },
          { x: right, y: end + point },
        ]
      : [
          { x: left, y: end },
          { x: right, y: end },
        ];
  return [...tip, { x: right, y: top }, { x: left, y: top }];
}
