/** The visible part of the sheets: where the user went, or everything. */

import { actualScale, fittedAboveCover, showing, toScreen, transformOf, zoomedAt } from '../common/camera/viewport.ts';
import type { Box, Size, Viewport } from '../common/camera/viewport.ts';
import type { Steerable } from '../common/camera/viewport-input.ts';

export interface SheetCameraHost {
  /** Absent while everything is fitted. */
  kept(): Viewport | undefined;
  keep(view: Viewport | undefined): void;
  box(): Box;
  /** Height in px of what may lie over the bottom of the stage. */
  covered(): number;
  /** It has come to rest at a scale. */
  rested(scale: number): void;
}

/** Pause after the last move, in ms, before the drawing is painted sharply. */
const restMs = 140;

export class SheetCamera implements Steerable {
  private size: Size;
  private frame = 0;
  private resting: number | undefined;
  /** The scale that it was painted for. */
  private painted: number | undefined;

  constructor(
    stage: HTMLElement,
    /** Wrapper around the drawing: transforming the SVG itself would lay out its text again at each step. */
    private readonly world: HTMLElement,
    private readonly host: SheetCameraHost,
  ) {
    const measure = (): Size => ({ width: stage.clientWidth, height: stage.clientHeight });
    this.size = measure();
    new ResizeObserver(() => {
      this.size = measure();
      this.follow();
    }).observe(stage);
  }

  stage = (): Size => this.size;
  box = (): Box => this.host.box();
  view = (): Viewport => this.host.kept() ?? fittedAboveCover(this.host.box(), this.size, this.host.covered());

  setView = (view: Viewport): void => {
    this.host.keep(view);
    this.move();
  };

  /** Fits everything, also from now on. */
  fit = (): void => {
    this.host.keep(undefined);
    this.move();
  };

  actualSize = (): void => {
    const view = this.view();
    const centre = [this.size.width / 2, this.size.height / 2] as const;
    this.setView(zoomedAt(view, this.size, centre, actualScale / view.scale));
  };

  sees(box: Box): boolean {
    const view = this.view();
    return showing(view, this.size, box) === view;
  }

  /** Lower edge of a box, in px from the top of the stage. */
  bottomOf([left, , , bottom]: Box): number {
    return toScreen(this.view(), this.size, [left, bottom])[1];
  }

  /** Moves to the box if it is out of sight. */
  show(box: Box): void {
    const before = this.view();
    const after = showing(before, this.size, box);
    if (after !== before) this.setView(after);
  }

  /** Moves the drawing to match the view. */
  follow(): void {
    const view = this.view();
    this.world.style.transform = transformOf(view, this.size);
    if (this.painted === undefined) this.rest();
    window.clearTimeout(this.resting);
    this.resting = window.setTimeout(() => {
      this.rest();
    }, restMs);
  }

  private move(): void {
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => {
      this.follow();
    });
  }

  /**
   * While it moves, the painted drawing is only shifted or scaled, because repainting hundreds of outlines takes longer
   * than a frame. It is painted sharply once nothing moves.
   */
  private rest(): void {
    const { scale } = this.view();
    this.host.rested(scale);
    if (scale === this.painted) return;
    this.painted = scale;
    const { style } = this.world;
    style.willChange = '';
    // Keeps lines equally thin at every zoom.
    style.setProperty('--px', `${1 / scale}px`);
    requestAnimationFrame(() => {
      style.willChange = 'transform';
    });
  }
}
