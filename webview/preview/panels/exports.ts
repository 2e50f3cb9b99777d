/**
 * Export button: repeats the last kind of export with one press, with the others in a menu. The caution about strength
 * is shown there as well.
 */

import { exportKinds, type ExportKind } from '../../../src/protocol/preview.ts';
import { byId, setAttribute, setText } from '../../common/dom.ts';
import { MenuButton } from '../../common/menu.ts';

interface ExportLabels {
  /** Label of the button, if it was the last kind. */
  readonly button: string;
  /** Label in the menu. */
  readonly item: string;
  readonly hint: string;
}

const words: Readonly<Record<ExportKind, ExportLabels>> = {
  svg: { button: 'Export SVG', item: 'SVG…', hint: 'the cut file' },
  formats: {
    button: 'Export…',
    item: 'Proof and others…',
    hint: 'proof for the customer, job sheet, assembly sheet, DXF, PDF, PNG',
  },
  sheets: { button: 'Export sheets…', item: 'Sheets…', hint: 'every tag laid out on your stock' },
  pack: { button: 'Make a pack…', item: 'Pack…', hint: 'all files of an order, in a folder or a .zip' },
  job: { button: 'New job…', item: 'New job…', hint: 'with orders and other tags, on the sheets there are' },
};

export interface ExportsHost {
  /** The present caution about strength; empty if there is none. */
  caution(): string;
  make(kind: ExportKind): void;
}

export class Exports {
  private readonly button = byId('export') as HTMLButtonElement;
  private readonly other = byId('export-button') as HTMLButtonElement;

  constructor(
    private last: ExportKind,
    host: ExportsHost,
  ) {
    const make = (kind: ExportKind): void => {
      if (kind !== 'job') this.last = kind;
      this.show();
      host.make(kind);
    };
    new MenuButton(
      this.other,
      'Export',
      () =>
        exportKinds.map((kind) => {
          const { item, hint } = words[kind];
          return {
            label: item,
            hint,
            run: () => {
              make(kind);
            },
          };
        }),
      () => host.caution(),
    );
    this.button.addEventListener('click', () => {
      make(this.last);
    });
    this.show();
  }

  /** Disabled without a piece, as there is nothing to export. */
  enable(isEnabled: boolean): void {
    this.button.disabled = this.other.disabled = !isEnabled;
  }

  private show(): void {
    const { button, hint } = words[this.last];
    setText(this.button.querySelector('span')!, button);
    setAttribute(this.button, 'title', `${button.replace('…', '')}: ${hint}`);
  }
}
