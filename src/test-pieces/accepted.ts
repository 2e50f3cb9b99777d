/** Accepts the weak places of a test piece in its text: they are intended, so reporting them would be noise. */

import type { ComputeOptions, Engine } from '../engine/engine.ts';
import { acceptanceOf } from '../fixes/accept.ts';
import { withEdits } from '../core/issue.ts';

/** A test piece has about ten weak places; more than this would be a fault of its own. */
const mostAccepted = 30;

const reason = 'a test piece is weak on purpose';

export async function accepted(engine: Engine, text: string, options: ComputeOptions): Promise<string> {
  let spec = text;
  for (let count = 0; count < mostAccepted; count++) {
    const report = await engine.compute(spec, options);
    const issue = report.issues.find(({ severity }) => severity !== 'error');
    const place = issue && (await acceptanceOf(engine, report, issue, options));
    if (!place) return spec;
    const { at, before, after } = place;
    spec = withEdits(spec, [{ range: { start: at, end: at }, text: `${before}${reason}${after}` }]);
  }
  return spec;
}
