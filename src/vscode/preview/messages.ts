/** Parses messages from the page, which arrive as `unknown`. */

import { isCaution, parseViewSettings, parseScreen } from './view-settings.ts';
import { exportKinds, type ToHost } from '../../protocol/preview.ts';
import { type HandChange } from '../../protocol/scene.ts';

/** `undefined` for anything that is not a message of the protocol. */
export function parseToHost(data: unknown): ToHost | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const { type, source, version, offset, focus, pin, index, wanted, follows } = data as Record<string, unknown>;
  if (type === 'ready') return { type };
  if (typeof source !== 'string') return undefined;
  switch (type) {
    case 'reveal':
      return isCount(offset) && typeof focus === 'boolean' ? { type, source, offset, focus } : undefined;
    case 'export': {
      const { what } = data as Record<string, unknown>;
      const kind = exportKinds.find((each) => each === what);
      return kind && { type, source, what: kind };
    }
    case 'read-caution': {
      const { caution } = data as Record<string, unknown>;
      return isCaution(caution) ? { type, source, caution } : undefined;
    }
    case 'show-row': {
      const { row } = data as Record<string, unknown>;
      return isCount(row) ? { type, source, row } : undefined;
    }
    case 'want-cut-paths':
      return typeof wanted === 'boolean' ? { type, source, wanted } : undefined;
    case 'ask-fixes':
      return isCount(version) && typeof pin === 'string' ? { type, source, version, pin } : undefined;
    case 'make-fix':
    case 'show-fix':
      return isCount(version) && typeof pin === 'string' && isCount(index)
        ? { type, source, version, pin, index }
        : undefined;
    case 'try-change':
    case 'make-change': {
      const { grip, change: given } = data as Record<string, unknown>;
      const change = parseChange(given);
      return isCount(version) && typeof grip === 'string' && change
        ? { type, source, version, grip, change }
        : undefined;
    }
    case 'follow':
      return typeof follows === 'boolean' ? { type, source, follows } : undefined;
    case 'keep': {
      const kept = parseViewSettings((data as Record<string, unknown>)['kept']);
      return kept && { type, source, kept };
    }
    case 'screen': {
      const { devicePixelsPerMm } = data as Record<string, unknown>;
      if (devicePixelsPerMm === undefined) return { type, source };
      const screen = parseScreen(devicePixelsPerMm);
      return screen === undefined ? undefined : { type, source, devicePixelsPerMm: screen };
    }
    case 'show-other':
    case 'drop-change':
    case 'undo':
    case 'redo':
      return { type, source };
    default:
      return undefined;
  }
}

/** Longest move accepted, in mm. */
const furthestMm = 2000;

function parseChange(data: unknown): HandChange | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const { kind, right, up, axis, by } = data as Record<string, unknown>;
  if (kind === 'move') return isDistance(right) && isDistance(up) ? { kind, right, up } : undefined;
  if (kind !== 'size' || !isDistance(by)) return undefined;
  return axis === 'width' || axis === 'height' ? { kind, axis, by } : undefined;
}

function isDistance(value: unknown): value is number {
  return typeof value === 'number' && Math.abs(value) <= furthestMm;
}

/** The spec that a page showed before the window was reloaded, from its saved state. */
export function parseRestoredSource(state: unknown): string | undefined {
  if (typeof state !== 'object' || state === null) return undefined;
  const { source } = state as Record<string, unknown>;
  return typeof source === 'string' && source !== '' ? source : undefined;
}

function isCount(value: unknown): value is number {
  return typeof value === 'number' && Number.isSafeInteger(value) && value >= 0;
}
