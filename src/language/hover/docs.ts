/** Documentation of a key in Markdown, from the schema alone, never from a spec. */

import { alternatives, isLength, resolved } from '../schema.ts';
import type { SchemaNode } from '../schema.ts';
import { isGroup } from '../../core/values.ts';

/** The description, then unit, default and example if there are any. */
export function keyDocs(key: string, node: SchemaNode): string {
  const { description, default: preset, examples } = resolved(node);
  const facts = [
    valuesInWords(node),
    preset === undefined ? undefined : `Default: \`${inline(preset)}\``,
    examples?.length ? `Example: \`${key}: ${inline(examples[0])}\`` : undefined,
  ].filter((fact) => fact !== undefined);
  return [sentence(description), facts.join('  \n')].filter((part) => part !== '').join('\n\n');
}

/** In a word or two, for a list item. `value`: the present value, which decides if a key allows several kinds. */
export function kindOfValue(node: SchemaNode, value?: unknown): string {
  const options = alternatives(node);
  if (options.some(isLength)) return 'length';
  const there = isGroup(value) ? 'object' : Array.isArray(value) ? 'array' : undefined;
  const option = options.find(({ type }) => type !== undefined && type === there) ?? options[0];
  if (option?.const !== undefined) return String(option.const);
  if (option?.enum) return option.enum.length > 4 ? 'one of several words' : option.enum.join(' | ');
  const type = String(option?.type ?? '');
  const names: Readonly<Record<string, string>> = {
    object: 'group',
    array: 'list',
    string: 'text',
    boolean: 'true | false',
    integer: 'whole number',
  };
  return names[type] ?? type;
}

function valuesInWords(node: SchemaNode): string | undefined {
  const options = alternatives(node);
  if (options.some(isLength))
    return 'A length: a number with its unit (mm, cm, in, pt, px), or in `units` without one.';
  const words = options.flatMap((option) => option.enum ?? []);
  if (words.length > 0) return `One of ${words.map((word) => `\`${word}\``).join(', ')}.`;
  const [{ minimum, maximum } = {}] = options;
  return minimum === undefined || maximum === undefined ? undefined : `From ${minimum} to ${maximum}.`;
}

/** A description without the prefix that marks generators. */
export function sentence(description = ''): string {
  return description.replace(/^Generator: (.)/, (_, first: string) => first.toUpperCase());
}

/** A value in flow style. */
export function inline(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inline).join(', ')}]`;
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value).map(([key, inner]) => `${key}: ${inline(inner)}`);
    return `{${entries.join(', ')}}`;
  }
  return String(value);
}
