/** Walks the schema of specs for completion and hover: the schema nodes that describe the value at a path. */

import jobs from '../../schemas/job.schema.json' with { type: 'json' };
import offcuts from '../../schemas/offcuts.schema.json' with { type: 'json' };
import schema from '../../schemas/tag.schema.json' with { type: 'json' };
import type { YamlPath } from '../core/issue.ts';

/** One node of the JSON Schema, with references resolved. */
export interface SchemaNode {
  readonly title?: string;
  readonly description?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly (string | number)[];
  readonly const?: string | number | boolean;
  readonly default?: unknown;
  readonly examples?: readonly unknown[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly required?: readonly string[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly additionalProperties?: boolean | SchemaNode;
  readonly propertyNames?: { readonly pattern?: string };
  readonly items?: SchemaNode | readonly SchemaNode[];
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly anyOf?: readonly SchemaNode[];
  readonly $ref?: string;
  readonly definitions?: Readonly<Record<string, SchemaNode>>;
}

export const specSchema: SchemaNode = schema;
export const jobSchema: SchemaNode = jobs;
export const offcutsSchema: SchemaNode = offcuts;

/** Definitions shared between languages have the same name and meaning in each. */
const definitions: Readonly<Record<string, SchemaNode>> = {
  ...offcutsSchema.definitions,
  ...jobSchema.definitions,
  ...specSchema.definitions,
};

/** Resolves a node's reference; keywords beside the reference take precedence. */
export function resolved(node: SchemaNode): SchemaNode {
  const name = node.$ref?.slice('#/definitions/'.length);
  if (name === undefined) return node;
  const beside = Object.entries(node).filter(([key]) => key !== '$ref');
  return { ...resolved(definitions[name]!), ...(Object.fromEntries(beside) as SchemaNode) };
}

/** The alternatives that a node allows; those without texts of their own inherit them from the node. */
export function alternatives(node: SchemaNode): SchemaNode[] {
  const whole = resolved(node);
  if (!whole.anyOf) return [whole];
  const { description, examples } = whole;
  return whole.anyOf.flatMap(alternatives).map((each) => ({
    ...(description === undefined ? {} : { description }),
    ...(examples === undefined ? {} : { examples: examples.filter((value) => isOfType(value, each)) }),
    ...each,
  }));
}

/**
 * The alternatives for the value at a path; empty if the schema has no such place. `root`: schema of the language, by
 * default that of specs.
 */
export function schemasAt(path: YamlPath, root: SchemaNode = specSchema): readonly SchemaNode[] {
  return path.reduce<readonly SchemaNode[]>(schemasUnder, [root]);
}

/** The alternatives for a key or entry of a value that any of `nodes` may describe. */
export function schemasUnder(nodes: readonly SchemaNode[], step: string | number): readonly SchemaNode[] {
  return nodes.flatMap((node) => childOf(node, step)).flatMap(alternatives);
}

export const rootSchemas: readonly SchemaNode[] = [specSchema];

/** The schema nodes of a key or entry, without splitting them into alternatives. */
export function nodesAt(path: YamlPath, root: SchemaNode = specSchema): SchemaNode[] {
  const last = path.at(-1);
  if (last === undefined) return [root];
  return schemasAt(path.slice(0, -1), root)
    .flatMap((node) => childOf(node, last))
    .map(resolved);
}

function childOf(node: SchemaNode, step: string | number): SchemaNode[] {
  if (typeof step === 'number') {
    if (!isList(node.items)) return node.items ? [node.items] : [];
    const item = node.items[step];
    return item ? [item] : [];
  }
  if (node.properties && Object.hasOwn(node.properties, step)) return [node.properties[step]!];
  return typeof node.additionalProperties === 'object' ? [node.additionalProperties] : [];
}

function isList(items: SchemaNode['items']): items is readonly SchemaNode[] {
  return Array.isArray(items);
}

function isOfType(value: unknown, node: SchemaNode): boolean {
  const types = typeof node.type === 'string' ? [node.type] : (node.type ?? []);
  if (node.enum) return node.enum.some((each) => each === value);
  if (Array.isArray(value)) return types.includes('array');
  if (typeof value === 'number') return types.includes('number') || types.includes('integer');
  return types.includes(typeof value);
}

export const isLength = (node: SchemaNode): boolean => node.title === 'Length';
export const isColour = (node: SchemaNode): boolean => node.title === 'Colour';

export type NameKind =
  | 'shape'
  | 'part'
  | 'piece'
  | 'hanger'
  | 'stock'
  | 'tie'
  | 'machine'
  | 'font'
  | 'drawing'
  | 'spec'
  | 'table'
  | 'approval'
  | 'tag'
  | 'offcuts';

const nameKinds: Readonly<Record<string, NameKind>> = {
  ShapeName: 'shape',
  PartName: 'part',
  PieceName: 'piece',
  HangerName: 'hanger',
  StockName: 'stock',
  TieName: 'tie',
  MachineName: 'machine',
  FontName: 'font',
  DrawingFile: 'drawing',
  SpecFile: 'spec',
  TableFile: 'table',
  ApprovalFile: 'approval',
  TagFile: 'tag',
  OffcutsFile: 'offcuts',
};

export function nameKindOf({ title = '' }: SchemaNode): NameKind | undefined {
  return Object.hasOwn(nameKinds, title) ? nameKinds[title] : undefined;
}
