/** Every key of the spec language, of jobs and of files of offcuts, at any level. */

import job from '../../../schemas/job.schema.json' with { type: 'json' };
import offcuts from '../../../schemas/offcuts.schema.json' with { type: 'json' };
import tag from '../../../schemas/tag.schema.json' with { type: 'json' };

export const knownKeys: ReadonlySet<string> = new Set([tag, job, offcuts].flatMap(keysIn));

function keysIn(node: unknown): string[] {
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([name, inner]: [string, unknown]) => [
    ...(name === 'properties' && typeof inner === 'object' && inner !== null ? Object.keys(inner) : []),
    ...(name === 'examples' ? [] : keysIn(inner)),
  ]);
}
