/** Job: the input of every file format. */

import { finest, shortLength } from '../../core/units.ts';
import { listed } from '../../core/names.ts';
import { isError } from '../../core/issue.ts';
import type { Issue } from '../../core/issue.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import type { UsedFont } from '../../tag/lettering/fonts-used.ts';
import { byStock } from '../../tag/by-stock.ts';
import type { Tag } from '../../tag/tag.ts';
import type { FontFace } from '../../text/font-face.ts';
import type { FontLibrary } from '../../text/font-library.ts';
import { planCuts } from '../../toolpath/cut-plan.ts';
import type { CutPlan } from '../../toolpath/cut-plan.ts';
import { mostNames } from '../../core/in-words.ts';

/** `line`: in the spec, from 1, if its text is at hand. `label`: the tag of a batch that it is about. */
export type JobIssue = Issue & { readonly line?: number; readonly label?: string };

export interface Job {
  /** For a sheet: all of its pieces under one title. */
  readonly tag: Tag;
  readonly plan: CutPlan;
  /** In text order. */
  readonly issues: readonly JobIssue[];
  readonly fonts: readonly UsedFont[];
  readonly along?: Along;
}

/** The spec of this tag alone, for a pack. */
export interface Along {
  /** Absent if it cannot be made to stand by itself. */
  readonly text?: string;
  /** Fonts and drawings that it needs beside it, by name. */
  readonly files: Readonly<Record<string, Uint8Array>>;
  /** What it needs and is not in the pack, in sentences. */
  readonly lacking: readonly string[];
}

/** Resources that some formats need besides the job. */
export interface Tools {
  captions(weight: number): Promise<FontFace>;
  /** The WebAssembly that rasterises drawings. */
  rasteriser(): Promise<Uint8Array>;
}

/** The parts of a report that files need. */
interface JobReport {
  readonly tag?: Tag;
  readonly issues: readonly Issue[];
  readonly fonts?: readonly UsedFont[];
  readonly source?: Pick<SpecSource, 'position'>;
}

/** `undefined` if there is nothing to cut. */
export function jobOf(report: JobReport): Job | undefined {
  const { tag, fonts = [] } = report;
  const plan = tag && planCuts(tag);
  return plan && { tag, plan, issues: issuesAtLines(report), fonts };
}

/** Work on one stock: `suffix` distinguishes its files from those of the other stocks. */
export interface StockJob {
  readonly suffix: string;
  readonly job: Job;
}

/** Splits a job by stock; only pieces of one stock can be under the beam together. */
export function jobsByStock(job: Job): StockJob[] {
  const tags = byStock(job.tag);
  if (tags.length === 1) return [{ suffix: '', job: { ...job, tag: tags[0]! } }];
  return tags.flatMap((tag) => {
    const plan = planCuts(tag);
    const { name } = tag.stock;
    return plan ? [{ suffix: name === undefined ? '' : `-${name}`, job: { ...job, tag, plan } }] : [];
  });
}

export function issuesAtLines({ issues, source }: JobReport, label?: string): JobIssue[] {
  return issues.map((issue) => ({
    ...issue,
    ...(source ? { line: source.position(issue.range.start).line } : {}),
    ...(label === undefined ? {} : { label }),
  }));
}

/** Note on a customer's papers for a tag exported despite errors, or with placeholders left in its words. */
export const draftNote = 'Draft: not ready to be made yet.';

/** Whether its proof must not be signed. */
export function isDraft({ issues }: Pick<Job, 'issues'>): boolean {
  return issues.some((issue) => isError(issue) || issue.code === 'not-filled');
}

/** Warning for a file that was exported despite errors; `undefined` for a sound tag. */
export function errorNote({ issues }: Pick<Job, 'issues'>): string | undefined {
  const errors = issues.filter(isError);
  const [first] = errors;
  if (!first) return undefined;
  const more = errors.length > 1 ? ` And ${errors.length - 1} more.` : '';
  // For a sheet of many tags, the ones with errors.
  const labels = [...new Set(errors.flatMap(({ label }) => label ?? []))];
  const who =
    labels.length === 0 ? 'this tag has' : `${listed(labels, mostNames)} ${labels.length === 1 ? 'has' : 'have'}`;
  return `DO NOT CUT: ${who} errors. ${first.message}${more}`;
}

/** States, as a sentence, how the cut lines account for kerf; in a file with lengths in one unit, in that. */
export function kerfNote({ stock, output, units: own }: Tag, units = own): string {
  const wide = (kerf: number) => shortLength(kerf, units, finest);
  if (!output.compensate)
    return stock.kerf > 0
      ? `Cut lines are the drawn outline: the part comes out smaller by the kerf of ${wide(stock.kerf)}.`
      : 'Cut lines are the drawn outline.';
  if (stock.kerf === 0) return 'No kerf compensation: cut lines are the finished outline.';
  const { outer, inner } = stock.kerfs ?? { outer: stock.kerf, inner: stock.kerf };
  return outer === inner
    ? `Cut lines are compensated for a kerf of ${wide(outer)}.`
    : `Cut lines are compensated for a kerf of ${wide(outer)} outside and ${wide(inner)} in openings.`;
}

/** Formats to 0.001 mm: finer than any beam, and well within the promised 0.01 mm. */
export function formatNumber(value: number, decimals = 3): string {
  const rounded = Number(value.toFixed(decimals));
  // −0 would be printed as "-0" in some places and "0" in others.
  return String(rounded === 0 ? 0 : rounded);
}

/** The bundled font of captions. */
export async function captionFont(fonts: FontLibrary, weight: number): Promise<FontFace> {
  const answer = await fonts.load({ family: 'Nunito', weight, italic: false });
  if ('problem' in answer) throw new Error(answer.problem.message);
  return answer.face;
}
