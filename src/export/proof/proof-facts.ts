/** Facts beside the picture of a proof, for a customer who knows nothing about how tags are made. */

import { capitalised, listed } from '../../core/names.ts';
import { fine, finest, mmPer, shortLength } from '../../core/units.ts';
import type { Digits, Units } from '../../core/units.ts';
import { distance } from '../../geometry/measure.ts';
import { sizeWords } from '../../spec/model/tie.ts';
import { stockOf } from '../../tag/by-stock.ts';
import type { Piece, PlacedHanger, Tag } from '../../tag/tag.ts';
import { assembliesOf } from '../pictures/assemblies.ts';
import type { Assembly } from '../pictures/assemblies.ts';
import type { Fact } from '../words/estimate-facts.ts';
import { lengthIn, onPaper, sizeIn } from '../../core/in-words.ts';
import { materialInWords } from '../words/material-in-words.ts';

/** A fact; without a `value`, the proof leaves room to write it in. */
export interface ProofFact {
  readonly name: string;
  readonly value?: string;
}

export function proofFacts(tag: Tag): ProofFact[] {
  const assemblies = assembliesOf(tag.pieces);
  const sizes = assemblies.map((assembly): Fact => {
    return { name: assemblies.length > 1 ? titleOf(assembly) : 'Size', value: sizeOf(assembly, tag) };
  });
  const copies = tag.sheet?.copies ?? 1;
  return [
    ...sizes,
    ...factOf('Material', materialInWords(tag)),
    ...factOf(tag.tie ? 'Hangs on' : 'Hangs by', hangingInWords(tag)),
    ...codesOn(tag).map((value): Fact => ({ name: 'The code says', value })),
    { name: 'How many', ...(copies > 1 ? { value: String(copies) } : {}) },
  ];
}

/** The content of each code, once, with its lines joined. */
function codesOn({ pieces }: Tag): string[] {
  const codes = pieces.flatMap(({ marks, sources }) => [...marks, ...sources].flatMap(({ codes: own = [] }) => own));
  return [...new Set(codes.map(({ text }) => text.trim().replace(/\s*[\r\n]+\s*/g, ' / ')))];
}

function factOf(name: string, value: string | undefined): Fact[] {
  return value === undefined || value === '' ? [] : [{ name, value }];
}

export function titleOf({ layers }: Assembly): string {
  return layers[0]![0]!.title;
}

const numbers = ['no', 'one', 'two', 'three', 'four', 'five', 'six'] as const;

/** “97 mm wide, 48 mm high, 6 mm thick (two layers of 3 mm, glued)”. */
export function sizeOf({ layers, bounds }: Assembly, tag: Tag): string {
  const { units } = tag;
  const across = [
    `${lengthIn(bounds.maxX - bounds.minX, units)} wide`,
    `${lengthIn(bounds.maxY - bounds.minY, units)} high`,
  ];
  const sheets = layers.map((layer) => thickest(layer, tag));
  const count = layers.length;
  const number = numbers[count] ?? String(count);
  const known = sheets.filter((sheet) => sheet !== undefined);
  if (known.length < count) return [...across, ...(count > 1 ? [`${number} layers, glued`] : [])].join(', ');
  const { parts, whole } = thicknessesIn(known, units);
  const of = new Set(parts).size === 1 ? ` of ${parts[0]!}` : `: ${listed(parts)}`;
  const each = count > 1 ? ` (${number} layers${of}, glued)` : '';
  return [...across, `${whole} thick${each}`].join(', ');
}

/** Digits for thicknesses, the fewest first: whoever adds up what is written must get the whole. */
const thicknessDigits: readonly Digits[] = [onPaper, fine, finest, [4, 5]];

