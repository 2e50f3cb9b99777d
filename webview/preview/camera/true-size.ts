/** True size on this screen: measured once with a card that everyone has, and the meaning of 100 % from then on. */

import { byId, setText } from '../../common/dom.ts';
import { actualScale } from '../../common/camera/viewport.ts';

/** Size of bank cards in mm: ISO/IEC 7810, ID-1. */
export const cardMm = { long: 85.6, short: 53.98 } as const;

/** Space that the dialog needs beside the card, in px. */
const roomPx = 60;

/** Least width that can be set, a multiple of the slider's step. */
const leastPx = 80;

/** Pixels per mm at true size; on an unmeasured screen as CSS defines it, 1 in = 25.4 mm = 96 px. */
export function trueScale(devicePixelsPerMm: number | undefined, devicePixelRatio: number): number {
  return devicePixelsPerMm === undefined ? actualScale : devicePixelsPerMm / devicePixelRatio;
}

export interface ScreenHost {
  /** `undefined` discards the measurement. */
  measured(devicePixelsPerMm: number | undefined): void;
}

export class Screen {
  private readonly dialog = byId('screen') as HTMLDialogElement;
  private readonly card = byId('card');
  private readonly slider = byId('card-width') as HTMLInputElement;
  private side: keyof typeof cardMm = 'long';

  private devicePixelsPerMm: number | undefined;

  constructor(host: ScreenHost) {
    this.dialog.addEventListener('keydown', (event) => {
      // The page's own shortcuts must not apply.
      event.stopPropagation();
    });
    this.slider.addEventListener('input', () => {
      this.stretch();
    });
    this.dialog.addEventListener('close', () => {
      const { returnValue } = this.dialog;
      if (returnValue === 'save') {
        host.measured((this.slider.valueAsNumber / cardMm[this.side]) * window.devicePixelRatio);
      } else if (returnValue === 'forget') host.measured(undefined);
    });
  }

  /** Takes over a value from another preview or the host. */
  setScreenScale(devicePixelsPerMm: number | undefined): void {
    this.devicePixelsPerMm = devicePixelsPerMm;
  }

  /** Pixels per mm at true size. */
  get scale(): number {
    return trueScale(this.devicePixelsPerMm, window.devicePixelRatio);
  }

  ask(): void {
    // In a narrow panel the card is held upright.
    this.side = window.innerWidth >= cardMm.long * this.scale + roomPx ? 'long' : 'short';
    const way = this.side === 'long' ? 'lying' : 'upright';
    setText(
      byId('screen-how'),
      `Hold a bank card, ${way}, against the screen, and stretch the outline until it is exactly as wide.`,
    );
    this.slider.max = `${window.innerWidth - roomPx}`;
    const width = cardMm[this.side] * this.scale;
    // Steps count from the least, so the slider begins at the width there is.
    this.slider.min = `${leastPx + (width % Number(this.slider.step))}`;
    this.slider.value = `${width}`;
    this.stretch();
    this.dialog.returnValue = '';
    this.dialog.showModal();
    this.slider.focus();
  }

  private stretch(): void {
    const width = this.slider.valueAsNumber;
    const other = this.side === 'long' ? cardMm.short : cardMm.long;
    this.card.style.width = `${width}px`;
    this.card.style.height = `${(width * other) / cardMm[this.side]}px`;
    this.slider.setAttribute('aria-valuetext', `${(width / cardMm[this.side]).toFixed(3)} pixels a millimetre`);
  }
}
