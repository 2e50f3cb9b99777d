/** What an independent reader makes of the lettering of spoiled designs: as the font draws it, as made, and after *fix all*. */

import type { Engine, Report } from '../../src/engine/engine.ts';
import { checkBatch } from '../../src/engine/batch.ts';
import { letteringOn } from '../../src/checks/measures/lettering-on.ts';
import type { LetteringOn } from '../../src/checks/measures/lettering-on.ts';
import { fixAll } from '../../src/fixes/fix-all.ts';
import { difference, intersection, normalise, offset, union } from '../../src/geometry/clipper.ts';
import { boundsOf } from '../../src/geometry/measure.ts';
import type { Region } from '../../src/geometry/types.ts';
import type { Piece } from '../../src/tag/tag.ts';
import { drawn } from '../calibration/drawn.ts';
import type { Beam } from '../calibration/drawn.ts';
import { openReader } from '../calibration/reader.ts';
import type { Reader } from '../calibration/reader.ts';
import { optionsOf } from '../collection/designs.ts';
import type { Design } from '../collection/designs.ts';

/** Of engraved lines where the machine says nothing. */
const intervalMm = 0.1;

interface Text {
  readonly word: string;
  readonly piece: Piece;
  readonly on: LetteringOn;
}

/** Prints a line for each text, and the sums of those that are read as the font draws them. */
export async function printReadings(engine: Engine, designs: readonly Design[]): Promise<void> {
  const reader = await openReader();
  const sums = { readable: 0, before: 0, after: 0, lost: 0 };
  console.log('design | text | in the font | as made | after fix all');
  for (const design of designs) {
    const options = optionsOf(design);
    const before = await textsOf(engine, design, design.text);
    const { text } = await fixAll(engine, design.text, options);
    const after = text === design.text ? before : await textsOf(engine, design, text);
    for (const [i, each] of before.entries()) {
      const [asFont, asMade] = [await isRead(reader, each, plain(each)), await isRead(reader, each, seen(each))];
      // A fix may have taken letters away or added some; the same text at the same place in the list is the same.
      const fixed = after[i]?.word === each.word ? after[i] : undefined;
      const asFixed = fixed === each ? asMade : fixed !== undefined && (await isRead(reader, fixed, seen(fixed)));
      console.log([design.name, each.word, ...[asFont, asMade, asFixed].map(yesOrNo)].join(' | '));
      if (!asFont) continue;
      sums.readable += 1;
      sums.before += asMade ? 1 : 0;
      sums.after += asFixed ? 1 : 0;
      sums.lost += asMade && !asFixed ? 1 : 0;
    }
  }
  await reader.close();
  const { readable, before, after, lost } = sums;
  console.log(`Of ${readable} read in the font: ${before} as made, ${after} after fix all, ${lost} lost by it.`);
}

function yesOrNo(isIt: boolean): string {
  return isIt ? 'read' : 'not read';
}

async function textsOf(engine: Engine, design: Design, text: string): Promise<Text[]> {
  const options = optionsOf(design);
  const { all } = await checkBatch(engine, await engine.compute(text, options), options);
  return all.flatMap(({ tag }: Report) =>
    (tag?.pieces ?? []).flatMap((piece) =>
      letteringOn(piece, tag!).map((on) => {
        return { word: on.lettering.letters.map((letter) => letter.text).join(''), piece, on };
      }),
    ),
  );
}

async function isRead(reader: Reader, { word, on }: Text, { region, beam }: Seen): Promise<boolean> {
  return region.length > 0 && (await reader.reads(word, drawn(region, on.lettering.xHeight, beam)));
}

interface Seen {
  readonly region: Region;
  readonly beam?: Beam;
}

function plain({ on }: Text): Seen {
  return { region: union(on.lettering.letters.map(({ region }) => region)) };
}

/** What is dark or light against the rest where the letters stand, whatever else stands there. */
function seen({ piece, on: { lettering, use, making } }: Text): Seen {
  const { minX, minY, maxX, maxY } = boundsOf(lettering.letters.flatMap(({ region }) => region))!;
  const by = Math.max(0, lettering.grow);
  const box: Region = normalise([
    [
      { x: minX - by, y: minY - by },
      { x: maxX + by, y: minY - by },
      { x: maxX + by, y: maxY + by },
      { x: minX - by, y: maxY + by },
    ],
  ]);
  if (use === 'cut') {
    const isOpening = piece.sources.some(
      (source) => source.use === 'cut' && source.lettering?.includes(lettering) === true,
    );
    const region = isOpening ? difference(box, [piece.region]) : intersection(box, piece.region);
    return { region, beam: { use: 'cut', kerf: making.beam } };
  }
  const marks = union(piece.marks.filter(({ operation }) => operation === use).map(({ region }) => region));
  const lines = use === 'score' ? difference(offset(marks, making.beam / 2), [offset(marks, -making.beam / 2)]) : marks;
  return { region: intersection(box, lines), beam: { use: 'engraved', spot: making.beam, interval: intervalMm } };
}
