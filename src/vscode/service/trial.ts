/** Tries edits that a spec's text does not have yet, and applies them. */

import type { Engine } from '../../engine/engine.ts';
import { withEdits } from '../../fixes/find-fixes.ts';
import type { TextEdit } from '../../core/issue.ts';
import { applyEdits } from '../common/apply-edits.ts';
import { computeOptions } from './compute-options.ts';
import type { TagResult } from './results.ts';
import { resultOf } from './checked.ts';

export class EditTrial {
  readonly #engine: Engine;

  constructor(engine: Engine) {
    this.#engine = engine;
  }

  /**
   * The result has the same version, because the text has not changed. Rejects with the signal's reason once that is
   * aborted.
   */
  async of(result: TagResult, edits: readonly TextEdit[], signal: AbortSignal): Promise<TagResult> {
    const { uri, version, report } = result;
    const text = withEdits(report.source.text, edits);
    return resultOf(uri, version, await this.#engine.compute(text, computeOptions(uri, signal, report.row)), report);
  }

  /** Applied as one undo step; `false` if the text has changed meanwhile. */
  make({ uri, report }: TagResult, edits: readonly TextEdit[]): Promise<boolean> {
    return applyEdits(uri, report.source, edits);
  }
}
