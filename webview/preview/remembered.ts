/** Remembered settings that the shell passes as JSON in an attribute. Parsed from `unknown`. */

import { exportKinds, type ExportKind } from '../../src/protocol/preview.ts';

export interface Remembered {
  /** Input for `parseState`. */
  readonly kept: Readonly<Record<string, unknown>>;
  readonly devicePixelsPerMm: number | undefined;
  readonly follows: boolean;
  readonly exports: ExportKind;
  /** Cautions that the user has confirmed. */
  readonly cautions: readonly string[];
}

export function parseRemembered(json: string | undefined): Remembered {
  const data = parsed(json ?? '');
  const { kept, devicePixelsPerMm, follows, exports, cautions } = isFields(data) ? data : {};
  return {
    kept: isFields(kept) ? kept : {},
    follows: follows === true,
    exports: exportKinds.find((kind) => kind === exports) ?? 'svg',
    cautions: Array.isArray(cautions) ? cautions.filter((text) => typeof text === 'string') : [],
    devicePixelsPerMm: typeof devicePixelsPerMm === 'number' && devicePixelsPerMm > 0 ? devicePixelsPerMm : undefined,
  };
}

function parsed(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
  }
}

function isFields(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
