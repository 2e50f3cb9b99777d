/** Patterns and shadows that the drawing refers to, and what must follow the zoom among them. */

import { svg } from './dom.ts';
import type { Units } from './format.ts';
import { gridStep, toScreen, type Size, type Viewport, type XY } from './viewport.ts';

/** The tile of wood grain, in mm. */
const tile = { width: 90, height: 40 };
const grainLines = 34;

export class Defs {
  private readonly gridPath = svg('path');
  private readonly grid = svg('pattern', { id: 'grid-lines', patternUnits: 'userSpaceOnUse' }, this.gridPath);
  private readonly hatch = svg(
    'pattern',
    { id: 'hatch', patternUnits: 'userSpaceOnUse', width: '6', height: '6' },
    svg('path', { class: 'hatch-line', d: 'M0 3h6' }),
  );
  private readonly grain = svg('pattern', grainTile('grain', 0), ...grain());
  /** The same sheet, another place of it. */
  private readonly onTop = svg('pattern', grainTile('grain-on-top', 17), ...grain());
  private readonly gloss = svg(
    'linearGradient',
    { id: 'gloss', x1: '0', y1: '0', x2: '1', y2: '1' },
    ...glossStops.map(([offset, opacity]) =>
      svg('stop', { offset: `${offset}`, 'stop-color': '#fff', 'stop-opacity': `${opacity}` }),
    ),
  );
  readonly element = svg('defs', {}, this.grid, this.hatch, this.grain, this.onTop, this.gloss);
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

/** A broad and a narrow streak of light across the sheet. */
const glossStops: readonly (readonly [offset: number, opacity: number])[] = [
  [0, 0.05],
  [0.18, 0.32],
  [0.3, 0.08],
  [0.34, 0.22],
  [0.4, 0.04],
  [1, 0.12],
];

function grainTile(id: string, shift: number): Readonly<Record<string, string>> {
  const { width, height } = tile;
  const place = { x: `${shift * 1.7}`, y: `${shift}`, width: `${width}`, height: `${height}` };
  return { id, patternUnits: 'userSpaceOnUse', ...place };
}

/**
 * Years of growth: lines that crowd and spread as they cross the tile, each of its own breadth and darkness. The sines only
 * stand for chance, and give the same wood every time.
 */
function grain(): SVGPathElement[] {
  return Array.from({ length: grainLines }, (_, nth) => {
    const part = nth / grainLines;
    const wander = Math.sin(nth * 12.9898) * 0.5 + Math.sin(nth * 4.1414) * 0.5;
    const y = tile.height * (part + 0.012 * wander + 0.02 * Math.sin(part * 4 * Math.PI));
    const sway = 0.5 * Math.sin(part * 6 * Math.PI) + 0.25 * wander;
    const dark = 0.5 + 0.5 * Math.sin(nth * 2.399);
    return svg('path', {
      d: grainPath(y, sway),
      'stroke-width': (0.1 + 0.34 * dark * dark).toFixed(3),
      'stroke-opacity': (0.1 + 0.28 * dark).toFixed(3),
    });
  });
}

/** Leaves the right edge as it enters the left, so that tiles join. */
function grainPath(y: number, sway: number): string {
  const [third, end] = [tile.width / 3, tile.width];
  const at = (height: number): string => height.toFixed(2);
  return (
    `M0 ${at(y)}C${third} ${at(y + sway)} ${third} ${at(y + sway)} ${end / 2} ${at(y + sway * 0.3)}` +
    `S${2 * third} ${at(y - sway)} ${end} ${at(y)}`
  );
}
