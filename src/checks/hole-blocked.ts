/** Lettering, marks or glued pieces in the way of the tie, or too near to its opening for the tie to pass. */

import { clippedToBox } from '../geometry/clip-to-box.ts';
import { difference, intersection, offset } from '../geometry/clipper.ts';
import { area, boundsOf, boxCentre, distance, widened } from '../geometry/measure.ts';
import type { Point, Region } from '../geometry/types.ts';
import { mm, mm2 } from '../core/figures.ts';
import type { Tie } from '../spec/model/workshop-model.ts';
import { strandOf } from '../spec/model/tie.ts';
import { assemblyOf, balanceOf, gluedOver } from './measures/assembly.ts';
import type { Finding } from '../core/issue.ts';
import type { ReadAs } from '../tag/hanger/reading.ts';
import { piecesBelow } from '../tag/pieces-below.ts';
import type { Piece, PlacedHanger, Tag } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { openingNeighbours, hasLetters, nearness, slipMm } from './measures/hole-beside-marks.ts';
import { lineWithin } from './measures/line-within.ts';
import { roomLeft } from './measures/near.ts';
import { oncePerRow } from './measures/once-per-row.ts';
import { perRegionPair } from './measures/per-region-pair.ts';
import { ringReads } from './measures/ring-reads.ts';
import { clearances, hasOwnHole } from './measures/room-for-tie.ts';

/**
 * Engraving that covers more of the opening than this share surrounds it: a field that the hole is set in, not
 * lettering in its way.
 */
const surrounding = 0.98;

/** Away from its path the tie only needs this share of its thickness, as room for its knot (our own judgement). */
const elsewhere = 0.5;

/** Tolerance for comparing two figures of a drawing, in mm. */
const slackMm = 0.01;

/** An opening of a glued piece is blind once what lies below closes more than this share of it (our own judgement). */
const blindShare = 0.5;

/** Overlaps smaller than this, in mm², only touch. */
const touchingMm2 = 0.02;

/** A score line no further inside the hole than this, in mm, runs along its edge. */
const touchingMm = 0.05;

export const holeBlocked: Check = (tag) =>
  tag.pieces.flatMap((piece) => oncePerRow(piece, (hanger) => blockedHole(hanger, piece, tag)));

function blockedHole(hanger: PlacedHanger, piece: Piece, { pieces, tie }: Tag): Finding[] {
  const findings: Finding[] = [];
  const report = (severity: 'error' | 'warning', overlap: Region, message: string): void => {
    const box = boundsOf(overlap);
    const covered = area(overlap);
    if (!box || covered < touchingMm2) return;
    findings.push({
      code: 'hole-blocked',
      severity,
      piece: piece.id,
      path: hanger.path,
      points: [boxCentre(box)],
      amount: covered,
      message: `${message} (${mm2(covered, 1)}).`,
    });
  };
  // A given `sink` is the maker's decision.
  if (hanger.kind === 'ring' && !((hanger.sink ?? 0) > 0)) {
    // A ring set deeper than touching is meant to bite: only what goes past the middle of the hole is in the way of the
    // tie.
    const bite = shared(hanger.opening, piece.body);
    if (area(bite) > area(hanger.opening) / 2)
      report('warning', bite, 'The hole of the ring is cut mostly out of the body');
  }
  for (const mark of piece.marks) {
    if (mark.operation === 'score') {
      const { length, at } = scored(hanger.opening, mark.region);
      if (!at) continue;
      findings.push({
        code: 'hole-blocked',
        severity: 'warning',
        piece: piece.id,
        path: hanger.path,
        points: [at],
        amount: length,
        message: `A score line runs across the ${openingNoun(hanger)} (${mm(length, 1)} of it).`,
      });
      continue;
    }
    const crossed = shared(hanger.opening, mark.region);
    const isWithin = area(crossed) > surrounding * area(hanger.opening);
    if (isWithin && !hasLetters(mark.lettering)) continue;
    report('warning', crossed, `Engraving runs across the ${openingNoun(hanger)}`);
  }
  // Where the opening below is out of line, the piece below reports what covers its own.
  for (const below of piecesBelow(piece, pieces)) {
    if (meetsOwn(hanger, below)) continue;
    const closed = shared(hanger.opening, below.region);
    if (area(closed) > blindShare * area(hanger.opening))
      report('error', closed, `“${below.title}”, below, closes the ${openingNoun(hanger)} of “${piece.title}”`);
  }
  const over = gluedOver(piece, pieces);
  const towards = over.length > 0 ? pullDirection(hanger, piece, pieces) : { x: 0, y: 0 };
  for (const other of over) {
    const covered = shared(hanger.opening, other.region);
    report('error', covered, `“${other.title}”, glued on, ${coversIt(hanger, other)}`);
    // A nail needs no room beside its opening: its head lies over what is there.
    if (area(covered) < touchingMm2 && hanger.kind !== 'keyhole')
      findings.push(...tooNear(hanger, other, towards, tie, piece));
  }
  return findings.length > 0 ? findings : isLikelySlip(hanger, piece, pieces);
}

