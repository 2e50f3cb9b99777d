/** The buttons that show and hide what the beam does, the finished look, the warnings and the dimensions. */

import { html } from './dom.ts';
import { swatch } from './icons.ts';
import { roving } from './roving.ts';
import { layers, type Layer } from './state.ts';

const labels: Readonly<Record<Layer, readonly [label: string, title: string]>> = {
  'cut-outer': ['Outer cut', 'Outlines, cut last'],
  'cut-inner': ['Inner cut', 'Holes and openings, cut before the outlines'],
  score: ['Score', 'Lines drawn into the surface'],
  engrave: ['Engrave', 'Areas burnt into the surface'],
  finish: ['Finish', 'The tag as it will look'],
  beam: ['Beam', 'Where the beam runs: half a kerf outside the finished outline'],
  warnings: ['Warnings', 'Weak and doubtful places'],
  dimensions: ['Sizes', 'Finished dimensions'],
  grid: ['Grid', 'Grid and rulers'],
};

export class LayerButtons {
  private readonly buttons = new Map<Layer, HTMLButtonElement>();

  constructor(
    container: HTMLElement,
    private readonly stage: HTMLElement,
    toggle: (layer: Layer) => void,
  ) {
    for (const layer of layers) {
      const [label, title] = labels[layer];
      const button = html(
        'button',
        { type: 'button', class: 'chip', title, 'data-layer': layer },
        swatch(layer),
        label,
      );
      button.addEventListener('click', () => {
        toggle(layer);
      });
      this.buttons.set(layer, button);
      container.append(button);
    }
    roving(container);
  }

  show(hidden: readonly Layer[]): void {
    for (const [layer, button] of this.buttons) {
      button.setAttribute('aria-pressed', `${!hidden.includes(layer)}`);
      this.stage.classList.toggle(`hide-${layer}`, hidden.includes(layer));
    }
  }
}
