/** The buttons for arrangement, zoom and export. */

import type { ScenePiece } from '../src/preview/protocol.ts';
import { arrangements, type Arrangement } from './arrange.ts';
import { byId, setAttribute, setText } from './dom.ts';
import { zoomText } from './format.ts';
import { isPlain } from './keys.ts';
import { roving } from './roving.ts';
import { zoomAtCentre, zoomStep, type Steered } from './viewport-input.ts';

interface ToolbarActions {
  toggleProof(): void;
  toggleFollow(): void;
  arrange(arrangement: Arrangement): void;
  exportSvg(): void;
}

export class Toolbar {
  private readonly arrangement = byId('arrangement');
  private readonly export = byId('export') as HTMLButtonElement;

  constructor(steered: Steered, actions: ToolbarActions) {
    for (const name of arrangements) {
      this.button(name).addEventListener('click', () => {
        actions.arrange(name);
      });
    }
    const zooms: Readonly<Record<string, () => void>> = {
      out: () => {
        zoomAtCentre(steered, 1 / zoomStep);
      },
      in: () => {
        zoomAtCentre(steered, zoomStep);
      },
      fit: () => {
        steered.fit();
      },
      actual: () => {
        steered.actualSize();
      },
    };
    for (const [name, zoom] of Object.entries(zooms)) {
      zoomButton(name).addEventListener('click', zoom);
    }
    byId('follow').addEventListener('click', () => {
      actions.toggleFollow();
    });
    byId('proof').addEventListener('click', () => {
      actions.toggleProof();
    });
    document.addEventListener('keydown', (event) => {
      if (isPlain(event, 'p')) actions.toggleProof();
    });
    this.export.addEventListener('click', () => {
      actions.exportSvg();
    });
    roving(byId('tools'));
  }

  /** One piece cannot be taken apart; without a piece there is nothing to export. */
  patch(arrangement: Arrangement, pieces: readonly ScenePiece[]): void {
    this.arrangement.hidden = pieces.length < 2;
    this.export.disabled = pieces.length === 0;
    // Without anything glued there are no layers to lift.
    this.button('exploded').hidden = !pieces.some(({ glueTo }) => glueTo !== undefined);
    for (const name of arrangements) setAttribute(this.button(name), 'aria-pressed', `${name === arrangement}`);
  }

  /** `trueScale`: pixels for a millimetre at 100 %. */
  showZoom(scale: number, trueScale: number): void {
    const text = zoomText(scale, trueScale);
    setText(zoomButton('actual'), text);
    setAttribute(zoomButton('actual'), 'aria-label', `Zoom ${text}; true size`);
  }

  private button(name: Arrangement): HTMLElement {
    return this.arrangement.querySelector<HTMLElement>(`[data-arrangement="${name}"]`)!;
  }
}

function zoomButton(name: string): HTMLElement {
  return byId('zoom').querySelector<HTMLElement>(`[data-zoom="${name}"]`)!;
}
