/** What a proof says beside its drawing, line by line. */

import { boundsOf } from '../geometry/measure.ts';
import { takesOf } from '../measure/takes.ts';
import type { Takes } from '../measure/takes.ts';
import type { Units } from '../spec/length.ts';
import { kerfOf } from '../tag/cut-on-the-line.ts';
import type { Tag } from '../tag/tag.ts';
import type { Job } from './job.ts';

export interface Fact {
  readonly name: string;
  readonly value: string;
}

/** 82.04 mm, or 3.230 in. */
export function lengthIn(mm: number, units: Units): string {
  return units === 'mm' ? `${trimmed(mm, 1)} mm` : `${trimmed(mm / 25.4, 3)} in`;
}

/** 0.125 mm, or 0.0049 in: of what is as fine as a beam. */
function finelyIn(mm: number, units: Units): string {
  return units === 'mm' ? `${trimmed(mm, 3)} mm` : `${trimmed(mm / 25.4, 4)} in`;
}

/** Two sides of a box. */
export function sizeIn(width: number, height: number, units: Units): string {
  return `${lengthIn(width, units).replace(/ \w+$/, '')} × ${lengthIn(height, units)}`;
}

function trimmed(value: number, decimals: number): string {
  return String(Number(value.toFixed(decimals)) + 0);
}

export function proofFacts(job: Job): Fact[] {
  const { tag } = job;
  const { units, tie } = tag;
  const fact = (name: string, value: string | undefined): Fact[] => (value === undefined ? [] : [{ name, value }]);
  const takes = takesOf(tag, job.plan);
  return [
    ...textsOf(job).flatMap((text) => fact('Text', text)),
    ...fact('Material', materialOf(tag)),
    ...tag.pieces.flatMap((piece) =>
      fact(tag.pieces.length > 1 ? piece.title : 'Finished size', pieceSize(piece, units)),
    ),
    ...tag.pieces.flatMap(({ hangers }) => hangers.flatMap((hanger) => fact('Hole', openingOf(hanger, units)))),
    ...fact('Tie', tie && `${tie.kind} of ${lengthIn(tie.size, units)}`),
    ...fact('Kerf', kerfFact(tag)),
    ...takesFacts(takes, units),
  ];
}

/** The texts of each font, each text once. */
function textsOf({ tag, fonts }: Job): string[] {
  const byFont = new Map<string, Set<string>>();
  for (const { generator, path } of tag.made.keys()) {
    if (generator.kind !== 'text') continue;
    const font = fonts.find(({ paths }) => paths.some((each) => each.join('/') === path.join('/')));
    const style = font && !/regular/i.test(font.style) ? ` ${font.style}` : '';
    const name = `${font?.family ?? generator.font}${style}`;
    const text = generator.text.trim().replace(/\s*\n\s*/g, ' / ');
    byFont.set(name, (byFont.get(name) ?? new Set()).add(`“${text}”`));
  }
  return [...byFont].map(([font, texts]) => `${[...texts].join(', ')} in ${font}`);
}

function materialOf({ stock, units }: Tag): string | undefined {
  const { material, thickness } = stock;
  const parts = [material, thickness === undefined ? undefined : lengthIn(thickness, units)];
  const said = parts.filter((part) => part !== undefined);
  return said.length > 0 ? said.join(', ') : undefined;
}

function kerfFact({ stock, units, output }: Tag): string | undefined {
  if (stock.kerf === 0) return undefined;
  const { outer, inner } = kerfOf(stock);
  const [outside, inside] = [finelyIn(outer, units), finelyIn(inner, units)];
  const widths = outer === inner ? outside : `${outside} outside, ${inside} in openings`;
  return `${widths}, ${output.compensate ? 'allowed for' : 'not allowed for'}`;
}

function pieceSize({ region }: Tag['pieces'][number], units: Units): string | undefined {
  const bounds = boundsOf(region);
  return bounds && sizeIn(bounds.maxX - bounds.minX, bounds.maxY - bounds.minY, units);
}

function openingOf(
  { kind, openingSize, openingLength }: Tag['pieces'][number]['hangers'][number],
  units: Units,
): string {
  return kind === 'slot' ? `slot of ${sizeIn(openingLength, openingSize, units)}` : `Ø ${lengthIn(openingSize, units)}`;
}

export function takesFacts(takes: Takes, units: Units): Fact[] {
  const { cutLength, scoreLength, travelLength, engravedArea, interval, sheetArea, cost } = takes;
  const facts = [{ name: 'Cut', value: lengthIn(cutLength, units) }];
  if (scoreLength > 0) facts.push({ name: 'Score', value: lengthIn(scoreLength, units) });
  if (travelLength > 0) facts.push({ name: 'Travel', value: lengthIn(travelLength, units) });
  if (engravedArea > 0) {
    const lines = interval === undefined ? '' : `, lines ${finelyIn(interval, units)} apart`;
    facts.push({ name: 'Engraved', value: `${areaIn(engravedArea, units)}${lines}` });
  }
  facts.push({ name: 'Sheet', value: areaIn(sheetArea, units) });
  const [time, weight] = [timeIn(takes), weightIn(takes)];
  if (time !== undefined) facts.push({ name: 'Machine', value: time });
  if (weight !== undefined) facts.push({ name: 'Weight', value: weight });
  if (cost) facts.push({ name: 'Stock cost', value: `${cost.amount.toFixed(2)} ${cost.currency ?? ''}`.trim() });
  return facts;
}

/** The most telling of it, short enough for a line above the piece. */
export function takesLine(takes: Takes, units: Units): string {
  const parts = [`cut ${lengthIn(takes.cutLength, units)}`, timeIn(takes), weightIn(takes)];
  return parts.filter((part) => part !== undefined).join(' · ');
}

function timeIn({ time }: Takes): string | undefined {
  return 'seconds' in time ? `about ${minutes(time.seconds)}` : undefined;
}

function weightIn({ weight }: Takes): string | undefined {
  return weight === undefined ? undefined : `${trimmed(weight, weight < 10 ? 1 : 0)} g`;
}

function areaIn(mm2: number, units: Units): string {
  return units === 'mm' ? `${trimmed(mm2 / 100, 1)} cm²` : `${trimmed(mm2 / 645.16, 2)} in²`;
}

/** 40 s, 1 min 05 s, 12 min. */
export function minutes(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 60) return `${whole} s`;
  if (whole >= 600) return `${Math.round(whole / 60)} min`;
  return `${Math.floor(whole / 60)} min ${String(whole % 60).padStart(2, '0')} s`;
}
