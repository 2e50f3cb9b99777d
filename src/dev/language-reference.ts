/** The guide's reference of the spec language, generated from the schema: one table for each group of keys. */

import { inline, sentence } from '../language/hover/docs.ts';
import { alternatives, isLength, nameKindOf, resolved, specSchema } from '../language/schema.ts';
import type { NameKind, SchemaNode } from '../language/schema.ts';
import { groupName, rootSection, sectionAnchor } from '../language/reference-sections.ts';
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
  tag: 'tag spec',
  offcuts: 'file of offcuts',
};

/** Short text for a schema node, by its title. */
const values: Readonly<Record<string, string>> = {
  Length: 'length',
  Size: '`[width, height]`',
  Rate: 'speed',
  RowName: 'name',
  Row: 'cells by their columns',
};

interface KeyGroup {
  readonly name: string;
  readonly node: SchemaNode;
}

/** In Markdown: the spec itself, then each group of keys in the order of first mention. */
export function languageReference(): string {
  const groups: KeyGroup[] = [{ name: rootSection, node: specSchema }];
  // The array grows during the loop.
  for (const { node } of groups)
    for (const [key, inner] of Object.entries(node.properties ?? {}))
      for (const found of groupsIn(inner, key)) if (!groups.some(({ name }) => name === found.name)) groups.push(found);
  return `${intro}\n${groups.map(sectionOf).join('\n')}`;
}

function sectionOf({ name, node }: KeyGroup): string {
  const title = node === specSchema ? name : `\`${name}\``;
  const tables =
    name === 'shape'
      ? shapeParts.map(
          ({ heading, picture = '', has }) =>
            `### ${heading}\n\n${picture}${tableOf(node, (key, inner) => has(inner.description ?? '', key))}`,
        )
      : [tableOf(node, () => true)];
  const example = node.examples?.length ? `Example: \`${name}: ${inline(node.examples[0])}\`` : '';
  return [`## ${title}`, descriptionText(node), example, ...tables].filter((part) => part !== '').join('\n\n') + '\n';
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

function tableOf(node: SchemaNode, isIn: (key: string, inner: SchemaNode) => boolean): string {
  const rows = Object.entries(node.properties ?? {})
    .map(([key, inner]) => [key, ownWords(inner)] as const)
    .filter(([key, inner]) => isIn(key, inner))
    .map(([key, inner]) => {
      const { default: preset, examples, description = '' } = inner;
      const byDefault =
        preset === undefined || /\bdefault\b/i.test(description) ? '' : ` Default: \`${inline(preset)}\`.`;
      return [
        node.required?.includes(key) ? `**\`${key}\`**` : `\`${key}\``,
        allowedValues(inner, key),
        descriptionText(inner) + byDefault,
        examples?.length ? `\`${key}: ${inline(examples[0])}\`` : '',
      ];
    });
  return markdownTable({ header: ['key', 'takes', 'what it does', 'example'], rows });
}

/** Description from the schema; text in brackets and braces becomes code, because it is meant literally. */
function descriptionText({ description }: SchemaNode): string {
  const parts = sentence(description).split('`');
  // Every other part is already code.
  return parts.map((part, at) => (at % 2 === 1 ? part : part.replaceAll(/\{[^}]*\}|\[[^\]]*\]/g, '`$&`'))).join('`');
}

/** The resolved node without the description that all lengths and all sizes share. */
function ownWords(node: SchemaNode): SchemaNode {
  const { description, ...rest } = resolved(node);
  const isGeneral = node.description === undefined && (isLength(rest) || rest.title === 'Size');
  return isGeneral || description === undefined ? rest : { ...rest, description };
}

/** Allowed values in a few words, with a link to the keys of a group. */
function allowedValues(node: SchemaNode, key: string): string {
  return [...new Set(alternatives(node).map((each) => valueOf(each, key)))].join(' or ');
}

function valueOf(node: SchemaNode, key: string): string {
  const known = values[node.title ?? ''];
  if (known !== undefined) return known;
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
    if (each.properties) return [{ name: groupName(each, key), node: each }];
    const inner = typeof each.additionalProperties === 'object' ? each.additionalProperties : each.items;
    return inner === undefined || isTuple(inner) ? [] : groupsIn(inner, key);
  });
}

function isTuple(items: SchemaNode | readonly SchemaNode[]): items is readonly SchemaNode[] {
  return Array.isArray(items);
}
