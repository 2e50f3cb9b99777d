/** Patterns and shadows that the drawing refers to, and what must follow the zoom among them. */

import { svg } from './dom.ts';
import type { Units } from './format.ts';
import { gridStep, toScreen, type Size, type Viewport, type XY } from './viewport.ts';

/** The tile of wood grain, in mm. */
const tile = { width: 90, height: 36 };
/** Each line's height at the tile's edges and in its middle, and its slopes there. */
const grainLines: readonly (readonly [edge: number, middle: number, edgeSlope: number, middleSlope: number])[] = [
  [2.5, 2.2, -0.06, 0.05],
  [6, 6.4, 0.05, -0.04],
  [8.2, 8.6, 0.02, -0.03],
  [12.4, 12.7, -0.07, -0.05],
  [15.1, 15.4, 0.03, 0.04],
  [19.7, 19.8, -0.06, 0.06],
  [22.3, 22.6, 0.04, -0.04],
  [26.6, 26.9, -0.05, -0.04],
  [29.4, 29.7, 0.03, 0.04],
  [33.5, 33.7, -0.04, 0.05],
];

export class Defs {
  private readonly gridPath = svg('path');
  private readonly grid = svg('pattern', { id: 'grid-lines', patternUnits: 'userSpaceOnUse' }, this.gridPath);
  private readonly hatch = svg(
    'pattern',
    { id: 'hatch', patternUnits: 'userSpaceOnUse', width: '6', height: '6' },
    svg('path', { class: 'hatch-line', d: 'M0 3h6' }),
  );
  private readonly grain = svg(
    'pattern',
    { id: 'grain', patternUnits: 'userSpaceOnUse', width: `${tile.width}`, height: `${tile.height}` },
    ...grainLines.map((line, index) =>
      svg('path', { d: grainPath(...line), 'stroke-width': `${0.18 + ((index * 7) % 5) * 0.08}` }),
    ),
  );
  readonly element = svg('defs', {}, this.grid, this.hatch, this.grain);
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

/** Leaves the right edge as it enters the left, so that tiles join. */
function grainPath(edge: number, middle: number, edgeSlope: number, middleSlope: number): string {
  const half = tile.width / 2;
  const reach = half * 0.4;
  return (
    `M0 ${edge}C${reach} ${edge + reach * edgeSlope} ${half - reach} ${middle - reach * middleSlope} ${half} ${middle}` +
    `S${tile.width - reach} ${edge - reach * edgeSlope} ${tile.width} ${edge}`
  );
}
