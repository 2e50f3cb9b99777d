/** What every file format is made from. */

import { finest, shortLength } from '../core/units.ts';
import { listed } from '../core/names.ts';
import { isError } from '../core/issue.ts';
import type { Issue } from '../core/issue.ts';
import type { SpecSource } from '../spec/source.ts';
import type { UsedFont } from '../tag/fonts-used.ts';
import { byStock } from '../tag/by-stock.ts';
import type { Tag } from '../tag/tag.ts';
import type { FontFace } from '../text/font-face.ts';
import type { FontLibrary } from '../text/font-library.ts';
import { planCuts } from '../toolpath/cut-plan.ts';
import type { CutPlan } from '../toolpath/cut-plan.ts';
import { mostNames } from './in-words.ts';

/** `line` of the spec, from 1, where its text is at hand; `label`: which tag of a batch it is about. */
export type JobIssue = Issue & { readonly line?: number; readonly label?: string };

export interface Job {
  /** Of a sheet, all its pieces under one title. */
  readonly tag: Tag;
  readonly plan: CutPlan;
  /** In the order of the text. */
  readonly issues: readonly JobIssue[];
  /** What the tag is lettered in. */
  readonly fonts: readonly UsedFont[];
  /** The text it was made from, so that it stands alone; absent where it is not to go along. */
  readonly spec?: string;
}

/** What formats need beside the job, and only some of them. */
export interface Tools {
  /** A font for captions. */
  captions(weight: number): Promise<FontFace>;
  /** The WebAssembly that turns drawings into pictures. */
  rasteriser(): Promise<Uint8Array>;
}

/** What the engine says of a tag, as far as files are concerned. */
interface JobReport {
  readonly tag?: Tag;
  readonly issues: readonly Issue[];
  readonly fonts?: readonly UsedFont[];
  readonly source?: Pick<SpecSource, 'position'>;
}

/** `undefined` where there is nothing to cut. */
export function jobOf(report: JobReport): Job | undefined {
  const { tag, fonts = [] } = report;
  const plan = tag && planCuts(tag);
  return plan && { tag, plan, issues: issuesAtLines(report), fonts };
}

/** What is cut from one sheet: `suffix` tells its files from those of the other stocks. */
export interface StockJob {
  readonly suffix: string;
  readonly job: Job;
}

/** The job once for each stock that its pieces are cut from; nothing else can be put under the beam at once. */
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

/** What the papers for customers say of a tag that is not as it will be: asked for in spite of errors, or without its words. */
export const draftNote = 'Draft: not ready to be made yet.';

/** Nobody signs for it. */
export function isDraft({ issues }: Pick<Job, 'issues'>): boolean {
  return issues.some((issue) => isError(issue) || issue.code === 'not-filled');
}

/** What a file says of itself when it was asked for in spite of errors; `undefined` for a sound tag. */
export function errorNote({ issues }: Job): string | undefined {
  const errors = issues.filter(isError);
  const [first] = errors;
  if (!first) return undefined;
  const more = errors.length > 1 ? ` And ${errors.length - 1} more.` : '';
  // Of many tags on a sheet, which ones.
  const labels = [...new Set(errors.flatMap(({ label }) => label ?? []))];
  const who =
    labels.length === 0 ? 'this tag has' : `${listed(labels, mostNames)} ${labels.length === 1 ? 'has' : 'have'}`;
  return `DO NOT CUT: ${who} errors. ${first.message}${more}`;
}

/** In what state the cut lines are, as a sentence. */
export function kerfNote({ stock, output, units }: Tag): string {
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

/** To 0.001 mm: finer than any beam, and far finer than the hundredth that sizes are promised to. */
export function figure(value: number, decimals = 3): string {
  const rounded = Number(value.toFixed(decimals));
  // −0 would be written as "-0" in some places and "0" in others.
  return String(rounded === 0 ? 0 : rounded);
}

/** The bundled font that captions are set in. */
export async function captionFont(fonts: FontLibrary, weight: number): Promise<FontFace> {
  const answer = await fonts.load({ family: 'Nunito', weight, italic: false });
  if ('problem' in answer) throw new Error(answer.problem.message);
  return answer.face;
}
