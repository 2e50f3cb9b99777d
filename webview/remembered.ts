/** What the shell brings along from earlier times, as JSON in an attribute. Read back as `unknown` and parsed once. */

export interface Remembered {
  /** For `parseState`. */
  readonly kept: Readonly<Record<string, unknown>>;
  readonly devicePixelsPerMm: number | undefined;
  readonly follows: boolean;
}

export function parseRemembered(json: string | undefined): Remembered {
  const data = parsed(json ?? '');
  const { kept, devicePixelsPerMm, follows } = isFields(data) ? data : {};
  return {
    kept: isFields(kept) ? kept : {},
    follows: follows === true,
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
