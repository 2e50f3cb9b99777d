/** Repairs keys that have no effect where they are. */

import { valueAt } from '../../core/values.ts';
import type { Issue } from '../../core/issue.ts';
import { idleCorners } from './idle-corners.ts';
import type { SpecSource } from '../yaml/source.ts';
import { entryRange, takenOut } from './entries.ts';
import { replacement } from './repair.ts';
import type { Repair } from './repair.ts';

/** An unremarkable corner radius (our own judgement). */
const usualRadius = '3 mm';

/** `corners` on a shape that has no offset: another key is meant, or none. */
export function idleKeyRepairs({ code, path, range }: Issue, source: SpecSource): Repair[] {
  const shape = path.slice(0, -1);
  const message = path.at(-1) === 'corners' ? idleCorners(valueAt(source.value, shape)) : undefined;
  const entry = entryRange(source, path);
  if (code !== 'bad-value' || message === undefined || !entry) return [];
  const taken = takenOut(source, entry);
  const isRound = valueAt(source.value, path) === 'round';
  const hasRadius = valueAt(source.value, [...shape, 'radius']) !== undefined;
  const rounds = isRound && valueAt(source.value, [...shape, 'rectangle']) !== undefined && !hasRadius;
  const common = { slip: range, message, rarity: 1 };
  return [
    ...(rounds
      ? [
          {
            ...common,
            title: `Change to “radius: ${usualRadius}”`,
            edits: [replacement(entry.start, entry.end, `radius: ${usualRadius}`)],
          },
        ]
      : []),
    ...(taken ? [{ ...common, title: 'Remove “corners”', edits: [taken] }] : []),
  ];
}
