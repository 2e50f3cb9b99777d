/** Keyboard navigation between problems, and zooming in on one. */

import type { Arranged } from '../scene/arrange.ts';
import { isPlain } from '../../common/keys.ts';
import type { Pins } from './pins.ts';
import { fitted, grown, showing } from '../../common/camera/viewport.ts';
import type { Steerable } from '../../common/camera/viewport-input.ts';

/** Visible margin around a place that is zoomed in on, in mm: enough to recognise the letter. */
const aroundMm = 6;

export class PinWalk {
  constructor(
    private readonly pins: Pins,
    private readonly steered: Steerable,
    private readonly arranged: () => Arranged | undefined,
    /** Called before moving to a pin, because pins may be hidden. */
    private readonly wanted: () => void,
  ) {
    document.addEventListener('keydown', (event) => {
      if (isPlain(event, 'n')) this.step(event.shiftKey ? -1 : 1);
      else if (isPlain(event, 'z')) {
        const pinned = (event.target as Element).closest<HTMLElement>('[data-pin]')?.dataset;
        const spot = pinned?.['spot'] ?? pinned?.['pin'];
        if (spot === undefined) return;
        this.zoomTo(spot);
      } else return;
      event.preventDefault();
    });
  }

  zoomTo(pin: string): void {
    const box = this.boxOf(pin);
    if (box) this.steered.setView(fitted(grown(box, aroundMm), this.steered.stage()));
  }

  private step(by: 1 | -1): void {
    this.wanted();
    const { ids } = this.pins;
    const at = ids.findIndex((id) => this.pins.label(id) === document.activeElement);
    const start = by > 0 ? -1 : 0;
    const id = ids[((at < 0 ? start : at) + by + ids.length) % ids.length];
    const box = id === undefined ? undefined : this.boxOf(id);
    if (!box) return;
    const view = this.steered.view();
    const seen = showing(view, this.steered.stage(), box);
    if (seen !== view) this.steered.setView(seen, true);
    this.pins.label(id!)?.focus();
  }

  private boxOf(pin: string) {
    const arranged = this.arranged();
    return arranged && this.pins.box(pin, arranged);
  }
}
