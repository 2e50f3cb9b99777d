/**
 * Lettering that can no longer be read: filled in, run together, thinned away, too small for the beam, or invisible.
 */

import { samePath } from '../core/values.ts';
import { listed, listedQuoted } from '../core/names.ts';
import { boundsOf, boxCentre } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import type { Finding, YamlPath } from '../core/issue.ts';
import type { Severity } from '../core/issue-kinds.ts';
import { mm } from '../core/figures.ts';
import { withLines } from '../spec/model/shape-model.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import type { Stock } from '../spec/model/workshop-model.ts';
import { measuredOn } from '../spec/model/measured-values.ts';
import { stockOf } from '../tag/by-stock.ts';
import { bottomPieceOf } from '../tag/pieces-below.ts';
import { openingInWords } from '../tag/hanger/in-words.ts';
import type { Letter, Lettering } from '../tag/lettering/letters.ts';
import type { Piece, Tag } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { letteringOn } from './measures/lettering-on.ts';
import type { LetteringOn } from './measures/lettering-on.ts';
import { doubtful, isBlob, isPlainlySpoiled, readability, unlikely } from './measures/readability.ts';
import type { Readability } from './measures/readability.ts';
import { spoiledWord } from './measures/spoiled-word.ts';
import { smallStrokes } from './measures/small-strokes.ts';
import { buried, buriedShare } from './measures/buried-share.ts';
import { coveringMost } from './measures/covered-letters.ts';
import { cutAway } from './measures/cut-away.ts';
import { lostInWords, lostMarks } from './measures/lost-marks.ts';
import { readOtherwise } from './measures/read-otherwise.ts';
import { fittedInto, mostBridged } from './measures/fitted-size.ts';
import type { Bridged } from './measures/fitted-size.ts';

/**
 * Smallest x-heights in mm: below the first of each pair is worth a note, below the second a warning. A value measured
 * on the stock takes precedence over both. Rule of thumb, no source: a machine reader still makes out less
 * (`test/calibration/legibility.md`), but grain, char and splinters take their share.
 */
const smallest = { engrave: [1.2, 0.8], score: [2, 1.2], cut: [3, 2] } as const;

/** Tolerance for heights, in mm. */
const slackMm = 0.01;

/** Share of a letter that bridges may take: above the first it is worth a note, above the second a warning. Our own judgement. */
const bridgedShare = 0.2;
const mostlyBridged = 1 / 3;

/** Where so many of the letters lose more than the first, hardly a script is read; by eye, and by OCR, on words in five (our own judgement). */
const manyBridged = 1 / 2;

/** Lettering that `fit` made smaller than this share of what was asked for did not come out as meant. Our own judgement. */
const leastOfMost = 0.4;

/** Below this share of missing letters, most readers guess the word. Our own judgement. */
const fewMissing = 0.2;

export const hardToRead: Check = (tag) => {
  const found: Finding[] = [];
  for (const uses of usesByText(tag).values()) {
    const verdicts = uses.map(({ on, piece }) => ({ on, piece, verdict: verdictOn(on, stockOf(piece, tag), piece) }));
    // One legible use is enough: a shadow, or the room cleared round a text, is not there to be read.
    if (verdicts.some(({ verdict }) => !verdict)) continue;
    const least = verdicts.find(({ verdict }) => verdict!.severity === 'info') ?? verdicts[0]!;
    found.push(findingOf(least.on, least.verdict!, least.piece, tag));
  }
  return [...found, ...smallStrokes(tag, (path, text) => quoted(shapeAt(tag, path), text))];
};

function shapeAt({ made }: Tag, path: YamlPath): Shape | undefined {
  return withLines(made.keys()).find((other) => samePath(other.path, path));
}

