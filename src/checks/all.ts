/** Every check, in the order in which its findings are listed where they stand on the same line. */

import type { Finding } from '../issue.ts';
import type { Tag } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { holeBlocked } from './hole-blocked.ts';
import { holeTooSmall } from './hole-too-small.ts';
import { looseParts } from './loose-part.ts';
import { weakBridges } from './weak-bridge.ts';

export const checks: readonly Check[] = [looseParts, weakBridges, holeBlocked, holeTooSmall];

export async function runChecks(tag: Tag, checkpoint: () => Promise<void>): Promise<Finding[]> {
  const findings: Finding[] = [];
  for (const check of checks) {
    findings.push(...check(tag));
    await checkpoint();
  }
  return findings;
}
