/** Toolbar: buttons for arrangement, zoom and proof, and a menu of rarely used options. */

import type { ScenePiece } from '../../../src/protocol/scene.ts';
import { arrangements, type Arrangement } from '../scene/arrange.ts';
import { byId, setAttribute, setText } from '../../common/dom.ts';
import { giveWay } from './crowding.ts';
import { zoomText } from '../../common/format.ts';
import { isPlain } from '../../common/keys.ts';
import { MenuButton, type MenuItem } from '../../common/menu.ts';
import { roving } from '../../common/roving.ts';
import { zoomAtCentre, zoomStep, type Steerable } from '../../common/camera/viewport-input.ts';

interface ToolbarActions {
  toggleProof(): void;
  toggleFollow(): void;
  follows(): boolean;
  arrange(arrangement: Arrangement): void;
  measureScreen(): void;
  showKeys(): void;
}

export class Toolbar {
  private readonly arrangement = byId('arrangement');
  private readonly zoomButton = byId('zoom-button');

  constructor(steered: Steerable, actions: ToolbarActions) {
    for (const name of arrangements) {
      this.button(name).addEventListener('click', () => {
        actions.arrange(name);
      });
    }
    byId('proof').addEventListener('click', () => {
      actions.toggleProof();
    });
    document.addEventListener('keydown', (event) => {
      if (isPlain(event, 'p')) actions.toggleProof();
    });
    zooming(this.zoomButton, steered, () => {
      actions.measureScreen();
    });
    new MenuButton(byId('more'), 'More', () => [
      ...crowdedOut([...arrangements.map((name) => this.button(name)), byId('proof'), byId('measure')]),
      {
        label: 'Follow the editor',
        hint: 'show whichever spec is being edited',
        checked: actions.follows(),
        run: () => {
          actions.toggleFollow();
        },
      },
      {
        label: 'Keys',
        key: '?',
        run: () => {
          actions.showKeys();
        },
      },
    ]);
    giveWay(byId('tools'));
    roving(byId('tools'));
  }

  /** A single piece cannot be taken apart. */
  patch(arrangement: Arrangement, pieces: readonly ScenePiece[]): void {
    this.arrangement.hidden = pieces.length < 2;
    // Without glued pieces there are no layers to lift.
    this.button('exploded').hidden = !pieces.some(({ glueTo }) => glueTo !== undefined);
    for (const name of arrangements) setAttribute(this.button(name), 'aria-pressed', `${name === arrangement}`);
  }

  /** `trueScale`: pixels per mm at 100 %. */
  showZoom(scale: number, trueScale: number): void {
    const text = zoomText(scale, trueScale);
    setText(this.zoomButton, text);
    setAttribute(this.zoomButton, 'aria-label', `Zoom ${text}`);
  }

  private button(name: Arrangement): HTMLElement {
    return this.arrangement.querySelector<HTMLElement>(`[data-arrangement="${name}"]`)!;
  }
}

/** Zoom buttons, some of which give way in a narrow row, and a menu with all of them. */
function zooming(button: HTMLElement, steered: Steerable, measureScreen: () => void): void {
  const ways: Readonly<Record<string, MenuItem>> = {
    in: {
      label: 'Zoom in',
      key: '+',
      run: () => {
        zoomAtCentre(steered, zoomStep);
      },
    },
    out: {
      label: 'Zoom out',
      key: '−',
      run: () => {
        zoomAtCentre(steered, 1 / zoomStep);
      },
    },
    fit: {
      label: 'Fit everything',
      key: '0',
      run: () => {
        steered.fit();
      },
    },
    actual: {
      label: 'True size',
      key: '1',
      run: () => {
        steered.actualSize();
      },
    },
  };
  for (const each of byId('zoom').querySelectorAll<HTMLElement>('[data-zoom]')) {
    each.addEventListener('click', () => {
      ways[each.dataset['zoom']!]!.run();
    });
  }
  const screen = { label: 'Measure this screen…', hint: 'so that true size is true', run: measureScreen };
  new MenuButton(button, 'Zoom', () => [...Object.values(ways), screen]);
}

/** Tools that the row has no room for. */
function crowdedOut(tools: readonly HTMLElement[]): MenuItem[] {
  return tools.flatMap((tool) => {
    if (tool.closest('[hidden]') || tool.checkVisibility()) return [];
    const run = (): void => {
      tool.click();
    };
    return [{ label: tool.textContent.trim(), checked: tool.getAttribute('aria-pressed') === 'true', run }];
  });
}