/** Each text with all its uses on one piece, or on pieces glued together. */
function usesByText(tag: Tag): Map<string, { readonly on: LetteringOn; readonly piece: Piece }[]> {
  const uses = new Map<string, { readonly on: LetteringOn; readonly piece: Piece }[]>();
  for (const piece of tag.pieces) {
    const bottom = bottomPieceOf(piece, tag.pieces);
    for (const on of letteringOn(piece, tag)) {
      const key = JSON.stringify([bottom.id, on.lettering.path]);
      uses.set(key, [...(uses.get(key) ?? []), { on, piece }]);
    }
  }
  return uses;
}

function findingOf({ lettering }: LetteringOn, verdict: Verdict, piece: Piece, tag: Tag): Finding {
  const { path } = lettering;
  const shape = shapeAt(tag, path);
  const text = lettering.letters.map((each) => each.text).join('');
  return {
    code: 'hard-to-read',
    severity: verdict.severity,
    piece: piece.id,
    path: verdict.byGrowth ? growthPath(shape, path) : path,
    points: [lettersCentre(lettering)],
    message: `${quoted(shape, text)} ${verdict.message}`,
  };
}

/** The fate of letters united with something else. */
const fate = {
  body: 'it runs into the rest of the piece',
  cut: 'what surrounds it is cut away as well',
  engrave: 'what surrounds it is engraved as well',
  score: 'what surrounds it is scored as well',
} as const;

/** What a maker does with a name on something solid. */
const instead = ' Engraved there, or cut as a layer of its own and glued on, it would be seen.';

interface Verdict {
  readonly severity: Severity;
  readonly message: string;
  /** Whether the line that grows or thins it is to blame. */
  readonly byGrowth: boolean;
}

/** What `fit` chose as its size, and nobody asked for, is a warning as soon as it is worth a note. */
function verdictOn(each: LetteringOn, stock: Stock, piece: Piece): Verdict | undefined {
  const fitted = fittedInto(each.lettering, piece);
  const verdict = verdictBySize(each, stock, piece, fitted !== undefined);
  const { ofMost = 1 } = fitted ?? {};
  if (verdict || ofMost >= leastOfMost) return verdict;
  const opening = piece.hangers.find(({ kind }) => kind !== 'ring');
  const help = [
    'Fewer words',
    'a larger shape',
    ...(opening ? [`a ring instead of ${openingInWords(opening, piece.body)}`] : []),
  ];
  const message = `came out at ${Math.round(100 * ofMost)} % of the size asked for: all there is room for. ${listed(help, Infinity, 'or')} makes room.`;
  return { severity: 'warning', message, byGrowth: false };
}

