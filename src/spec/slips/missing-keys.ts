/** Adds missing keys, each with a first value. */

import { newLineOf } from '../../core/lines.ts';
import type { Issue, TextEdit, YamlPath } from '../../core/issue.ts';
import type { SpecSource } from '../yaml/source.ts';
import { insertion, quoted } from './repair.ts';
import type { Repair } from './repair.ts';
import { firstPiece } from './first-piece.ts';

/** Placeholder values for missing keys; the writer sees the result at once and changes them. */
const firstValues: Readonly<Record<string, string>> = {
  by: '3 mm',
  length: '90 mm',
  width: '60 mm',
  size: '[600 mm, 400 mm]',
  sheet: '{size: [600 mm, 400 mm]}',
  count: '2',
};

export function missingKeyRepairs(issue: Issue, source: SpecSource): Repair[] {
  const { code, message, range, path } = issue;
  const repair = (title: string, edit: TextEdit | undefined): Repair[] =>
    edit ? [{ slip: range, message, title, edits: [edit], rarity: 2 }] : [];
  if (code === 'not-a-spec' && source.value !== null && source.value !== undefined) {
    return repair('Add “tagwright: 1”', insertion(firstLine(source.text), 'tagwright: 1\n'));
  }
  if (code === 'bad-value' && path.join() === 'pieces') return repair('Add a piece', filledPieces(source));
  if (code !== 'missing-key') return [];
  const wanted = /“([^”]+)”[^“”]*$/.exec(message.split(':')[0]!)?.[1];
  if (wanted === 'pieces' && path.length === 0) return repair('Add a piece', addedPiece(source));
  const at: YamlPath = /sheet/.test(message) && wanted === 'sheet' ? [] : path;
  const key = message.startsWith('This text has no size') ? 'width' : wanted;
  const isCode = message.startsWith('“code” needs “size”');
  const value = isCode ? '24 mm' : key !== undefined && Object.hasOwn(firstValues, key) ? firstValues[key] : undefined;
  if (key === undefined || value === undefined) return [];
  return repair(`Add ${quoted(`${key}: ${value}`)}`, source.setKey(at, key, value));
}

/** Offset of the first line with content. */
function firstLine(text: string): number {
  return /^(?:[ \t]*(?:#.*)?\r?\n)*/.exec(text)![0].length;
}

function addedPiece({ text, value }: SpecSource): TextEdit | undefined {
  const piece = firstPiece(value);
  if (!piece) return undefined;
  const end = text.trimEnd().length;
  const newLine = newLineOf(text);
  return {
    range: { start: end, end: text.length },
    text: ['', '', 'pieces:', ...piece.map((line) => `  ${line}`), ''].join(newLine),
  };
}

/** Adds a piece below an empty `pieces` key. */
function filledPieces({ text, value }: SpecSource): TextEdit | undefined {
  const piece = firstPiece(value);
  if (!piece) return undefined;
  const found = /^pieces:[^\S\n]*(?:#.*)?$/m.exec(text);
  if (!found) return undefined;
  return insertion(found.index + found[0].trimEnd().length, piece.map((line) => `\n  ${line}`).join(''));
}
