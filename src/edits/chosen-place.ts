/** Finds the definition of the chosen stock or tie: in the spec itself, or in a file that it uses. */

import type { YamlPath } from '../core/issue.ts';
import type { SpecSource } from '../spec/yaml/source.ts';
import { allUsedFiles } from '../spec/files/used-files.ts';
import type { UsedFile } from '../spec/files/used-files.ts';
import { valueAt } from '../core/values.ts';

export interface ChosenPlace {
  /** Full path of the file; absent for the spec itself. */
  readonly file?: string;
  readonly source: SpecSource;
  readonly path: YamlPath;
  /** Its name under `stocks` or `ties`. */
  readonly name?: string;
}

/** The place of the definition; `undefined` if none is chosen or the name is not defined anywhere. */
export function chosenPlace(
  what: 'stock' | 'tie',
  source: SpecSource,
  used: readonly UsedFile[],
): ChosenPlace | undefined {
  const files = allFiles(source, used);
  const chooser = files.find((file) => valueAt(file.source.value, [what]) !== undefined);
  const value = chooser && valueAt(chooser.source.value, [what]);
  if (chooser === undefined || value === undefined) return undefined;
  if (typeof value !== 'string') return { ...chooser, path: [what] };
  const path = [`${what}s`, value];
  const definingFile = files.find((file) => valueAt(file.source.value, path) !== undefined);
  return definingFile && { ...definingFile, path, name: value };
}

/**
 * The place for measured values: for a stock, under the machine that is chosen by name, if any. It need not exist yet.
 */
export function measuredPlace(
  what: 'stock' | 'tie',
  source: SpecSource,
  used: readonly UsedFile[],
): (ChosenPlace & { readonly machine?: string }) | undefined {
  const place = chosenPlace(what, source, used);
  const machine = what === 'stock' ? chosenMachine(source, used) : undefined;
  return place && machine !== undefined ? { ...place, path: [...place.path, 'machines', machine], machine } : place;
}

/** The name of the machine that a spec, or a file that it uses, chooses. */
export function chosenMachine(source: SpecSource, used: readonly UsedFile[]): string | undefined {
  const machine = allFiles(source, used)
    .map((file) => valueAt(file.source.value, ['machine']))
    .find((each) => each !== undefined);
  return typeof machine === 'string' ? machine : undefined;
}

/** The spec and all files that it uses, those before others that rank above them. */
function allFiles(
  source: SpecSource,
  used: readonly UsedFile[],
): { readonly file?: string; readonly source: SpecSource }[] {
  return [{ source }, ...allUsedFiles(used).map((each) => ({ file: each.file, source: each.source }))];
}
