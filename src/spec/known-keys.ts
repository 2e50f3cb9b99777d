/** Every key that the spec language has, wherever it stands. */

import schema from '../../schemas/tag.schema.json' with { type: 'json' };

export const knownKeys: ReadonlySet<string> = new Set(keysIn(schema));

function keysIn(node: unknown): string[] {
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([name, inner]: [string, unknown]) => [
    ...(name === 'properties' && typeof inner === 'object' && inner !== null ? Object.keys(inner) : []),
    ...(name === 'examples' ? [] : keysIn(inner)),
  ]);
}
