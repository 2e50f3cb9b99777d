/** Remedies for letters that another shape of their body runs over: that shape makes way. */

import { coveringMost } from '../../checks/measures/covered-letters.ts';
import { letteringOn } from '../../checks/measures/lettering-on.ts';
import { samePath } from '../../core/values.ts';
import { boundsOf, boxCentre } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/types.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import type { Case, Remedy } from '../candidate.ts';
import { settingLengths, shapeTitle } from '../candidate.ts';
import { madeSmaller, movedBy } from './moving.ts';
import { onItsCover } from './own-layer.ts';

/** Distances to move, in mm. */
const stepsMm = [0.5, 1, 1.5, 2, 3, 4, 5, 6, 8, 10];

/** Factors that make a stick narrower, or let it end less far inside. */
const factors = [0.9, 0.8, 0.7, 0.6, 0.5];

export function uncovered(at: Case, lettered: Shape): Remedy[] {
  const { piece, tag } = at;
  if (!piece) return [];
  const on = letteringOn(piece, tag).find(({ lettering }) => samePath(lettering.path, lettered.path));
  const worst = on && coveringMost(on.lettering, on.kept?.shape, on.covers);
  const source = worst && piece.sources.find(({ use, region }) => use === 'body' && region === worst.region);
  const letters = boundsOf(
    [...(worst?.gone ?? []), ...(worst?.partly ?? []), ...(worst?.filled ?? []), ...(worst?.tailless ?? [])].flatMap(
      ({ region }) => region,
    ),
  );
  const cover = source && boundsOf(source.region);
  if (!source || !letters || !cover) return [];
  const { shape } = source;
  if (shape.generator.kind === 'stick') return thinnerStick(at, shape, shape.generator);
  const [from, to] = [boxCentre(letters), boxCentre(cover)];
  const ways = directionsOf({ x: to.x - from.x, y: to.y - from.y }).flatMap(({ x, y }) =>
    stepsMm.map((step): Point => ({ x: step * x, y: step * y })),
  );
  return [
    { words: `Move ${shapeTitle(shape)} off the letters`, candidates: movedBy(at, shape, ways) },
    { words: `Make ${shapeTitle(shape)} smaller`, candidates: madeSmaller(at, shape) },
    ...onItsCover(at, lettered, shape),
  ];
}

/** Away from the letters, along either axis. */
function directionsOf({ x, y }: Point): Point[] {
  return [
    { x: Math.sign(x) || 1, y: 0 },
    { x: 0, y: Math.sign(y) || -1 },
  ];
}

function thinnerStick(
  at: Case,
  shape: Shape,
  { width, lap }: { readonly width: number; readonly lap?: number },
): Remedy[] {
  const path = [...shape.path, 'stick'];
  const times = (length: number) => factors.map((factor) => factor * length);
  return [
    ...(lap === undefined
      ? []
      : [
          {
            words: `Let ${shapeTitle(shape)} end less far inside`,
            candidates: settingLengths(at, path, 'lap', times(lap), lap),
          },
        ]),
    { words: `Make ${shapeTitle(shape)} narrower`, candidates: settingLengths(at, path, 'width', times(width), width) },
  ];
}
