/**
 * Parses the text of a spec into a model, with every problem of the text at its place. Never throws, whatever the text.
 */

import { isGroup, valueAt } from '../core/values.ts';
import { isError } from '../core/issue.ts';
import type { Issue } from '../core/issue.ts';
import { issueKinds } from '../core/issue-kinds.ts';
import { readBatch } from './read/read-batch.ts';
import { columnsInWords, columnsOf } from './batch/batch.ts';
import type { Batch, BatchRow } from './batch/batch.ts';
import { clip } from '../core/length.ts';
import { textsOf } from './model/shape-model.ts';
import type { Shape } from './model/shape-model.ts';
import type { TagModel } from './model/model.ts';
import { RowValues, specAsksForColumns } from './batch/row-values.ts';
import { pastedQuotes } from './read/pasted-quotes.ts';
import { readPieces } from './read/read-pieces.ts';
import { readWorkshop } from './read/read-workshop.ts';
import { Scope } from './read/scope.ts';
import type { UsedIssues } from './read/scope.ts';
import { slipOf } from './slips/find-slip.ts';
import type { TrialReading } from './slips/find-slip.ts';
import { oneForEachSlip } from './slips/misread.ts';
import { SpecSource } from './yaml/source.ts';
import { reportBeyond } from './read/empty-cells.ts';
import { reportUncounted } from './read/uncounted.ts';
import { unusedColumns } from './read/unused-columns.ts';
import { isMeantAs } from './schema/suggest.ts';
import type { SpecPlaces } from './yaml/source.ts';
import type { OldKey } from './yaml/renamed-keys.ts';
import { noUses } from './files/used-files.ts';
import type { UsedFile, Uses } from './files/used-files.ts';

export interface ParsedSpec {
  readonly source: SpecSource;
  /** Absent if anything is wrong except that there are no pieces yet: a tag is made of the whole spec or not at all. */
  readonly model?: TagModel;
  readonly issues: readonly Issue[];
  /** The issues of the files that it uses, each at its place there. */
  readonly inUsed?: readonly UsedIssues[];
  /** The batch that the tag is made for. */
  readonly batch?: Batch;
  /** Row of the batch that `model` is for; 0 without a batch. */
  readonly row: number;
}

/**
 * `uses` are the loaded files that the spec uses. `row` is the row of the batch, counting from 0; the last one if there
 * are fewer. `given` is a batch that replaces the spec's own.
 */
export function parseSpec(spec: string | SpecSource, uses: Uses = noUses, row = 0, given?: Batch): ParsedSpec {
  const source = typeof spec === 'string' ? new SpecSource(spec) : spec;
  if (source.issues.some((issue) => issue.code !== 'yaml-syntax')) return { source, issues: source.issues, row: 0 };
  if (source.issues.length > 0)
    return { source, issues: [slipOf(source, (text) => trialReading(text, uses, row))], row: 0 };
  if (!isSpec(source.value)) return { source, issues: [notASpec(source)], row: 0 };
  const read = readSpec(source, uses, row, given);
  const renamed = source.oldKeys.map(renamedKey);
  // What is wrong may be the use of a column.
  const unused = read.batch && !given && !read.issues.some(isError) ? unusedColumns(source, uses, read.batch) : [];
  if (read.issues.length === 0) return { source, ...read, issues: [...pastedQuotes(source), ...renamed, ...unused] };
  const issues = oneForEachSlip(source, read.issues, (text) => {
    const changed = new SpecSource(text);
    return changed.issues.length > 0 ? undefined : readSpec(changed, uses, row, given).issues;
  });
  return { source, ...read, issues: [...issues, ...renamed, ...unused] };
}

/** Trial reading of a changed text. */
function trialReading(text: string, uses: Uses, row: number): TrialReading {
  const source = new SpecSource(text);
  const [first] = source.issues;
  const problems = first ? 0 : readSpec(source, uses, row).issues.length;
  return { faults: source.issues.length, firstFault: first?.range.start ?? text.length, problems };
}

/** Reads a spec whose value has been taken out of its YAML, or has no text at all. */
export function readSpec(source: SpecPlaces, uses: Uses, wanted = 0, given?: Batch): Omit<ParsedSpec, 'source'> {
  if (!isGroup(source.value)) return { issues: [notASpec(source)], row: 0 };
  const { scope, batch, row } = scopeInRow(source, uses, wanted, given);
  scope.checkClashes();
  const workshop = readWorkshop(scope);
  const shapes = scope.shapes.all();
  const pieces = readPieces(scope, workshop);
  const title = titleOf(scope, batch?.rows[row], [...shapes.values()]);
  scope.tellLacking();
  reportBeyond(scope.problems);
  if (!given) reportUncounted(scope.problems, columnsOf(source, uses.used));
  const found = scope.issues(source);
  // Names that an unreadable file may define are not reported as unknown.
  const issues = [
    ...uses.issues,
    ...(isPartial(uses) ? found.filter(({ code }) => !code.startsWith('unknown-') || code === 'unknown-key') : found),
  ];
  const read = { issues, row, inUsed: [...scope.inUsed(), ...scope.inTable(uses.table)], ...(batch ? { batch } : {}) };
  if (!issues.every((issue) => !isError(issue) || isMissingPieces(issue, source.value))) return read;
  const { stock, tie, sheet, machine, output } = workshop;
  const unfilled = scope.unfilled();
  return {
    ...read,
    model: {
      title,
      units: scope.problems.units,
      stock,
      ...(tie ? { tie } : {}),
      ...(sheet ? { sheet } : {}),
      ...(machine ? { machine } : {}),
      output,
      ...approvedIn(scope),
      shapes,
      pieces,
      ...(unfilled.length > 0 ? { unfilled } : {}),
    },
  };
}

