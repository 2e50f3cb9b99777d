/**
 * Pointing: a click reveals the line that made something, and whatever is under the pointer or has the focus is
 * highlighted.
 */

import type { ScenePin } from '../../../src/protocol/scene.ts';
import { isPlain } from '../../common/keys.ts';
import type { FixMenu } from './fix-menu.ts';
import type { Pins } from './pins.ts';
import type { SceneView } from '../scene/scene-view.ts';
import type { PinTip } from './tip.ts';

interface Pointed {
  readonly sceneView: SceneView;
  readonly pins: Pins;
  readonly tip: PinTip;
  readonly menu: FixMenu;
}

export function followPointing(
  { sceneView, pins, tip, menu }: Pointed,
  reveal: (offset: number, focus: boolean) => void,
  pinOf: (id: string) => ScenePin | undefined,
  showRow: (row: number) => void,
): void {
  const openMenu = (target: EventTarget | null, focus: boolean): boolean => {
    const anchor = (target as Element).closest<HTMLElement>('[data-pin]');
    const pin = pinOf(anchor?.dataset['pin'] ?? '');
    if (!anchor || !pin) return false;
    tip.hide();
    menu.open(pin, anchor, focus);
    return true;
  };

  document.addEventListener('click', (event) => {
    const target = (event.target as Element).closest<HTMLElement | SVGElement>('[data-offset], .open-fixes');
    if (target?.matches('.open-fixes')) openMenu(target, true);
    else if (target) {
      // A single click reveals and leaves the focus here; a double click, or Enter on a button, moves it too.
      const looks = event.detail === 1;
      const row = pinOf(target.dataset['pin'] ?? '')?.row;
      if (row !== undefined) showRow(row);
      reveal(Number(target.dataset['offset']), !looks);
      if (target.matches('.pin') && looks) openMenu(target, false);
      else menu.close(false);
    }
  });
  document.addEventListener('contextmenu', (event) => {
    if (openMenu(event.target, true)) event.preventDefault();
  });
  document.addEventListener('keydown', (event) => {
    if (event.key === 'Escape') {
      tip.hide();
      menu.close(true);
    } else if (isPlain(event, 'f') && openMenu(event.target, true)) event.preventDefault();
  });

  const pointAt = (target: EventTarget | null): void => {
    const element = target instanceof Element ? target.closest<HTMLElement>('[data-pin], [data-heats]') : null;
    const heats = element?.dataset['heats'];
    const pin = pinOf(element?.dataset['pin'] ?? '');
    sceneView.heat(heats === undefined ? [] : [heats]);
    pins.heat(pin?.id);
    if (pin && element?.classList.contains('pin') && !menu.isFor(pin)) tip.show(pin, element);
    else tip.hide();
  };
  document.addEventListener('pointerover', (event) => {
    pointAt(event.target);
  });
  document.addEventListener('focusin', (event) => {
    pointAt(event.target);
  });
}
