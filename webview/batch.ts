/** Which tag of a batch is shown: chosen by name, or one after another. */

import type { SceneMessage } from '../src/preview/protocol.ts';
import { byId, html, setText } from './dom.ts';

export class BatchChooser {
  private readonly group = byId('batch');
  private readonly list = byId('batch-rows') as HTMLSelectElement;
  private readonly count = byId('batch-count');
  private labels: readonly string[] = [];
  private row = 0;

  constructor(private readonly choose: (row: number) => void) {
    this.list.addEventListener('change', () => {
      choose(this.list.selectedIndex);
    });
    byId('batch-previous').addEventListener('click', () => {
      this.step(-1);
    });
    byId('batch-next').addEventListener('click', () => {
      this.step(1);
    });
    document.addEventListener('keydown', (event) => {
      const by = event.key === 'PageDown' ? 1 : event.key === 'PageUp' ? -1 : 0;
      // In an open list these keys are the list's own.
      if (by === 0 || this.group.hidden || event.target === this.list) return;
      event.preventDefault();
      this.step(by);
    });
  }

  patch({ batch }: SceneMessage): void {
    this.group.hidden = !batch || batch.labels.length < 2;
    if (!batch) return;
    if (batch.labels.join('\n') !== this.labels.join('\n')) {
      this.list.replaceChildren(...batch.labels.map((label) => html('option', {}, label)));
      this.labels = batch.labels;
    }
    this.row = batch.row;
    if (this.list.selectedIndex !== batch.row) this.list.selectedIndex = batch.row;
    setText(this.count, `${batch.row + 1} of ${batch.labels.length}`);
  }

  /** Round and round. */
  private step(by: number): void {
    const { length } = this.labels;
    this.choose((this.row + by + length) % length);
  }
}
