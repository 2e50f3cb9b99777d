/** What the page sends arrives as `unknown` and is parsed here, once. */

import type { ToHost } from './protocol.ts';

/** `undefined` for anything that is not a message of the protocol. */
export function parseToHost(data: unknown): ToHost | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const { type, source, offset, focus } = data as Record<string, unknown>;
  switch (type) {
    case 'ready':
      return { type };
    case 'reveal':
      return typeof source === 'string' && isOffset(offset) && typeof focus === 'boolean'
        ? { type, source, offset, focus }
        : undefined;
    case 'export':
      return typeof source === 'string' ? { type, source } : undefined;
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

function isOffset(value: unknown): value is number {
  return typeof value === 'number' && Number.isSafeInteger(value) && value >= 0;
}
