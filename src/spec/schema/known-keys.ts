/** Every key of the spec language, at any level. */

import schema from '../../../schemas/tag.schema.json' with { type: 'json' };

export const knownKeys: ReadonlySet<string> = new Set(keysIn(schema));

function keysIn(node: unknown): string[] {
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([name, inner]: [string, unknown]) => [
    ...(name === 'properties' && typeof inner === 'object' && inner !== null ? Object.keys(inner) : []),
    ...(name === 'examples' ? [] : keysIn(inner)),
  ]);
}
