/** Pieces of a spec and their hangers. */

import type { YamlPath } from '../issue.ts';
import type { Entry, Hanger, HangerPlace, PieceModel, Shape, Stock, Tie } from './model.ts';
import type { Problems } from './problems.ts';
import type { ShapeReader } from './read-shapes.ts';
import { didYouMean, nearest } from './suggest.ts';
import { comfortableOpening, leastRingWallMm, slotEaseMm, slotOpeningMm } from './tie.ts';
import type { HangerSpec, PieceSpec, RingSpec, ShapeList, ShapeOrName } from './types.generated.ts';

export interface Workshop {
  readonly stock: Stock;
  readonly tie: Tie | undefined;
}

/** Pieces in the order of the text; one whose body cannot be read is left out. */
export function readPieces(
  pieces: Readonly<Record<string, PieceSpec>>,
  shapes: ShapeReader,
  problems: Problems,
  workshop: Workshop,
): PieceModel[] {
  const ids = Object.keys(pieces);
  return ids.map((id) => {
    const spec = pieces[id]!;
    const path = ['pieces', id];
    const list = (key: 'body' | 'cut' | 'score' | 'engrave') => readEntries(spec[key], [...path, key], shapes);
    if (spec.glue_to !== undefined) checkGlue(spec.glue_to, id, ids, [...path, 'glue_to'], problems);
    const hanger = spec.hanger && readHanger(spec.hanger, [...path, 'hanger'], shapes, problems, workshop);
    return {
      id,
      title: spec.title ?? id,
      path,
      body: list('body'),
      cut: list('cut'),
      score: list('score'),
      engrave: list('engrave'),
      ...(hanger ? { hanger } : {}),
      parts: spec.parts ?? 'one',
      ...(spec.glue_to === undefined ? {} : { glueTo: spec.glue_to }),
    };
  });
}

function readEntries(list: ShapeList | undefined, path: YamlPath, shapes: ShapeReader): Entry[] {
  // The schema's complaints leave holes in lists.
  const written: readonly (ShapeOrName | undefined)[] = list ?? [];
  return [...written].flatMap((ref, index): Entry[] => {
    const shape = ref === undefined ? undefined : shapes.byRef(ref, [...path, index]);
    return shape ? [{ shape, path: [...path, index] }] : [];
  });
}

function checkGlue(target: string, id: string, ids: readonly string[], path: YamlPath, problems: Problems): void {
  if (target === id) problems.error('cycle', path, 'A piece cannot be glued on itself.');
  else if (!problems.wrote(['pieces', target])) {
    const suggestions = nearest(target, ids);
    problems.error('unknown-piece', path, `There is no piece “${target}”.${didYouMean(suggestions)}`, { suggestions });
  }
}

function readHanger(
  spec: HangerSpec,
  path: YamlPath,
  shapes: ShapeReader,
  problems: Problems,
  { stock, tie }: Workshop,
): Hanger | undefined {
  const kind = (['ring', 'hole', 'slot'] as const).find((key) => spec[key] !== undefined);
  if (!kind) return undefined;
  const here = [...path, kind];
  const common = spec[kind]!;
  const length = (key: string, sign: 'size' | 'distance' | 'signed') =>
    problems.length((common as Record<string, number | string | undefined>)[key], [...here, key], sign);
  const on: Shape | undefined = common.on === undefined ? undefined : shapes.byName(common.on, [...here, 'on']);
  const base = {
    path: here,
    ...(on ? { on } : {}),
    at: readPlace(common.at, kind, [...here, 'at'], problems),
    nudge: problems.nudge(common.nudge, [...here, 'nudge']) ?? { x: 0, y: 0 },
  };
  const opening = length('opening', 'size');
  const inset = length('inset', 'distance') ?? 2 * stock.minWeb;
  switch (kind) {
    case 'ring':
      return {
        ...base,
        kind,
        opening: opening ?? comfortableOpening(tie),
        wall: length('wall', 'size') ?? Math.max(leastRingWallMm, stock.minWeb),
        sink: length('sink', 'signed') ?? 0,
      };
    case 'hole':
      return { ...base, kind, opening: opening ?? comfortableOpening(tie), inset };
    case 'slot': {
      const across = opening ?? slotOpeningMm;
      const ribbon = tie?.kind === 'ribbon' ? tie.size : 10;
      const long = length('length', 'size') ?? ribbon + slotEaseMm;
      if (long < across) problems.error('bad-length', [...here, 'length'], 'A slot is at least as long as it is wide.');
      return { ...base, kind, opening: across, inset, length: long };
    }
  }
}

function readPlace(at: RingSpec['at'], kind: Hanger['kind'], path: YamlPath, problems: Problems): HangerPlace {
  if (at === undefined) return kind === 'ring' ? { kind: 'auto' } : { kind: 'anchor', anchor: 'top' };
  if (at === 'auto') return { kind: 'auto' };
  if (typeof at === 'string') return { kind: 'anchor', anchor: at };
  if (typeof at === 'number') return { kind: 'degrees', degrees: at };
  return { kind: 'point', offset: problems.nudge(at, path) ?? { x: 0, y: 0 } };
}
