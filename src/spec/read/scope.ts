/** The definitions of one file, its own and those of the files it uses. */

import type { Issue, YamlPath } from '../../core/issue.ts';
import { valueAt } from '../../core/values.ts';
import { reportLacking } from './empty-cells.ts';
import type { RowReading, RowValues } from '../batch/row-values.ts';
import type { TableFile, UsedFile } from '../files/used-files.ts';
import { folderOf } from '../files/used-files.ts';
import type { Batch, BatchRow } from '../batch/batch.ts';
import { Problems } from './problems.ts';
import type { Unfilled } from '../model/model.ts';
import { ShapeReader } from './read-shapes.ts';
import { checkAgainstSchema } from '../schema/schema-issues.ts';
import type { SpecPlaces } from '../yaml/source.ts';
import { didYouMean, nearestWords } from '../schema/suggest.ts';
import type { TagSpec } from '../types.generated.ts';

/** Groups of named members. */
type NamedGroup = 'shapes' | 'hangers' | 'stocks' | 'ties' | 'machines';

const groups: readonly NamedGroup[] = ['shapes', 'hangers', 'stocks', 'ties', 'machines'];

const words = { shapes: 'shape', hangers: 'hanger', stocks: 'stock', ties: 'tie', machines: 'machine' } as const;

const unknownCodes = {
  shapes: 'unknown-shape',
  hangers: 'unknown-hanger',
  stocks: 'unknown-name',
  ties: 'unknown-name',
  machines: 'unknown-name',
} as const;

/** The issues of a used file, with ranges in its own text. */
export interface UsedIssues {
  /** Full path. */
  readonly file: string;
  readonly source: Pick<SpecPlaces, 'position'>;
  readonly issues: readonly Issue[];
}

export class Scope {
  readonly spec: Partial<TagSpec>;
  readonly problems: Problems;
  readonly shapes: ShapeReader;
  readonly uses: readonly Scope[];
  readonly #schemaIssues: readonly Issue[];
  readonly #values: RowValues | undefined;
  readonly #reading: RowReading | undefined;
  readonly #name: string;
  readonly #file: string;

