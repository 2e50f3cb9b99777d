/** Collects the problems of a spec while it is read, and reads lengths. */

import type { Point } from '../../geometry/types.ts';
import { isError } from '../../core/issue.ts';
import type { Issue, YamlPath } from '../../core/issue.ts';
import type { IssueCode } from '../../core/issue-kinds.ts';
import { columnsIn, filled } from '../batch/batch.ts';
import type { Batch, BatchRow } from '../batch/batch.ts';
import { inUnits, limit, mm } from '../../core/figures.ts';
import { clip, parseLength } from '../../core/length.ts';
import type { Units } from '../../core/units.ts';
import { mostMm } from '../model/measured-values.ts';
import type { MeasuredLength } from '../model/measured-values.ts';
import type { Unfilled } from '../model/model.ts';
import type { SpecPlaces } from '../yaml/source.ts';
import { didYouMean, nearestWords } from '../schema/suggest.ts';
import { joinedPath } from '../files/used-files.ts';
import type { TableFile } from '../files/used-files.ts';
import type { Nudge } from '../types.generated.ts';

/** Range of a length. `size`: above 0. `distance`: 0 or more. `signed`: any value. */
type LengthSign = 'size' | 'distance' | 'signed';

export class Problems {
  readonly issues: Issue[] = [];
  readonly source: SpecPlaces;
  readonly units: Units;
  /**
   * Path in the spec that refers to the file these problems are about; empty for the spec itself. Other paths here are
   * those of the file.
   */
  readonly base: YamlPath;
  /** The row being read, in a spec with a batch, and the problems of the file that contains the batch. */
  row?: {
    readonly batch: Batch;
    readonly row: BatchRow;
    readonly problems: Problems;
    /** The file that the row is from. */
    readonly table?: TableFile | undefined;
  };
  /** What is wrong with words that cells of the table leave empty, at those cells. */
  readonly inTable: Issue[] = [];
  /** Places whose words ask for columns, in a spec without a batch. */
  readonly unfilled: Unfilled[] = [];
  /** Folder of the file relative to that of the spec, with its slash. */
  readonly #folder: string;

  constructor(source: SpecPlaces, units: Units, base: YamlPath = [], folder = '') {
    this.source = source;
    this.units = units;
    this.base = base;
    this.#folder = folder;
  }

  /** How many of the problems leave something unread. */
  get errors(): number {
    return this.issues.filter(isError).length;
  }

  /** The path that results of this file carry: in the spec, they are where the file is referred to. */
  inSpec(path: YamlPath): YamlPath {
    return this.base.length === 0 ? path : [...this.base, ...path];
  }

  /** A file named here, relative to the folder of the spec. */
  beside(file: string): string {
    return joinedPath(this.#folder, file);
  }

  error(code: IssueCode, path: YamlPath, message: string, extra: Partial<Issue> = {}): void {
    // Definitions that several pieces use are read for each of them.
    const place = path.join('/');
    const worded = inUnits(message, this.units);
    if (this.issues.some((issue) => issue.code === code && issue.message === worded && issue.path.join('/') === place))
      return;
    this.issues.push({
      code,
      severity: 'error',
      path,
      // A missing key has no place of its own: mark the key of its group, not all of its content.
      range: code === 'missing-key' ? this.source.keyRange(path) : this.source.range(path),
      message: worded,
      ...extra,
    });
  }

  /** The text at `path` with the cells of the row being read filled in; the text itself without a batch. */
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
    // Definitions that several pieces use are read for each of them.
    if (columns.length === 0 || this.unfilled.some((other) => other.path.join('/') === place)) return;
    this.unfilled.push({ columns, path });
  }

  /** Reports a value that asks for a column that does not exist. */
  unknownColumn(column: string, path: YamlPath, columns: readonly string[]): void {
    const suggestions = nearestWords(column, columns);
    const hint = didYouMean(suggestions) || ` Columns: ${columns.map((each) => `{${each}}`).join(', ')}.`;
    this.error('unknown-name', path, `There is no column “${clip(column)}” in the batch.${hint}`);
  }

  /** The keys that the text has at a path, unknown ones included. */
  keysAt(path: YamlPath): string[] {
    const value = this.#valueAt(path);
    return typeof value === 'object' && value !== null ? Object.keys(value) : [];
  }

  /** Whether the text has a value at a path, even one that did not fit and was removed after being reported. */
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

  /**
   * The length in mm; `undefined` if none is written or, with an issue, if it is not valid.
   * @param instead What does what a negative distance was meant to do.
   */
  length(value: number | string | undefined, path: YamlPath, sign: LengthSign, instead = ''): number | undefined {
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
      this.error('bad-length', path, `${naming(path)} cannot be less than 0${instead}.`);
      return undefined;
    }
    return result.mm;
  }

  /** Like `length`, for a length that a maker measures; one beyond what a bench can give is reported. */
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

  /** The offset in mm; up and right are positive. */
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

/** The key to name in a message; an entry of a list is named after the list's key. */
function naming(path: YamlPath): string {
  return `“${String(path.findLast((step) => typeof step === 'string'))}”`;
}
