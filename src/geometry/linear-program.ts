/** Small linear programs: a few unknowns, some hundreds of constraints. */

/** The constraint `normal` · x ≥ `least`. */
export interface Constraint {
  readonly normal: readonly number[];
  readonly least: number;
}

const tiny = 1e-12;

/** Tolerance for constraints that contradict each other only by rounding. */
const rounding = 1e-9;

/** Most constraints taken up before giving up; no more of them than there are unknowns are ever tight. */
const mostAtATime = 60;

/**
 * The point within ±`reach` of each unknown that is furthest along `goal` and meets all constraints; `undefined` if
 * there is none. Few of many constraints matter, so they are added one at a time, always the most violated one (cutting
 * planes, Kelley 1960).
 */
export function maximise(
  goal: readonly number[],
  conditions: readonly Constraint[],
  reach: readonly number[],
): readonly number[] | undefined {
  const taken: Constraint[] = [];
  let best = furthest(goal, reach);
  for (;;) {
    let missed: Constraint | undefined;
    let most = rounding;
    for (const condition of conditions) {
      const violation = condition.least - dot(condition.normal, best);
      if (violation > most) {
        most = violation;
        missed = condition;
      }
    }
    if (!missed) return best;
    if (taken.length >= mostAtATime) return undefined;
    const found = goal.length === 1 ? solve(goal, [...taken, missed], reach) : bestOn(missed, goal, taken, reach);
    if (!found) return undefined;
    best = found === 'met' ? best : found;
    taken.push(missed);
  }
}

function furthest(goal: readonly number[], reach: readonly number[]): readonly number[] {
  return goal.map((value, i) => (value >= 0 ? reach[i]! : -reach[i]!));
}

/**
 * Adds one constraint after the other: where one is violated, the best point lies on its boundary, which has one
 * unknown less (Seidel 1991).
 */
function solve(
  goal: readonly number[],
  conditions: readonly Constraint[],
  reach: readonly number[],
): readonly number[] | undefined {
  if (goal.length === 1) return solveInOneUnknown(goal[0]!, conditions, reach[0]!);
  let best = furthest(goal, reach);
  for (let i = 0; i < conditions.length; i++) {
    const { normal, least } = conditions[i]!;
    if (dot(normal, best) >= least - tiny) continue;
    const found = bestOn(conditions[i]!, goal, conditions.slice(0, i), reach);
    if (!found) return undefined;
    if (found !== 'met') best = found;
  }
  return best;
}

/**
 * The best point on the boundary of a constraint that meets those before it; `met` if it has none and rounding alone
 * violates it.
 */
function bestOn(
  { normal, least }: Constraint,
  goal: readonly number[],
  before: readonly Constraint[],
  reach: readonly number[],
): readonly number[] | 'met' | undefined {
  const on = normal.reduce((at, value, k) => (Math.abs(value) > Math.abs(normal[at]!) ? k : at), 0);
  const divisor = normal[on]!;
  if (Math.abs(divisor) < tiny) return least > rounding ? undefined : 'met';
  // On the boundary of the constraint, that unknown follows from the others.
  const without = (values: readonly number[]): number[] => {
    const share = values[on]! / divisor;
    const left: number[] = [];
    for (let k = 0; k < values.length; k++) if (k !== on) left.push(values[k]! - share * normal[k]!);
    return left;
  };
  const onEdge = (condition: Constraint): Constraint => ({
    normal: without(condition.normal),
    least: condition.least - (condition.normal[on]! / divisor) * least,
  });
  const onBoundary = [1, -1].map((value) =>
    onEdge({ normal: normal.map((_, k) => (k === on ? value : 0)), least: -reach[on]! }),
  );
  for (const condition of before) onBoundary.push(onEdge(condition));
  const found = solve(
    without(goal),
    onBoundary,
    reach.filter((_, k) => k !== on),
  );
  if (!found) return undefined;
  const others = [...found.slice(0, on), 0, ...found.slice(on)];
  return others.with(on, (least - dot(normal, others)) / divisor);
}

function solveInOneUnknown(
  goal: number,
  conditions: readonly Constraint[],
  reach: number,
): readonly number[] | undefined {
  let [low, high] = [-reach, reach];
  for (const { normal, least } of conditions) {
    const value = normal[0]!;
    if (Math.abs(value) < tiny) {
      if (least > rounding) return undefined;
    } else if (value > 0) low = Math.max(low, least / value);
    else high = Math.min(high, least / value);
  }
  if (low > high + rounding) return undefined;
  return [goal >= 0 ? high : low];
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