/** Nothing is in the way of the tie, but the eye takes the opening for part of its surroundings. */
function isLikelySlip(hanger: PlacedHanger, piece: Piece, pieces: readonly Piece[]): Finding[] {
  const { kind, path, centre } = hanger;
  if (kind === 'ring') return readsAsLetter(hanger, piece);
  const near = openingNeighbours(piece, pieces, hanger).flatMap(({ name, ...beside }) => {
    // An opening that runs into it is reported as such, as an error (`joined-opening.ts`).
    if (area(shared(hanger.opening, beside.region)) >= touchingMm2) return [];
    const found = nearness(hanger, { name, ...beside });
    return found ? [{ ...found, name }] : [];
  });
  const [worst] = near.sort((a, b) => a.width - b.width);
  if (!worst) return [];
  const { width, accentOf, besideDotOf, besideLetter, name } = worst;
  const what = `${sideAmong(hanger, piece)}${openingNoun(hanger)}`;
  const message = accentOf
    ? `The ${what} stands ${mm(width)} above the “${accentOf}” of ${name} and reads as its accent.`
    : besideDotOf
      ? `The ${what} stands ${mm(width)} beside the dot of the “${besideDotOf}” of ${name} and reads as another one.`
      : besideLetter
        ? `The ${what} stands ${mm(width)} beside the “${besideLetter}” of ${name}, about as high, and reads as one more letter.`
        : `${roomLeft(width)} between the ${what} and ${name}: it looks like a mistake; minimum ${mm(slipMm)}.`;
  return [{ code: 'hole-blocked', severity: 'info', piece: piece.id, path, points: [centre], width, message }];
}

/** `left ` or `right ` of two openings, so that one knows which is meant; else nothing. */
function sideAmong(hanger: PlacedHanger, { hangers }: Piece): string {
  const [other, ...more] = hangers.filter((each) => each !== hanger);
  if (!other || more.length > 0 || Math.abs(other.centre.x - hanger.centre.x) < besideMm) return '';
  return hanger.centre.x < other.centre.x ? 'left ' : 'right ';
}

const stemLetters = ['d', '9', 'b', 'P'] as const;

/** Letters that have no stem in any face. */
const stemless = /^[ceosvwxz]$/i;

const besideLetters = 'beside the letters, about as large as they are, and reads as an “o”';

const ringPlaces: Partial<Record<ReadAs, string>> = {
  'on a mark': 'on a dot or an accent of the letters, which can no longer be seen as one',
  // Of some scripts the bar of a T is a part of its own, and is no accent.
  mark: 'so near to a part above the letters, such as a dot or an accent, that it reads as one more',
  ringed: 'on the head of an “A” or a “U” and reads as the ring of an “Å” or an “Ů”',
  neck: 'on a neck, which makes another letter of the one below it, as of an “o” a “b”',
  heads: 'on the heads of two letters and joins them to one',
  'dotted stem': 'on the end of a bare stem and reads as the dot of an “i”',
  'between words': 'over the gap between two words and reads as a sign of its own',
  'loop of a waw': 'on the line of Arabic letters, where it reads as the loop of one, such as “و” or “ف”',
  'letter within': 'between the letters and reads as an “o”',
  crook: 'beside the stem of a letter, over its other strokes, and makes another letter of it, as an “L” becomes a “6”',
  R: 'on the left head of the “N”, which reads as an “R”',
  digit: 'in the bay of a digit and closes it, as that of a “7” that becomes a “3”',
  hook: 'on the hook of the “J” and reads as an “o” before a bare stem',
  roof: 'under the roof of a letter and closes it, as a “ס” or a “ם” is closed',
  tail: 'below a letter and reads as part of it, as the bowl of a “6” does',
  leaning: 'under the first stroke of the first letter and reads as a “d” with it',
  letter: besideLetters,
  'letter behind': besideLetters,
  p: 'behind the last letter and reads as the bowl of a “p”',
  accent: 'on a small letter and reads as its accent',
};

const mildPlaces: ReadonlySet<string> = new Set<ReadAs>(['mark', 'letter', 'leaning', 'letter behind', 'tail']);

/** Of a ring that nobody has put there: a fix may offer another side. */
const otherPlaces = 'Another side may suit better; larger letters help, or a backing with a hole.';

