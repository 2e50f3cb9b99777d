/** Changes by keyboard: S selects one thing after another, the arrow keys move it. */

import type { HandChange } from '../../../src/protocol/preview.ts';
import type { Units } from '../../../src/core/units.ts';
import type { Hand } from './drag.ts';
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

export interface HandKeysHost {
  units(): Units;
  undo(step: 'undo' | 'redo'): void;
}

export function steerHand(stage: HTMLElement, hand: Hand, host: HandKeysHost): void {
  let sum: HandChange | undefined;
  let timer: number | undefined;
  const settle = (): void => {
    window.clearTimeout(timer);
    if (sum) hand.make();
    sum = undefined;
  };

  const press = (change: HandChange): void => {
    // A change of another kind is a step of its own.
    if (sum && added(sum, change) === change) settle();
    sum = added(sum, change);
    hand.try(sum);
    window.clearTimeout(timer);
    timer = window.setTimeout(settle, pauseMs);
  };

  stage.addEventListener('keydown', (event) => {
    const arrow = arrows[event.key];
    if (event.target !== stage || !arrow || !hand.grip || event.altKey) return;
    const [right, up] = arrow;
    const step = stepOf(host.units(), event.shiftKey);
    if (event.ctrlKey || event.metaKey) {
      const axis = right === 0 ? 'height' : 'width';
      if (hand.grip.axes.includes(axis)) press({ kind: 'size', axis, by: (right + up) * step });
    } else if (hand.grip.moves) press({ kind: 'move', right: right * step, up: up * step });
    else hand.explain();
    event.preventDefault();
  });
  stage.addEventListener('focusout', settle);

  document.addEventListener('keydown', (event) => {
    if (isPlain(event, 's') && take(event)) {
      settle();
      stage.focus();
    } else if (event.key === 'Escape' && hand.grip) {
      window.clearTimeout(timer);
      sum = undefined;
      if (hand.isChanging) hand.drop();
      else hand.select(undefined);
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
    const { grips } = hand;
    if (grips.length === 0) return false;
    const listed = (event.target as Element).closest<HTMLElement>('[data-heats]')?.dataset['heats'];
    const meant = grips.find(({ parts }) => listed !== undefined && parts.includes(listed));
    const at = grips.findIndex(({ id }) => id === hand.grip?.id);
    const by = event.shiftKey ? -1 : 1;
    const start = event.shiftKey ? 0 : -1;
    hand.select((meant ?? grips[((at < 0 ? start : at) + by + grips.length) % grips.length]!).id);
    return true;
  }
}
