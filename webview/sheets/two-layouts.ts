/** The present layout and one that was kept: which of them is drawn, and what differs. */

import type { SheetsScene } from '../../src/protocol/sheets.ts';
import { byId } from '../common/dom.ts';
import { Comparison } from './comparison.ts';
import { byHand, exporting } from './words.ts';

export class TwoLayouts {
  private readonly comparison = new Comparison();
  private now: SheetsScene | undefined;
  private kept: SheetsScene | undefined;
  private showsKept = false;

  /** The layout drawn. The kept one cannot be changed by hand. */
  get drawn(): SheetsScene | undefined {
    return this.showsKept && this.kept ? { ...this.kept, pins: false } : this.now;
  }

  get present(): SheetsScene | undefined {
    return this.now;
  }

  get isKeptDrawn(): boolean {
    return this.showsKept;
  }

  get hasKept(): boolean {
    return this.kept !== undefined;
  }

  setPresent(scene: SheetsScene): void {
    this.now = scene;
  }

  setKept(scene: SheetsScene | undefined): void {
    this.kept = scene;
    byId('compare').hidden = !scene;
  }

  /** Chooses one layout or the other; returns what differs, in words. */
  choose(showsKept: boolean): string {
    this.showsKept = showsKept && this.kept !== undefined;
    for (const button of byId('compare').querySelectorAll('button'))
      button.setAttribute('aria-pressed', `${(button.dataset['shown'] === 'kept') === this.showsKept}`);
    if (!this.drawn) return '';
    byId('export').title = this.showsKept ? exporting.kept : exporting.now;
    return this.comparison.show(this.kept?.figures ?? [], this.now?.figures ?? []);
  }

  /** Why the layout drawn cannot be changed by hand; `undefined` where it can. */
  whyNot(): string | undefined {
    if (!this.drawn || this.drawn.pins) return undefined;
    return this.kept?.pins && this.showsKept ? byHand.kept : byHand.inJobs;
  }
}
