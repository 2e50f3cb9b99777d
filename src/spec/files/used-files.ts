/** Loads the files that specs share, before the spec is read: loading is asynchronous, reading is not. */

import type { Issue, YamlPath } from '../../core/issue.ts';
import { clip } from '../../core/length.ts';
import { memoizeRecent } from '../../core/recent.ts';
import { isGroup } from '../../core/values.ts';
import { filesMeant } from './near-files.ts';
import type { Surroundings } from './near-files.ts';
import { sourceOf } from '../yaml/source.ts';
import type { SpecSource } from '../yaml/source.ts';
import { didYouMean } from '../schema/suggest.ts';
import { parseTable } from './table.ts';
import type { Table } from './table.ts';

/** A file under `use`, and those it uses itself. */
export interface UsedFile {
  /** Path relative to the folder of the spec. */
  readonly name: string;
  /** Full path. */
  readonly file: string;
  /** Path in the spec that refers to it; the same for files used in turn. */
  readonly path: YamlPath;
  readonly source: SpecSource;
  readonly uses: readonly UsedFile[];
}

/** The file that `batch` names. */
export interface TableFile extends Table {
  readonly name: string;
  /** Full path. */
  readonly file: string;
}

export interface Uses {
  readonly used: readonly UsedFile[];
  readonly table?: TableFile;
  readonly issues: readonly Issue[];
  /** Full paths of all files referred to, found or not. */
  readonly files: readonly string[];
}

/** The files, each followed by those that it uses in turn. */
export function allUsedFiles(used: readonly UsedFile[]): UsedFile[] {
  return used.flatMap((file) => [file, ...allUsedFiles(file.uses)]);
}

export const noUses: Uses = { used: [], issues: [], files: [] };

export interface UseLoading extends Surroundings {
  /** The text of a file; rejects if it cannot be read. */
  readonly read: (path: string) => Promise<string>;
}

/** Most files that a spec may use; it needs one or two, and more than this is a mistake or malicious. */
const mostFiles = 50;

const tableOf = memoizeRecent(4, parseTable);

/**
 * Loads every file that a spec uses, once for each place that uses it, and reports each that cannot be loaded at `use`.
 */
export async function loadUses(source: SpecSource, { read, locate, beside }: UseLoading): Promise<Uses> {
  const issues: Issue[] = [];
  const files = new Set<string>();
  const sources = new Map<string, SpecSource>();
  let count = 0;
  const fault = (code: Issue['code'], path: YamlPath, message: string, suggestions: readonly string[] = []) => {
    const worded = message + didYouMean(suggestions);
    issues.push({ code, severity: 'error', path, range: source.range(path), message: worded, suggestions });
  };
  const notThere = async (name: string, path: YamlPath) => {
    const meant = await filesMeant(name, { locate, beside });
    fault('bad-file', path, `“${clip(name)}” cannot be found or read.`, meant);
  };

  async function load(name: string, path: YamlPath, chain: readonly string[]): Promise<UsedFile | undefined> {
    const file = locate(name);
    if (file === undefined) {
      fault('bad-file', path, `“${clip(name)}” is not inside the spec's folder.`);
      return undefined;
    }
    files.add(file);
    if (chain.includes(name)) {
      fault('cycle', path, `“${clip(name)}” uses itself: ${[...chain.slice(chain.indexOf(name)), name].join(' → ')}.`);
      return undefined;
    }
    if (++count > mostFiles) {
      if (count === mostFiles + 1) fault('bad-value', path, `More than ${mostFiles} files are used.`);
      return undefined;
    }
    try {
      const used = sources.get(file) ?? sourceOf(await read(file));
      sources.set(file, used);
      const uses = await all(used, folderOf(name), () => path, [...chain, name]);
      return { name, file, path, source: used, uses };
    } catch {
      await notThere(name, path);
      return undefined;
    }
  }

  async function all(
    from: SpecSource,
    folder: string,
    pathOf: (index: number | undefined) => YamlPath,
    chain: readonly string[],
  ): Promise<UsedFile[]> {
    const found: UsedFile[] = [];
    for (const { name, index } of useEntries(from)) {
      const file = await load(joinedPath(folder, name), pathOf(index), chain);
      if (file) found.push(file);
    }
    return found;
  }

  async function loadTable(name: string): Promise<TableFile | undefined> {
    const path = isGroup(valueUnder(source, 'batch')) ? ['batch', 'table'] : ['batch'];
    const file = locate(name);
    if (file === undefined) {
      fault('bad-file', path, `“${clip(name)}” is not inside the spec's folder.`);
      return undefined;
    }
    files.add(file);
    const text = await read(file).catch(() => undefined);
    if (text === undefined) {
      await notThere(name, path);
      return undefined;
    }
    const table = tableOf(text);
    if (!('problem' in table)) return { ...table, name, file };
    fault('bad-file', path, `“${clip(name)}” ${table.problem}`);
    return undefined;
  }

  const used = await all(source, '', (index) => (index === undefined ? ['use'] : ['use', index]), []);
  const tableFile = tableNameIn(valueUnder(source, 'batch'));
  const table = tableFile === undefined ? undefined : await loadTable(tableFile);
  return { used, ...(table ? { table } : {}), issues, files: [...files] };
}

/** The table that a `batch` names, alone or with what it leaves out of it. */
export function tableNameIn(batch: unknown): string | undefined {
  const name = isGroup(batch) ? batch['table'] : batch;
  return typeof name === 'string' ? name : undefined;
}

function valueUnder({ value }: SpecSource, key: string): unknown {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[key] : undefined;
}

/** The entries under `use` that are text; the schema reports the others. */
function useEntries(source: SpecSource): { name: string; index: number | undefined }[] {
  const use = valueUnder(source, 'use');
  const list = Array.isArray(use)
    ? use.map((name: unknown, index) => ({ name, index }))
    : [{ name: use, index: undefined }];
  return list.flatMap(({ name, index }) => (typeof name === 'string' ? [{ name, index }] : []));
}

/** The folder with its slash; empty for a file beside the spec. */
export function folderOf(name: string): string {
  return name.slice(0, name.lastIndexOf('/') + 1);
}

/** A path written in a file in `folder`, relative to the same place as that folder. */
export function joinedPath(folder: string, name: string): string {
  const plain = name.replace(/^(\.\/)+/, '');
  return /^([a-z]:)?[\\/]/i.test(name) ? name : folder + plain;
}
