/** Reads pieces and their hangers. */

import { limit } from '../core/figures.ts';
import type { YamlPath } from '../core/issue.ts';
import type { ShapeEntry, Hanger, HangerPlace, PieceModel, Stock } from './model.ts';
import { openLinesIn } from './open-lines.ts';
import type { Problems } from './problems.ts';
import type { ShapeReader } from './read-shapes.ts';
import type { Workshop } from './read-workshop.ts';
import type { Scope } from './scope.ts';
import { placesInBody } from './stack-members.ts';
import { didYouMean, nearestWords } from './suggest.ts';
import { comfortableOpening, keyholeHeadMm, keyholeSlotMm, leastRingWallMm, slotEaseMm, slotOpeningMm } from './tie.ts';
import type { HangerOrName, HangerSpec, PieceSpec, RingSpec, ShapeOrName, ShapesOrOne } from './types.generated.ts';

/** The pieces in the order of the text; one whose body cannot be read is left out. */
export function readPieces(scope: Scope, workshop: Workshop): PieceModel[] {
  const { shapes, problems } = scope;
  const pieces = scope.spec.pieces ?? {};
  const ids = Object.keys(pieces);
  const readers = new Map<Stock, ReadHanger>();
  const hangersIn = (stock: Stock): ReadHanger => {
    const reader = readers.get(stock) ?? hangerReader(scope, { ...workshop, stock });
    readers.set(stock, reader);
    return reader;
  };
  hangersIn(workshop.stock);
  return ids.map((id) => {
    const spec = pieces[id]!;
    const path = ['pieces', id];
    const list = (key: 'body' | 'cut' | 'score' | 'engrave') => {
      const entries = readEntries(spec[key], [...path, key], shapes);
      if (key === 'body' || key === 'cut') for (const entry of entries) reportLines(entry, problems);
      return entries;
    };
    if (spec.glue_to !== undefined) checkGlue(spec.glue_to, id, ids, [...path, 'glue_to'], problems);
    const size = readWholeSize(spec, path, problems);
    const body = list('body');
    const cutFrom = spec.stock === undefined ? undefined : workshop.cutFrom(spec.stock, [...path, 'stock']);
    const hangers = readHangers(spec.hanger, [...path, 'hanger'], hangersIn(cutFrom?.stock ?? workshop.stock));
    return {
      id,
      title: problems.filled(spec.title ?? id, [...path, 'title']) ?? id,
      path,
      body,
      cut: list('cut'),
      score: list('score'),
      engrave: list('engrave'),
      ...(size ? { size } : {}),
      hangers: hangers.flatMap(({ hanger, path: at }) => inRow(onMember(hanger, body, at, problems))),
      parts: spec.parts ?? 'one',
      ...(spec.glue_to === undefined ? {} : { glueTo: spec.glue_to }),
      ...(cutFrom ? { cutFrom } : {}),
    };
  });
}

function readWholeSize(spec: PieceSpec, path: YamlPath, problems: Problems): PieceModel['size'] {
  const width = problems.length(spec.width, [...path, 'width'], 'size');
  const height = problems.length(spec.height, [...path, 'height'], 'size');
  const side = spec.width === undefined ? 'height' : 'width';
  const fault = (message: string) => {
    problems.error('bad-value', [...path, side], message, { range: problems.source.keyRange([...path, side]) });
  };
  if (spec.width !== undefined && spec.height !== undefined) {
    fault('A piece keeps its proportions: give its width or its height.');
  }
  const mm = width ?? height;
  if (mm !== undefined && spec.glue_to !== undefined) {
    fault('A piece that is glued on has the size of what it is glued to; give that one a size.');
  }
  return mm === undefined ? undefined : { side, mm };
}

function readEntries(list: ShapesOrOne | undefined, path: YamlPath, shapes: ShapeReader): ShapeEntry[] {
  if (list !== undefined && !Array.isArray(list)) {
    const shape = shapes.byRef(list, path);
    return shape ? [{ shape, path }] : [];
  }
  // The schema check leaves holes in lists.
  const written: readonly (ShapeOrName | undefined)[] = list ?? [];
  return [...written].flatMap((ref, index): ShapeEntry[] => {
    const shape = ref === undefined ? undefined : shapes.byRef(ref, [...path, index]);
    return shape ? [{ shape, path: [...path, index] }] : [];
  });
}

