/** Severity settings in `package.json`, one for each kind of problem, generated from the table of codes. */

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { canBeSilenced } from '../engine/severity.ts';
import { issueCodes, issueKinds } from '../core/issue-kinds.ts';

interface Setting {
  readonly type: 'string';
  readonly enum: readonly string[];
  readonly default: 'default';
  readonly scope: 'resource';
  readonly description: string;
}

export const settingPrefix = 'tagwright.severity.';

export function severitySettings(): Record<string, Setting> {
  return Object.fromEntries(
    issueCodes.map((code) => {
      const { severity, summary } = issueKinds[code];
      const levels = ['default', 'error', 'warning', 'info', ...(canBeSilenced(code) ? ['off'] : [])];
      const description = `${summary} Default: ${severity}.`;
      return [
        settingPrefix + code,
        { type: 'string', enum: levels, default: 'default', scope: 'resource', description },
      ];
    }),
  );
}

interface Manifest {
  contributes: { configuration: { title: string; properties: Record<string, unknown> }[] };
}

/** Writes them into `package.json` as the second group of settings. */
export function writeSeveritySettings(root: string): void {
  const file = join(root, 'package.json');
  const before = readFileSync(file, 'utf8');
  const manifest = JSON.parse(before) as Manifest;
  const group = manifest.contributes.configuration.find(({ title }) => title === 'Problems')!;
  group.properties = severitySettings();
  const after = `${JSON.stringify(manifest, null, 2)}\n`;
  if (after !== before) writeFileSync(file, after);
}
