/** What the page sends arrives as `unknown` and is parsed here, once. */

import type { ToHost } from './protocol.ts';

/** `undefined` for anything that is not a message of the protocol. */
export function parseToHost(data: unknown): ToHost | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const { type, source, version, offset, focus, pin, index } = data as Record<string, unknown>;
  if (type === 'ready') return { type };
  if (typeof source !== 'string') return undefined;
  switch (type) {
    case 'reveal':
      return isCount(offset) && typeof focus === 'boolean' ? { type, source, offset, focus } : undefined;
    case 'export':
      return { type, source };
    case 'ask-fixes':
      return isCount(version) && typeof pin === 'string' ? { type, source, version, pin } : undefined;
    case 'make-fix':
      return isCount(version) && typeof pin === 'string' && isCount(index)
        ? { type, source, version, pin, index }
        : undefined;
    default:
      return undefined;
  }
}

/** The spec a page showed before the window was reloaded, from the state it kept. */
export function parseRestoredSource(state: unknown): string | undefined {
  if (typeof state !== 'object' || state === null) return undefined;
  const { source } = state as Record<string, unknown>;
  return typeof source === 'string' && source !== '' ? source : undefined;
}

function isCount(value: unknown): value is number {
  return typeof value === 'number' && Number.isSafeInteger(value) && value >= 0;
}
