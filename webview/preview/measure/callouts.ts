/** Callouts: all labels on the drawing, laid out together: sizes, problems, then hangers and walls. */

import type { Arranged } from '../scene/arrange.ts';
import type { Dimensions } from './dimensions.ts';
import type { Units } from '../../../src/core/units.ts';
import { Obstacles } from './obstacles.ts';
import { layOut } from './label-layout.ts';
import type { Pins } from '../problems/pins.ts';
import { rulerPx } from './rulers.ts';
import { toWorld, type Box, type Size, type Viewport } from '../../common/camera/viewport.ts';

export interface CalloutsView {
  readonly arranged: Arranged;
  readonly hiddenPieces: readonly string[];
  readonly units: Units;
  readonly view: Viewport;
  readonly stage: Size;
  /** Areas that already have text. */
  readonly taken: readonly Box[];
  readonly isHidden: (layer: 'dimensions' | 'warnings' | 'grid') => boolean;
}

const marginPx = 4;
/** Once all has stayed as it is for so long, labels forget where they were before. */
const restMs = 1000;

export class Callouts {
  private readonly ground = new Obstacles();
  private groundOf: Arranged | undefined;
  private groundWithout: readonly string[] = [];
  /** Last place of each label. */
  private last: ReadonlyMap<string, string> = new Map();
  private timer: number | undefined;

  constructor(
    private readonly dimensions: Dimensions,
    private readonly pins: Pins,
    /** Whether a hand is on the drawing. */
    private readonly isHeld: () => boolean,
  ) {}

  /** While things move, labels stay where they are as long as they can; at rest, the same drawing has the same labels. */
  follow(shown: CalloutsView): void {
    window.clearTimeout(this.timer);
    const rest = (): void => {
      if (this.isHeld()) {
        this.timer = window.setTimeout(rest, restMs);
        return;
      }
      this.last = new Map();
      this.place(shown);
    };
    this.timer = window.setTimeout(rest, restMs);
    this.place(shown);
  }

  private place({ arranged, hiddenPieces, units, view, stage, taken, isHidden }: CalloutsView): void {
    this.lookAt(arranged, hiddenPieces);
    this.dimensions.lookAt(arranged, hiddenPieces, units, view, stage);
    this.pins.lookAt(arranged, view, stage);
    const { dimensions, pins } = this;
    const showsSizes = !isHidden('dimensions');
    const showsPins = !isHidden('warnings');
    const edge = isHidden('grid') ? marginPx : rulerPx + 2;
    const placed = layOut(
      [
        ...(showsSizes ? dimensions.sizes : []),
        ...(showsPins ? pins.wanted : []),
        ...(showsSizes ? dimensions.figures : []),
      ],
      {
        room: [edge, edge, stage.width - marginPx, stage.height - marginPx],
        under: ([minX, minY, maxX, maxY]) => {
          const from = toWorld(view, stage, [minX, minY]);
          const to = toWorld(view, stage, [maxX, maxY]);
          return this.ground.under([...from, ...to]);
        },
        boxes: taken,
        marks: [...(showsPins ? pins.drawnMarks : []), ...(showsSizes ? dimensions.bars : [])],
      },
      this.last,
    );
    // A label that is out of sight for a while returns to its place.
    this.last = new Map([...this.last, ...[...placed].map(([id, { key }]) => [id, key] as const)]);
    dimensions.draw(placed);
    pins.draw(placed);
  }

  private lookAt(arranged: Arranged, hidden: readonly string[]): void {
    if (this.groundOf === arranged && this.groundWithout === hidden) return;
    [this.groundOf, this.groundWithout] = [arranged, hidden];
    const shown = arranged.order.filter(({ id }) => !hidden.includes(id));
    this.ground.show(shown, arranged.offsets);
  }
}
