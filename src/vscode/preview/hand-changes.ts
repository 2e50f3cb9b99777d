/** Changes by hand, from the page into the text: tried while dragging, written on release. */

import type { TagResult } from '../service/results.ts';
import type { EditTrial } from '../service/trial.ts';
import type { TextEdit } from '../../core/issue.ts';
import { editsOf } from '../../scene/grips.ts';
import { gripsIn } from './grips-in.ts';
import type { ChangeByHand } from '../../protocol/preview.ts';

export interface HandChangesView {
  /** Shows the tag as the change would leave it. */
  showTrial(result: TagResult, change: ChangeByHand): void;
  /** Shows the tag of the present text. */
  showText(): void;
}

export class HandChanges {
  private waiting: (() => Promise<void>) | undefined;
  private running: AbortController | undefined;

  constructor(
    private readonly trial: EditTrial,
    private readonly view: HandChangesView,
  ) {}

  /**
   * A running trial is allowed to finish, so that something is shown however fast the pointer moves; of those that
   * wait, only the last counts.
   */
  try(result: TagResult, change: ChangeByHand): void {
    const edits = editsFor(result, change);
    if (!edits) return;
    this.waiting = () => this.show(result, change, edits);
    if (!this.running) void this.run();
  }

  async make(result: TagResult, change: ChangeByHand): Promise<void> {
    this.stop();
    const edits = editsFor(result, change);
    const isMade = edits && edits.length > 0 && (await this.trial.make(result, edits));
    // An applied change arrives through the service like any other change of the text.
    if (!isMade) this.view.showText();
  }

  drop(): void {
    this.stop();
    this.view.showText();
  }

  /** Called when the text has changed or the page is no longer visible. */
  stop(): void {
    this.waiting = undefined;
    this.running?.abort();
    this.running = undefined;
  }

  private async run(): Promise<void> {
    const controller = new AbortController();
    this.running = controller;
    try {
      while (this.waiting && !controller.signal.aborted) {
        const next = this.waiting;
        this.waiting = undefined;
        await next();
      }
    } catch (error) {
      if (!controller.signal.aborted) throw error;
    } finally {
      if (this.running === controller) this.running = undefined;
    }
  }

  private async show(result: TagResult, change: ChangeByHand, edits: readonly TextEdit[]): Promise<void> {
    const { signal } = this.running!;
    const tried = await this.trial.of(result, edits, signal);
    if (!signal.aborted) this.view.showTrial(tried, change);
  }
}

/** `undefined` if the change is for an older text, or has no place in this one. */
function editsFor(result: TagResult, { version, grip: id, change }: ChangeByHand): readonly TextEdit[] | undefined {
  const { model, report } = result;
  const grip = version === result.version ? gripsIn(result).find((each) => each.id === id) : undefined;
  return grip && model && editsOf(grip, change, report.source, model.units);
}
