/** The true size of this screen: measured once with a card that everyone has, and from then on what 100 % means. */

import { byId, setText } from '../../common/dom.ts';
import { actualScale } from '../../common/camera/viewport.ts';

/** ISO/IEC 7810, ID-1: the size of bank cards, in mm. */
export const cardMm = { long: 85.6, short: 53.98 } as const;

/** Room that the dialog needs beside the card, in px. */
const roomPx = 60;

/** Pixels for a millimetre on a screen nobody has measured: CSS fixes 1 in = 25.4 mm = 96 px, whatever the screen. */
export function trueScale(devicePixelsPerMm: number | undefined, devicePixelRatio: number): number {
  return devicePixelsPerMm === undefined ? actualScale : devicePixelsPerMm / devicePixelRatio;
}

export interface ScreenHost {
  /** `undefined`: as if it had not been measured. */
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
      // The page's own keys are not meant.
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

  /** What another preview, or the host, knows. */
  learn(devicePixelsPerMm: number | undefined): void {
    this.devicePixelsPerMm = devicePixelsPerMm;
  }

  /** Pixels for a millimetre at true size. */
  get scale(): number {
    return trueScale(this.devicePixelsPerMm, window.devicePixelRatio);
  }

  ask(): void {
    // In a narrow panel the card goes upright.
    this.side = window.innerWidth >= cardMm.long * this.scale + roomPx ? 'long' : 'short';
    const way = this.side === 'long' ? 'lying' : 'upright';
    setText(
      byId('screen-how'),
      `Hold a bank card, ${way}, against the screen, and stretch the outline until it is exactly as wide.`,
    );
    this.slider.max = `${window.innerWidth - roomPx}`;
    this.slider.value = `${cardMm[this.side] * this.scale}`;
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
