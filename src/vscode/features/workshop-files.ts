/** Workshop files of the open folders, with their stocks and ties. */

import * as vscode from 'vscode';
import { inShort } from '../../language/shared-values.ts';
import type { SharedGroup } from '../../language/shared-values.ts';
import { isGroup, valueAt } from '../../core/values.ts';
import { SpecSource } from '../../spec/yaml/source.ts';
import { isWorkshopFile, openDocument, tagSpecGlob, workshopGlob } from '../common/documents.ts';
import { usualUnits } from '../../language/new-tag.ts';
import type { Units } from '../../core/units.ts';

/** A stock or tie of a workshop file. */
export interface SharedEntry {
  readonly uri: vscode.Uri;
  readonly name: string;
  /** For example `birch plywood, 3 mm`. */
  readonly short: string;
  /** For a stock, the names of the machines in its file. */
  readonly machines: readonly string[];
}

/** Limit on files; a workshop has one or two. */
const mostFiles = 50;

/** The active one first; one that has never been saved cannot be used and is left out. */
export async function workshopFiles(): Promise<vscode.Uri[]> {
  const found = await vscode.workspace.findFiles(workshopGlob, undefined, mostFiles);
  const active = vscode.window.activeTextEditor?.document.uri;
  const rank = (uri: vscode.Uri) => (uri.toString() === active?.toString() ? 0 : 1);
  const open = active && active.scheme !== 'untitled' && isWorkshopFile(active) ? [active] : [];
  const all = new Map([...open, ...found].map((uri) => [uri.toString(), uri]));
  return [...all.values()].sort((a, b) => rank(a) - rank(b) || (a.path < b.path ? -1 : 1));
}

export async function sharedEntries(group: SharedGroup): Promise<SharedEntry[]> {
  const files = await workshopFiles();
  const all = await Promise.all(files.map(async (uri) => ({ uri, source: await sourceAt(uri) })));
  return all.flatMap(({ uri, source }) => {
    const entries = groupAt(source, group);
    const machines = group === 'stocks' ? Object.keys(groupAt(source, 'machines')) : [];
    return Object.entries(entries).map(([name, value]) => ({
      uri,
      name,
      short: isGroup(value) ? inShort(group, value) : '',
      machines,
    }));
  });
}

/** As the settings say, or else as the workshop's files or the specs there are have it. */
export async function unitsOfNewTags(): Promise<Units> {
  const set = vscode.workspace.getConfiguration('tagwright').get<string>('newTag.units');
  if (set === 'mm' || set === 'in') return set;
  const valuesOf = async (files: readonly vscode.Uri[]) =>
    (await Promise.all(files.map(sourceAt))).map(({ value }) => value);
  const specs = await vscode.workspace.findFiles(tagSpecGlob, undefined, mostFiles);
  return usualUnits(await valuesOf(await workshopFiles()), await valuesOf(specs));
}

function groupAt({ value }: SpecSource, key: string): Readonly<Record<string, unknown>> {
  const group = valueAt(value, [key]);
  return isGroup(group) ? group : {};
}

/** An open file is read from its editor. */
export async function sourceAt(uri: vscode.Uri): Promise<SpecSource> {
  const open = openDocument(uri);
  if (open) return new SpecSource(open.getText());
  const bytes = await vscode.workspace.fs.readFile(uri);
  return new SpecSource(new TextDecoder().decode(bytes));
}

/** Relative path of a file from a folder, with slashes. */
export function pathFrom(folder: vscode.Uri, file: vscode.Uri): string {
  const [from, to] = [folder, file].map(({ path }) => path.split('/').filter((step) => step !== ''));
  const shared = from!.findIndex((step, i) => step !== to![i]);
  const common = shared < 0 ? from!.length : shared;
  return [...from!.slice(common).map(() => '..'), ...to!.slice(common)].join('/');
}
