/** Repairs figures that a hand has slipped on: a letter among the digits, a unit typed twice, a sign, one entry too many. */

import { distance } from 'fastest-levenshtein';
import type { Issue } from '../../core/issue.ts';
import type { SpecSource } from '../yaml/source.ts';
import { quoted, replacement } from './repair.ts';
import type { Repair } from './repair.ts';

const units = ['mm', 'cm', 'in', 'pt', 'px'];

export function numberSlips(issue: Issue, { text }: SpecSource): Repair[] {
  const value = text.slice(issue.range.start, issue.range.end);
  if (value.length > longestValue || value.includes('\n')) return [];
  return [...slippedLength(issue, value), ...minus(issue, value), ...oneTooMany(issue, value)];
}

/** More characters than figures with their units take. */
const longestValue = 60;

/** Letters that are taken for digits. */
const digitOf: Readonly<Record<string, string>> = { o: '0', l: '1', i: '1' };

/** `45 mmm`, `45 m` and `O45 mm`. */
function slippedLength({ code, range }: Issue, value: string): Repair[] {
  if (code !== 'bad-length') return [];
  const found = /^(['"]?)([\d.oOlI]*\d[\d.oOlI]*)\s*([a-z]*)\1$/i.exec(value.trim());
  if (!found) return [];
  const [, , figure = '', written = ''] = found;
  const digits = figure.replace(/[oli]/gi, (letter) => digitOf[letter.toLowerCase()]!).replace(/^0+(?=\d)/, '');
  const unit = written === '' ? '' : (units.find((each) => each === written) ?? nearestUnit(written));
  if (unit === undefined || !Number.isFinite(Number(digits)) || Number(digits) === 0) return [];
  const length = unit === '' ? digits : `${digits} ${unit}`;
  return [repair(range, `A length is a number with mm, cm, in, pt or px: ${length}.`, length)];
}

/** A unit of which one letter is missing, another one or one too many. */
function nearestUnit(written: string): string | undefined {
  return units.find((unit) => distance(unit, written.toLowerCase()) <= 1);
}

/** `-45 mm` where only what is more than 0 has a meaning. */
function minus({ code, range, message }: Issue, value: string): Repair[] {
  const found = code === 'bad-length' && message.endsWith('must be more than 0.') ? /^-\s*(\d.*)$/.exec(value) : null;
  return found ? [repair(range, message, found[1]!)] : [];
}

/** `[70 mm, 35 mm, 5 mm]`: width and height are two. */
function oneTooMany({ range, message }: Issue, value: string): Repair[] {
  const found = /may have at most 2 entries/.test(message) ? /^(\[[^,[\]]+,[^,[\]]+),[^,[\]]+\]$/.exec(value) : null;
  if (!found) return [];
  const two = `${found[1]!}]`;
  return [repair(range, `Width and height are a list of two: ${quoted(two)}.`, two)];
}

function repair(slip: Issue['range'], message: string, text: string): Repair {
  const title = `Change to ${text.startsWith('[') ? quoted(text) : text}`;
  return { slip, message, title, edits: [replacement(slip.start, slip.end, text)], rarity: 1 };
}