function verdictBySize(each: LetteringOn, stock: Stock, piece: Piece, isFitted: boolean): Verdict | undefined {
  const { lettering, use, making, ground } = each;
  const hidden = ground ? buriedShare(lettering, ground) : 0;
  if (hidden > buried.wholly)
    return {
      severity: 'warning',
      message: `cannot be seen: ${fate[each.ground!.of]}.${each.ground!.of === 'body' ? instead : ''}`,
      byGrowth: false,
    };
  const covered = coveredVerdict(each);
  if (hidden > buried.half) {
    // Which letters are gone says more.
    if (covered?.severity === 'warning') return covered;
    return { severity: 'info', message: `is half hidden: ${fate[each.ground!.of]}.`, byGrowth: false };
  }
  const missing = each.kept ? cutAway(lettering, each.kept).length : 0;
  if (missing > 0) return missingLettersVerdict(missing, lettering.letters.length);
  if (covered) return covered;
  const read = readabilityOf(lettering, making.beam, making.over);
  if (!read) return undefined;
  const lost = each.kept ? lostMarks(lettering, each.kept.shape) : [];
  const byGrowth = Math.abs(lettering.grow) > making.beam / 2;
  const measured = use === 'engrave' ? stock.minXHeight : undefined;
  const [usual, least] = measured === undefined ? smallest[use] : [measured, measured];
  const isSmall = read.height < usual - slackMm;
  if (read.doubt > doubtful || isPlainlySpoiled(read)) {
    const isBad = read.doubt > (isBlob(read) ? doubtful : unlikely) || (isFitted && isSmall);
    const severity = isBad ? 'warning' : 'info';
    const isSpaced = lettering.letters.some(({ spaced }) => spaced);
    const cause = byGrowth || isSpaced ? '' : ` at this size, with a beam ${mm(making.beam)} wide`;
    const verb = severity === 'warning' ? 'is' : 'may be';
    return { severity, message: `${verb} hard to read: ${lossesInWords(read, lost)}${cause}.`, byGrowth };
  }
  // That a text is too small says more of all its words.
  const spoiled = isSmall ? undefined : spoiledWord(lettering, making, read);
  if (spoiled)
    return {
      severity: 'info',
      message: `may be hard to read: in “${spoiled.word}” ${lossesInWords(spoiled.read, [])}.`,
      byGrowth,
    };
  if (lost.length > 0) {
    const severity = isFitted && isSmall ? 'warning' : 'info';
    return { severity, message: `may be hard to read: ${lostInWords(lost)}.`, byGrowth: false };
  }
  const otherwise = use === 'cut' ? readOtherwise(lettering, each.kept?.shape, making.over) : undefined;
  if (otherwise !== undefined)
    return { severity: 'info', message: `may be hard to read: ${otherwise}`, byGrowth: false };
  const bridged = use === 'cut' ? mostBridged(lettering, piece) : undefined;
  if (bridged && bridged.share > bridgedShare) return bridgedVerdict(bridged, lettering, isFitted);
  if (!isSmall) return undefined;
  const basis = measured === undefined ? '' : measuredOn(stock.measuredOn?.min_x_height);
  const what = { engrave: 'engraving', score: 'scoring', cut: 'cutting' }[use];
  const severity = isFitted || read.height < least - slackMm ? 'warning' : 'info';
  const message = `is too small for ${what}: its letters are ${mm(read.height)} high; minimum ${mm(usual)}${basis}.`;
  return { severity, message, byGrowth: false };
}

/** The verdict on the shape that covers most. */
function coveredVerdict({ lettering, kept, covers }: LetteringOn): Verdict | undefined {
  const worst = coveringMost(lettering, kept?.shape, covers);
  if (!worst) return undefined;
  const { name, gone, partly, filled, tailless } = worst;
  const said = [
    ...(gone.length > 0 ? [`covers ${quotedLetters(gone)}`] : []),
    ...(partly.length > 0 ? [`covers part of ${quotedLetters(partly)}`] : []),
    ...(filled.length > 0
      ? [`fills ${filled.length === 1 ? 'the counter' : 'the counters'} of ${quotedLetters(filled)}`]
      : []),
    ...(tailless.length > 0
      ? [`hides the ${tailless.length === 1 ? 'tail' : 'tails'} of ${quotedLetters(tailless)}`]
      : []),
  ];
  const severity = gone.length > 0 || filled.length > 1 ? 'warning' : 'info';
  const verb = severity === 'warning' ? 'is' : 'may be';
  const what = name === undefined ? 'what it is united with' : `“${name}”`;
  const help = name !== undefined && 2 * gone.length >= lettering.letters.length ? instead : '';
  return { severity, message: `${verb} hard to read: ${what} ${listed(said)}.${help}`, byGrowth: false };
}

function quotedLetters(letters: readonly Letter[]): string {
  return listedQuoted(letters.map(({ text }) => text));
}

function bridgedVerdict({ letter, share, shares }: Bridged, { letters }: Lettering, isFitted: boolean): Verdict {
  const bridged = shares.filter((each) => each > bridgedShare).length;
  const isMany = bridged > 1 && bridged >= manyBridged * shares.length;
  const severity = isFitted || isMany || share > mostlyBridged ? 'warning' : 'info';
  const verb = severity === 'warning' ? 'is' : 'may be';
  const words = letters.filter(({ opens }) => opens).length;
  const larger = ` Larger letters lose less${words > 1 ? ', such as in two lines' : ''}.`;
  const message = `${verb} hard to read: bridges take ${Math.round(100 * share)} % of the “${letter.text}”.${larger}`;
  return { severity, message, byGrowth: false };
}

