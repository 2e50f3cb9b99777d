/** Pointer, wheel and keyboard input for the viewport. */

import { scrolled, panned, zoomedAt, type Box, type Size, type Viewport, type XY } from './viewport.ts';

export interface Steerable {
  readonly view: () => Viewport;
  readonly stage: () => Size;
  /** Extent of the drawing, in mm. */
  readonly box: () => Box;
  /** `atOnce`: the drawing follows before the call returns, rather than in the next frame. */
  readonly setView: (view: Viewport, atOnce?: boolean) => void;
  readonly fit: () => void;
  readonly actualSize: () => void;
}

const keyPanPx = 40;
export const zoomStep = 1.25;
/** A press that moves less than this, in px, is a click. */
const dragThresholdPx = 4;

export function steer(stage: HTMLElement, target: Steerable): void {
  steerByPointer(stage, target);
  steerByWheel(stage, target);
  steerByKeys(stage, target);
}

export function zoomAtCentre(target: Steerable, factor: number): void {
  const { width, height } = target.stage();
  target.setView(zoomedAt(target.view(), { width, height }, [width / 2, height / 2], factor));
}

/** One pointer drags; two pinch, which drags by their midpoint and zooms by their distance. */
function steerByPointer(stage: HTMLElement, target: Steerable): void {
  const pointers = new Map<number, XY>();
  let travelled = 0;
  const positionOf = (event: PointerEvent): XY => {
    const { left, top } = stage.getBoundingClientRect();
    return [event.clientX - left, event.clientY - top];
  };

  stage.addEventListener('pointerdown', (event) => {
    if (event.button !== 0 && event.button !== 1) return;
    if ((event.target as Element).closest('button')) return;
    if (pointers.size === 0) travelled = 0;
    pointers.set(event.pointerId, positionOf(event));
  });
  stage.addEventListener('pointermove', (event) => {
    const before = pointers.get(event.pointerId);
    if (!before) return;
    const now = positionOf(event);
    const previous = pinchOf(pointers);
    travelled += Math.hypot(now[0] - before[0], now[1] - before[1]);
    pointers.set(event.pointerId, now);
    if (travelled < dragThresholdPx) return;
    // Captured only now: if captured at once, a click would go to the stage and not to the part under the pointer.
    stage.setPointerCapture(event.pointerId);
    stage.classList.add('dragging');
    const next = pinchOf(pointers);
    const moved = panned(target.view(), next.middle[0] - previous.middle[0], next.middle[1] - previous.middle[1]);
    const pinch = previous.spread > 0 ? next.spread / previous.spread : 1;
    target.setView(pinch === 1 ? moved : zoomedAt(moved, target.stage(), next.middle, pinch));
  });
  const release = (event: PointerEvent): void => {
    pointers.delete(event.pointerId);
    if (pointers.size === 0) stage.classList.remove('dragging');
  };
  stage.addEventListener('pointerup', release);
  stage.addEventListener('pointercancel', release);
  stage.addEventListener('lostpointercapture', (event) => {
    // A touch is captured implicitly by the element it starts on, which then loses it to the stage.
    if (event.target === stage) release(event);
  });
  stage.addEventListener(
    'click',
    (event) => {
      // The click that ends a drag does not count.
      if (travelled >= dragThresholdPx) event.stopPropagation();
      travelled = 0;
    },
    { capture: true },
  );
}

function pinchOf(pointers: ReadonlyMap<number, XY>): { middle: XY; spread: number } {
  const [a = [0, 0] as XY, b] = [...pointers.values()];
  if (!b) return { middle: a, spread: 0 };
  return { middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], spread: Math.hypot(a[0] - b[0], a[1] - b[1]) };
}

/** With Ctrl or Cmd, which a touchpad also reports for a pinch, the wheel zooms; alone it scrolls what does not fit. */
function steerByWheel(stage: HTMLElement, target: Steerable): void {
  stage.addEventListener(
    'wheel',
    (event) => {
      const linePx = 16;
      const unit = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? linePx : 1;
      if (event.ctrlKey || event.metaKey) {
        event.preventDefault();
        const { left, top } = stage.getBoundingClientRect();
        const at: XY = [event.clientX - left, event.clientY - top];
        // A wheel notch reports 100 or more, a touchpad many small steps; both result in a comfortable speed.
        const delta = Math.max(-60, Math.min(60, event.deltaY * unit));
        target.setView(zoomedAt(target.view(), target.stage(), at, Math.exp(-delta / 180)));
        return;
      }
      const before = target.view();
      const [dx, dy] = event.shiftKey ? [event.deltaY, event.deltaX] : [event.deltaX, event.deltaY];
      const after = scrolled(before, target.stage(), target.box(), dx * unit, dy * unit);
      if (after.x === before.x && after.y === before.y) return;
      event.preventDefault();
      target.setView(after);
    },
    { passive: false },
  );
}

function steerByKeys(stage: HTMLElement, target: Steerable): void {
  const arrows: Readonly<Record<string, XY>> = {
    ArrowLeft: [keyPanPx, 0],
    ArrowRight: [-keyPanPx, 0],
    ArrowUp: [0, keyPanPx],
    ArrowDown: [0, -keyPanPx],
  };
  stage.addEventListener('keydown', (event) => {
    const arrow = arrows[event.key];
    if (event.target !== stage || !arrow || event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey)
      return;
    event.preventDefault();
    target.setView(panned(target.view(), ...arrow));
  });
  document.addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === '+' || event.key === '=') zoomAtCentre(target, zoomStep);
    else if (event.key === '-') zoomAtCentre(target, 1 / zoomStep);
    else if (event.key === '0') target.fit();
    else if (event.key === '1') target.actualSize();
    else return;
    event.preventDefault();
  });
}
