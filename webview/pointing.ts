/** Pointing at things: a click goes to the line that made them, and what the pointer or the keyboard is on lights up. */

import type { ScenePin } from '../src/preview/protocol.ts';
import type { Pins } from './pins.ts';
import type { SceneView } from './scene-view.ts';
import type { Tip } from './tip.ts';

interface Pointed {
  readonly sceneView: SceneView;
  readonly pins: Pins;
  readonly tip: Tip;
}

export function followPointing(
  { sceneView, pins, tip }: Pointed,
  reveal: (offset: number, focus: boolean) => void,
  pinOf: (id: string) => ScenePin | undefined,
): void {
  document.addEventListener('click', (event) => {
    const target = (event.target as Element).closest<HTMLElement | SVGElement>('[data-offset]');
    // A single click looks, and the keyboard stays here; a double click, or Enter on a button, goes.
    if (target) reveal(Number(target.dataset['offset']), event.detail !== 1);
  });

  const pointAt = (target: EventTarget | null): void => {
    const element = target instanceof Element ? target.closest<HTMLElement>('[data-pin], [data-heats]') : null;
    const heats = element?.dataset['heats'];
    const pin = pinOf(element?.dataset['pin'] ?? '');
    sceneView.heat(heats === undefined ? [] : [heats]);
    pins.heat(pin?.id);
    if (pin && element?.classList.contains('pin')) tip.show(pin, element);
    else tip.hide();
  };
  document.addEventListener('pointerover', (event) => {
    pointAt(event.target);
  });
  document.addEventListener('focusin', (event) => {
    pointAt(event.target);
  });
  document.addEventListener('keydown', (event) => {
    if (event.key === 'Escape') tip.hide();
  });
}
