/** The visible part of the drawing: where the user went, as remembered in the page's state, or everything. */

import type { Arranged, Arrangement } from '../scene/arrange.ts';
import { byId } from '../../common/dom.ts';
import type { PageState } from '../state.ts';
import type { Steerable } from '../../common/camera/viewport-input.ts';
import {
  fittedAbove,
  fittedBelow,
  panned,
  showing,
  zoomedAt,
  type Box,
  type Size,
  type Viewport,
} from '../../common/camera/viewport.ts';

export interface CameraHost {
  state(): PageState;
  keep(viewports: PageState['viewports']): void;
  arranged(): Arranged | undefined;
  /** Pixels per mm at true size. */
  trueScale(): number;
  /** Moves everything to match the view. */
  follow(): void;
}

/** How far down the editor's lists reach, as a share of the page's height: they take two fifths of the window's at most. */
const mostCovered = 0.4;
/** Height of a row of them, in px; what is above the rows lies beside the tabs. */
const rowPx = 22;

export class Camera implements Steerable {
  private size: Size;
  /** Height of what is open below the stage. */
  private belowPx = 0;
  /** What was open there when the drawing was last another one: it is fitted above that, and does not yield to what opens later. */
  private firstBelowPx = 0;
  private frame = 0;
  private coveredRows = 0;
  /** View and positions frozen during a change by hand, which could otherwise trigger a new fit or arrangement. */
  private held: { readonly view: Viewport; readonly offsets: Arranged['offsets'] } | undefined;

  constructor(
    stage: HTMLElement,
    private readonly host: CameraHost,
  ) {
    const measure = (): Size => ({ width: stage.clientWidth, height: stage.clientHeight });
    this.size = measure();
    new ResizeObserver(() => {
      const before = this.size;
      this.size = measure();
      this.belowPx = byId('caution').offsetHeight + byId('dock').offsetHeight;
      if (this.held) this.stay(before);
      host.follow();
    }).observe(stage);
  }

  stage(): Size {
    return this.size;
  }

  box(): Box {
    return this.host.arranged()?.bounds ?? [0, 0, 0, 0];
  }

  view(): Viewport {
    const { viewports, arrangement } = this.host.state();
    return viewports[arrangement] ?? this.held?.view ?? this.fitted();
  }

  /** Everything is fitted below a list of so many rows at the top of the window, as long as that is there. */
  cover(rows: number): void {
    this.coveredRows = rows;
    this.followSoon();
  }

  private fitted(): Viewport {
    if (this.coveredRows === 0)
      return fittedAbove(this.box(), this.size, Math.max(0, this.belowPx - this.firstBelowPx));
    const covered = Math.min(this.coveredRows * rowPx, mostCovered * window.innerHeight, this.size.height / 2);
    return fittedBelow(this.box(), this.size, covered);
  }

  /** Another tag of the batch is shown: what is open below stays open, so it stands in the middle of what is left. */
  stepped(): void {
    this.firstBelowPx = this.belowPx;
  }

  setView(view: Viewport, atOnce = false): void {
    const { viewports, arrangement } = this.host.state();
    this.host.keep({ ...viewports, [arrangement]: view });
    if (atOnce) this.host.follow();
    else this.followSoon();
  }

  /** Fits everything, also from now on. */
  fit(): void {
    const { viewports, arrangement } = this.host.state();
    const others: Partial<Record<Arrangement, Viewport>> = { ...viewports };
    Reflect.deleteProperty(others, arrangement);
    this.held = undefined;
    this.host.keep(others);
    this.followSoon();
  }

  actualSize(): void {
    const centre = [this.size.width / 2, this.size.height / 2] as const;
    const view = this.view();
    this.setView(zoomedAt(view, this.size, centre, this.host.trueScale() / view.scale));
  }

  /** Moves to the box if it is out of sight. */
  show(box: Box): void {
    const before = this.view();
    const after = showing(before, this.size, box);
    if (after !== before) this.setView(after);
  }

  hold(): void {
    const arranged = this.host.arranged();
    this.held ??= arranged && { view: this.view(), offsets: arranged.offsets };
  }

  /** The panel below opens and closes after a change: the drawing must not move then either. */
  private stay({ width, height }: Size): void {
    const view = this.view();
    const moved = panned(view, (width - this.size.width) / 2, (height - this.size.height) / 2);
    const { viewports, arrangement } = this.host.state();
    if (viewports[arrangement]) this.host.keep({ ...viewports, [arrangement]: moved });
    else this.held = { ...this.held!, view: moved };
  }

  release(): void {
    this.held = undefined;
  }

  get heldOffsets(): Arranged['offsets'] | undefined {
    return this.held?.offsets;
  }

  /** Once a frame: a fast pointer reports several times within one. */
  followSoon(): void {
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => {
      this.host.follow();
    });
  }
}
