/** Changes by pointer: dragging moves what is free or already selected; a handle changes the size. */

import type { SceneGrip } from '../../../src/protocol/scene.ts';
import type { Units } from '../../../src/core/units.ts';
import type { DragController } from './drag-controller.ts';
import { growthOf, sidesOf, type Axis } from './growth.ts';
import { roundedToStep, tidy } from './drag-steps.ts';
import { boxCentre, snap, type SnapLine } from './snapping.ts';
import type { Box, XY } from '../../common/camera/viewport.ts';

export interface DragPointerHost {
  units(): Units;
  /** Pixels per mm. */
  scale(): number;
  /** Bounds of the selection as drawn, in mm. */
  box(): Box | undefined;
  lines(grip: SceneGrip): readonly SnapLine[];
}

const thresholdPx = 4;
const snapPx = 6;

interface Drag {
  readonly pointer: number;
  readonly from: XY;
  readonly grip: SceneGrip;
  readonly axis: Axis | undefined;
  /** Set once the drag has begun: bounds and snap lines at the start. */
  start?: { readonly box: Box; readonly lines: readonly SnapLine[] };
}

export function dragByPointer(stage: HTMLElement, controller: DragController, host: DragPointerHost): void {
  let drag: Drag | undefined;
  /** The click that ends a drag does not count. */
  let isDragged = false;
  let pressedAt: XY = [0, 0];

  const begin = (event: PointerEvent): void => {
    isDragged = false;
    pressedAt = [event.clientX, event.clientY];
    if (drag) {
      // A second finger is for zooming.
      cancel();
      return;
    }
    const target = event.target as Element;
    const axis = target.closest<SVGElement>('.handle')?.dataset['axis'] as Drag['axis'];
    const id = axis ? controller.grip?.id : target.closest<SVGElement>('[data-grip]')?.dataset['grip'];
    const grip = controller.grips.find((each) => each.id === id);
    if (event.button !== 0 || !grip || !(grip.free || grip.id === controller.grip?.id)) return;
    // If everything else would move along, there is nothing to drag, so the drawing is panned.
    if (!axis && !grip.moves) return;
    event.stopPropagation();
    drag = { pointer: event.pointerId, from: pressedAt, grip, axis };
  };

  const move = (event: PointerEvent): void => {
    if (drag?.pointer !== event.pointerId) return;
    const [dx, dy] = [event.clientX - drag.from[0], event.clientY - drag.from[1]];
    if (!drag.start && Math.hypot(dx, dy) < thresholdPx) return;
    if (!drag.start) {
      stage.setPointerCapture(event.pointerId);
      stage.classList.add('moving');
      isDragged = true;
      controller.select(drag.grip.id);
      drag.start = { box: host.box() ?? [0, 0, 0, 0], lines: drag.axis ? [] : host.lines(drag.grip) };
    }
    const by: XY = [dx / host.scale(), dy / host.scale()];
    if (drag.axis) size(drag.axis, by);
    else shift(by, event);
  };

  const shift = ([dx, dy]: XY, { altKey, shiftKey }: PointerEvent): void => {
    const { box, lines } = drag!.start!;
    // With Shift, along the axis with the longer way.
    const along: XY = !shiftKey ? [dx, dy] : Math.abs(dx) >= Math.abs(dy) ? [dx, 0] : [0, dy];
    const [x, y] = boxCentre(box);
    const reach = altKey ? -1 : snapPx / host.scale();
    const rest = snap([x + along[0], y + along[1]], lines, reach);
    const at = (axis: 0 | 1): number => {
      const name = axis === 0 ? 'x' : 'y';
      const isAtRest = rest.lines.some((line) => line.along === name);
      return isAtRest ? tidy(along[axis] + rest.by[axis]) : roundedToStep(along[axis], host.units());
    };
    controller.try({ kind: 'move', right: at(0), up: tidy(-at(1)) }, rest.lines);
  };

  const size = (axis: Axis, [dx, dy]: XY): void => {
    const { box } = drag!.start!;
    // Most shapes grow about their centre; one that lies against a side grows away from it. The latest trial shows
    // which.
    const [, high] = sidesOf(axis);
    const share = Math.min(1, Math.max(0.25, growthOf(axis, box, host.box() ?? box)[high]));
    controller.try({ kind: 'size', axis, by: roundedToStep((axis === 'width' ? dx : dy) / share, host.units()) });
  };

  const end = (event: PointerEvent): void => {
    if (drag?.pointer !== event.pointerId) return;
    const isStarted = drag.start !== undefined;
    finish();
    if (isStarted) controller.make();
  };

  const cancel = (): void => {
    if (drag?.start) controller.drop();
    finish();
  };

  const finish = (): void => {
    const pointer = drag?.pointer;
    drag = undefined;
    stage.classList.remove('moving');
    if (pointer !== undefined && stage.hasPointerCapture(pointer)) stage.releasePointerCapture(pointer);
  };

  stage.addEventListener('pointerdown', begin, { capture: true });
  stage.addEventListener('pointermove', move);
  stage.addEventListener('pointerup', end);
  stage.addEventListener('pointercancel', cancel);
  stage.addEventListener('lostpointercapture', (event) => {
    // A touch is captured implicitly by the element it starts on, which then loses it to the stage.
    if (event.target === stage && drag?.pointer === event.pointerId) cancel();
  });
  stage.addEventListener(
    'click',
    (event) => {
      // A click that ends a pan does not deselect either.
      const isPan = Math.hypot(event.clientX - pressedAt[0], event.clientY - pressedAt[1]) >= thresholdPx;
      if (isDragged) event.stopPropagation();
      else if (!isPan)
        controller.select(
          (event.target as Element).closest<SVGElement>('[data-grip]')?.dataset['grip'] ?? keptBy(event),
        );
      isDragged = false;
    },
    { capture: true },
  );
  document.addEventListener(
    'keydown',
    (event) => {
      if (event.key !== 'Escape' || !drag) return;
      cancel();
      event.stopPropagation();
    },
    { capture: true },
  );

  /** A click on a pin or a handle does not deselect. */
  function keptBy({ target }: MouseEvent): string | undefined {
    return (target as Element).closest('.pin, .handle') ? controller.grip?.id : undefined;
  }
}
