/** Specs with a ^ where the cursor is, and what becomes of them when a completion is accepted. */

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { completionsAt } from '../../../src/language/completion/complete.ts';
import type { Completion } from '../../../src/language/completion/suggestion.ts';
import { noUses } from '../../../src/spec/files/used-files.ts';
import { plainOf } from '../../../src/language/completion/snippets.ts';
import type { SampleNote, WorkspaceNames } from '../../../src/language/workspace-names.ts';

const folder = join(import.meta.dirname, '..', '..', '..', 'samples');

export const samples: readonly SampleNote[] = readdirSync(folder)
  .filter((name) => name.endsWith('.tag.yaml'))
  .map((name) => ({ title: name, purpose: 'a sample', text: readFileSync(join(folder, name), 'utf8') }));

/** A font with a name that YAML would misread stands for all of those. */
export const around: WorkspaceNames = {
  fonts: [
    { family: 'Pacifico', note: 'bundled' },
    { family: 'Nunito', weights: [600, 800] },
    { family: 'Odd: font, #1' },
    { family: 'single line' },
  ],
  uses: noUses,
  files: ['leaf.svg', 'fonts/mine, own.ttf', 'house-style.yaml', 'seedlings.csv'],
  samples,
};

export function marked(text: string): { text: string; offset: number } {
  const offset = text.indexOf('^');
  if (offset < 0) throw new Error(`no cursor in ${text}`);
  return { text: text.slice(0, offset) + text.slice(offset + 1), offset };
}

/** What is offered at the ^. */
export function offered(spec: string): Completion[] {
  const { text, offset } = marked(spec);
  return completionsAt(text, offset, around);
}

export const labels = (spec: string): string[] => offered(spec).map(({ label }) => label);

/** The text once the completion of that label has been accepted at the ^. */
export function accepted(spec: string, label: string): string {
  const completion = offered(spec).find((each) => each.label === label);
  if (!completion) throw new Error(`“${label}” is not offered; what is: ${labels(spec).join(', ')}`);
  return accept(marked(spec).text, completion);
}

/** As editors do it: further lines of a snippet are indented like the first. */
export function accept(text: string, { replace, snippet }: Completion): string {
  const lineStart = text.lastIndexOf('\n', replace.start - 1) + 1;
  const indent = /^[ \t]*/.exec(text.slice(lineStart, replace.start))![0];
  return text.slice(0, replace.start) + plainOf(snippet).replaceAll('\n', `\n${indent}`) + text.slice(replace.end);
}
