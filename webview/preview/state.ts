/** State that the page keeps while it is hidden or the window reloads. Parsed from `unknown`. */

import { arrangements, type Arrangement } from './scene/arrange.ts';
import type { Viewport } from '../common/camera/viewport.ts';

/** Layers that can be shown and hidden, in the order of the buttons. */
export const layers = [
  'cut-outer',
  'cut-inner',
  'score',
  'engrave',
  'finish',
  'beam',
  'warnings',
  'dimensions',
  'grid',
] as const;
export type Layer = (typeof layers)[number];

export const dockChoices = ['auto', 'open', 'closed'] as const;
export type DockChoice = (typeof dockChoices)[number];

export interface PageState {
  /** URI of the spec. */
  readonly source: string;
  readonly arrangement: Arrangement;
  /** Where the user zoomed or panned to, for each arrangement; absent if everything is fitted. */
  readonly viewports: Readonly<Partial<Record<Arrangement, Viewport>>>;
  readonly hiddenLayers: readonly Layer[];
  readonly hiddenPieces: readonly string[];
  /** State of the dock: automatic, or as the user left it. */
  readonly dock: DockChoice;
  /** Shows only the finished look, as for a customer. */
  readonly proof: boolean;
  /** Whether this preview switches to whichever spec is being edited. */
  readonly follows: boolean;
}

export function initialState(source: string): PageState {
  return {
    source,
    arrangement: 'assembled',
    viewports: {},
    hiddenLayers: ['beam'],
    hiddenPieces: [],
    dock: 'auto',
    proof: false,
    follows: false,
  };
}

/** `undefined` without a state, or for that of another spec; any other invalid part falls back to its initial value. */
export function parseState(saved: unknown, source: string): PageState | undefined {
  const initial = initialState(source);
  if (!isFields(saved) || saved['source'] !== source) return undefined;
  const viewports = isFields(saved['viewports']) ? saved['viewports'] : {};
  return {
    source,
    arrangement: arrangements.find((name) => name === saved['arrangement']) ?? initial.arrangement,
    viewports: Object.fromEntries(
      arrangements.flatMap((name) => (isViewport(viewports[name]) ? [[name, viewports[name]]] : [])),
    ),
    hiddenLayers: Array.isArray(saved['hiddenLayers'])
      ? layers.filter((layer) => listed(saved['hiddenLayers']).includes(layer))
      : initial.hiddenLayers,
    hiddenPieces: listed(saved['hiddenPieces']).filter((id) => typeof id === 'string'),
    dock: dockChoices.find((choice) => choice === saved['dock']) ?? initial.dock,
    proof: saved['proof'] === true,
    follows: saved['follows'] === true,
  };
}

function isViewport(value: unknown): value is Viewport {
  return (
    isFields(value) &&
    Number.isFinite(value['x']) &&
    Number.isFinite(value['y']) &&
    Number.isFinite(value['scale']) &&
    (value['scale'] as number) > 0
  );
}

function isFields(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}

function listed(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

export function toggled<T>(list: readonly T[], member: T): T[] {
  return list.includes(member) ? list.filter((other) => other !== member) : [...list, member];
}