/** Reports lines: they enclose nothing, so nothing can be made of them or cut out with them. */
function reportLines({ shape, path }: ShapeEntry, problems: Problems): void {
  const lines = openLinesIn(shape);
  if (lines === 'none') return;
  const name = shape.name === undefined ? 'This shape' : `“${shape.name}”`;
  const has = lines === 'all' ? 'is made of lines' : 'has lines in it';
  problems.error('bad-value', path, `${name} ${has}, which enclose nothing: score or engrave it.`);
}

function checkGlue(target: string, id: string, ids: readonly string[], path: YamlPath, problems: Problems): void {
  if (target === id) problems.error('cycle', path, 'A piece cannot be glued on itself.');
  else if (!problems.wrote(['pieces', target])) {
    const suggestions = nearestWords(target, ids);
    problems.error('unknown-piece', path, `There is no piece “${target}”.${didYouMean(suggestions)}`, { suggestions });
  }
}

/** Default inset of an opening, as a multiple of the material it needs round it (our own judgement). */
const usualInset = 1.5;

/** The same if something is in its way: hardly more than it needs. */
const leastInset = 1.05;

type ReadHanger = (ref: HangerOrName, path: YamlPath) => Hanger | undefined;

/** Reads named hangers once, so that their problems are reported once, even if nothing uses them. */
function hangerReader(scope: Scope, workshop: Workshop): ReadHanger {
  const read = new Map<Scope, Map<string, Hanger | undefined>>();
  const readAll = (owner: Scope): void => {
    if (read.has(owner)) return;
    const named = Object.entries(owner.spec.hangers ?? {});
    read.set(owner, new Map(named.map(([name, spec]) => [name, readHanger(spec, ['hangers', name], owner, workshop)])));
    owner.uses.forEach(readAll);
  };
  readAll(scope);
  return (ref, path) => {
    if (typeof ref !== 'string') return readHanger(ref, path, scope, workshop);
    const owner = scope.require('hangers', ref, path);
    return owner && read.get(owner)?.get(ref);
  };
}

/** The hangers of a piece; entries that could not be read are left out, as they leave holes in lists. */
function readHangers(spec: PieceSpec['hanger'], path: YamlPath, read: ReadHanger): WrittenHanger[] {
  if (spec === undefined) return [];
  const written: readonly (HangerOrName | undefined)[] = Array.isArray(spec) ? [...spec] : [spec];
  return written.flatMap((ref, index) => {
    const at = Array.isArray(spec) ? [...path, index] : path;
    const hanger = ref === undefined ? undefined : read(ref, at);
    return hanger ? [{ hanger, path: at }] : [];
  });
}

/** A hanger, and the path at which the piece asks for it. */
interface WrittenHanger {
  readonly hanger: Hanger;
  readonly path: YamlPath;
}

/** The hanger on the member that it names, where the body's stack puts that member. */
function onMember(hanger: Hanger, body: readonly ShapeEntry[], path: YamlPath, problems: Problems): Hanger {
  if (!hanger.on) return hanger;
  const [on, ...others] = placesInBody(hanger.on.shape, body);
  const name = hanger.on.shape.name ?? '';
  if (others.length > 0) {
    const message = `“${name}” is a member of more than one stack in this body. Use a copy in one of them: “${name}2: {from: ${name}}”.`;
    problems.error('bad-value', path, message);
  }
  return { ...hanger, on: on! };
}

/** Each of the row, where it is one. */
function inRow(hanger: Hanger): Hanger[] {
  const { row } = hanger;
  return row ? Array.from({ length: row.count }, (_, nth) => ({ ...hanger, row: { ...row, nth } })) : [hanger];
}

/** `undefined` for one that stands alone. */
function readRow(
  { count, spacing, at }: RingSpec,
  path: YamlPath,
  problems: Problems,
): Pick<Hanger, 'row'> | undefined {
  const apart = problems.length(spacing, [...path, 'spacing'], 'size');
  const say = (key: string, message: string) => {
    problems.error('bad-value', [...path, key], message, { range: problems.source.keyRange([...path, key]) });
  };
  if (count === undefined || count === 1) {
    if (spacing !== undefined) say('spacing', '“spacing” goes with “count”, which says how many there are in the row.');
    return undefined;
  }
  if (typeof at === 'string' && at.includes('-')) {
    say('at', 'A row goes along a side, not into a corner: use “top”, “bottom”, “left” or “right”.');
    return undefined;
  }
  return { row: { nth: 0, count, ...(apart === undefined ? {} : { spacing: apart }) } };
}

