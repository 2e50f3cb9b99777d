/** How much each kind of problem is to weigh, from the settings. */

import * as vscode from 'vscode';
import { issueCodes, oldCodeOf } from '../../core/issue-kinds.ts';
import type { Severities } from '../../engine/severity.ts';

export const severitySection = 'tagwright.severity';

const levels = ['error', 'warning', 'info', 'off'] as const;

/** As the settings of the folder that the spec lies in have it; what is no level counts as not set. */
export function severitiesFor(spec: vscode.Uri): Severities {
  const settings = vscode.workspace.getConfiguration(severitySection, spec);
  return Object.fromEntries(
    issueCodes.flatMap((code) => {
      // What is set under a code's old name counts until it is set under the new one.
      const set = settings.get(code) ?? settings.get(oldCodeOf(code) ?? code);
      const level = levels.find((each) => each === set);
      return level ? [[code, level]] : [];
    }),
  );
}
