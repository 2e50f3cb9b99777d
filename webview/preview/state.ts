/** What the page remembers while it is hidden or the window reloads. Read back as `unknown` and parsed once. */

import { arrangements, type Arrangement } from './scene/arrange.ts';
import type { Viewport } from '../common/camera/viewport.ts';

/** What can be shown and hidden, in the order of the buttons. */
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
  /** The spec's uri. */
  readonly source: string;
  readonly arrangement: Arrangement;
  /** Where the person zoomed or panned to, for each arrangement; absent: everything is fitted. */
  readonly viewports: Readonly<Partial<Record<Arrangement, Viewport>>>;
  readonly hiddenLayers: readonly Layer[];
  readonly hiddenPieces: readonly string[];
  /** The lists of pieces and problems below the drawing: by themselves, or as someone wished. */
  readonly dock: DockChoice;
  /** Only the finished look is shown, as to a customer. */
  readonly proof: boolean;
  /** Whether this preview goes along to whichever spec is being edited. */
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

/** `undefined` for the state of another spec, and for none; what else does not fit is as it is at first, part by part. */
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

/** The list without the member, or with it. */
export function toggled<T>(list: readonly T[], member: T): T[] {
  return list.includes(member) ? list.filter((other) => other !== member) : [...list, member];
}
