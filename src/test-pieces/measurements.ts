/**
 * Measurements read off a test piece: the question, how to read an answer, and where in the workshop file it belongs.
 */

import { kerfFrom } from '../edits/kerf.ts';
import { valueAt } from '../core/values.ts';
import { withValue } from '../edits/set-value.ts';
import type { YamlPath } from '../core/issue.ts';
import { parseLength } from '../core/length.ts';
import type { Units } from '../core/units.ts';
import { mostMm } from '../spec/model/measured-values.ts';
import { SpecSource } from '../spec/yaml/source.ts';
import { fieldCells } from './engraving-field.ts';

/** Values by their path in a stock or a tie. */
export type MeasuredAnswer =
  | {
      readonly values: readonly (readonly [path: YamlPath, text: string])[];
      /** A doubt to raise about the value, which is accepted all the same. */
      readonly doubt?: string;
    }
  | { readonly problem: string };

export interface Measurement {
  readonly title: string;
  readonly of: 'stock' | 'tie';
  readonly question: string;
  readonly example: string;
  /** Key of its date in `measured_on`. */
  readonly dated: string;
  readonly read: (typed: string, units: Units) => MeasuredAnswer;
}

export const measurements = {
  kerf: {
    title: 'Kerf',
    of: 'stock',
    question:
      'How wide is each slot, and the piece that fell out of it? Measure both on the labelled face: cuts taper.',
    example: '10.16/9.84, 20.15/19.85, 30.17/29.83',
    dated: 'kerf',
    read: readKerf,
  },
  web: {
    title: 'Narrowest web',
    of: 'stock',
    question: 'What is the narrowest neck that held when you flexed it and pulled on it?',
    example: '1.1',
    dated: 'min_web',
    read: length('min_web', ['min_web'], 'Enter the number at the neck, such as 1.1.'),
  },
  hole: {
    title: 'Hole for a tie',
    of: 'tie',
    question: 'What is the smallest hole that the folded twine or ribbon goes through?',
    example: '3.5',
    dated: 'opening',
    read: length('opening', ['opening'], 'Enter the number at the hole, such as 3.5.'),
  },
  lettering: {
    title: 'Smallest lettering',
    of: 'stock',
    question: 'What are the smallest letters on the ladder that you can read?',
    example: '1.4',
    dated: 'min_x_height',
    read: length('min_x_height', ['min_x_height'], 'Enter the number at the line, such as 1.4.'),
  },
  spacing: {
    title: 'Spacing of engraved lines',
    of: 'stock',
    question: 'What is the widest line spacing that still looks solid?',
    example: '0.1',
    dated: 'hatch',
    read: length('hatch', ['machine', 'hatch'], 'Enter the number at the patch, such as 0.1.'),
  },
  engraving: {
    title: 'Power and speed for engraving',
    of: 'stock',
    question: 'Which square of the field is best? Enter its number, if it has one, or the power and speed you set.',
    example: '13, or 30 %, 200 mm/s',
    dated: 'engrave',
    read: readEngraving,
  },
} as const satisfies Readonly<Record<string, Measurement>>;

export type MeasurementName = keyof typeof measurements;

export const measurementNames = Object.keys(measurements) as readonly MeasurementName[];

/**
 * The text with the measured values and their date (year-month-day); `undefined` if it has no place for them.
 * @param path Path of the stock or tie.
 */
export function withMeasured(
  text: string,
  path: YamlPath,
  values: readonly (readonly [path: YamlPath, text: string])[],
  { of, dated, day }: { readonly of: Measurement['of']; readonly dated: string; readonly day: string },
): string | undefined {
  const days: readonly [YamlPath, string] = [of === 'tie' ? ['measured_on'] : ['measured_on', dated], day];
  return withValues(text, path, [...values, days]);
}

/** Like `withMeasured`, without a date. */
export function withValues(
  text: string,
  path: YamlPath,
  values: readonly (readonly [path: YamlPath, text: string])[],
): string | undefined {
  const source = new SpecSource(text);
  const placed = values.flatMap(([key, value]) => inPlace(source, path, key).map((each) => [each, value] as const));
  return placed.reduce<string | undefined>(
    (written, [key, value]) => (written === undefined ? undefined : withValue(written, [...path, ...key], value)),
    text,
  );
}

/**
 * A kerf given by operation keeps its value for engraving: the test measures slots and what drops out of them, so outer
 * and inner together.
 */
function inPlace(source: SpecSource, path: YamlPath, key: YamlPath): YamlPath[] {
  const there = key[0] === 'kerf' ? valueAt(source.value, [...path, ...key]) : undefined;
  if (typeof there !== 'object' || there === null) return [key];
  return ['outer', ...('inner' in there ? ['inner'] : [])].map((each) => [...key, each]);
}

function length(what: keyof typeof mostMm, path: YamlPath, hint: string): Measurement['read'] {
  return (typed, units) => {
    const result = lengthIn(typed, units);
    if (result === undefined || result.mm <= 0) return { problem: hint };
    if (result.mm > mostMm[what]) return { problem: `That is more than ${mostMm[what]} mm. ${hint}` };
    return { values: [[path, result.text]] };
  };
}

/** A bare number is in the file's units and is written with them. */
function lengthIn(typed: string, units: Units): { readonly mm: number; readonly text: string } | undefined {
  const plain = typed.trim().replace(/^(\d+),(\d+)/, '$1.$2');
  const isBare = /^[\d.]+$/.test(plain);
  const result = parseLength(isBare ? Number(plain) : plain, units);
  return 'mm' in result ? { mm: result.mm, text: isBare ? `${Number(plain)} ${units}` : plain } : undefined;
}

function readKerf(typed: string, units: Units): MeasuredAnswer {
  const pairs = typed.split(/[,;]\s*|\s+(?=[\d.]+\s*\/)/).map((pair) => pair.split('/').map((each) => each.trim()));
  if (pairs.some((pair) => pair.length !== 2 || pair.includes('')))
    return { problem: 'Enter each slot, a slash and its piece, such as 10.16/9.84, 20.15/19.85.' };
  const result = kerfFrom(pairs.map(([slot]) => slot).join(', '), pairs.map(([, piece]) => piece).join(', '), units);
  if ('problem' in result) return result;
  const text = units === 'mm' ? `${Number(result.mm.toFixed(3))} mm` : `${Number((result.mm / 25.4).toFixed(4))} in`;
  return {
    values: [[['kerf'], text]],
    ...(result.doubtful
      ? { doubt: `The pairs differ by ${result.spreadMm.toFixed(2)} mm: measure again before you rely on it.` }
      : {}),
  };
}

function readEngraving(typed: string): MeasuredAnswer {
  const cell = fieldCells().find(({ number }) => String(number) === typed.trim());
  const power = cell?.power ?? /\d+(?:\.\d+)?\s*%/.exec(typed)?.[0];
  const speed = cell?.speed ?? /\d+(?:\.\d+)?\s*(?:mm|cm|in)\s*\/\s*(?:s|min)/.exec(typed)?.[0];
  if (power === undefined || speed === undefined)
    return { problem: `Enter the number of a square, 1 to ${fieldCells().length}, or both: 30 %, 200 mm/s.` };
  return {
    values: [
      [['machine', 'engrave'], speed],
      [['machine', 'power', 'engrave'], power],
    ],
  };
}
