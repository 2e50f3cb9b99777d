/** What is said of offcuts that a job does not take as they are; of all in a file at once, since they are told at one place. */

import { listed } from '../../core/names.ts';
import { mostNames } from '../../core/in-words.ts';
import type { Offcut } from '../read/offcuts.ts';

/** They came after the job was exported. */
export function cameLater(offcuts: readonly Offcut[], job: string): string {
  const [are, one] = offcuts.length === 1 ? ['it is', 'it'] : ['they are', 'one'];
  return `${named(offcuts, 'O')} came after this job was exported, so ${are} not taken. To have ${one} taken, add “used_by: ${job}” to its line.`;
}

/** The job left them, and others have cut from them since. */
export function cutFromSince(offcuts: readonly Offcut[]): string {
  const users = [...new Set(offcuts.flatMap(({ usedBy }) => usedBy ?? []))];
  const them = offcuts.length === 1 ? 'it' : 'them';
  return `This job left ${named(offcuts, 'o')}, and ${listed(users, mostNames)} ${users.length === 1 ? 'has' : 'have'} cut from ${them} since. Now it would leave others, which are not written down.`;
}

function named(offcuts: readonly Offcut[], initial: string): string {
  const ids = listed(
    offcuts.map(({ id }) => `${id}`),
    mostNames,
  );
  return `${initial}ffcut${offcuts.length === 1 ? '' : 's'} ${ids}`;
}
