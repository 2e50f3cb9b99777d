/** The guide's reference of the spec language, generated from the schema: one table for each group of keys. */

import { listed } from '../core/names.ts';
import { inline, sentence } from '../language/hover/docs.ts';
import { alternatives, nameKindOf, resolved, specSchema } from '../language/schema.ts';
import type { NameKind, SchemaNode } from '../language/schema.ts';
import { groupName, rootSection, sectionAnchor, sharedKeys } from '../language/reference-sections.ts';
import { markdownTable } from './markdown-table.ts';
import { shapesPicture } from './shapes-picture.ts';

const intro = `# Every key of a spec

Every key there is, with the same words that hovering over it shows. [The spec language](language.md) says how they go
together.

A *length* is a number with its unit (\`3 mm\`, \`1.2 cm\`, \`0.25 in\`, \`1 1/2 in\`, \`12 pt\`, \`20 px\`), or in the spec's \`units\`
without one. Keys in **bold** are required.
`;

const names: Readonly<Record<NameKind, string>> = {
  shape: 'name of a shape',
  part: 'name of a member',
  piece: 'name of a piece',
  hanger: 'name of a hanger',
  stock: 'name of a stock',
  tie: 'name of a tie',
  machine: 'name of a machine',
  font: 'font',
  drawing: 'SVG file',
  spec: 'spec file',
  table: 'CSV file',
  approval: 'record of an approval',
  tag: 'tag spec',
  offcuts: 'file of offcuts',
};

/** Short text for a schema node, by its title. */
const values: Readonly<Record<string, string>> = {
  Length: 'length',
  Size: '`[width, height]`',
  Rate: 'speed',
  HangerSide: 'side or corner (`top`, `top-left`, …), `auto`, degrees',
  HangerPlace: 'side or corner (`top`, `top-left`, …), `auto`, degrees or [nudge](#nudge)',
  RowName: 'name',
  KeptAsLines: '`true` beside `path` or `drawing`',
  Row: 'cells by their columns',
};

interface KeyGroup {
  readonly name: string;
  /** The key that it is the value of, unless it stands in a list or under a name. */
  readonly key?: string;
  readonly node: SchemaNode;
  /** The group that tells what this one shares with others. */
  readonly choice?: KeyGroup;
}

/** In Markdown: the spec itself, then each group of keys in the order of first mention. */
export function languageReference(): string {
  const groups: KeyGroup[] = [{ name: rootSection, node: specSchema }];
  // The array grows during the loop.
  for (const group of groups) {
    const choice = sharedKeys(group.node).size > 0 ? { choice: group } : {};
    for (const [key, inner] of Object.entries(group.node.properties ?? {}))
      for (const found of groupsIn(inner, key))
        if (!groups.some(({ name }) => name === found.name)) groups.push({ ...found, ...choice });
  }
  return `${intro}\n${groups.map(sectionOf).join('\n')}`;
}

function sectionOf({ name, key, node, choice }: KeyGroup): string {
  const title = node === specSchema ? name : `\`${name}\``;
  const shared = sharedKeys(choice?.node ?? node);
  const isOwn = (own: string) => !choice || !shared.has(own);
  const tables =
    name === 'shape'
      ? shapeParts.map(
          ({ heading, picture = '', has }) =>
            `### ${heading}\n\n${picture}${tableOf(node, (own, inner) => has(inner.description ?? '', own))}`,
        )
      : [tableOf(node, isOwn)];
  const example = node.examples?.length
    ? `Example: \`${key === undefined ? '' : `${key}: `}${inline(node.examples[0])}\``
    : '';
  const common = shared.size === 0 ? '' : choice ? andAsAll(choice, shared) : ofAll(name, node, shared);
  return (
    [`## ${title}`, descriptionText(node), example, ...tables, common].filter((part) => part !== '').join('\n\n') + '\n'
  );
}

type Shared = ReturnType<typeof sharedKeys>;

function andAsAll({ name }: KeyGroup, shared: Shared): string {
  const keys = [...shared.keys()].map((key) => `\`${key}\``);
  return `And ${listed(keys)}, as every [${name}](#${sectionAnchor(name)}).`;
}

/** The keys that all groups of a choice take, with the default of each where they differ. */
function ofAll(name: string, { properties = {} }: SchemaNode, shared: Shared): string {
  const rows = [...shared].map(([key, nodes]) => {
    const presets = new Map<unknown, string[]>();
    for (const [at, each] of Object.keys(properties).entries()) {
      const { default: preset } = resolved(nodes[at]!);
      presets.set(preset, [...(presets.get(preset) ?? []), each]);
    }
    const [usual, ...others] = [...presets].sort(([, a], [, b]) => b.length - a.length);
    const but = others.map(([preset, of]) => ` Of a ${of.join(' or ')}: \`${inline(preset)}\`.`);
    const [cell, takes, does, example] = rowOf(key, { ...ownWords(nodes[0]!), default: usual![0] }, false);
    return [cell!, takes!, does! + but.join(''), example!];
  });
  return `Every ${name} takes:\n\n${markdownTable({ header, rows })}`;
}

