/** Pieces for tests, made of outlines alone, and what is asked of their loads. */

import assert from 'node:assert/strict';
import { normalise } from '../../../src/geometry/clipper.ts';
import type { Point, Region } from '../../../src/geometry/types.ts';
import { estimateLoad } from '../../../src/strength/load.ts';
import type { LoadEstimate, LoadSection } from '../../../src/strength/load.ts';
import type { SectionKind } from '../../../src/strength/section.ts';
import type { Stock } from '../../../src/spec/model/workshop-model.ts';
import type { Piece, PlacedHanger } from '../../../src/tag/tag.ts';
import { assertNear } from '../support/engine.ts';
import { box, disc, roundedBox, subtract, transformed, unite } from '../support/shapes.ts';

export const stockOf = (material?: string, thickness?: number): Stock => ({
  kerf: 0,
  minWeb: 1.5,
  leastWeb: 0.8,
  hangerWeb: 1.5,
  ...(material === undefined ? {} : { material }),
  ...(thickness === undefined ? {} : { thickness }),
});

function pieceOf(body: Region, hanger: PlacedHanger): Piece {
  const region = normalise(subtract(body, hanger.opening));
  return { id: 'tag', title: 'Tag', region, body, sources: [], marks: [], hangers: [hanger], parts: 'one', path: [] };
}

/** A body with a round hole of diameter `size`. */
export function drilled(body: Region, centre: Point, size: number): Piece {
  const opening = [disc(centre.x, centre.y, size / 2, 1e-4)];
  return pieceOf(body, {
    kind: 'hole',
    at: { kind: 'auto' },
    centre,
    opening,
    openingSize: size,
    openingLength: size,
    path: [],
  });
}

/** A body with an upright-hanging slot, `length` wide and `size` high. */
export function slotted(body: Region, { x, y }: Point, length: number, size: number): Piece {
  const opening = roundedBox(x - length / 2, y - size / 2, x + length / 2, y + size / 2, size / 2, 1e-4);
  return pieceOf(body, {
    kind: 'slot',
    at: { kind: 'auto' },
    centre: { x, y },
    opening,
    openingSize: size,
    openingLength: length,
    path: [],
  });
}

/** The piece turned (radians) about the origin, enlarged, then moved. */
export function movedPiece(piece: Piece, angle: number, scale = 1, dx = 0, dy = 0): Piece {
  const move = (region: Region) => transformed(region, angle, scale, dx, dy);
  const hanger = piece.hangers[0]!;
  return {
    ...piece,
    region: normalise(move(piece.region)),
    body: move(piece.body),
    hangers: [
      {
        ...hanger,
        centre: move([[hanger.centre]])[0]![0]!,
        opening: move(hanger.opening),
        openingSize: hanger.openingSize * scale,
        openingLength: hanger.openingLength * scale,
        ...(hanger.lug ? { lug: move(hanger.lug) } : {}),
      },
    ],
  };
}

/** 20 wide, 40 high, its top edge on the x axis, with a hole of 3 mm whose centre is 4 mm below it. */
export const plate = drilled([box(-10, -40, 10, 0)], { x: 0, y: -4 }, 3);

/** Two discs one above the other, joined by a bar of width w about the middle, a hole in the smaller one. */
export function dumbbell(w: number): Piece {
  const body = unite(disc(0, 0, 8, 1e-4), disc(0, -30, 12, 1e-4), box(-w / 2, -30, w / 2, 0));
  return drilled(body, { x: 0, y: 0 }, 3);
}

/** The plate 60 mm long, sawn through at y = −15 but for the material from x = `from` to `to`. */
export function sawn(from: number, to: number): Piece {
  const cuts = [box(-11, -15.02, from, -15), box(to, -15.02, 11, -15)];
  return drilled(subtract([box(-10, -60, 10, 0)], cuts), { x: 0, y: -4 }, 3);
}

export function estimateOf(piece: Piece, material?: string, thickness?: number): LoadEstimate {
  const estimate = estimateLoad(piece, stockOf(material, thickness));
  assert.ok(estimate);
  return estimate;
}

export function sectionOf(estimate: LoadEstimate, what: SectionKind): LoadSection {
  const found = estimate.sections.filter((section) => section.what === what);
  assert.equal(found.length, 1, `${what} in ${estimate.sections.map((section) => section.what).join()}`);
  return found[0]!;
}

export function bearing(estimate: LoadEstimate): Extract<LoadEstimate, { kind: 'bears' }> {
  if (estimate.kind !== 'bears') throw new Error(`expected a load, not ${JSON.stringify(estimate)}`);
  return estimate;
}

/** To a share of the expected value. */
export function assertClose(actual: number | undefined, expected: number, share = 0.005, what?: string): void {
  assert.ok(actual !== undefined, what);
  assertNear(actual, expected, expected * share, what);
}
