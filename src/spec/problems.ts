/** Collects what is wrong with a spec while it is read, and reads lengths on the way. */

import type { Point } from '../geometry/types.ts';
import type { Issue, YamlPath } from '../core/issue.ts';
import type { IssueCode } from '../core/issue-kinds.ts';
import { columnsIn, filled } from './batch.ts';
import type { Batch, BatchRow } from './batch.ts';
import { inUnits, limit, mm } from '../core/figures.ts';
import { clip, parseLength } from '../core/length.ts';
import type { Units } from '../core/units.ts';
import { mostMm } from './measured-values.ts';
import type { MeasuredLength } from './measured-values.ts';
import type { SpecPlaces } from './source.ts';
import { didYouMean, nearest } from './suggest.ts';
import { joined } from './used-files.ts';
import type { Nudge } from './types.generated.ts';

/** What a length may be. `size`: more than nothing. `distance`: nothing or more. `signed`: anything. */
type Sign = 'size' | 'distance' | 'signed';

/** Words that stand as they are written, braces and all, for want of a batch. */
export interface Unfilled {
  readonly columns: readonly string[];
  /** In the spec. */
  readonly path: YamlPath;
}

export class Problems {
  readonly issues: Issue[] = [];
  readonly source: SpecPlaces;
  readonly units: Units;
  /** Where the spec asks for the file that this is about; nothing for the spec itself. Paths here are those of the file. */
  readonly base: YamlPath;
  /** The row that is read, in a spec with a batch, and the problems of the file that has it. */
  row?: { readonly batch: Batch; readonly row: BatchRow; readonly problems: Problems };
  /** Where words ask for columns, in a spec without a batch. */
  readonly unfilled: Unfilled[] = [];
  /** Of the file, as seen from that of the spec, with its slash. */
  readonly #folder: string;

  constructor(source: SpecPlaces, units: Units, base: YamlPath = [], folder = '') {
    this.source = source;
    this.units = units;
    this.base = base;
    this.#folder = folder;
  }

  /** A path of this file as what is made of it carries it: in the spec it stands where the file is asked for. */
  inSpec(path: YamlPath): YamlPath {
    return this.base.length === 0 ? path : [...this.base, ...path];
  }

  /** A file that is named here, as seen from the folder of the spec. */
  beside(file: string): string {
    return joined(this.#folder, file);
  }

  error(code: IssueCode, path: YamlPath, message: string, extra: Partial<Issue> = {}): void {
    // What several pieces use is read for each of them.
    const place = path.join('/');
    const told = inUnits(message, this.units);
    if (this.issues.some((issue) => issue.code === code && issue.message === told && issue.path.join('/') === place))
      return;
    this.issues.push({
      code,
      severity: 'error',
      path,
      // What is missing has no place of its own: its group's key is marked, not all that is in it.
      range: code === 'missing-key' ? this.source.keyRange(path) : this.source.range(path),
      message: told,
      ...extra,
    });
  }

  /** What the text at `path` says in the row of the batch that is read; the text itself where there is no batch. */
  filled(text: string, path: YamlPath): string | undefined {
    if (!this.row) {
      this.#tellUnfilled(text, this.inSpec(path));
      return text;
    }
    return filled(text, this.row.row, (column) => {
      const { batch, row, problems } = this.row!;
      if (!batch.columns.includes(column)) this.unknownColumn(column, path, batch.columns);
      else problems.error('missing-key', row.path, `“${clip(row.label)}” has no “${clip(column)}”.`);
    });
  }

  #tellUnfilled(text: string, path: YamlPath): void {
    const columns = [...new Set(columnsIn(text).map(({ column }) => column))];
    const place = path.join('/');
    // What several pieces use is read for each of them.
    if (columns.length === 0 || this.unfilled.some((other) => other.path.join('/') === place)) return;
    this.unfilled.push({ columns, path });
  }

  /** A value that asks for a column there is not. */
  unknownColumn(column: string, path: YamlPath, columns: readonly string[]): void {
    const suggestions = nearest(column, columns);
    const hint = didYouMean(suggestions) || ` Columns: ${columns.map((each) => `{${each}}`).join(', ')}.`;
    this.error('unknown-name', path, `There is no column “${clip(column)}” in the batch.${hint}`);
  }

  /** The keys that the text has there, also those that do not exist. */
  keysAt(path: YamlPath): string[] {
    const value = this.#valueAt(path);
    return typeof value === 'object' && value !== null ? Object.keys(value) : [];
  }

  /** Whether the text has a value there, also one that did not fit and was taken out after being reported. */
  wrote(path: YamlPath): boolean {
    const parent = this.#valueAt(path.slice(0, -1));
    return typeof parent === 'object' && parent !== null && Object.hasOwn(parent, path.at(-1)!);
  }

  #valueAt(path: YamlPath): unknown {
    return path.reduce<unknown>(
      (at, step) =>
        typeof at === 'object' && at !== null && Object.hasOwn(at, step)
          ? (at as Record<string | number, unknown>)[step]
          : undefined,
      this.source.value,
    );
  }

  /** The length in mm; `undefined` where none is written, and also, with an issue, where it is no good. */
  length(value: number | string | undefined, path: YamlPath, sign: Sign): number | undefined {
    if (value === undefined) return undefined;
    const result = parseLength(value, this.units);
    if ('problem' in result) {
      const [asked] = this.row ? [] : columnsIn(String(value));
      if (asked) {
        const message = `There is no batch to take {${clip(asked.column)}} from: give it as “batch”, a list or a CSV file.`;
        this.error('unknown-name', path, message);
      } else this.error('bad-length', path, result.problem);
      return undefined;
    }
    if (sign === 'size' && result.mm <= 0) {
      this.error('bad-length', path, `${naming(path)} must be more than 0.`);
      return undefined;
    }
    if (sign === 'distance' && result.mm < 0) {
      this.error('bad-length', path, `${naming(path)} cannot be less than 0.`);
      return undefined;
    }
    return result.mm;
  }

  /** A length that a maker measures, as `length`; one that no bench would give is a slip, and told. */
  measured(
    value: number | string | undefined,
    path: YamlPath,
    what: MeasuredLength,
    sign: 'size' | 'distance' = 'size',
  ): number | undefined {
    const length = this.length(value, path, sign);
    if (length === undefined || length <= mostMm[what]) return length;
    const message = `${naming(path)} is ${mm(length)}, more than any ${plainWords[what]} here (${limit(mostMm[what])}); check the number and its unit.`;
    this.error('bad-length', path, message);
    return undefined;
  }

  /** Up and right count positive. */
  nudge(value: Nudge | undefined, path: YamlPath): Point | undefined {
    if (!value) return undefined;
    const step = (key: keyof Nudge) => this.length(value[key], [...path, key], 'signed') ?? 0;
    return { x: step('right') - step('left'), y: step('up') - step('down') };
  }
}

const plainWords: Readonly<Record<MeasuredLength, string>> = {
  thickness: 'sheet',
  kerf: 'kerf',
  min_web: 'web',
  min_x_height: 'engraved letter',
  hatch: 'distance of engraved lines',
  opening: 'hole for a tie',
};

/** The key that a message speaks of; an entry of a list goes by the list's key. */
function naming(path: YamlPath): string {
  return `“${String(path.findLast((step) => typeof step === 'string'))}”`;
}