  /**
   * The third parameter describes a used file: its name, its full path and where the spec refers to it. It is empty for
   * the spec itself.
   * @param values The values of the files in a row of the batch, if they differ from what is written.
   */
  constructor(
    written: SpecPlaces,
    used: readonly UsedFile[],
    { name = '', path: base = [], file = '' }: Partial<UsedFile> = {},
    values?: RowValues,
  ) {
    this.#name = name;
    this.#file = file;
    this.uses = used.map((each) => new Scope(each.source, each.uses, each, values));
    this.#values = values;
    this.#reading = values?.of(written);
    const source = this.#reading?.source ?? written;
    const { value, issues } = checkAgainstSchema(source);
    // Only the spec itself must have pieces.
    this.#schemaIssues =
      base.length === 0
        ? issues
        : issues.filter(
            ({ code, path, message }) => !(code === 'missing-key' && path.length === 0 && /pieces/.test(message)),
          );
    this.spec = isGroup(value) ? value : {};
    this.problems = new Problems(source, this.spec.units ?? 'mm', base, folderOf(name));
    this.shapes = new ShapeReader(this.spec, this.problems, this);
    for (const { column, path } of this.#reading?.missing ?? [])
      this.problems.unknownColumn(column, path, values!.columns);
  }

  /** Fills the cells of a row into all texts, those of used files included. */
  readRow(batch: Batch, row: BatchRow, table?: TableFile, problems: Problems = this.problems): void {
    this.problems.row = { batch, row, problems, table };
    for (const used of this.uses) used.readRow(batch, row, table, problems);
  }

  /** Tells what is lacking because a cell is empty, once all is read: at the row instead of in the spec. */
  tellLacking(): void {
    for (const issue of [...this.#schemaIssues, ...this.problems.issues]) {
      const column = this.#lackingFor(issue);
      if (column !== undefined) reportLacking(issue.path, column, this.problems);
    }
    for (const used of this.uses) used.tellLacking();
  }

  /** All issues of this file and the used files, at their places in the spec itself. */
  issues(spec: SpecPlaces): Issue[] {
    const own = this.#own();
    const seenFromSpec = this.problems.base.length === 0 ? own : own.map((issue) => this.#asSeenFrom(spec, issue));
    return [...seenFromSpec, ...this.uses.flatMap((used) => used.issues(spec))];
  }

  /** Words without a batch to fill them in, here and in the used files. */
  unfilled(): Unfilled[] {
    return [...this.problems.unfilled, ...this.uses.flatMap((used) => used.unfilled())];
  }

  /** The issues of each used file, at their places there. */
  inUsed(): UsedIssues[] {
    return this.uses.flatMap((used) => [
      { file: used.#file, source: used.problems.source, issues: used.#own() },
      ...used.inUsed(),
    ]);
  }

  /** The issues in cells of the table that this file and the used files ask for. */
  inTable(table: TableFile | undefined): UsedIssues[] {
    const [values, reading] = [this.#values, this.#reading];
    const issues = [...(reading ? values!.inTable(this.#found(), reading) : []), ...this.problems.inTable];
    const own = table && issues.length > 0 ? [{ file: table.file, source: table.places(), issues }] : [];
    return [...own, ...this.uses.flatMap((used) => used.inTable(table))];
  }

  /** The issues of this file alone, at their places in it. */
  #own(): readonly Issue[] {
    const { source } = this.problems;
    // Everything after the first fault of a broken file is a consequence of it.
    if (source.issues.length > 0) return source.issues.slice(0, 1);
    const reading = this.#reading;
    return reading ? this.#found().map((issue) => this.#values!.withTableLine(issue, reading)) : this.#found();
  }

  #found(): readonly Issue[] {
    const missing = new Set(this.#reading?.missing.map(({ path }) => path.join('/')));
    const fitting = this.#schemaIssues.filter(({ path }) => !missing.has(path.join('/')));
    return [...fitting, ...this.problems.issues].filter((issue) => this.#lackingFor(issue) === undefined);
  }

  /** The column whose empty cell takes away what the issue says is lacking. */
  #lackingFor({ code, path }: Issue): string | undefined {
    const isLacking = code === 'missing-key' || Array.isArray(valueAt(this.problems.source.value, path));
    return isLacking ? this.#reading?.emptiedAt(path)[0] : undefined;
  }

  #asSeenFrom(spec: SpecPlaces, { code, severity, message, range }: Issue): Issue {
    const { source, base } = this.problems;
    const { line } = source.position(range.start);
    return { code, severity, path: base, range: spec.range(base), message: `${this.#name}, line ${line}: ${message}` };
  }

  /** The scope that defines a name, this one first. */
  owner(group: NamedGroup, name: string): Scope | undefined {
    if (Object.hasOwn(this.spec[group] ?? {}, name)) return this;
    for (const used of this.uses) {
      const owner = used.owner(group, name);
      if (owner) return owner;
    }
    return undefined;
  }

  /** Like `owner`, but reports a missing one at `path`, or at the range in `extra`, and suggests the nearest names. */
  require(
    group: NamedGroup,
    name: string,
    path: YamlPath,
    extra: Pick<Partial<Issue>, 'range'> = {},
  ): Scope | undefined {
    const owner = this.owner(group, name);
    // A member whose own definition is wrong has been reported there.
    if (owner || this.#wrote(group, name)) return owner;
    const suggestions = nearestWords(name, this.#names(group));
    const message = `There is no ${words[group]} “${name}”.${didYouMean(suggestions)}`;
    this.problems.error(unknownCodes[group], path, message, { suggestions, ...extra });
    return undefined;
  }

  /** Reports names that more than one file defines, as it is not clear which is meant. */
  checkClashes(): void {
    for (const group of groups) {
      const owners = new Map<string, Scope>();
      for (const used of this.uses.flatMap((scope) => scope.#withUses())) {
        for (const name of Object.keys(used.spec[group] ?? {})) {
          const other = Object.hasOwn(this.spec[group] ?? {}, name) ? this : owners.get(name);
          owners.set(name, used);
          // The same file used twice defines the same.
          if (!other || other.problems.source === used.problems.source) continue;
          const path = other === this ? [group, name] : used.problems.base;
          const where = other === this ? used.#name : `both ${other.#name} and ${used.#name}`;
          const range = other === this ? this.problems.source.keyRange(path) : this.problems.source.range(path);
          this.problems.error(
            'name-clash',
            path,
            `There is ${other === this ? 'also a' : 'a'} ${words[group]} “${name}” in ${where}.`,
            {
              range,
            },
          );
        }
      }
    }
  }

  #withUses(): Scope[] {
    return [this, ...this.uses.flatMap((used) => used.#withUses())];
  }

  #names(group: NamedGroup): string[] {
    return this.#withUses().flatMap((scope) => Object.keys(scope.spec[group] ?? {}));
  }

  #wrote(group: NamedGroup, name: string): boolean {
    return this.#withUses().some(({ problems }) => problems.wrote([group, name]));
  }
}

function isGroup(value: unknown): value is Partial<TagSpec> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
