/** Finds where a name in a spec is defined and used, and renames it. */

import type { TextEdit, TextRange } from '../../core/issue.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import type { UsedFile } from '../../spec/files/used-files.ts';
import { namesIn } from './names.ts';
import type { AnyNameKind, NamePlace } from './names.ts';

/** A name of a kind that is defined in specs, which excludes fonts and files. */
export interface Name {
  readonly kind: AnyNameKind;
  readonly name: string;
}

const definableKinds: ReadonlySet<AnyNameKind> = new Set([
  'shape',
  'piece',
  'hanger',
  'stock',
  'tie',
  'machine',
  'column',
]);

/** The name that the offset touches. A part of a stack counts as a shape. */
export function nameAt(source: SpecSource, offset: number): (Name & { readonly range: TextRange }) | undefined {
  const found = namesIn(source).find(({ range }) => range.start <= offset && offset <= range.end);
  if (!found) return undefined;
  const kind = kindOf(found);
  return definableKinds.has(kind) ? { kind, name: found.name, range: found.range } : undefined;
}

const kindOf = ({ kind }: NamePlace): AnyNameKind => (kind === 'part' ? 'shape' : kind);

export function placesOf(source: SpecSource, { kind, name }: Name): NamePlace[] {
  return namesIn(source).filter((place) => kindOf(place) === kind && place.name === name);
}

export function definitionIn(source: SpecSource, name: Name): NamePlace | undefined {
  return placesOf(source, name).find(({ isDefinition }) => isDefinition);
}

/** The used file that defines a name; the first one, as when the spec is read. Pieces and columns are not shared. */
export function definingFile(used: readonly UsedFile[], name: Name): UsedFile | undefined {
  if (isOwn(name)) return undefined;
  for (const file of used) {
    if (definitionIn(file.source, name)) return file;
    const inner = definingFile(file.uses, name);
    if (inner) return inner;
  }
  return undefined;
}

/** Whether a name is visible in its own spec only. */
export const isOwn = ({ kind }: Name): boolean => kind === 'piece' || kind === 'column';

/** As the schema requires in every section whose keys are names. */
const namePattern = /^[A-Za-z][A-Za-z0-9_-]*$/;

/** Anything that needs no quotes in YAML or in a table. */
const columnPattern = /^[\p{L}][\p{L}\p{N} _-]*$/u;

/** YAML does not read these as text. */
const notNames = /^(?:true|false|null)$/i;

/** Reason why a name cannot be used in these files; `undefined` if it can. */
export function reasonAgainst(to: string, { kind, name }: Name, sources: readonly SpecSource[]): string | undefined {
  if (to === name) return undefined;
  if (kind === 'column') {
    if (!columnPattern.test(to)) return 'A column starts with a letter, followed by letters, digits, spaces, - and _.';
  } else if (!namePattern.test(to)) return 'A name starts with a letter, followed by letters, digits, - and _.';
  if (notNames.test(to)) return `YAML does not read “${to}” as a name.`;
  const taken = sources.some((source) => definitionIn(source, { kind, name: to }));
  return taken ? `There is a ${kind} “${to}” already.` : undefined;
}

/** Only the names themselves are changed. */
export function renaming(source: SpecSource, name: Name, to: string): TextEdit[] {
  return placesOf(source, name).map(({ range }) => {
    const quote = /^["']/.exec(source.text.slice(range.start))?.[0] ?? '';
    return { range, text: `${quote}${to}${quote}` };
  });
}
