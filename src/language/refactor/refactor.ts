/** Refactorings: changes of a spec's text that leave the tag unchanged, or the first of its tags. */

import { freeName } from '../../core/names.ts';
import { removeKey } from '../../edits/remove-key.ts';
import { withEdits } from '../../fixes/find-fixes.ts';
import type { TextEdit } from '../../core/issue.ts';
import { parseSpec } from '../../spec/parse.ts';
import { generatorKeys } from '../../spec/read/read-generator.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import type { SpecMap, SpecNode } from '../../spec/yaml/tree.ts';
import type { Uses } from '../../spec/files/used-files.ts';
import { definitionIn, nameAt, placesOf } from '../navigation/find-names.ts';
import { flowText } from '../completion/flow-text.ts';
import { intoBatch } from './into-batch.ts';
import type { Refactoring } from './refactoring.ts';
import { schemasAt } from '../schema.ts';
import type { SchemaNode } from '../schema.ts';
import { isGroup, valueAt } from '../../core/values.ts';
import { valuesIn } from '../values-with-schema.ts';

/** Refactorings available at an offset. Each is tried on the text, and none causes a problem. */
export function refactoringsAt(source: SpecSource, offset: number, uses: Uses): Refactoring[] {
  const before = parseSpec(source, uses).issues.length;
  return [extraction(source, offset), inlining(source, offset), intoBatch(source, offset)].filter(
    (each) => each !== undefined && parseSpec(withEdits(source.text, each.edits), uses).issues.length <= before,
  ) as Refactoring[];
}

/** Extracts an inline shape under a name. */
function extraction(source: SpecSource, offset: number): Refactoring | undefined {
  const shape = inPlaceAt(source.tree, offset);
  const text = shape && flowText(source, shape);
  if (!text) return undefined;
  const generator = generatorKeys.find((key) => shape.entries.some((entry) => entry.key.value === key)) ?? 'shape';
  const name = freeShape(generator, source);
  const definition = addShape(source, name, text);
  if (!definition) return undefined;
  const { start, end } = shape.range;
  const range = { start, end: start + source.text.slice(start, end).trimEnd().length };
  return { kind: 'extract', title: 'Give this shape a name', edits: [{ range, text: name }, definition], name };
}

/** The innermost shape around the offset, if it has no name. */
function inPlaceAt(tree: SpecNode | undefined, offset: number): SpecMap | undefined {
  const innermost = [...valuesIn(tree)].findLast(({ node: { kind, range }, schemas }) => {
    return kind === 'map' && range.start <= offset && offset <= range.end && schemas.some(isShape);
  });
  if (!innermost || (innermost.path.length === 2 && innermost.path[0] === 'shapes')) return undefined;
  return innermost.node as SpecMap;
}

const isShape = ({ title }: SchemaNode): boolean => title === 'ShapeSpec';

function addShape(source: SpecSource, name: string, text: string): TextEdit | undefined {
  if (isGroup(valueAt(source.value, ['shapes']))) return source.setKey(['shapes'], name, text);
  const root = source.tree;
  const pieces =
    root?.kind === 'map' && !root.flow ? root.entries.find(({ key }) => key.value === 'pieces') : undefined;
  if (!pieces) return undefined;
  const { start } = pieces.key.range;
  return { range: { start, end: start }, text: `shapes:\n  ${name}: ${text}\n\n` };
}

function freeShape(name: string, { value }: SpecSource): string {
  const shapes = valueAt(value, ['shapes']);
  const isTaken = (candidate: string) => isGroup(shapes) && Object.hasOwn(shapes, candidate);
  return freeName(name, isTaken);
}

/** Inlines a shape at its only use and removes its name. */
function inlining(source: SpecSource, offset: number): Refactoring | undefined {
  const name = nameAt(source, offset);
  if (name?.kind !== 'shape') return undefined;
  const given = definitionIn(source, name);
  const [use, ...others] = placesOf(source, name).filter((place) => !place.isDefinition);
  if (!given || !use || others.length > 0 || !schemasAt(use.path).some(isShape)) return undefined;
  const body = bodyOf(source.tree, name.name);
  const text = body && flowText(source, body);
  if (!text) return undefined;
  const shapes = valueAt(source.value, ['shapes']);
  const siblings = isGroup(shapes) ? Object.keys(shapes).length - 1 : 0;
  const removal = siblings > 0 ? removeKey(source, given.path, siblings) : removeKey(source, ['shapes'], 1);
  if (!removal) return undefined;
  const title = `Write “${name.name}” where it is used`;
  return { kind: 'inline', title, edits: [{ range: use.range, text }, removal] };
}

function bodyOf(tree: SpecNode | undefined, name: string): SpecNode | undefined {
  const shapes = tree?.kind === 'map' ? tree.entries.find(({ key }) => key.value === 'shapes')?.value : undefined;
  return shapes?.kind === 'map' ? shapes.entries.find(({ key }) => String(key.value) === name)?.value : undefined;
}
