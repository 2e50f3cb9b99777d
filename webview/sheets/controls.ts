/** Controls for the whole layout: gaps, search effort, pins, comparison with a kept layout. */

import type { SheetsScene } from '../../src/protocol/sheets.ts';
import { lengthText } from '../../src/core/units.ts';
import type { Units } from '../../src/core/units.ts';
import { button, byId, html, setText } from '../common/dom.ts';

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
/** In mm. */
const gapSteps: Readonly<Record<Units, number>> = { mm: 0.5, in: 25.4 / 32 };

export class Controls {
  private readonly element = byId('controls');
  private shown = '';

  constructor(private readonly host: ControlsHost) {}

  /** `isKept`: whether a layout was kept. `showsKept`: whether it is the one shown, which cannot be changed. */
  show({ gaps, units, pins, effort, sheets }: SheetsScene, isKept: boolean, showsKept: boolean): void {
    const pieces = sheets.flatMap((sheet) => sheet.pieces);
    const pinned = pieces.filter(({ fixed }) => fixed).length;
    const canPinAll = pins && pinned < pieces.length;
    // Elements that may have the focus are left alone while nothing changes.
    const key = JSON.stringify([gaps, units, canPinAll, pinned > 0, effort, isKept, showsKept]);
    if (key === this.shown) return;
    this.shown = key;
    const next = effort === undefined ? undefined : Math.min(mostEffort, effort * longer);
    const { host } = this;
    const sliders = showsKept ? [] : gaps.map((gap) => this.slider(gap, units));
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
    this.element.replaceChildren(
      html('div', { class: 'gaps' }, ...sliders),
      html('div', { class: 'buttons' }, ...buttons),
    );
  }

  private slider({ stock, gap, most }: SheetsScene['gaps'][number], units: Units): HTMLElement {
    const value = html('output', {}, lengthText(gap, units));
    const step = gapSteps[units];
    const input = html('input', { type: 'range', min: '0', max: `${most}`, step: `${step}`, value: `${gap}` });
    const showValue = (): void => {
      const text = lengthText(input.valueAsNumber, units);
      setText(value, text);
      input.setAttribute('aria-valuetext', text);
    };
    showValue();
    input.addEventListener('input', showValue);
    input.addEventListener('change', () => {
      this.host.gap(stock, Math.round(input.valueAsNumber * 1e4) / 1e4);
    });
    return html(
      'label',
      { title: 'Material left between two pieces' },
      html('span', {}, stock === '' ? 'Gap' : `Gap on ${stock}`),
      input,
      value,
    );
  }
}