/** The hole of a ring lies outside what hangs on it, but the ring itself may read as one more letter, or make another of one. */
function readsAsLetter(ring: PlacedHanger, { id }: Piece): Finding[] {
  const { path, centre, covers } = ring;
  const readAs = ringReads(ring).filter((each) => each !== 'accent' || !isAtTop(ring));
  const stemLetter = stemLetters.find((letter) => readAs.includes(letter));
  const [place, beside] = Object.entries(ringPlaces).find(([each]) => readAs.includes(each as ReadAs)) ?? [];
  if (!beside && !stemLetter && !covers) return [];
  // What it takes from a letter is worse than what it adds to one; and an “s” has no stem.
  const isLoss = covers && (stemLetter ? stemless.test(covers) : !place || mildPlaces.has(place));
  const message = isLoss
    ? `The ring covers much of the “${covers}”, which may be read as another letter.`
    : stemLetter
      ? `The ring and the stem of the ${'d9'.includes(stemLetter) ? 'first' : 'last'} letter read as a “${stemLetter}”.`
      : `The ring stands ${beside}.`;
  const help = ring.at.kind === 'auto' ? ` ${otherPlaces}` : '';
  return [{ code: 'hole-blocked', severity: 'info', piece: id, path, points: [centre], message: `${message}${help}` }];
}

/** Whether that is where it was asked for: above low letters it has no other place there. */
function isAtTop({ at }: PlacedHanger): boolean {
  return at.kind === 'anchor' && at.anchor.startsWith('top');
}

/** What a glued piece does to an opening below it: one of its own that nearly meets it was meant to. */
function coversIt(hanger: PlacedHanger, other: Piece): string {
  const noun = openingNoun(hanger);
  const own = meetsOwn(hanger, other);
  if (!own) return `covers the ${noun}`;
  return `covers part of the ${noun}: its own is ${mm(distance(own.centre, hanger.centre))} out of line`;
}

/** The opening of another piece that is at least partly in line with it. */
function meetsOwn({ opening }: PlacedHanger, { hangers }: Piece): PlacedHanger | undefined {
  return hangers.find((each) => area(shared(opening, each.opening)) >= touchingMm2);
}

/** The word for an opening; for a ring it is its hole. */
function openingNoun({ kind }: PlacedHanger): string {
  return kind === 'ring' ? 'hole' : kind;
}

/** The part of a score line inside an opening. The line is its outline: a border round the hole is in nobody's way. */
const scored = perRegionPair((opening, line) => lineWithin(line, offset(opening, -touchingMm)));
/**
 * The tie lies over the edge that is up when the tag hangs, and needs its own thickness there, half of that elsewhere.
 */
function tooNear(
  hanger: PlacedHanger,
  glued: Piece,
  towards: Point,
  tie: Tie | undefined,
  { id, body }: Piece,
): Finding[] {
  const { opening, centre, kind, path } = hanger;
  const strand = strandOf(tie, kind === 'slot');
  if (hasOwnHole(glued.region, opening, centre, strand)) return [];
  // The hole of a ring touches the body by construction: the tie goes over its wall, on the other side.
  const isOnBody = kind === 'ring' && area(beyond(glued.region, body)) < touchingMm2;
  const { ahead, behind } = clearances(opening, glued.region, towards, strand);
  const narrow = [
    ...(ahead && ahead.width < strand - slackMm ? [{ ...ahead, minimum: strand }] : []),
    ...(behind && !isOnBody && behind.width < elsewhere * strand - slackMm
      ? [{ ...behind, minimum: elsewhere * strand }]
      : []),
  ];
  const touching = shared(opening, glued.region)[0]?.[0];
  if (touching && !isOnBody) narrow.push({ width: 0, minimum: elsewhere * strand, ends: [touching, touching] });
  const [worst] = narrow.sort((a, b) => a.width - a.minimum - (b.width - b.minimum));
  if (!worst) return [];
  const { width, minimum, ends } = worst;
  const what = tie && tie.kind !== 'twine' ? `${mm(tie.size)} ${tie.kind}` : `${mm(strand)} twine`;
  const message = `${roomLeft(width)} between the ${kind === 'slot' ? 'slot' : 'hole'} and “${glued.title}”, glued on; minimum ${mm(minimum)} for ${what}.`;
  return [{ code: 'hole-blocked', severity: 'warning', piece: id, path, points: ends, width, minimum, message }];
}

/** Direction of the tie's pull: away from the balance of everything that hangs on it. */
function pullDirection({ centre }: PlacedHanger, piece: Piece, pieces: readonly Piece[]): Point {
  const balance = balanceOf(assemblyOf(piece, pieces)) ?? centre;
  return { x: centre.x - balance.x, y: centre.y - balance.y };
}

/** Margin that keeps the closing edges of a clipped region clear of the opening, in mm. */
const besideMm = 1;

/** Only what lies near the opening is examined, as it is small compared with what it may meet. */
const shared = perRegionPair((opening, other) => {
  const box = boundsOf(opening);
  return box ? intersection(opening, clippedToBox(other, widened(box, besideMm))) : [];
});

const beyond = perRegionPair((region, body) => difference(region, [body]));