function missingLettersVerdict(missing: number, of: number): Verdict {
  const severity = missing < fewMissing * of ? 'info' : 'warning';
  const verb = missing === 1 ? 'is' : 'are';
  const message = missing === of ? 'is cut away.' : `is incomplete: ${missing} of its ${of} letters ${verb} cut away.`;
  return { severity, message, byGrowth: false };
}

const cache = new WeakMap<Lettering, { readonly key: string; readonly read: Readability | undefined }>();

function readabilityOf(lettering: Lettering, beam: number, over: number): Readability | undefined {
  const key = `${beam} ${over}`;
  const before = cache.get(lettering);
  if (before?.key === key) return before.read;
  const read = readability(lettering, { beam, over });
  cache.set(lettering, { key, read });
  return read;
}

/** The losses, in the order in which a reader notices them. */
function lossesInWords(
  { counters, neighbours, marks, gone, fallen, crowded }: Readability,
  lost: readonly Letter[],
): string {
  const closed = counters.drawn - counters.open;
  const found = [
    ...(fallen > 0 ? ['the letters fall apart'] : gone > 0.02 ? ['thin strokes are gone'] : []),
    ...(closed > 0 ? [closedCounters(closed, counters.drawn)] : []),
    ...(marks.fused > 0 ? [fusedMarks(marks.fused)] : []),
    ...(lost.length > 0 ? [lostInWords(lost)] : []),
    ...(neighbours.merged > 0 || crowded > 0.3 ? [runTogether(neighbours)] : []),
  ];
  if (found.length === 0) return 'the bays of its letters fill in';
  return listed(found);
}

function fusedMarks(fused: number): string {
  return fused === 1
    ? 'a dot, accent or apostrophe runs into the next letter'
    : `${fused} dots, accents or apostrophes run into other letters`;
}

function closedCounters(closed: number, drawn: number): string {
  if (closed < drawn) return `${closed} of ${drawn} counters ${closed === 1 ? 'is' : 'are'} closed`;
  if (drawn > 2) return `all ${drawn} counters are closed`;
  return drawn === 1 ? 'its counter is closed' : 'both counters are closed';
}

function runTogether({ apart, merged }: Readability['neighbours']): string {
  if (merged === 0 || 2 * merged >= apart) return 'the letters run together';
  return merged === 1 ? 'two letters run together' : 'some letters run together';
}

function growthPath(shape: Shape | undefined, path: YamlPath): YamlPath {
  const { grow, growAuto } = shape?.modifiers ?? {};
  return grow === undefined && !growAuto ? path : [...path, 'grow'];
}

/** Engraved letters lower than this, in mm, are reported if the stock has no measured value. */
export const usualXHeightMm = smallest.engrave[0];

/** Heights of all lettering that is engraved and visible, in mm. */
export function engravedHeights(tag: Tag): number[] {
  return tag.pieces.flatMap((piece) =>
    letteringOn(piece, tag)
      .filter(({ use }) => use === 'engrave')
      .flatMap(({ lettering, making }) => readabilityOf(lettering, making.beam, making.over)?.height ?? []),
  );
}

/** Longest quotation, in characters: enough to recognise a text. */
const mostQuoted = 24;

function quoted(shape: Shape | undefined, letters: string): string {
  const generator = shape?.generator;
  const text = generator?.kind === 'text' || generator?.kind === 'strokes' ? generator.text : letters;
  const line = Array.from(text.replace(/\s+/g, ' ').trim());
  return `“${line.length > mostQuoted ? `${line.slice(0, mostQuoted - 1).join('')}…` : line.join('')}”`;
}

function lettersCentre({ letters }: Lettering): { x: number; y: number } {
  const all: Region = letters.flatMap(({ region }) => [...region]);
  return boxCentre(boundsOf(all) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 });
}
