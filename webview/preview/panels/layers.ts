/** Switches for the layers of the drawing: pills if the row has room for them, else a menu. */

import { byId, html } from '../../common/dom.ts';
import { swatch } from '../../common/icons.ts';
import { MenuButton } from '../../common/menu.ts';
import { layers, type Layer } from '../state.ts';

const labels: Readonly<Record<Layer, readonly [label: string, title: string]>> = {
  'cut-outer': ['Outer cut', 'outlines, cut last'],
  'cut-inner': ['Inner cut', 'holes and openings, cut before the outlines'],
  score: ['Score', 'lines drawn into the surface'],
  engrave: ['Engrave', 'areas engraved into the surface'],
  finish: ['Finish', 'the tag as it will look'],
  beam: ['Beam', 'where it runs: half a kerf outside the outline'],
  warnings: ['Problems', 'problems pinned on the drawing'],
  dimensions: ['Sizes', 'finished dimensions'],
  grid: ['Grid', 'grid and rulers'],
};

export class LayerButtons {
  private readonly pills = new Map<Layer, HTMLButtonElement>();
  private readonly menu: MenuButton;
  private hidden: readonly Layer[] = [];

  constructor(
    private readonly stage: HTMLElement,
    toggle: (layer: Layer) => void,
  ) {
    this.menu = new MenuButton(byId('layers-button'), 'Layers', () =>
      layers.map((layer) => ({
        label: labels[layer][0],
        hint: labels[layer][1],
        picture: swatch(layer),
        checked: !this.hidden.includes(layer),
        run: () => {
          toggle(layer);
        },
      })),
    );
    for (const layer of layers) {
      const [label, title] = labels[layer];
      const attributes = { type: 'button', class: 'chip', title: `${label}: ${title}`, 'data-layer': layer };
      const pill = html('button', attributes, swatch(layer), label);
      pill.addEventListener('click', () => {
        toggle(layer);
      });
      this.pills.set(layer, pill);
    }
    byId('layers').append(...this.pills.values());
  }

  show(hidden: readonly Layer[]): void {
    this.hidden = hidden;
    for (const [layer, pill] of this.pills) {
      pill.setAttribute('aria-pressed', `${!hidden.includes(layer)}`);
      this.stage.classList.toggle(`hide-${layer}`, hidden.includes(layer));
    }
    this.menu.refresh();
  }
}
