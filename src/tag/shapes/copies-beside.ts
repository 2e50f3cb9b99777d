/** Copies along an edge make room for what the piece hangs by, as a border does. */

import { intersection, offset } from '../../geometry/clipper.ts';
import { area } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Region } from '../../geometry/types.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import type { MadeShape } from '../made-shape.ts';

/** Areas of copies differ by rounding alone. */
const sameShare = 1.01;

/** Whether there are as many copies as there is room for: of a number that is asked for none is left out. */
export function makesRoom({ generator }: Shape, { lettering, codes, lines }: MadeShape): boolean {
  const isPlain = !lettering && !codes && !lines;
  if (generator.kind !== 'repeat' || generator.along.kind === 'rows') return false;
  return isPlain && generator.along.count === undefined;
}

/** Without the copies that are nearer to the openings than `clear`. */
export function copiesBeside(made: MadeShape, openings: Region, clear: number): MadeShape {
  if (openings.length === 0) return made;
  const kept = offset(openings, clear);
  const parts = partsOf(made.region);
  // Copies of several parts each would lose some of them.
  const areas = parts.map((part) => area(part));
  if (Math.max(...areas) > sameShare * Math.min(...areas)) return made;
  const beside = parts.filter((part) => intersection(kept, part).length === 0);
  return beside.length === parts.length ? made : { ...made, region: beside.flat() };
}