/** The thickness of each layer and of all, with so many digits that they add up. */
function thicknessesIn(layers: readonly number[], units: Units): { readonly parts: string[]; readonly whole: string } {
  // A sheet of card is a fraction of a millimetre thick.
  const all = layers.some((mm) => mm < 1) ? thicknessDigits.slice(1) : thicknessDigits;
  const tries = all.map((digits) => {
    const figures = layers.map((mm) => Number.parseFloat(shortLength(mm, units, digits)));
    const sum = figures.reduce((total, figure) => total + figure, 0) * mmPer[units];
    const whole = layers.reduce((total, mm) => total + mm, 0);
    return {
      parts: layers.map((mm) => shortLength(mm, units, digits)),
      whole: shortLength(sum, units, finest),
      isTrue: Math.abs(sum - whole) < 1e-6 || shortLength(sum, units, digits) === shortLength(whole, units, digits),
    };
  });
  return tries.find(({ isTrue }) => isTrue) ?? tries.at(-1)!;
}

/** Greatest thickness of pieces side by side; `undefined` if one of them states none. */
function thickest(layer: readonly Piece[], tag: Tag): number | undefined {
  const all = layer.map((piece) => stockOf(piece, tag).thickness);
  return all.includes(undefined) ? undefined : Math.max(...all.map((each) => each!));
}

/** “Twine 2 mm thick, through a hole 4 mm across”; for several tags that hang in the same way, each of them. */
export function hangingInWords(tag: Pick<Tag, 'tie' | 'units' | 'pieces'>): string | undefined {
  const { tie, units, pieces } = tag;
  const hangers = pieces.flatMap((piece) => piece.hangers);
  const isNailed = hangers.length > 0 && hangers.every(({ kind }) => kind === 'keyhole');
  const tied = tie && !isNailed ? `${tie.kind} ${lengthIn(tie.size, units)} ${sizeWords[tie.kind]}` : undefined;
  const openingTexts = assembliesOf(pieces).map(({ layers }) => openingsOf([layers.flat()], units));
  const alike = openingTexts.length > 1 && new Set(openingTexts).size === 1 && openingTexts[0] !== '';
  const openings = alike
    ? `each ${tied ? 'through ' : ''}${openingTexts[0]!}`
    : openingsOf(
        assembliesOf(pieces).map(({ layers }) => layers.flat()),
        units,
      );
  const through = tied && openings !== '' && !alike ? `through ${openings}` : openings;
  const tieText = [tied, through].filter((part) => part !== undefined && part !== '').join(', ');
  return tieText === '' ? undefined : capitalised(tieText);
}

/** “a hole 4 mm across”, “two slits 10 × 3 mm”, of pieces that are glued together in each list; empty without hangers. */
function openingsOf(assemblies: readonly (readonly Piece[])[], units: Units): string {
  const counts = new Map<string, number>();
  for (const hanger of assemblies.flatMap(throughAllLayers)) {
    const what = openingOf(hanger, units);
    counts.set(what, (counts.get(what) ?? 0) + 1);
  }
  return [...counts]
    .map(([what, count]) => (count === 1 ? `a ${what}` : `${numbers[count] ?? count} ${what.replace(/^\w+/, '$&s')}`))
    .join(' and ');
}

/** The hangers of pieces glued together. Of openings that lie over one another, the smallest is the one there is. */
function throughAllLayers(pieces: readonly Piece[]): PlacedHanger[] {
  const hangers = pieces.flatMap((piece) => piece.hangers);
  return hangers.filter(
    (hanger, index) =>
      !hangers.some((other, before) => {
        if (distance(other.centre, hanger.centre) > other.openingSize / 2) return false;
        return other.openingSize < hanger.openingSize || (other.openingSize === hanger.openingSize && before < index);
      }),
  );
}

function openingOf({ kind, openingSize, openingLength }: PlacedHanger, units: Units): string {
  if (kind === 'keyhole') return `keyhole ${sizeIn(openingLength, openingSize, units)}`;
  return kind === 'slot'
    ? `slit ${sizeIn(openingLength, openingSize, units)}`
    : `hole ${lengthIn(openingSize, units)} across`;
}
