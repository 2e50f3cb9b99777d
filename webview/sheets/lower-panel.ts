/** Summary line below the sheets, with all facts in a panel that it opens. */

import type { SheetProblem, SheetsScene } from '../../src/protocol/sheets.ts';
import { counted } from '../../src/core/units.ts';
import { button, byId, html, setText } from '../common/dom.ts';
import { filledText, rushText } from './words.ts';

export interface SheetsLowerPanelHost {
  opened(open: boolean): void;
  show(problem: Pick<SheetProblem, 'file' | 'offset' | 'row'>): void;
}

export class SheetsLowerPanel {
  private readonly summary = byId('summary');
  private readonly dock = byId('dock');

  constructor(
    private choice: boolean | undefined,
    private readonly host: SheetsLowerPanelHost,
  ) {
    this.summary.addEventListener('click', () => {
      const open = this.dock.hidden !== false;
      this.choice = open;
      this.open(open);
      host.opened(open);
    });
  }

  patch({ sheets, facts, problems, warning }: SheetsScene): void {
    this.summary.hidden = false;
    this.open(this.choice ?? problems.length > 0);
    const pieces = sheets.flatMap((sheet) => sheet.pieces);
    const summaryParts = [
      ...(problems.length > 0 ? [`${warning}: ${counted(problems.length, 'problem')}`] : []),
      counted(sheets.length, 'sheet'),
      counted(pieces.length, 'piece'),
      ...rushText(pieces),
      `filled ${filledText(sheets)}`,
    ];
    setText(this.summary, summaryParts.join(' · '));
    this.summary.classList.toggle('faulty', problems.length > 0);
    const section = this.dock.querySelector<HTMLElement>('.problems')!;
    section.hidden = problems.length === 0;
    setText(section.querySelector('h2')!, warning);
    section.querySelector('ul')!.replaceChildren(...problems.map((problem) => this.item(problem)));
    const list = this.dock.querySelector('dl')!;
    if (facts.length === 0) {
      // An unfinished layout has no facts yet, and those of the one before are not true of it.
      for (const value of list.querySelectorAll('dd')) setText(value, '…');
      return;
    }
    list.replaceChildren(
      ...facts.map(({ name, value }) => html('div', {}, html('dt', {}, name), html('dd', {}, value))),
    );
  }

  private item({ labels, message, file, line, offset, row }: SheetProblem): HTMLElement {
    const where = file === undefined ? `Line ${line}` : `${file}, line ${line}`;
    const toLine = button(where, '', () => {
      this.host.show({ offset, row, ...(file === undefined ? {} : { file }) });
    });
    const who = labels.length > 0 ? [html('strong', {}, `${labels.join(', ')}: `)] : [];
    return html('li', {}, ...who, `${message} `, toLine);
  }

  private open(isOpen: boolean): void {
    this.dock.hidden = !isOpen;
    this.summary.setAttribute('aria-expanded', `${isOpen}`);
  }
}
