/** A spoiled design after its fixes, and what they have brought that was not there. */

import type { Engine } from '../../src/engine/engine.ts';
import { withEdits, findFixes } from '../../src/fixes/find-fixes.ts';
import { fixAll } from '../../src/fixes/fix-all.ts';
import { broughtBy } from './changes.ts';
import { optionsOf, reportOn, reportedIn } from './designs.ts';
import type { Design, ReportedProblem } from './designs.ts';

export interface Tried {
  /** What the fix is called; of *fix all*, all of them. */
  readonly title: string;
  readonly text: string;
  readonly said: readonly ReportedProblem[];
  readonly brought: readonly ReportedProblem[];
}

/** *Fix all*; nothing where it leaves everything as it was. */
export async function allFixed(engine: Engine, design: Design): Promise<Tried | undefined> {
  const before = { text: design.text, said: reportedIn(await reportOn(engine, design)) };
  const { text, made, report } = await fixAll(engine, design.text, optionsOf(design));
  if (made.length === 0) return undefined;
  const after = { text, said: reportedIn(report) };
  const own = before.said.map(({ line }) => line);
  return { title: made.join('; '), ...after, brought: broughtBy(before, after, own) };
}

/** Every fix that is offered, each by itself; of findings of one kind at one line those of the first. */
export async function eachOffered(engine: Engine, design: Design): Promise<Tried[]> {
  const report = await reportOn(engine, design);
  const before = { text: design.text, said: reportedIn(report) };
  const places = new Set<string>();
  const tried: Tried[] = [];
  for (const [i, issue] of report.issues.entries()) {
    const { code, line } = before.said[i]!;
    if (places.has(`${code} ${line}`)) continue;
    places.add(`${code} ${line}`);
    for (const { title, edits } of await findFixes(engine, report, issue, optionsOf(design))) {
      const text = withEdits(design.text, edits);
      const after = { text, said: reportedIn(await reportOn(engine, design, text)) };
      tried.push({ title, ...after, brought: broughtBy(before, after, [line]) });
    }
  }
  return tried;
}
