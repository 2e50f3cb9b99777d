/** Job estimate for the whole tag, in the dock: lengths, time, sheet, weight and cost. */

import type { EstimateMessage } from '../../../src/protocol/preview.ts';
import { byId, html } from '../../common/dom.ts';

export class EstimateView {
  private readonly element = byId('takes');
  private readonly list = this.element.querySelector('dl')!;

  show({ facts }: Pick<EstimateMessage, 'facts'>): void {
    this.element.hidden = facts.length === 0;
    const rows = facts.map(({ name, value }) => html('div', {}, html('dt', {}, name), html('dd', {}, value)));
    this.list.replaceChildren(...rows);
  }
}
