/** Fixes offered at a pin: lists, shows and applies them. */

import { makeHelp, titlesOf, type IssueHelp } from '../features/issue-help.ts';
import type { TagResult } from '../service/results.ts';
import type { EditTrial } from '../service/trial.ts';
import type { Issue } from '../../core/issue.ts';
import { isOfSameTag, outcomeOf } from '../../scene/outcome.ts';
import type { PinOfVersion, ToPage } from '../../protocol/preview.ts';
import { pinIds } from '../../scene/pins.ts';

export class PinFixes {
  private trying: AbortController | undefined;

  constructor(
    private readonly help: IssueHelp,
    private readonly trial: EditTrial,
    private readonly send: (message: ToPage) => void,
  ) {}

  /**
   * Sends the titles once the fixes have been tried; only for the pin asked for last, and only while the text is
   * unchanged.
   */
  async offer(result: TagResult, { source, version, pin }: PinOfVersion): Promise<void> {
    const found = await this.find(result, version, pin);
    if (found) this.send({ type: 'fixes', source, version, pin, ...titlesOf(found.help, found.issue) });
  }

  async make(result: TagResult, { version, pin, index }: PinOfVersion & { readonly index: number }): Promise<void> {
    const found = await this.find(result, version, pin);
    if (found) await makeHelp(found.help, index, result);
  }

  /**
   * Sends the tag as the fix would leave it, for the latest request only. The fix was tried before it was offered, so
   * the engine still has it cached.
   */
  async show(
    result: TagResult,
    { source, version, pin, index }: PinOfVersion & { readonly index: number },
  ): Promise<void> {
    const found = await this.find(result, version, pin);
    const change = found && found.help.fixes[index];
    if (!change) return;
    const { signal } = found;
    try {
      const { tag, stale, report } = await this.trial.of(result, change.edits, signal);
      if (signal.aborted || !tag || stale) return;
      if (!isOfSameTag(change, result.report, report)) return;
      this.send({ type: 'outcome', source, version, pin, index, pieces: outcomeOf(tag) });
    } catch (error) {
      if (!signal.aborted) throw error;
    }
  }

  /** Cancels whatever is being tried. */
  stop(): void {
    this.trying?.abort();
  }

  private async find(result: TagResult, version: number, pin: string) {
    this.stop();
    const issue: Issue | undefined = result.issues[pinIds(result.issues).indexOf(pin)];
    if (!issue || result.version !== version) return undefined;
    const controller = new AbortController();
    this.trying = controller;
    try {
      const { signal } = controller;
      return { issue, help: await this.help.for(issue, result, signal), signal };
    } catch (error) {
      if (controller.signal.aborted) return undefined;
      throw error;
    }
  }
}
