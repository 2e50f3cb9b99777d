/** SVG patterns and shadows of the drawing, some of which follow the zoom. */

import { svg } from '../../common/dom.ts';
import type { Units } from '../../../src/core/units.ts';
import { gridStep, toScreen } from '../../common/camera/viewport.ts';
import type { Size, Viewport, XY } from '../../common/camera/viewport.ts';
import { grainPattern, sharedGrainId } from './grain-pattern.ts';

export class Defs {
  private readonly gridPath = svg('path');
  private readonly grid = svg('pattern', { id: 'grid-lines', patternUnits: 'userSpaceOnUse' }, this.gridPath);
  private readonly hatch = svg(
    'pattern',
    { id: 'hatch', patternUnits: 'userSpaceOnUse', width: '6', height: '6' },
    svg('path', { class: 'hatch-line', d: 'M0 3h6' }),
  );
  private readonly grains = [false, true].flatMap((isUpright) =>
    [false, true].map((isOnTop) => grainPattern(sharedGrainId({ isOnTop, isUpright }), { isOnTop, isUpright })),
  );
  private readonly gloss = svg(
    'linearGradient',
    { id: 'gloss', x1: '0', y1: '0', x2: '1', y2: '1' },
    ...glossStops.map(([offset, opacity]) =>
      svg('stop', { offset: `${offset}`, 'stop-color': '#fff', 'stop-opacity': `${opacity}` }),
    ),
  );
  readonly element = svg('defs', {}, this.grid, this.hatch, ...this.grains, this.gloss);
  readonly backdrop = svg('rect', { id: 'grid', width: '100%', height: '100%', fill: 'url(#grid-lines)' });

  /** The grid moves with the drawing; hatching keeps its spacing on the screen at every zoom. */
  follow(view: Viewport, stage: Size, zero: XY, units: Units): void {
    const step = gridStep(view.scale, units) * view.scale;
    const [x, y] = toScreen(view, stage, zero);
    for (const [name, value] of Object.entries({ width: step, height: step, x: x % step, y: y % step })) {
      this.grid.setAttribute(name, value.toFixed(2));
    }
    this.gridPath.setAttribute('d', `M.5 ${step.toFixed(2)}V.5H${step.toFixed(2)}`);
    this.hatch.setAttribute('patternTransform', `rotate(-45) scale(${(1 / view.scale).toFixed(5)})`);
  }
}

/** A wide and a narrow streak of light across the sheet. */
const glossStops: readonly (readonly [offset: number, opacity: number])[] = [
  [0, 0.05],
  [0.18, 0.32],
  [0.3, 0.08],
  [0.34, 0.22],
  [0.4, 0.04],
  [1, 0.12],
];