function approvedIn({ spec, problems }: Scope): Pick<TagModel, 'approved'> {
  const { approved } = spec;
  return approved === undefined ? {} : { approved: { file: problems.beside(approved), path: ['approved'] } };
}

/** Whether a file was meant as a spec: it says so, or has what only specs have. All others are left as they are. */
function isSpec(value: unknown): boolean {
  const keys = isGroup(value) ? Object.keys(value) : [];
  const has = (key: string) => keys.some((each) => isMeantAs(each, key));
  return has('tagwright') || (has('shapes') && has('pieces'));
}

/** The definitions of a spec in one row of its batch. */
function scopeInRow(
  source: SpecPlaces,
  uses: Uses,
  wanted: number,
  given: Batch | undefined,
): { scope: Scope; batch?: Batch; row: number } {
  let scope = new Scope(source, uses.used);
  const asked = columnsInWords(source, uses.used);
  const batch = given ?? readBatch(scope.spec, uses.table, scope.problems, asked);
  if (!batch) return { scope, row: 0 };
  const index = Math.min(wanted, batch.rows.length - 1);
  const row = batch.rows[index]!;
  if (specAsksForColumns(source.value) || uses.used.some(usesColumns)) {
    scope = new Scope(source, uses.used, {}, new RowValues(source, row, batch.columns, given ? undefined : uses.table));
    // Anything wrong with the rows was found by the first reading as well.
    if (!given) readBatch(scope.spec, uses.table, scope.problems, asked);
  }
  scope.readRow(batch, row, given ? undefined : uses.table);
  return { scope, batch, row: index };
}

const usesColumns = ({ source, uses }: UsedFile): boolean => specAsksForColumns(source.value) || uses.some(usesColumns);

/** The issues of a file that specs use, read by itself: it needs no pieces. */
export function readShared(source: SpecSource, uses: Uses = noUses): readonly Issue[] {
  if (source.issues.length > 0) return source.issues;
  if (!isGroup(source.value)) return [notASpec(source)];
  const scope = new Scope(source, uses.used);
  scope.checkClashes();
  readWorkshop(scope);
  scope.shapes.all();
  return [...uses.issues, ...scope.issues(source)].filter((issue) => !isMissingPieces(issue, source.value));
}

/** Whether an issue only says that pieces, or the body of one, are missing: shapes can be shown without. */
function isMissingPieces({ code, path, message }: Issue, spec: unknown): boolean {
  if (path.length === 0) return code === 'missing-key' && /“pieces”/.test(message);
  const [first, , key] = path;
  if (first !== 'pieces' || path.length > 3 || (path.length === 3 && key !== 'body')) return false;
  const value = valueAt(spec, path);
  return value == null || (Array.isArray(value) && value.length === 0);
}

function isPartial({ used, issues }: Uses): boolean {
  const isBroken = (file: UsedFile): boolean => file.source.issues.length > 0 || file.uses.some(isBroken);
  return issues.some(({ path }) => path[0] === 'use') || used.some(isBroken);
}

/** Title of a tag without words or title. */
const untitled = 'Untitled tag';

/**
 * Title of the tag. Titles within a batch always differ, whether they were written so or not. Without a title, a tag is
 * named after its words.
 */
function titleOf({ spec, problems }: Scope, row: BatchRow | undefined, shapes: readonly Shape[]): string {
  const title =
    spec.title === undefined ? titleFromTexts(shapes) : (problems.filled(spec.title, ['title']) ?? spec.title);
  const isTold = spec.title === undefined ? row && title.includes(row.label) : title !== spec.title;
  return row && !isTold ? `${title} · ${row.label}` : title;
}

/** Longest title made from words, in characters; further words are left out. */
const longestTitle = 60;

function titleFromTexts(shapes: readonly Shape[]): string {
  const texts = shapes.flatMap(({ generator }) => textsOf(generator).map(({ text }) => text));
  const words = [...new Set(texts.map((text) => text.trim().replace(/\s+/g, ' ')))].filter((text) => text !== '');
  return clip(words.join(', '), longestTitle) || untitled;
}

function renamedKey({ old, key, path, range, together }: OldKey): Issue {
  return {
    code: 'renamed-key',
    severity: issueKinds['renamed-key'].severity,
    path,
    range,
    message: `“${old}” is now called “${key}”. The old name works in this version only.`,
    repairs: [
      {
        title: `Rename to “${key}”`,
        edits: [{ range, text: key }, ...together.map((other) => ({ range: other.range, text: other.key }))],
      },
    ],
  };
}

function notASpec(source: SpecPlaces): Issue {
  const message = 'This is not a tag spec yet. Start with “tagwright: 1”, then shapes and pieces.';
  return { code: 'not-a-spec', severity: 'error', path: [], range: source.range([]), message };
}
