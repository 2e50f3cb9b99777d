/** Keyboard shortcuts on the sheets, and the zoom buttons. */

import { zoomAtCentre, zoomStep } from '../common/camera/viewport-input.ts';
import type { Steerable } from '../common/camera/viewport-input.ts';
import { undoStep } from '../common/keys.ts';

export interface KeysHost {
  undo(step: 'undo' | 'redo'): void;
  /**
   * Selects the next or previous piece. `from`: index to step from instead of the selected one; −1 leads to the first,
   * 0 backwards to the last.
   */
  step(by: 1 | -1, from?: number): void;
  reveal(): void;
  pin(): void;
  turn(quarters: 1 | -1): void;
  clear(): void;
}

export function listenToKeys(stage: HTMLElement, host: KeysHost): void {
  stage.addEventListener('keydown', (event) => {
    const undo = undoStep(event);
    if (undo) host.undo(undo);
    else if (event.ctrlKey || event.metaKey || event.altKey) return;
    else if (event.key.toLowerCase() === 's') host.step(event.shiftKey ? -1 : 1);
    else if (event.key === 'Home') host.step(1, -1);
    else if (event.key === 'End') host.step(-1, 0);
    else if (event.key === 'Enter') host.reveal();
    else if (event.key.toLowerCase() === 'p') host.pin();
    else if (event.key.toLowerCase() === 'r') host.turn(event.shiftKey ? -1 : 1);
    else if (event.key === 'Escape') host.clear();
    else return;
    event.preventDefault();
  });
}

export function listenToZoom(sight: Steerable): void {
  const zooms: Readonly<Record<string, number>> = { in: zoomStep, out: 1 / zoomStep };
  for (const button of document.querySelectorAll<HTMLElement>('[data-zoom]')) {
    button.addEventListener('click', () => {
      const factor = zooms[button.dataset['zoom'] ?? ''];
      if (factor === undefined) sight.fit();
      else zoomAtCentre(sight, factor);
    });
  }
}