/** Splits the keys of a shape, which are too many for one table. */
const shapeParts: readonly { heading: string; picture?: string; has: (description: string, key: string) => boolean }[] =
  [
    {
      heading: 'Generators: exactly one',
      picture: `![Small pictures of what generators make, each with its key below it](${shapesPicture})\n\n`,
      has: (text) => text.startsWith('Generator: '),
    },
    {
      heading: 'What goes with a generator',
      has: (text) => text.startsWith('For ') && !text.startsWith(modifierStart),
    },
    {
      heading: 'Modifiers',
      has: (text) => !text.startsWith('Generator: ') && (!text.startsWith('For ') || text.startsWith(modifierStart)),
    },
  ];
/** A key described as “For a shape that is cut through a plate” is not a generator's. */
const modifierStart = 'For a shape';

const header = ['key', 'takes', 'what it does', 'example'];

function tableOf(node: SchemaNode, isIn: (key: string, inner: SchemaNode) => boolean): string {
  const rows = Object.entries(node.properties ?? {})
    .map(([key, inner]) => [key, ownWords(inner)] as const)
    .filter(([key, inner]) => isIn(key, inner))
    .map(([key, inner]) => rowOf(key, inner, node.required?.includes(key) ?? false));
  return markdownTable({ header, rows });
}

function rowOf(key: string, inner: SchemaNode, isRequired: boolean): string[] {
  const { default: preset, examples, description = '' } = inner;
  const byDefault = preset === undefined || /\bdefault\b/i.test(description) ? '' : ` Default: \`${inline(preset)}\`.`;
  return [
    isRequired ? `**\`${key}\`**` : `\`${key}\``,
    allowedValues(inner, key),
    descriptionText(inner) + byDefault,
    examples?.length ? `\`${key}: ${inline(examples[0])}\`` : '',
  ];
}

/** Description from the schema; text in brackets and braces becomes code, because it is meant literally. */
function descriptionText({ description }: SchemaNode): string {
  const parts = sentence(description).split('`');
  // Every other part is already code.
  return parts.map((part, at) => (at % 2 === 1 ? part : part.replaceAll(/\{[^}]*\}|\[[^\]]*\]/g, '`$&`'))).join('`');
}

/** What all lengths and all sizes say of themselves, which is told once. */
const general = ['length', 'size'].map((name) => resolved({ $ref: `#/definitions/${name}` }).description);

function ownWords(node: SchemaNode): SchemaNode {
  const { description, ...rest } = resolved(node);
  return description === undefined || general.includes(description) ? rest : { ...rest, description };
}

/** Allowed values in a few words, with a link to the keys of a group. */
function allowedValues(node: SchemaNode, key: string): string {
  const { title = '', anyOf } = resolved(node);
  if (values[title] !== undefined) return values[title];
  const each = anyOf ? anyOf.map((inner) => allowedValues(inner, key)) : [valueOf(resolved(node), key)];
  return [...new Set(each)].join(' or ');
}

function valueOf(node: SchemaNode, key: string): string {
  const kind = nameKindOf(node);
  if (kind) return names[kind];
  if (node.const !== undefined) return `\`${node.const}\``;
  if (node.enum) return node.enum.map((word) => `\`${word}\``).join(', ');
  if (node.properties) {
    const name = groupName(node, key);
    return `[${name}](#${sectionAnchor(name)})`;
  }
  if (typeof node.additionalProperties === 'object')
    return `names, each with ${allowedValues(node.additionalProperties, key)}`;
  if (node.items && !isTuple(node.items)) return `list (${allowedValues(node.items, key)})`;
  return plainValue(node);
}

function plainValue({ type, minimum, maximum }: SchemaNode): string {
  const types = typeof type === 'string' ? [type] : (type ?? []);
  const words: Readonly<Record<string, string>> = {
    string: 'text',
    boolean: '`true` or `false`',
    integer: 'whole number',
  };
  const range = minimum === undefined || maximum === undefined ? '' : ` from ${minimum} to ${maximum}`;
  return types.map((each) => words[each] ?? each).join(' or ') + range;
}

/** The groups of keys that a value may be or contain. */
function groupsIn(node: SchemaNode, key: string): KeyGroup[] {
  return alternatives(node).flatMap((each) => {
    if (each.properties) return [{ name: groupName(each, key), key, node: each }];
    const inner = typeof each.additionalProperties === 'object' ? each.additionalProperties : each.items;
    return inner === undefined || isTuple(inner)
      ? []
      : groupsIn(inner, key).map(({ name, node: of }) => ({ name, node: of }));
  });
}

function isTuple(items: SchemaNode | readonly SchemaNode[]): items is readonly SchemaNode[] {
  return Array.isArray(items);
}
