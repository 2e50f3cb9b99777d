/**
 * Hovers, links and definitions in a job: what to say about the word under the pointer, and where the thing it names is
 * defined. Text from files is included as plain text only.
 */

import type { TextRange, YamlPath } from '../core/issue.ts';
import { counted } from '../core/units.ts';
import { isGroup, valueAt } from '../core/values.ts';
import type { CheckedJob } from '../jobs/job.ts';
import type { SpecSource } from '../spec/yaml/source.ts';
import { folderOf, joinedPath } from '../spec/files/used-files.ts';
import type { UsedFile } from '../spec/files/used-files.ts';
import { keyDocs, kindOfValue } from './hover/docs.ts';
import type { Hover } from './hover/hover.ts';
import { escapeMarkdown } from './hover/escape-markdown.ts';
import { hitAt } from './navigation/hit.ts';
import type { FileLink } from './navigation/links.ts';
import { jobSchema, nodesAt } from './schema.ts';
import type { SchemaNode } from './schema.ts';
import { sharedDocs, sharedValue } from './shared-values.ts';

/** `checked`: what is known so far; possibly of an earlier text. `root`: schema of the language, jobs or offcuts. */
export function jobHoverAt(
  source: SpecSource,
  offset: number,
  checked?: CheckedJob,
  root: SchemaNode = jobSchema,
): Hover | undefined {
  const hit = hitAt(source.tree, offset);
  if (!hit) return undefined;
  const { path, on, word, range } = hit;
  const name = String(word.value);
  const stock = on === 'key' ? stockOf(path) : undefined;
  if (stock !== undefined && checked) {
    const value = sharedValue('stocks', stock, {}, checked.uses);
    const markdown = [value ? sharedDocs(stock, value) : '', piecesOf(stock, checked)].filter((part) => part !== '');
    return markdown.length > 0 ? { markdown: markdown.join('\n\n'), range } : undefined;
  }
  if (on === 'key') {
    const [node] = nodesAt(path, root);
    if (!node) return undefined;
    const kind = kindOfValue(node, valueAt(source.value, path));
    return { markdown: `**${escapeMarkdown(name)}** – ${kind}\n\n${keyDocs(name, node)}`, range };
  }
  const [section, index, key] = path;
  if (section !== 'tags' || !['spec', 'orders', 'product'].includes(String(key)) || !checked) return undefined;
  return { markdown: `**${escapeMarkdown(name)}**\n\n${madeOf(checked, Number(index))}`, range };
}

/** Name of a stock under `sheets`. */
function stockOf(path: YamlPath): string | undefined {
  return path.length === 2 && path[0] === 'sheets' ? String(path[1]) : undefined;
}

function piecesOf(stock: string, { pieces }: CheckedJob): string {
  const count = pieces?.stocks.find(({ name }) => name === stock)?.pieces.length;
  return count === undefined ? '' : `${counted(count, 'piece')} of this job.`;
}

function madeOf({ pieces, leftOut, source }: CheckedJob, index: number): string {
  const name = valueAt(source.value, ['tags', index, 'spec']);
  const own = (pieces?.tags ?? []).filter(({ path }) => path[0] === 'tags' && path[1] === index);
  const tags = own.reduce((sum, { copies }) => sum + copies, 0);
  const lost = leftOut.filter(({ spec }) => spec === name).length;
  const orders = new Set(own.map(({ order }) => order).filter((order) => order !== '')).size;
  const of = orders > 0 ? ` for ${counted(orders, 'order')}` : '';
  return `${counted(tags, 'tag')}${of}${lost > 0 ? `; ${lost} left out` : ''}.`;
}

/** Files named by a job: specs, tables of orders, offcuts, used files. */
export function jobLinksIn(source: SpecSource): FileLink[] {
  const { value } = source;
  if (!isGroup(value)) return [];
  const links: FileLink[] = [];
  const add = (path: YamlPath): void => {
    const file = valueAt(value, path);
    if (typeof file === 'string' && file !== '') links.push({ range: source.range(path), file });
  };
  const each = (list: unknown, path: YamlPath, keys: readonly string[]): void => {
    if (Array.isArray(list)) for (const index of list.keys()) for (const key of keys) add([...path, index, key]);
  };
  const { use, tags, sheets } = value;
  if (Array.isArray(use)) for (const index of use.keys()) add(['use', index]);
  else add(['use']);
  each(tags, ['tags'], ['spec', 'orders']);
  if (isGroup(sheets)) for (const [stock, list] of Object.entries(sheets)) each(list, ['sheets', stock], ['offcuts']);
  return links;
}

export interface NamedPlace {
  /** Range of the name in the job. */
  readonly from: TextRange;
  /** Path from the job's folder. */
  readonly file: string;
  /** Range in that file; absent for the file as a whole. */
  readonly to?: { readonly range: TextRange; readonly source: SpecSource };
}

/** Target of the name at an offset: a file, or a stock in the workshop file. */
export function jobDefinitionAt(source: SpecSource, offset: number, checked?: CheckedJob): NamedPlace | undefined {
  const link = jobLinksIn(source).find(({ range }) => range.start <= offset && offset <= range.end);
  if (link) return { from: link.range, file: link.file };
  const hit = hitAt(source.tree, offset);
  const stock = hit?.on === 'key' ? stockOf(hit.path) : undefined;
  if (!hit || stock === undefined || !checked) return undefined;
  const owner = ownerOf(stock, checked.uses.used, '');
  if (!owner) return undefined;
  return {
    from: hit.range,
    file: owner.file,
    to: { range: owner.used.source.keyRange(['stocks', stock]), source: owner.used.source },
  };
}

function ownerOf(
  stock: string,
  used: readonly UsedFile[],
  folder: string,
): { readonly file: string; readonly used: UsedFile } | undefined {
  for (const each of used) {
    const file = joinedPath(folder, each.name);
    if (valueAt(each.source.value, ['stocks', stock]) !== undefined) return { file, used: each };
    const within = ownerOf(stock, each.uses, folderOf(folder));
    if (within) return within;
  }
  return undefined;
}
