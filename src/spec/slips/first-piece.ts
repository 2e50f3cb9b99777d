/** Suggests a first piece for shapes that no piece uses yet. */

import { isGroup } from '../../core/values.ts';

type Group = Readonly<Record<string, unknown>>;

/** Keys that make a shape from others, which are then not parts of a piece by themselves. */
const madeFrom = ['around', 'from', 'union', 'difference', 'intersection', 'stack'] as const;

/** Keys of a shape that is placed on another. */
const puts = ['place', 'fit', 'border'] as const;

/**
 * The lines of the piece: shapes that are not placed on another form its body, and those placed on it are engraved.
 * Lettering beside a plate is assumed to belong on it. `undefined` without shapes.
 */
export function firstPiece(spec: unknown): string[] | undefined {
  const shapes = groupAt(spec, 'shapes');
  const names = Object.keys(shapes);
  const used = new Set(names.flatMap((name) => namesMadeFrom(shapes[name])));
  const tops = names.filter((name) => !used.has(name));
  if (tops.length === 0) return undefined;
  const isPut = (name: string) => puts.some((key) => key in groupAt(shapes, name));
  const isLettering = (name: string) => isGroup(shapes[name]) && 'text' in shapes[name];
  const free = tops.filter((name) => !isPut(name));
  const plates = free.filter((name) => !isLettering(name));
  const carried = tops
    .map((name) => carrierOf(shapes[name]))
    .find((name) => name !== undefined && Object.hasOwn(shapes, name));
  const body = [plates, free, carried === undefined ? tops : [carried]].find((list) => list.length > 0)!;
  const marks = tops.filter((name) => !body.includes(name));
  return ['tag:', `  body: [${body.join(', ')}]`, ...(marks.length > 0 ? [`  engrave: [${marks.join(', ')}]`] : [])];
}

function namesMadeFrom(shape: unknown): string[] {
  if (!isGroup(shape)) return [];
  return [...madeFrom.flatMap((key) => stringsIn(shape[key])), ...stringsIn(groupAt(shape, 'repeat')['shape'])];
}

function stringsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap(stringsIn);
  return isGroup(value) ? Object.values(value).flatMap(stringsIn) : [];
}

function carrierOf(shape: unknown): string | undefined {
  const on = groupAt(shape, 'place')['on'] ?? groupAt(shape, 'fit')['in'] ?? groupAt(shape, 'border')['of'];
  return typeof on === 'string' ? on : undefined;
}

function groupAt(value: unknown, key: string): Group {
  const inner = isGroup(value) ? value[key] : undefined;
  return isGroup(inner) ? inner : {};
}
