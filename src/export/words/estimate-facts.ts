/** What cutting takes (lengths, time, cost, weight), in words: the same wording for a figure wherever it is shown. */

import type { JobEstimate } from '../../toolpath/estimate.ts';
import type { Units } from '../../core/units.ts';
import { listed } from '../../core/names.ts';
import { areaText, shortLength, finest } from '../../core/units.ts';
import { grams, minutes, money, wayIn, waysIn } from '../../core/in-words.ts';

export interface Fact {
  readonly name: string;
  readonly value: string;
}

export function estimateFacts(estimate: JobEstimate, units: Units): Fact[] {
  const { cutLength, scoreLength, travelLength, engravedArea, hatch, sheetArea, cost, weight } = estimate;
  const [cut, score, travel] = waysIn([cutLength, scoreLength, travelLength], units);
  const facts = [{ name: 'Cut', value: cut! }];
  if (scoreLength > 0) facts.push({ name: 'Score', value: score! });
  if (travelLength > 0) facts.push({ name: 'Travel', value: travel! });
  if (engravedArea > 0) {
    const lines = hatch === undefined ? '' : `, lines ${shortLength(hatch, units, finest)} apart`;
    facts.push({ name: 'Engraved', value: `${areaText(engravedArea, units)}${lines}` });
  }
  facts.push({ name: 'Sheet', value: areaText(sheetArea, units) });
  const time = timeIn(estimate);
  const lacking = speedsLacking(estimate);
  if (time !== undefined) facts.push({ name: 'Machine', value: time });
  else if (lacking !== undefined) facts.push({ name: 'Machine', value: `unknown: ${lacking}` });
  if (weight !== undefined) facts.push({ name: 'Weight', value: grams(weight) });
  if (cost) facts.push({ name: 'Material cost', value: money(cost) });
  return facts;
}

/** “no speed to score”: why the time is unknown although there is a machine; `undefined` if it is known, or there is none. */
export function speedsLacking({ time }: JobEstimate): string | undefined {
  if (!('missing' in time) || time.missing.includes('machine')) return undefined;
  return `no speed to ${listed(time.missing, Infinity, 'or')}`;
}

/** The most useful facts, short enough for one line above the piece. */
export function estimateLine(estimate: JobEstimate, units: Units): string {
  const weight = estimate.weight === undefined ? undefined : grams(estimate.weight);
  const parts = [`cut ${wayIn(estimate.cutLength, units)}`, timeIn(estimate), weight];
  return parts.filter((part) => part !== undefined).join(' · ');
}

function timeIn({ time }: JobEstimate): string | undefined {
  return 'seconds' in time ? `about ${minutes(time.seconds)}` : undefined;
}
