/**
 * Strip with the tags of a batch, each with a small picture, its size and a mark for problems; one of them is selected.
 */

import type { BatchMessage, BatchTag, SceneMessage } from '../../../src/protocol/preview.ts';
import { byId, html, setAttribute, setText, svg } from '../../common/dom.ts';
import { counted, sizeText } from '../../../src/core/units.ts';
import type { Units } from '../../../src/core/units.ts';
import { setSeverity, severityIcon } from '../../common/icons.ts';

export class BatchStrip {
  private readonly group = byId('batch');
  private readonly list = byId('batch-rows');
  private readonly count = byId('batch-count');
  private options: readonly BatchOption[] = [];
  private labels: readonly string[] = [];
  /** The tag that is chosen; its drawing may still be on its way. */
  private row = 0;
  /** Rows gone through since the last drawing of a chosen one: drawings of these are too late. */
  private readonly passed = new Set<number>();

  constructor(private readonly ask: (row: number) => void) {
    this.list.addEventListener('click', ({ target }) => {
      const row = this.options.findIndex(({ element }) => element.contains(target as Node));
      if (row >= 0) this.choose(row);
    });
    this.list.addEventListener('keydown', (event) => {
      this.steer(event);
    });
    byId('batch-previous').addEventListener('click', () => {
      this.step(-1);
    });
    byId('batch-next').addEventListener('click', () => {
      this.step(1);
    });
    // From now on the cursor in the text may choose.
    window.addEventListener('blur', () => {
      this.passed.clear();
    });
    document.addEventListener('keydown', (event) => {
      const by = event.key === 'PageDown' ? 1 : event.key === 'PageUp' ? -1 : 0;
      if (by === 0 || this.group.hidden || hasModifier(event)) return;
      event.preventDefault();
      this.step(by);
    });
  }

  patch({ batch }: SceneMessage): void {
    this.group.hidden = !batch || batch.labels.length < 2;
    const isOther = batch?.labels.join('\n') !== this.labels.join('\n');
    if (isOther) this.passed.clear();
    if (!batch) return;
    if (isOther) this.fill(batch.labels);
    if (batch.row !== this.row && this.passed.has(batch.row)) return;
    this.passed.clear();
    this.mark(batch.row);
  }

  /** Marked at once, so that keys pressed before it is drawn count from there. */
  private choose(row: number): void {
    this.passed.add(this.row);
    this.mark(row);
    this.ask(row);
  }

  /** Shows what is known about each, once all have been computed. */
  describe({ tags }: Pick<BatchMessage, 'tags'>, units: Units): void {
    this.options.forEach((option, row) => {
      const tag = tags[row];
      if (tag) option.describe(tag, units);
    });
  }

  private fill(labels: readonly string[]): void {
    const held = this.list.contains(document.activeElement);
    this.labels = labels;
    this.options = labels.map((label) => new BatchOption(label));
    this.list.replaceChildren(...this.options.map(({ element }) => element));
    if (held) this.options[this.row]?.element.focus();
  }

  private mark(row: number): void {
    this.row = row;
    const held = this.list.contains(document.activeElement);
    this.options.forEach(({ element }, index) => {
      setAttribute(element, 'aria-selected', `${index === row}`);
      element.tabIndex = index === row ? 0 : -1;
    });
    const shown = this.options[row]?.element;
    if (held) shown?.focus();
    shown?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    setText(this.count, `${row + 1} of ${this.labels.length}`);
  }

  /** Wraps around at both ends. */
  private step(by: number): void {
    const { length } = this.labels;
    this.choose((this.row + by + length) % length);
  }

  /** Arrow keys change the selection, and the drawing with it. */
  private steer(event: KeyboardEvent): void {
    if (hasModifier(event)) return;
    const last = this.labels.length - 1;
    const rows: Readonly<Record<string, number>> = {
      ArrowRight: Math.min(this.row + 1, last),
      ArrowLeft: Math.max(this.row - 1, 0),
      Home: 0,
      End: last,
    };
    const row = rows[event.key];
    if (row === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    if (row !== this.row) this.choose(row);
  }
}

/** Keys with modifiers belong to the editor. */
function hasModifier({ ctrlKey, metaKey, altKey, shiftKey }: KeyboardEvent): boolean {
  return ctrlKey || metaKey || altKey || shiftKey;
}

class BatchOption {
  private readonly picture = svg('svg', { class: 'picture', 'aria-hidden': 'true' });
  private readonly size = html('span', { class: 'size' });
  private readonly icon = severityIcon('info');
  private readonly problems = html('span', { class: 'spoken' });
  readonly element: HTMLElement;

  constructor(private readonly label: string) {
    this.icon.toggleAttribute('hidden', true);
    this.element = html(
      'div',
      { role: 'option', 'aria-selected': 'false', tabindex: '-1', title: label },
      this.picture,
      html('span', { class: 'name' }, label),
      this.size,
      this.icon,
      this.problems,
    );
  }

  describe({ picture, width, height, problems, severity, isHardToRead, isTall }: BatchTag, units: Units): void {
    setAttribute(this.picture, 'viewBox', `0 0 ${picture?.size.width ?? 1} ${picture?.size.height ?? 1}`);
    this.picture.replaceChildren(
      ...(picture?.paths ?? []).map(({ use, data }) => svg('path', { class: use, d: data })),
    );
    const size = width === undefined || height === undefined ? 'no drawing' : sizeText(width, height, units);
    const tall = isTall ? 'much taller than the others' : '';
    const unreadable = isHardToRead ? 'hard to read' : '';
    setText(this.size, unreadable || size);
    this.size.classList.toggle('stands-out', isTall || isHardToRead);
    // A tall tag is not a problem of its own, only within the set.
    const gravest = severity ?? (isTall ? 'info' : undefined);
    this.icon.toggleAttribute('hidden', gravest === undefined);
    if (gravest) setSeverity(this.icon, gravest);
    const found = [problems > 0 ? counted(problems, 'problem') : '', unreadable, tall].filter((words) => words !== '');
    setText(this.problems, found.map((words) => `, ${words}`).join(''));
    setAttribute(this.element, 'title', [this.label, size, ...found].join(', '));
  }
}
