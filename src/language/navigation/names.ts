/** The names in a spec, of shapes, pieces and so on: where each is defined and where it is used. */

import type { TextRange, YamlPath } from '../../core/issue.ts';
import { columnsIn } from '../../spec/batch/batch.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import type { SpecMap, SpecNode, SpecScalar } from '../../spec/yaml/tree.ts';
import { nameKindOf } from '../schema.ts';
import type { NameKind } from '../schema.ts';
import { valuesIn } from '../values-with-schema.ts';

/** Columns belong to the batch, whatever the schema says about the place that refers to one. */
export type AnyNameKind = NameKind | 'column';

export interface NamePlace {
  /** `part` names a member of a stack, which is a shape as well. */
  readonly kind: AnyNameKind;
  readonly name: string;
  /** Including quotes. */
  readonly range: TextRange;
  readonly quoted: boolean;
  readonly path: YamlPath;
  readonly isDefinition: boolean;
  /** Range of the value that is defined under the name. */
  readonly body?: TextRange;
}

/** Within a section, in text order. */
export function namesIn({ tree, text }: Pick<SpecSource, 'tree' | 'text'>): NamePlace[] {
  return [...valuesIn(tree)].flatMap(({ node, path, schemas }): NamePlace[] => {
    if (node.kind === 'map')
      return [...definitionsIn(node, path), ...machinesOfStock(node, path), ...columnsOfRow(node, path)];
    if (node.kind !== 'scalar' || typeof node.value !== 'string') return [];
    const asked = hasBatch(tree) && path[0] !== 'batch' ? columnsAsked(node, path, text) : [];
    if (asked.length > 0) return asked;
    const kind = schemas.map(nameKindOf).find((each) => each !== undefined);
    return kind ? [namePlace(node, kind, path)] : [];
  });
}

function definitionsIn({ entries }: SpecMap, path: YamlPath): NamePlace[] {
  const kind = path.length === 1 ? definingSections[String(path[0])] : undefined;
  if (!kind) return [];
  return entries.map(({ key, value }) => ({
    ...namePlace(key, kind, [...path, String(key.value)]),
    isDefinition: true,
    ...(value ? { body: value.range } : {}),
  }));
}

/** In the list form, every row repeats the column names. */
function columnsOfRow({ entries }: SpecMap, path: YamlPath): NamePlace[] {
  if (path[0] !== 'batch' || path.length !== 2) return [];
  return entries.map(({ key }) => ({ ...namePlace(key, 'column', [...path, String(key.value)]), isDefinition: true }));
}

/** Without a batch, braces have no meaning. */
function hasBatch(tree: SpecNode | undefined): boolean {
  return tree?.kind === 'map' && tree.entries.some(({ key }) => key.value === 'batch');
}

function columnsAsked({ range }: SpecScalar, path: YamlPath, text: string): NamePlace[] {
  return columnsIn(text.slice(range.start, range.end)).map(({ column, start, end }) => ({
    kind: 'column',
    name: column,
    range: { start: range.start + start, end: range.start + end },
    quoted: false,
    path,
    isDefinition: false,
  }));
}

/** Values of a stock that differ by machine are keyed by the machine's name. */
function machinesOfStock({ entries }: SpecMap, path: YamlPath): NamePlace[] {
  const isOfStock = path[0] === 'stocks' ? path.length === 3 : path[0] === 'stock' && path.length === 2;
  if (!isOfStock || path.at(-1) !== 'machines') return [];
  return entries.map(({ key }) => namePlace(key, 'machine', [...path, String(key.value)]));
}

/** Sections of a spec whose keys are names. */
const definingSections: Readonly<Partial<Record<string, NameKind>>> = {
  shapes: 'shape',
  pieces: 'piece',
  hangers: 'hanger',
  stocks: 'stock',
  ties: 'tie',
  machines: 'machine',
};

function namePlace(node: SpecScalar, kind: AnyNameKind, path: YamlPath): NamePlace {
  return { kind, name: String(node.value), range: node.range, quoted: node.quoted, path, isDefinition: false };
}

/** Shapes that the one at `path` may be built from: all except itself and those built from it. */
export function shapesFor(path: YamlPath, names: readonly NamePlace[]): string[] {
  const shapes = names.filter(({ kind, isDefinition }) => kind === 'shape' && isDefinition).map(({ name }) => name);
  const [section, own] = path;
  if (section !== 'shapes' || typeof own !== 'string') return shapes;
  const barred = new Set([own]);
  for (let before = 0; before < barred.size;) {
    before = barred.size;
    for (const { kind, isDefinition, name, path: at } of names) {
      if (kind === 'shape' && !isDefinition && barred.has(name) && at[0] === 'shapes') barred.add(String(at[1]));
    }
  }
  return shapes.filter((name) => !barred.has(name));
}
