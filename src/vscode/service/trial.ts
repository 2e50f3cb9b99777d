/** What a spec would be with a change that its text does not have yet, and making that change. */

import type { Engine } from '../../engine/engine.ts';
import { applied } from '../../fixes/find-fixes.ts';
import type { TextEdit } from '../../core/issue.ts';
import { applyEdits } from '../common/apply-edits.ts';
import { computeOptions } from './compute-options.ts';
import type { TagResult } from './results.ts';
import { resultOf } from './service.ts';

export class EditTrial {
  readonly #engine: Engine;

  constructor(engine: Engine) {
    this.#engine = engine;
  }

  /** Of the same version: the text has not changed. Rejects with the signal's reason once that is aborted. */
  async of(result: TagResult, edits: readonly TextEdit[], signal: AbortSignal): Promise<TagResult> {
    const { uri, version, report } = result;
    const text = applied(report.source.text, edits);
    return resultOf(uri, version, await this.#engine.compute(text, computeOptions(uri, signal, report.row)), report);
  }

  /** One step that can be undone; `false` where the text is another by now. */
  make({ uri, report }: TagResult, edits: readonly TextEdit[]): Promise<boolean> {
    return applyEdits(uri, report.source, edits);
  }
}
