/** Speeds and accelerations as people write them: `12 mm/s`, `900 mm/min`, `0.5 in/s`, `1500 mm/s2`. */

import { clip } from '../../core/length.ts';

const mmPer = { mm: 1, cm: 10, m: 1000, in: 25.4 } as const;

const pattern = /^(\d+(?:\.\d+)?|\.\d+)\s*(mm|cm|m|in)\s*\/\s*(s2|s²|s|min)$/;

/** No machine is faster or accelerates harder; in mm and seconds. */
const most = { speed: 20_000, acceleration: 200_000 } as const;

export type RateResult = { readonly value: number } | { readonly problem: string };

/** The value in mm/s for a speed, in mm/s² for an acceleration. A bare number would be ambiguous. */
export function parseRate(written: number | string, kind: 'speed' | 'acceleration'): RateResult {
  const example = kind === 'speed' ? '12 mm/s or 0.5 in/s' : '1500 mm/s2';
  const problem = `“${clip(String(written))}” is not ${kind === 'speed' ? 'a speed' : 'an acceleration'}. Write a number with a unit, such as ${example}.`;
  const match = pattern.exec(String(written).trim());
  if (!match) return { problem };
  const [, figure, length, time] = match;
  const perSecond = time === 'min' ? 1 / 60 : 1;
  if ((kind === 'acceleration') !== (time === 's2' || time === 's²')) return { problem };
  return bounded(Number(figure) * mmPer[length as keyof typeof mmPer] * perSecond, kind, problem);
}

function bounded(value: number, kind: 'speed' | 'acceleration', problem: string): RateResult {
  return value > 0 && value <= most[kind] ? { value } : { problem };
}
