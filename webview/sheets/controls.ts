/** Controls for the whole layout: gaps, search effort, pins, comparison with a kept layout. */

import type { SheetsScene } from '../../src/protocol/sheets.ts';
import type { Units } from '../../src/core/units.ts';
import { button, byId, html } from '../common/dom.ts';
import { GapSlider } from './gap-slider.ts';

export interface ControlsHost {
  gap(stock: string, gap: number): void;
  effort(effort: number): void;
  pinAll(): void;
  unpinAll(): void;
  keep(): void;
  forget(): void;
  restore(): void;
}

/**
 * Factor and limit for a longer search: five times as long brings a visible improvement; at most a hundred times the
 * usual.
 */
const longer = 5;
const mostEffort = 100;
export class Controls {
  private readonly gaps = html('div', { class: 'gaps' });
  private readonly buttons = html('div', { class: 'buttons' });
  private sliders: readonly GapSlider[] = [];
  private shownStocks = '';
  private shown = '';

  constructor(private readonly host: ControlsHost) {
    byId('controls').replaceChildren(this.gaps, this.buttons);
  }

  /** `isKept`: whether a layout was kept. `showsKept`: whether it is the one shown, which cannot be changed. */
  show({ gaps, units, pins, effort, sheets }: SheetsScene, isKept: boolean, showsKept: boolean): void {
    const pieces = sheets.flatMap((sheet) => sheet.pieces);
    const pinned = pieces.filter(({ fixed }) => fixed).length;
    const canPinAll = pins && pinned < pieces.length;
    this.showGaps(showsKept ? [] : gaps, units);
    // Elements that may have the focus are left alone while nothing changes.
    const key = JSON.stringify([canPinAll, pinned > 0, effort, isKept, showsKept]);
    if (key === this.shown) return;
    this.shown = key;
    const next = effort === undefined ? undefined : Math.min(mostEffort, effort * longer);
    const { host } = this;
    const buttons = [
      ...(showsKept
        ? [
            button(
              'Go Back to This',
              'Puts the text back to what it was when you kept this layout; Undo takes it back',
              () => {
                host.restore();
              },
            ),
          ]
        : [
            ...(next === undefined || next === effort
              ? []
              : [
                  button(
                    `Search ${longer}× Longer`,
                    'Writes “effort” into the job: files are then made with it too',
                    () => {
                      host.effort(next);
                    },
                  ),
                ]),
            ...(canPinAll
              ? [
                  button('Pin All', 'Everything stays where it lies now', () => {
                    host.pinAll();
                  }),
                ]
              : []),
            ...(pins && pinned > 0
              ? [
                  button('Unpin All', 'Everything is laid out again', () => {
                    host.unpinAll();
                  }),
                ]
              : []),
            button(
              'Keep to Compare',
              'Then change what you like, and switch between this layout and the new one',
              () => {
                host.keep();
              },
            ),
          ]),
      ...(isKept
        ? [
            button('Forget the Kept One', 'Nothing is compared any more', () => {
              host.forget();
            }),
          ]
        : []),
    ];
    this.buttons.replaceChildren(...buttons);
  }

  /** The same sliders for the same stocks: one of them may have the focus. */
  private showGaps(gaps: SheetsScene['gaps'], units: Units): void {
    const stocks = JSON.stringify([units, ...gaps.map(({ stock }) => stock)]);
    if (stocks !== this.shownStocks) {
      this.shownStocks = stocks;
      this.sliders = gaps.map(
        ({ stock }) =>
          new GapSlider(stock, units, (gap) => {
            this.host.gap(stock, gap);
          }),
      );
      this.gaps.replaceChildren(...this.sliders.map(({ element }) => element));
    }
    for (const [nth, { gap, most }] of gaps.entries()) this.sliders[nth]!.show(gap, most);
  }
}
