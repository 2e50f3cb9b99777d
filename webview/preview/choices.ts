/** View choices of the user: saved in the page's state, sent to the host if they outlive the page, shown by buttons. */

import type { ToHost } from '../../src/protocol/preview.ts';
import { byId, setAttribute } from '../common/dom.ts';
import { LayerButtons } from './panels/layers.ts';
import { toggled, type Layer, type PageState } from './state.ts';

export interface ChoicesHost {
  send(message: ToHost): void;
  save(state: PageState): void;
  /** Everything must be redrawn. */
  changed(): void;
}

export class Choices {
  private readonly layers: LayerButtons;
  private wantsBeam = false;

  constructor(
    private readonly stage: HTMLElement,
    private state: PageState,
    private readonly host: ChoicesHost,
  ) {
    this.layers = new LayerButtons(stage, (layer) => {
      this.toggleLayer(layer);
    });
    this.show();
    if (state.follows) this.tellFollows();
  }

  get now(): PageState {
    return this.state;
  }

  isHidden(layer: Layer): boolean {
    return this.state.hiddenLayers.includes(layer);
  }

  change(changes: Partial<PageState>): void {
    this.state = { ...this.state, ...changes };
    this.host.save(this.state);
    const { source, arrangement, hiddenLayers, hiddenPieces, dock } = this.state;
    this.host.send({ type: 'keep', source, kept: { arrangement, hiddenLayers, hiddenPieces, dock } });
    this.show();
    this.host.changed();
  }

  /** Saved for this page alone; nothing else depends on them. */
  keepViewports(viewports: PageState['viewports']): void {
    this.state = { ...this.state, viewports };
    this.host.save(this.state);
  }

  toggleLayer(layer: Layer): void {
    this.change({ hiddenLayers: toggled(this.state.hiddenLayers, layer) });
  }

  togglePiece(id: string): void {
    this.change({ hiddenPieces: toggled(this.state.hiddenPieces, id) });
  }

  toggleProof(): void {
    this.change({ proof: !this.state.proof });
  }

  toggleFollow(): void {
    this.change({ follows: !this.state.follows });
    this.tellFollows();
  }

  private show(): void {
    const { hiddenLayers, proof, follows } = this.state;
    this.layers.show(hiddenLayers);
    this.stage.classList.toggle('proof', proof);
    setAttribute(byId('proof'), 'aria-pressed', `${proof}`);
    // It is switched in a menu, so its state must be visible on the button.
    const more = byId('more');
    setAttribute(more, 'data-follows', `${follows}`);
    setAttribute(more, 'title', follows ? 'Follows the editor. More, and the keys (?)' : 'More, and the keys (?)');
    setAttribute(more, 'aria-label', follows ? 'More. Follows the editor' : 'More');
    const wanted = !this.isHidden('beam');
    if (wanted === this.wantsBeam) return;
    this.wantsBeam = wanted;
    this.host.send({ type: 'want-cut-paths', source: this.state.source, wanted });
  }

  private tellFollows(): void {
    const { source, follows } = this.state;
    this.host.send({ type: 'follow', source, follows });
  }
}
