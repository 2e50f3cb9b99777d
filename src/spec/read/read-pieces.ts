/** Reads pieces and their hangers. */

import type { YamlPath } from '../../core/issue.ts';
import type { ShapeEntry, Hanger, PieceModel } from '../model/model.ts';
import type { Stock } from '../model/workshop-model.ts';
import { openLinesIn } from './open-lines.ts';
import type { Problems } from './problems.ts';
import type { ShapeReader } from './read-shapes.ts';
import type { Workshop } from './read-workshop.ts';
import type { Scope } from './scope.ts';
import { placesInBody } from './stack-members.ts';
import { didYouMean, nearestWords } from '../schema/suggest.ts';
import type { HangerOrName, PieceSpec, ShapeOrName, ShapesOrOne } from '../types.generated.ts';
import { hangerReader } from './read-hangers.ts';
import type { ReadHanger } from './read-hangers.ts';

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
  const cuts = new Map(ids.map((id) => [id, cutFromOf(pieces[id]!, ['pieces', id], workshop)]));
  const stockIn = (id: string): Stock => cuts.get(id)?.stock ?? workshop.stock;
  /** A named hanger of several pieces goes through all of them: as far in as the stoutest needs. */
  const stockOfNamed = (name: string): Stock => {
    const stocks = ids.filter((id) => [pieces[id]!.hanger].flat().includes(name)).map(stockIn);
    return stocks.reduce((a, b) => (b.hangerWeb > a.hangerWeb ? b : a));
  };
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
    const cutFrom = cuts.get(id);
    const hangers = readHangers(spec.hanger, [...path, 'hanger'], (ref, at) =>
      hangersIn(typeof ref === 'string' ? stockOfNamed(ref) : stockIn(id))(ref, at),
    );
    return {
      id,
      title: problems.filled(spec.title ?? id, [...path, 'title']) ?? id,
      path,
      body,
      cut: list('cut'),
      score: list('score'),
      engrave: list('engrave'),
      ...(size ? { size } : {}),
      hangers: paired(hangers.flatMap(({ hanger, path: at }) => inRow(onMember(hanger, body, at, problems)))),
      parts: spec.parts ?? 'one',
      ...(spec.glue_to === undefined ? {} : { glueTo: spec.glue_to }),
      ...(cutFrom ? { cutFrom } : {}),
    };
  });
}

function cutFromOf(spec: PieceSpec, path: YamlPath, workshop: Workshop): PieceModel['cutFrom'] {
  return spec.stock === undefined ? undefined : workshop.cutFrom(spec.stock, [...path, 'stock']);
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

/** Two alike in the corners of one side know each other; a nudge says where they are meant to be. */
function paired(hangers: readonly Hanger[]): Hanger[] {
  return hangers.map((hanger) => {
    if (!anchorOf(hanger).includes('-')) return hanger;
    const facing = anchorOf(hanger).replace(/left|right/, (side) => (side === 'left' ? 'right' : 'left'));
    const [pair, ...more] = hangers.filter((other) => other.kind === hanger.kind && anchorOf(other) === facing);
    const isMeant = pair?.on?.shape === hanger.on?.shape && [hanger, pair].every((each) => isAtRest(each?.nudge));
    if (!pair || more.length > 0 || !isMeant) return hanger;
    const { on: _, ...level } = pair;
    return { ...hanger, pair: level };
  });
}

function isAtRest(nudge: Hanger['nudge'] | undefined): boolean {
  return nudge?.x === 0 && nudge.y === 0;
}

function anchorOf({ at }: Hanger): string {
  return at.kind === 'anchor' ? at.anchor : '';
}
