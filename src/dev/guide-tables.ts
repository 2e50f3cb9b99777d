/**
 * Tables of the guide that are generated from the code, and the links from each problem's page to the rest of the
 * guide.
 */

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { issueCodes, issueKinds } from '../core/issue-kinds.ts';
import { previewKeys } from '../../webview/preview/panels/key-list.ts';
import { languageReference } from './language-reference.ts';
import { rewrite, withTable } from './markdown-table.ts';
import type { MarkdownTable } from './markdown-table.ts';
import { writeMaterialsTables } from './materials-table.ts';
import { filesWithWebTable, webTable } from './min-web-table.ts';

const guide = 'src/guide';

/** In the order in which a maker meets them. */
const subjects = ['making', 'resources', 'text'] as const;
const severities = ['error', 'warning', 'info'] as const;

/** Every kind of problem with its page: first those of the finished tag, then of files and fonts, then of the text. */
export function problemsTable(): MarkdownTable {
  const rows = subjects.flatMap((about) =>
    severities.flatMap((severity) =>
      issueCodes
        .filter((code) => issueKinds[code].about === about && issueKinds[code].severity === severity)
        .map((code) => [`[\`${code}\`](problems/${code}.md)`, severity, issueKinds[code].summary]),
    ),
  );
  return { header: ['problem', 'default', 'what it says'], rows };
}

interface Manifest {
  readonly contributes: {
    readonly configuration: readonly {
      readonly properties: Readonly<Record<string, { readonly default: unknown; readonly description: string }>>;
    }[];
  };
}

/** The settings except severities, which are in the table of problems. */
export function settingsTable(root: string): MarkdownTable {
  const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as Manifest;
  const { properties } = manifest.contributes.configuration[0]!;
  const rows = Object.entries(properties).map(([name, setting]) => [
    `\`${name}\``,
    `\`${JSON.stringify(setting.default)}\``,
    setting.description,
  ]);
  return { header: ['setting', 'default', 'what it does'], rows };
}

export function keysTable(): MarkdownTable {
  const rows = previewKeys.flatMap(([group, keys]) => keys.map(([key, what]) => [group, key, what]));
  return { header: ['for', 'keys', 'what they do'], rows };
}

export const wayOn = '[All problems](../problems.md) · [The guide](../index.md)\n';

export function writeGuide(root: string): void {
  rewrite(root, `${guide}/reference.md`, languageReference);
  rewrite(root, `${guide}/problems.md`, (text) => withTable(text, problemsTable()));
  rewrite(root, `${guide}/settings.md`, (text) => withTable(text, settingsTable(root)));
  rewrite(root, `${guide}/preview.md`, (text) => withTable(text, keysTable()));
  writeMaterialsTables(root);
  for (const file of filesWithWebTable) rewrite(root, file, (text) => withTable(text, webTable()));
  for (const file of readdirSync(join(root, guide, 'problems')))
    rewrite(root, `${guide}/problems/${file}`, (text) =>
      text.endsWith(wayOn) ? text : `${text.trimEnd()}\n\n${wayOn}`,
    );
}
