/** Entries of a piece's lists once they are made: their outlines, and what they are on the finished piece. */

import { changedWithin } from '../geometry/change-within.ts';
import { difference } from '../geometry/clipper.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import type { ShapeEntry } from '../spec/model/model.ts';
import type { Stage } from './cache.ts';
import type { MadeShape } from './made-shape.ts';
import type { Area, Mark, PlacedHanger, Source } from './tag.ts';

export interface MadeEntry {
  readonly stage: Stage<MadeShape>;
  readonly entry: ShapeEntry;
  readonly area?: Area | undefined;
}

export const ids = (made: readonly MadeEntry[]): number[] => made.map(({ stage }) => stage.id);
export const regions = (made: readonly MadeEntry[]): Region[] => made.map(({ stage }) => stage.value.region);

/** Openings are cut from body and lugs as if these were united. */
export function finishedOutline(body: Region, cuts: readonly Region[], hangers: readonly PlacedHanger[]): Region {
  const openings = [...cuts, ...hangers.map(({ opening }) => opening)];
  const lugs = hangers.flatMap(({ lug }) => lug ?? []);
  const box = boundsOf([...openings.flat(), ...lugs]);
  return box ? changedWithin(body, box, (near) => difference([...near, ...lugs], openings)) : body;
}

export function sources(use: Source['use'], made: readonly MadeEntry[]): Source[] {
  return made.map(({ stage, entry: { shape, path }, area }) => {
    return { use, ...drawnOf(stage.value), ...(area && { area }), shape, entry: path, path: shape.path };
  });
}

export function marks(operation: Mark['operation'], made: readonly MadeEntry[]): Mark[] {
  return made.map(({ stage: { value }, entry, area }) => ({
    operation,
    ...drawnOf(value),
    ...(value.lines ? { lines: value.lines } : {}),
    ...(value.filled ? { filled: value.filled } : {}),
    ...(value.strokeTexts ? { strokeTexts: value.strokeTexts } : {}),
    ...(area && { area }),
    shape: entry.shape,
    path: entry.path,
  }));
}

function drawnOf({ region, lettering, codes }: MadeShape): Pick<MadeShape, 'region' | 'lettering' | 'codes'> {
  return { region, ...(lettering ? { lettering } : {}), ...(codes ? { codes } : {}) };
}