function readHanger(
  spec: HangerSpec,
  path: YamlPath,
  { shapes, problems }: Scope,
  { stock, tie }: Workshop,
): Hanger | undefined {
  const kind = (['ring', 'hole', 'slot', 'keyhole'] as const).find((key) => spec[key] !== undefined);
  if (!kind) return undefined;
  const here = [...path, kind];
  const written = spec[kind]!;
  const common: Exclude<typeof written, string | number> = typeof written === 'object' ? written : { at: written };
  const length = (key: string, sign: 'size' | 'distance' | 'signed') =>
    problems.length((common as Record<string, number | string | undefined>)[key], [...here, key], sign);
  const on = common.on === undefined ? undefined : shapes.byName(common.on, [...here, 'on']);
  const row = readRow(common, here, problems);
  const place = readPlace(common.at, kind, [...here, 'at'], problems);
  const base = {
    path: problems.inSpec(here),
    ...(on ? { on: { shape: on } } : {}),
    ...row,
    // A row has a side: what hangs on two cords hangs by its top.
    at: row && place.kind === 'auto' ? topSide : place,
    nudge: problems.nudge(common.nudge, [...here, 'nudge']) ?? { x: 0, y: 0 },
  };
  const opening = length(kind === 'slot' || kind === 'keyhole' ? 'width' : 'diameter', 'size');
  const asked = length('inset', 'distance');
  const inset = asked ?? usualInset * stock.hangerWeb;
  switch (kind) {
    case 'ring':
      return {
        ...base,
        kind,
        opening: opening ?? comfortableOpening(tie),
        wall: length('wall', 'size') ?? Math.max(leastRingWallMm, stock.hangerWeb),
        sink: length('sink', 'signed') ?? 0,
      };
    case 'hole':
      return {
        ...base,
        kind,
        opening: opening ?? comfortableOpening(tie),
        inset,
        ...(asked === undefined ? { leastInset: leastInset * stock.hangerWeb } : {}),
        ...(common.at === undefined || common.at === 'auto' ? { anySide: true } : {}),
      };
    case 'slot': {
      const across = opening ?? slotOpeningMm;
      const ribbon = tie?.kind === 'ribbon' ? tie.size : 10;
      const long = length('length', 'size') ?? ribbon + slotEaseMm;
      if (long < across) problems.error('bad-length', [...here, 'length'], 'A slot is at least as long as it is wide.');
      return { ...base, kind, opening: across, inset, length: long };
    }
    case 'keyhole': {
      const head = length('diameter', 'size') ?? keyholeHeadMm;
      const width = opening ?? Math.min(keyholeSlotMm, head / 2);
      const least = head + width / 2;
      const long = length('length', 'size') ?? least + head / 2;
      if (width >= head) {
        const message = 'The slot must be narrower than the round opening, or the head of the nail slips through.';
        problems.error('bad-length', [...here, 'width'], message);
      } else if (long < least) {
        const message = `A keyhole like this must be at least ${limit(least)} long, or the head of the nail comes out again.`;
        problems.error('bad-length', [...here, 'length'], message);
      }
      return { ...base, kind, opening: width, inset, head, length: long };
    }
  }
}

const topSide: HangerPlace = { kind: 'anchor', anchor: 'top' };

function readPlace(at: RingSpec['at'], kind: Hanger['kind'], path: YamlPath, problems: Problems): HangerPlace {
  if (at === undefined) return kind === 'ring' ? { kind: 'auto' } : topSide;
  if (at === 'auto') return { kind: 'auto' };
  if (typeof at === 'string') return { kind: 'anchor', anchor: at };
  if (typeof at === 'number') return { kind: 'degrees', degrees: at };
  return { kind: 'point', offset: problems.nudge(at, path) ?? { x: 0, y: 0 } };
}
