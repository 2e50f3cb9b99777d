/** Drawing style of each operation: the user's, or the default. */

import type { PlannedStep } from '../../toolpath/cut-plan.ts';
import { coloursOf } from '../../tag/operation-colours.ts';
import type { Operation, Tag } from '../../tag/tag.ts';

export interface Style {
  /** #RRGGBB. */
  readonly color: string;
  /** In mm, on screen or paper; the machine follows the middle of a line. */
  readonly lineWidth: number;
  readonly layer: string;
}

const lineWidthMm = 0.1;

/**
 * `layer`: the engraved layer, if there are several; the first looks like plain engraving, each further one has a
 * colour of its own.
 */
export function styleOf({ output }: Pick<Tag, 'output'>, operation: Operation, layer?: PlannedStep['layer']): Style {
  const given = output.styles[operation];
  return {
    color: layer && layer.index > 0 ? layerColour(layer.index) : coloursOf(output)[operation],
    lineWidth: given?.lineWidth ?? lineWidthMm,
    layer: layer?.name ?? given?.layer ?? operation,
  };
}

/** Hues advance by the golden angle, which never nearly repeats itself; three lightnesses alternate. */
function layerColour(index: number): string {
  const hue = (index * 137.508) % 360;
  const lightness = [0.42, 0.6, 0.28][index % 3]!;
  const channel = (n: number) => {
    const k = (n + hue / 30) % 12;
    const value = lightness - 0.75 * Math.min(lightness, 1 - lightness) * Math.max(-1, Math.min(k - 3, 9 - k, 1));
    return Math.round(255 * value)
      .toString(16)
      .padStart(2, '0');
  };
  return `#${channel(0)}${channel(8)}${channel(4)}`.toUpperCase();
}

export const operationNames: Readonly<Record<Operation, string>> = {
  engrave: 'Engrave',
  score: 'Score',
  'cut-inner': 'Cut, inner',
  'cut-outer': 'Cut, outer',
};
