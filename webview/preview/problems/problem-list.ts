/** List of all problems of the spec, including those without a place on the drawing. */

import type { SceneAccepted, ScenePin } from '../../../src/protocol/scene.ts';
import { byId, html, setAttribute, setText } from '../../common/dom.ts';
import { setSeverity, severityIcon, wrenchIcon } from '../../common/icons.ts';
import { KeyedList, type ItemView } from '../../common/keyed.ts';
import { roving } from '../../common/roving.ts';

export class ProblemList {
  private readonly rows: KeyedList<ScenePin>;
  private readonly section = byId('problems');
  private readonly acceptedTitle: HTMLElement;
  private readonly acceptedRows: KeyedList<SceneAccepted>;

  /** `accepted`: the details element below the list. */
  constructor(
    list: HTMLElement,
    private readonly accepted: HTMLElement,
  ) {
    this.rows = new KeyedList<ScenePin>(list, () => new IssueRow());
    roving(list);
    this.acceptedTitle = accepted.querySelector('summary')!;
    const rows = accepted.querySelector('ul')!;
    this.acceptedRows = new KeyedList<SceneAccepted>(rows, () => new AcceptedRow());
    roving(rows);
  }

  patch(pins: readonly ScenePin[], accepted: readonly SceneAccepted[]): void {
    this.rows.patch(pins);
    // If there are none, the summary line says so.
    this.section.hidden = pins.length === 0 && accepted.length === 0;
    this.accepted.hidden = accepted.length === 0;
    setText(this.acceptedTitle, `${accepted.length} accepted`);
    this.acceptedRows.patch(accepted);
  }
}

/** Less prominent: the maker knows about it and has given a reason for accepting it. */
class AcceptedRow implements ItemView<SceneAccepted> {
  private readonly message = html('span', { class: 'message' });
  private readonly reason = html('span', { class: 'reason' });
  private readonly line = html('span', { class: 'line-number' });
  private readonly button = html(
    'button',
    { type: 'button' },
    html('span', {}, this.message, ' ', this.reason),
    this.line,
  );
  readonly element = html('li', {}, this.button);

  update({ code, message, reason, line, source }: SceneAccepted): void {
    setText(this.message, message);
    setText(this.reason, `Accepted: ${reason}`);
    setText(this.line, `line ${line}`);
    setAttribute(this.button, 'data-offset', `${source}`);
    setAttribute(this.button, 'title', code);
  }
}

class IssueRow implements ItemView<ScenePin> {
  private readonly icon = severityIcon('warning');
  private readonly severity = html('span', { class: 'spoken' });
  private readonly message = html('span', { class: 'message' });
  private readonly line = html('span', { class: 'line-number' });
  private readonly button = html('button', { type: 'button' }, this.icon, this.severity, this.message, this.line);
  private readonly fixes = html('button', { type: 'button', class: 'open-fixes' }, wrenchIcon());
  readonly element = html('li', {}, this.button, this.fixes);

  update(pin: ScenePin): void {
    setSeverity(this.icon, pin.severity);
    setText(this.severity, `${pin.severity}: `);
    setText(this.message, pin.message);
    setText(this.line, `line ${pin.line}`);
    setAttribute(this.button, 'data-offset', `${pin.source}`);
    setAttribute(this.button, 'data-pin', pin.id);
    setAttribute(this.button, 'data-severity', pin.severity);
    setAttribute(this.fixes, 'data-pin', pin.id);
    setAttribute(this.fixes, 'title', 'Show fixes (F)');
    setAttribute(this.fixes, 'aria-label', `Show fixes for: ${pin.message}`);
  }
}
