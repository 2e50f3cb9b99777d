/** Patterns and shadows that the drawing refers to, and what must follow the zoom among them. */

import { svg } from './dom.ts';
import { gridStep, toScreen, type Size, type Viewport } from './viewport.ts';

/** Lines of wood grain on a tile of 90 × 36 mm; each leaves the right edge as it enters the left. */
const grainLines = [
  'M0 2.5C18 3.6 30 1.2 45 2.2S74 3.7 90 2.5',
  'M0 6C14 5 26 7.6 44 6.4S76 5.2 90 6',
  'M0 8.2C20 9.3 34 7.9 48 8.6S70 8 90 8.2',
  'M0 12.4C16 10.8 25 13.9 41 12.7S73 11.6 90 12.4',
  'M0 15.1C22 16.2 33 14.3 50 15.4S78 14.6 90 15.1',
  'M0 19.7C12 18.3 29 21 46 19.8S72 18.9 90 19.7',
  'M0 22.3C21 23.5 36 21.5 52 22.6S75 21.8 90 22.3',
  'M0 26.6C15 25.2 27 28.1 43 26.9S74 25.9 90 26.6',
  'M0 29.4C19 30.4 35 28.7 49 29.7S77 28.9 90 29.4',
  'M0 33.5C17 32.4 28 34.9 45 33.7S73 33 90 33.5',
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
    { id: 'grain', patternUnits: 'userSpaceOnUse', width: '90', height: '36' },
    ...grainLines.map((d, index) => svg('path', { d, 'stroke-width': `${0.18 + ((index * 7) % 5) * 0.09}` })),
  );
  readonly element = svg('defs', {}, this.grid, this.hatch, this.grain);
  readonly backdrop = svg('rect', { id: 'grid', width: '100%', height: '100%', fill: 'url(#grid-lines)' });

  /** The grid moves with the drawing; hatching keeps its spacing on the screen at every zoom. */
  follow(view: Viewport, stage: Size): void {
    const step = gridStep(view.scale) * view.scale;
    const [x, y] = toScreen(view, stage, [0, 0]);
    for (const [name, value] of Object.entries({ width: step, height: step, x: x % step, y: y % step })) {
      this.grid.setAttribute(name, value.toFixed(2));
    }
    this.gridPath.setAttribute('d', `M.5 ${step.toFixed(2)}V.5H${step.toFixed(2)}`);
    this.hatch.setAttribute('patternTransform', `rotate(-45) scale(${(1 / view.scale).toFixed(5)})`);
  }
}
