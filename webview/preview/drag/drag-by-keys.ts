/** Changes by keyboard: S selects one thing after another, the arrow keys move it. */

import type { HandChange } from '../../../src/protocol/scene.ts';
import type { Units } from '../../../src/core/units.ts';
import type { DragController } from './drag-controller.ts';
import { added, stepOf } from './drag-steps.ts';
import { isPlain, undoStep } from '../../common/keys.ts';

/** Key presses within this time, in ms, form one undo step. */
const pauseMs = 600;

/** Direction of each key: right, up. */
const arrows: Readonly<Record<string, readonly [right: number, up: number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

export interface DragKeysHost {
  units(): Units;
  undo(step: 'undo' | 'redo'): void;
}

export function dragByKeys(stage: HTMLElement, controller: DragController, host: DragKeysHost): void {
  let sum: HandChange | undefined;
  let timer: number | undefined;
  const settle = (): void => {
    window.clearTimeout(timer);
    if (sum) controller.make();
    sum = undefined;
  };

  const press = (change: HandChange): void => {
    // A change of another kind is a step of its own.
    if (sum && added(sum, change) === change) settle();
    sum = added(sum, change);
    controller.try(sum);
    window.clearTimeout(timer);
    timer = window.setTimeout(settle, pauseMs);
  };

  stage.addEventListener('keydown', (event) => {
    const arrow = arrows[event.key];
    if (event.target !== stage || !arrow || !controller.grip || event.altKey) return;
    const [right, up] = arrow;
    const step = stepOf(host.units(), event.shiftKey);
    if (event.ctrlKey || event.metaKey) {
      const axis = right === 0 ? 'height' : 'width';
      if (controller.grip.axes.includes(axis)) press({ kind: 'size', axis, by: (right + up) * step });
      else controller.explain('size');
    } else if (controller.grip.moves) press({ kind: 'move', right: right * step, up: up * step });
    else controller.explain('move');
    event.preventDefault();
  });
  stage.addEventListener('focusout', settle);

  document.addEventListener('keydown', (event) => {
    if (isPlain(event, 's') && take(event)) {
      settle();
      stage.focus();
    } else if (event.key === 'Escape' && controller.grip) {
      window.clearTimeout(timer);
      sum = undefined;
      if (controller.isChanging) controller.drop();
      else controller.select(undefined);
    } else {
      const step = undoStep(event);
      if (!step) return;
      settle();
      host.undo(step);
    }
    event.preventDefault();
  });

  /** Selects the thing whose button has the focus; else the next one, or with Shift the previous one. */
  function take(event: KeyboardEvent): boolean {
    const { grips } = controller;
    if (grips.length === 0) return false;
    const listed = (event.target as Element).closest<HTMLElement>('[data-heats]')?.dataset['heats'];
    const meant = grips.find(({ parts }) => listed !== undefined && parts.includes(listed));
    const at = grips.findIndex(({ id }) => id === controller.grip?.id);
    const by = event.shiftKey ? -1 : 1;
    const start = event.shiftKey ? 0 : -1;
    controller.select((meant ?? grips[((at < 0 ? start : at) + by + grips.length) % grips.length]!).id);
    return true;
  }
}
