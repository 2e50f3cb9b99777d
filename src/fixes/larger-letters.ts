/** How large letters must be for a change that closes them up at the size they have. */

import type { ComputeOptions, Engine, Report } from '../engine/engine.ts';
import { withEdits } from '../core/issue.ts';
import type { Candidate, Case } from './candidate.ts';
import { shapeAt } from './candidate.ts';
import { newOrWorse } from './no-worse.ts';
import { readsAsWell } from './reads-as-well.ts';
import { larger } from './remedies/letter-changes.ts';
import { needsFix } from './suits.ts';

/** The last as large as letters are made by any fix. */
const factors = [1.15, 1.3, 1.45, 1.6] as const;

/**
 * Such as “larger letters (x_height 12 mm is enough)”: the least size, of a few, at which the change suits all of the tags.
 * @param tags The hardest first.
 */
export async function largerLetters(
  engine: Engine,
  at: Case,
  { edits }: Candidate,
  tags: readonly Report[],
  options: ComputeOptions,
): Promise<string> {
  const shape = shapeAt(at, at.issue.path);
  const sizes = shape ? larger(at, shape, factors).candidates : [];
  const isApart = (size: Candidate) => size.edits.every((a) => edits.every((b) => areApart(a.range, b.range)));
  if (sizes.length === 0 || !sizes.every(isApart)) return 'larger letters';
  for (const size of sizes) {
    const text = withEdits(at.report.source.text, [...edits, ...size.edits]);
    if (await suitsAll(engine, at, text, tags, options)) return `larger letters (${size.description} is enough)`;
  }
  return `letters more than ${factors.at(-1)} times as large`;
}

async function suitsAll(
  engine: Engine,
  { issue }: Case,
  text: string,
  tags: readonly Report[],
  options: ComputeOptions,
): Promise<boolean> {
  for (const was of tags) {
    const is = await engine.compute(text, { ...options, row: was.row });
    if (needsFix(issue, is) || newOrWorse(was, is) || !readsAsWell(was, is)) return false;
  }
  return true;
}

interface Range {
  readonly start: number;
  readonly end: number;
}

function areApart(a: Range, b: Range): boolean {
  return a.end <= b.start || b.end <= a.start;
}
