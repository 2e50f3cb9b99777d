/** Cut-out letters that are all there and read as others, in words: what was joined to them, or has run together, makes another letter of them. */

import { listedQuoted } from '../../core/names.ts';
import type { Region } from '../../geometry/types.ts';
import type { Lettering } from '../../tag/lettering/letters.ts';
import { barredStem } from './barred-stems.ts';
import { footedStem } from './footed-stem.ts';
import { joinedLegs } from './joined-leg.ts';
import { joinedStems } from './joined-stems.ts';
import { mergedStrokes } from './merged-strokes.ts';
import { misreadSigns, misreadSignsInWords } from './misread-signs.ts';
import { spreadDots } from './spread-dots.ts';

/** @param shape What is made of the lettering, if it is kept. */
export function readOtherwise(lettering: Lettering, shape: Region | undefined, over: number): string | undefined {
  const signs = shape ? misreadSigns(lettering) : [];
  if (signs.length > 0)
    return `${misreadSignsInWords(signs)}. Engraved, or with letters glued to a backing, it stands clear of them.`;
  const [spread] = shape ? spreadDots(lettering) : [];
  if (spread)
    return `the dots of the “${spread.text}” stand on its two stems, which reads as “ii”. Engraved, or with letters glued to a backing, they stand between them.`;
  const stems = shape && joinedStems(lettering, shape);
  if (stems !== undefined)
    return `“${stems}” stands on bars at its feet, as the strokes of a “u” do. Engraved, or with letters glued to a backing, its letters stand apart.`;
  const barred = shape && barredStem(lettering, shape);
  if (barred)
    return `${barred.as === 'H' ? `“${barred.letters}” is joined halfway up, as the stems of an “H” are` : `what joins the “${barred.letters}” at its top makes a “T” of it`}. Engraved, or with letters glued to a backing, its letters stand apart.`;
  const footed = shape && footedStem(lettering, shape);
  if (footed !== undefined)
    return `the foot of the “L” runs on to the “I”, and “${footed}” reads as a “U”. Engraved, or with letters glued to a backing, its letters stand apart.`;
  const merged = shape ? mergedStrokes(lettering, shape) : [];
  if (merged.length > 0)
    return `the strokes of ${listedQuoted(merged)} run together, with nothing white between them. Engraved, or with letters glued to a backing, its letters stand apart.`;
  const [leg] = joinedLegs(lettering, over);
  return (
    leg &&
    `the left leg of “${leg.text}” is joined to its roof, as that of “ח” is. Engraved, or glued to a backing, it keeps its gap.`
  );
}
