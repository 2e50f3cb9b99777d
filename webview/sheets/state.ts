/** State that the page keeps while it is hidden. */

import type { Viewport } from '../common/camera/viewport.ts';

export interface SheetsState {
  /** Where the user went; `undefined` while everything is fitted. */
  readonly view: Viewport | undefined;
  readonly selected: string | undefined;
  /**
   * Whether the facts are open; `undefined` until the user decides, and until then they are open if there are problems.
   */
  readonly open: boolean | undefined;
}

export function parseState(data: unknown): SheetsState {
  const { view, selected, open } = isFields(data) ? data : {};
  return {
    view: parseView(view),
    selected: typeof selected === 'string' ? selected : undefined,
    open: typeof open === 'boolean' ? open : undefined,
  };
}

function parseView(data: unknown): Viewport | undefined {
  if (!isFields(data)) return undefined;
  const { x, y, scale } = data;
  if (!isFinite(x) || !isFinite(y) || !isFinite(scale) || scale <= 0) return undefined;
  return { x, y, scale };
}

function isFinite(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}

function isFields(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
