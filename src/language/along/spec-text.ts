/** Writes the value of a spec as text, as people write specs: one shape or piece a line, in blocks where it is long. */

import { yamlText } from '../completion/snippets.ts';
import { isGroup } from '../../core/values.ts';

type Group = Readonly<Record<string, unknown>>;

const widest = 118;

/** Whose entries have a line each, however short they are. */
const sections: ReadonlySet<string> = new Set(['shapes', 'pieces', 'hangers', 'stocks', 'ties']);

/** `notes`: comments at the end of the lines of entries, by section and name. */
export function specText(spec: Group, notes: ReadonlyMap<string, string> = new Map()): string {
  const lines = Object.entries(spec).flatMap(([key, value]) =>
    sections.has(key) && isGroup(value) ? ['', `${key}:`, ...sectionLines(key, value, notes)] : entryLines(key, value),
  );
  return `${lines.join('\n')}\n`;
}

function sectionLines(section: string, value: Group, notes: ReadonlyMap<string, string>): string[] {
  return Object.entries(value).flatMap(([name, each]) => {
    const note = notes.get(`${section}/${name}`);
    // A comment speaks of its line: all of the entry is on it.
    if (note !== undefined) return [`  ${yamlText(name)}: ${flowOf(each)}  # ${note}`];
    return entryLines(name, each).map((line) => `  ${line}`);
  });
}

function entryLines(key: string, value: unknown): string[] {
  const lead = `${yamlText(key)}:`;
  const flow = `${lead} ${flowOf(value)}`;
  const inner = flow.length > widest ? blockLines(value) : undefined;
  return inner ? [lead, ...inner.map((line) => `  ${line}`)] : [flow];
}

/** `undefined` for what has no parts. */
function blockLines(value: unknown): string[] | undefined {
  if (isGroup(value)) return Object.entries(value).flatMap(([key, each]) => entryLines(key, each));
  return Array.isArray(value) ? value.map((each) => `- ${flowOf(each)}`) : undefined;
}

/** In flow style, on one line. */
export function flowOf(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flowOf).join(', ')}]`;
  if (isGroup(value))
    return `{${Object.entries(value)
      .map(([key, each]) => `${yamlText(key)}: ${flowOf(each)}`)
      .join(', ')}}`;
  if (typeof value !== 'string') return String(value);
  // Numbers with units, and dates, are left unquoted, as people write them.
  return /^\d+(\.\d+)? ?(mm|cm|in|pt|px|%|mm\/s|mm\/min|in\/s|mm\/s2)$|^\d{4}-\d{2}-\d{2}$/.test(value)
    ? value
    : yamlText(value);
}
