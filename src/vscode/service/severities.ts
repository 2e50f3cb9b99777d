/** Severities of the kinds of problems, from the settings. */

import * as vscode from 'vscode';
import { issueCodes, oldCodeOf } from '../../core/issue-kinds.ts';
import type { Severities } from '../../engine/severity.ts';

export const severitySection = 'tagwright.severity';

const levels = ['error', 'warning', 'info', 'off'] as const;

/** From the settings of the spec's folder; invalid levels count as not set. */
export function severitiesFor(spec: vscode.Uri): Severities {
  const settings = vscode.workspace.getConfiguration(severitySection, spec);
  return Object.fromEntries(
    issueCodes.flatMap((code) => {
      // A setting under a code's old name counts until the new name is set.
      const set = settings.get(code) ?? settings.get(oldCodeOf(code) ?? code);
      const level = levels.find((each) => each === set);
      return level ? [[code, level]] : [];
    }),
  );
}
