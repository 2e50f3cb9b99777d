/** The way to files: what was made last by one press, the rest in a menu. What the strength rests on is said there as well. */

import { exportKinds, type ExportKind } from '../../../src/protocol/preview.ts';
import { byId, setAttribute, setText } from '../../common/dom.ts';
import { MenuButton } from '../../common/menu.ts';

interface Words {
  /** On the button, where it was made last. */
  readonly button: string;
  /** In the menu. */
  readonly item: string;
  readonly hint: string;
}

const words: Readonly<Record<ExportKind, Words>> = {
  svg: { button: 'Export SVG', item: 'SVG…', hint: 'the cut file' },
  formats: { button: 'Export…', item: 'Other formats…', hint: 'DXF, PDF or PNG' },
  sheets: { button: 'Export sheets…', item: 'Sheets…', hint: 'every tag laid out on your stock' },
  pack: { button: 'Make a pack…', item: 'Pack…', hint: 'all files of an order, in a folder or a .zip' },
};

export interface ExportsHost {
  /** Of the strength, as things stand; empty where none is told. */
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
      this.last = kind;
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

  /** Without a piece there is nothing to make files of. */
  enable(isEnabled: boolean): void {
    this.button.disabled = this.other.disabled = !isEnabled;
  }

  private show(): void {
    const { button, item, hint } = words[this.last];
    setText(this.button.querySelector('span')!, button);
    setAttribute(
      this.button,
      'title',
      `${button.replace('…', '')}: ${this.last === 'formats' ? item.toLowerCase() : hint}`,
    );
  }
}
