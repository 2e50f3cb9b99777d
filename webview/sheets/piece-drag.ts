/**
 * Changes by hand: the selected piece is dragged, or moved and turned by keys; a second finger or Escape puts it back.
 */

import type { PinnedPlace } from '../../src/protocol/sheets.ts';
import { mmPerInch } from '../../src/core/units.ts';
import type { Units } from '../../src/core/units.ts';
import type { XY } from '../common/camera/viewport.ts';
import type { SheetPlace } from './arrange.ts';
import { draftOf, movedDraft, pinnedPlace, turnedDraft } from './draft.ts';
import type { Draft } from './draft.ts';
import type { PieceAt } from './drawing.ts';

export interface PieceDragHost {
  /** The piece that may be moved. */
  selected(): PieceAt | undefined;
  places(): readonly SheetPlace[];
  units(): Units;
  /** Pixels per mm. */
  scale(): number;
  show(draft: Draft | undefined): void;
  pin(place: PinnedPlace, draft: Draft): void;
}

const thresholdPx = 4;
/** Key presses within this time, in ms, form one undo step. */
const pauseMs = 600;
/** Rounding of places, and step of an arrow key, in mm. */
const steps: Readonly<Record<Units, { readonly round: number; readonly key: number }>> = {
  mm: { round: 0.1, key: 1 },
  in: { round: 0.005 * mmPerInch, key: 0.05 * mmPerInch },
};

const arrows: Readonly<Record<string, XY>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

export class PieceDrag {
  private drag: { readonly pointer: number; readonly from: XY; readonly start: Draft; begun: boolean } | undefined;
  private draft: Draft | undefined;
  private timer: number | undefined;
  private wasDragged = false;

  constructor(
    private readonly stage: HTMLElement,
    private readonly host: PieceDragHost,
  ) {
    stage.addEventListener('pointerdown', this.begin, { capture: true });
    stage.addEventListener('pointermove', this.move);
    stage.addEventListener('pointerup', this.end);
    stage.addEventListener('pointercancel', this.drop);
    stage.addEventListener(
      'click',
      (event) => {
        // The click that ends a drag does not count.
        if (this.wasDragged) event.stopPropagation();
        this.wasDragged = false;
      },
      { capture: true },
    );
    stage.addEventListener('keydown', this.press);
    stage.addEventListener('focusout', () => {
      if (this.timer !== undefined) this.make();
    });
  }

  /** The requested change has been laid out, or has failed. */
  forget(): void {
    if (this.drag?.begun || this.timer !== undefined) return;
    this.show(undefined);
  }

  turn(quarters: 1 | -1 = 1): void {
    const start = this.current();
    if (!start) return;
    this.show(turnedDraft(start, quarters, steps[this.host.units()].round));
    this.settleSoon();
  }

  private current(): Draft | undefined {
    const at = this.host.selected();
    if (!at) return undefined;
    return this.draft?.piece.id === at.piece.id ? this.draft : draftOf(at.piece, at.place);
  }

  private readonly begin = (event: PointerEvent): void => {
    this.wasDragged = false;
    if (this.drag) {
      this.drop();
      return;
    }
    const id = (event.target as Element).closest<SVGElement>('.piece')?.dataset['piece'];
    const start = this.current();
    if (event.button !== 0 || !start || id !== start.piece.id) return;
    event.stopPropagation();
    this.stage.focus();
    this.drag = { pointer: event.pointerId, from: [event.clientX, event.clientY], start, begun: false };
  };

  private readonly move = (event: PointerEvent): void => {
    const { drag } = this;
    if (drag?.pointer !== event.pointerId) return;
    const [dx, dy] = [event.clientX - drag.from[0], event.clientY - drag.from[1]];
    if (!drag.begun && Math.hypot(dx, dy) < thresholdPx) return;
    if (!drag.begun) {
      window.clearTimeout(this.timer);
      this.timer = undefined;
      this.stage.setPointerCapture(event.pointerId);
      this.stage.classList.add('moving');
      drag.begun = true;
    }
    const scale = this.host.scale();
    this.show(this.moved(drag.start, [dx / scale, dy / scale]));
  };

  private readonly end = (event: PointerEvent): void => {
    if (this.drag?.pointer !== event.pointerId) return;
    const isMoved = this.drag.begun;
    this.release();
    this.wasDragged = isMoved;
    if (isMoved) this.make();
  };

  private readonly drop = (): void => {
    if (!this.drag) return;
    this.release();
    this.show(undefined);
  };

  private release(): void {
    this.drag = undefined;
    this.stage.classList.remove('moving');
  }

  private readonly press = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && (this.drag?.begun || this.timer !== undefined)) {
      window.clearTimeout(this.timer);
      this.timer = undefined;
      this.wasDragged = this.drag !== undefined;
      this.release();
      this.show(undefined);
      event.preventDefault();
      event.stopImmediatePropagation();
      return;
    }
    const arrow = arrows[event.key];
    if (!arrow || event.ctrlKey || event.metaKey || event.altKey) return;
    const start = this.current();
    if (!start) return;
    const by = steps[this.host.units()].key * (event.shiftKey ? 10 : 1);
    this.show(this.moved(start, [arrow[0] * by, arrow[1] * by]));
    this.settleSoon();
    event.preventDefault();
  };

  private moved(draft: Draft, by: XY): Draft {
    return movedDraft(draft, by, this.host.places(), steps[this.host.units()].round);
  }

  private settleSoon(): void {
    window.clearTimeout(this.timer);
    this.timer = window.setTimeout(() => {
      this.make();
    }, pauseMs);
  }

  private make(): void {
    window.clearTimeout(this.timer);
    this.timer = undefined;
    if (this.draft) this.host.pin(pinnedPlace(this.draft), this.draft);
  }

  private show(draft: Draft | undefined): void {
    if (!draft && !this.draft) return;
    this.draft = draft;
    this.host.show(draft);
  }
}
