/** Weights by logistic regression, readable and unreadable words weighing alike: `npm run calibrate -- --fit`. */

import type { LetterMeasure } from '../../src/checks/measures/readability.ts';
import { balancedAccuracy, confusionOf } from './table.ts';
import type { Judged } from './table.ts';

const figures: readonly LetterMeasure[] = ['gone', 'bold', 'outline', 'far'];

/** Newton's steps: far more than it takes to settle. */
const steps = 40;
/** Keeps a weight finite whose figure parts all readings. */
const ridge = 1e-3;

/** The first is that of a word at nothing. */
type Weights = readonly number[];

/** Weights by all fonts, and the balanced accuracy of each font by weights that the others set. */
export function fitted(judged: readonly Judged[]): string {
  const all = weightsOf(judged);
  const lines = [['at nothing', ...figures].map((name, k) => `${name} ${all[k]!.toFixed(3)}`).join(', ')];
  const apart: Judged[] = [];
  for (const name of new Set(judged.map((each) => each.name))) {
    const weights = weightsOf(judged.filter((each) => each.name !== name));
    const own = rejudged(
      judged.filter((each) => each.name === name),
      weights,
    );
    apart.push(...own);
    lines.push(`${name}: ${accuracyOf(own)}`);
  }
  lines.push(
    `each font by weights of the others: ${accuracyOf(apart)}; by those of all: ${accuracyOf(rejudged(judged, all))}`,
  );
  return lines.join('\n');
}

function accuracyOf(judged: readonly Judged[]): string {
  return balancedAccuracy(confusionOf(judged, 0)).toFixed(3);
}

function rejudged(judged: readonly Judged[], weights: Weights): Judged[] {
  return judged.map((each) => ({ ...each, doubt: sumOf(rowOf(each), weights) }));
}

function rowOf(each: Judged): number[] {
  return [1, ...figures.map((figure) => each.figures[figure])];
}

function sumOf(row: readonly number[], weights: Weights): number {
  return row.reduce((sum, value, k) => sum + value * weights[k]!, 0);
}

/** Iteratively reweighted least squares (Nelder and Wedderburn 1972), on figures of mean 0 and deviation 1. */
function weightsOf(judged: readonly Judged[]): Weights {
  const rows = judged.map(rowOf);
  const mean = figures.map((_, k) => rows.reduce((sum, row) => sum + row[k + 1]!, 0) / rows.length);
  const deviation = figures.map((_, k) =>
    Math.sqrt(rows.reduce((sum, row) => sum + (row[k + 1]! - mean[k]!) ** 2, 0) / rows.length),
  );
  const scaled = rows.map((row) => [1, ...figures.map((_, k) => (row[k + 1]! - mean[k]!) / deviation[k]!)]);
  const unread = judged.filter(({ read }) => !read).length;
  const weight = judged.map(({ read }) => rows.length / 2 / (read ? rows.length - unread : unread));
  let own = scaled[0]!.map(() => 0);
  for (let step = 0; step < steps; step++) {
    const slope = own.map((value) => ridge * value * rows.length);
    const bend = own.map((_, i) => own.map((__, j) => (i === j ? ridge * rows.length : 0)));
    scaled.forEach((row, index) => {
      const likely = 1 / (1 + Math.exp(-sumOf(row, own)));
      const off = weight[index]! * (likely - (judged[index]!.read ? 0 : 1));
      const steep = weight[index]! * likely * (1 - likely);
      row.forEach((a, i) => {
        slope[i]! += a * off;
        row.forEach((b, j) => (bend[i]![j]! += a * b * steep));
      });
    });
    const change = solved(bend, slope);
    own = own.map((value, k) => value - change[k]!);
  }
  const weights = own.slice(1).map((value, k) => value / deviation[k]!);
  return [own[0]! - weights.reduce((sum, value, k) => sum + value * mean[k]!, 0), ...weights];
}

/** A system of equations by Gauss's elimination; it is positive definite, so no pivot is sought. */
function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, k) => [...row, right[k]!]);
  rows.forEach((pivot, k) => {
    rows.forEach((row, other) => {
      if (other === k) return;
      const share = row[k]! / pivot[k]!;
      pivot.forEach((value, column) => (row[column]! -= share * value));
    });
  });
  return rows.map((row, k) => row.at(-1)! / row[k]!);
}
