import assert from 'node:assert/strict';
import { clippedToBox } from '../../../src/geometry/clip-to-box.ts';
import { difference, intersection, normalise, offset } from '../../../src/geometry/clipper.ts';
import { curveBounds } from '../../../src/geometry/curves.ts';
import { flatten } from '../../../src/geometry/flatten.ts';
import { findNecks } from '../../../src/geometry/necks.ts';
import {
  area,
  boundsOf,
  boxCentre,
  perimeter,
  ringArea,
  widened as widenedBox,
} from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Bounds, Region, Ring } from '../../../src/geometry/types.ts';
import type { TextGenerator } from '../../../src/spec/model/shape-model.ts';
import { layoutText } from '../../../src/text/text-layout.ts';
import { isSpeck } from '../../../src/checks/speck.ts';
import { readability } from '../../../src/checks/measures/readability.ts';
import { bundledFace } from '../../fonts/faces.ts';
import { blockFont } from '../../fonts/block-font.ts';
import { packagedFont } from '../../fonts/font-files.ts';
import { StageCache } from '../../../src/tag/cache.ts';
import { Lettering } from '../../../src/tag/lettering/letters.ts';
import type { Letter } from '../../../src/tag/lettering/letters.ts';
import { marksAbove } from '../../../src/tag/lettering/marks-above.ts';
import { withoutSlivers } from '../../../src/tag/size.ts';
import { setText } from '../../../src/tag/lettering/lettering.ts';
import { hairlinesOf, hairlineStrokes, hasHairlines } from '../../../src/tag/overlap/hairlines.ts';
import { lapMm } from '../../../src/tag/overlap/lap.ts';
import { slidOutline } from '../../../src/tag/overlap/slid-outline.ts';
import { closedCounters, textOf } from '../../names/joined.ts';
import { assertNear, make, makeUnchecked, newEngine, placeOf, report, specOf } from '../support/engine.ts';
import type { Unchecked } from '../support/engine.ts';
import { distance } from '../support/distance.ts';
import { box, disc } from '../support/shapes.ts';
import { Eroded } from '../support/eroded.ts';
import { assertWorked, worked } from '../support/effort.ts';

const engine = newEngine({
  'amiri.woff': new Uint8Array(await packagedFont('amiri', 'arabic', 400)),
  'ruhl.woff': new Uint8Array(await packagedFont('frank-ruhl-libre', 'hebrew', 400)),
  'blocks.otf': blockFont(),
  'fredoka.woff': new Uint8Array(await packagedFont('fredoka', 'latin', 400)),
  'quicksand.woff': new Uint8Array(await packagedFont('quicksand', 'latin', 400)),
  'josefin.woff': new Uint8Array(await packagedFont('josefin-sans', 'latin', 400)),
  'kaushan.woff': new Uint8Array(await packagedFont('kaushan-script', 'latin', 400)),
  'dancing.woff': new Uint8Array(await packagedFont('dancing-script', 'latin', 700)),
  'caveat.woff': new Uint8Array(await packagedFont('caveat', 'latin', 700)),
  'parisienne.woff': new Uint8Array(await packagedFont('parisienne', 'latin', 400)),
  'lobster.woff': new Uint8Array(await packagedFont('lobster', 'latin', 400)),
});

const head = ['stock: {thickness: 3 mm, kerf: 0.16 mm, min_web: 1.5 mm}'];

function specSlid(text: string, more: string, font = 'Nunito, weight: 800'): string {
  return specOf([`body: {text: ${JSON.stringify(text)}, font: ${font}, ${more}}`], 'body: [body], parts: many', head);
}

function slid(...asked: Parameters<typeof specSlid>): Promise<Unchecked> {
  return makeUnchecked(specSlid(...asked), engine);
}

async function problems(shape: string): Promise<string[]> {
  const made = await report(specOf([`body: ${shape}`], 'body: [body], parts: many', head), engine);
  return made.issues.map((issue) => `${placeOf(made, issue).text}: ${issue.message}`);
}

/** The largest disc that still passes everywhere, by Clipper2: parts of a piece after erosion. */
function partsEroded(region: Region, width: number): number {
  // What is smaller than a speck of the erosion itself is no part.
  return new Eroded(region, width).parts.filter((part) => area(part) > 0.05).length;
}

function lettersOf(made: Unchecked) {
  const [solid] = [...made.report.tag!.made.values()];
  return solid!.lettering![0]!.letters;
}

describe('Letters slid until they overlap', () => {
  it('lap by two fifths of min_web where nothing else is asked for', async () => {
    const [shape] = [...(await slid('Coo', 'x_height: 12 mm, overlap: auto')).report.model!.shapes.values()];
    assertNear(lapMm(shape!.generator as TextGenerator, 1.5)!, 0.6, 1e-12);
    const region = async (overlap: string) =>
      [...(await slid('Coo', `x_height: 12 mm, overlap: ${overlap}`)).report.tag!.made.values()][0]!.region;
    assert.deepEqual(await region('auto'), await region('0.6 mm'));
  });

  for (const [font, name, grow] of [
    ['Nunito, weight: 800', 'Hannah', 0.12],
    ['Nunito, weight: 800', 'Tim', 0.12],
    ['Nunito, weight: 800', 'Zoë', 0.12],
    ['Nunito, weight: 800', 'O’Neill', 0.12],
    ['Alfa Slab One', 'Mary Ann', 0.36],
    ['Pacifico', 'Loïc', 0.12],
    ['Pacifico', 'Ka’ahu', 0.12],
    ['Pacifico', 'J. R.', 0.12],
    ['Great Vibes', 'Jürgen', 0.6],
    ['Great Vibes', 'Jean Paul', 0.6],
  ] as const) {
    it(`${name} in ${font} is one part with its counters open and no joint under min_web`, async () => {
      const made = await slid(name, `x_height: 12 mm, overlap: 0.6 mm, grow: ${grow} mm`, font);
      assert.equal(partsOf(made.region).length, 1);
      assert.equal(closedCounters({ region: made.region, letters: lettersOf(made) }, grow), 0);
      assert.deepEqual(
        findNecks(made.region, 1.5).map(({ width }) => width),
        [],
      );
      // By Clipper2: a disc a little narrower than min_web passes through the whole of it.
      assert.equal(partsEroded(made.region, 1.4), 1);
    });
  }

  it('hold where they meet at the fine end of a stroke, though it is thin for longer than the joint', async () => {
    for (const text of ['Lena', 'Zoe', 'Ida']) {
      const made = await slid(text, 'x_height: 12 mm, overlap: 0.6 mm', 'dancing.woff');
      // The face has no stroke below 1 mm; the L and the e met in 0.3 mm.
      const narrowest = Math.min(...findNecks(made.region, 1.5).map(({ width }) => width));
      assert.ok(narrowest > 1, `${text}: ${narrowest.toFixed(2)} mm`);
    }
  });

  it('move in below an open bowl and hang from it, where a bar at the feet would be long', async () => {
    for (const text of ['Paul', 'Pam']) {
      const made = await slid(text, 'x_height: 12 mm, overlap: auto', 'dancing.woff');
      const [p, a] = lettersOf(made).map(({ region }) => boundsOf(region)!);
      // As a pen would write it; a strap from the bowl's corner lay across 6.5 mm.
      assertNear(p!.maxX - a!.minX, 7.7, 0.1, text);
      const below = { minX: p!.minX + 4, maxX: a!.minX - 1, minY: p!.minY, maxY: a!.minY + 2 };
      assert.equal(clippedToBox(made.region, below).length, 0, 'nothing at the feet');
    }
  });

  // It was told as 1.46 mm, of 1.50.
  for (const [text, font, xHeight, grow] of [['Thyme', 'parisienne.woff', 16, ', grow: auto']] as const)
    it(`are joined in ${text} as wide as min_web by a strap`, async () => {
      const made = await report(
        specOf(
          [`body: {text: ${text}, font: ${font}, x_height: ${xHeight} mm, overlap: auto${grow}}`],
          'body: [body]',
          head,
        ),
        engine,
      );
      const narrow = made.issues.filter(({ code }) => code === 'weak-bridge');
      assert.deepEqual(
        narrow.map(({ message }) => message),
        [],
      );
    });

  it('are several parts without it', async () => {
    const made = await slid('Zoë', 'x_height: 12 mm');
    assert.ok(partsOf(made.region).length > 3);
  });

  it('come nearer than the font sets them, and no further than they must', async () => {
    const plain = await slid('Hannah', 'x_height: 12 mm');
    const joined = await slid('Hannah', 'x_height: 12 mm, overlap: 0.6 mm');
    assert.ok(joined.width < plain.width);
    assert.ok(joined.width > 0.8 * plain.width);
  });

  it('hold by their serifs and by nothing else where those only have to meet, at every size', async () => {
    // Edges that lay on each other came apart at these widths, and got a strap that stood above the letters.
    for (const [text, widths] of [
      ['IL', [40, 30.5896, 36.5593, 38.107, 42.6366]],
      ['HI', [40, 44.0767, 45.3296, 49.8253]],
    ] as const) {
      const all = await Promise.all(
        widths.map((width) => slid(text, `overlap: auto, width: ${width}`, 'Alfa Slab One')),
      );
      const [first, ...others] = all.map(({ height, width }) => height / width);
      for (const each of others) assertNear(each, first!, 1e-3);
    }
  });

  it('keep the outlines of their letters', async () => {
    const plain = await slid('Bo', 'x_height: 12 mm');
    const joined = await slid('Bo', 'x_height: 12 mm, overlap: 0.6 mm');
    const letters = lettersOf(joined);
    lettersOf(plain).forEach(({ region }, index) => {
      // Flattened once for itself and once for all words: each within 0.002 mm of its curves.
      assertNear(area(letters[index]!.region), area(region), 0.002 * perimeter(region), 'area of a letter');
    });
  });

  it('lower marks and keep them above their letter', async () => {
    const plain = await slid('i', 'x_height: 12 mm');
    const joined = await slid('i', 'x_height: 12 mm, overlap: 0.6 mm');
    assert.ok(joined.height < plain.height - 0.3);
    assert.equal(partsOf(joined.region).length, 1);
    // The letter and its dot, which is drawn in to 0.13 of the x-height.
    const [dot, stem] = partsOf(plain.region)
      .map((part) => boundsOf(part)!)
      .sort((a, b) => b.minY - a.minY);
    const gap = joined.height - (dot!.maxY - dot!.minY) - (stem!.maxY - stem!.minY);
    assertNear(gap, 0.13 * 12, 0.15, 'gap below the dot');
  });

  for (const [text, index, font] of [
    ['Über', 0, 'fredoka.woff'],
    ['GRÜN', 2, 'quicksand.woff'],
    ['Fûnt', 1, 'quicksand.woff'],
    ['vÿn', 1, 'quicksand.woff'],
    ['úl', 0, 'quicksand.woff'],
    ['JÜR', 1, 'josefin.woff'],
    ['Kürbis', 1, 'dancing.woff'],
    ['Kürbis', 1, 'caveat.woff'],
  ] as const)
    it(`keep marks on the stems of a letter that is open at its top, not in its bowl: ${text} in ${font}`, async () => {
      const made = await slid(text, 'x_height: 12 mm, overlap: auto, grow: 0.3 mm', font);
      assert.equal(partsOf(made.region).length, 1);
      const [base, ...marks] = partsOf(lettersOf(made)[index]!.region).sort((a, b) => area(b) - area(a));
      assert.ok(marks.length > 0, 'marks that are told from their letter');
      const top = boundsOf(base!)!.maxY;
      for (const mark of marks) assert.ok(boxCentre(boundsOf(mark)!).y > top, 'above');
    });

  for (const text of ['D’Arcy', 'O’Malley'])
    it(`move an apostrophe back to its letter, not down to the swash of the next, where it is an i: ${text}`, async () => {
      const [letter, sign] = lettersOf(await slid(text, 'x_height: 9 mm, overlap: auto', 'parisienne.woff'));
      const [as, was] = [boundsOf(sign!.region)!, boundsOf(sign!.asSet!)!];
      assertNear(as.minY, was.minY, 0.01, 'its height');
      assert.ok(as.minX < was.minX - 1, 'moved back');
      assert.ok(as.minX < boundsOf(letter!.region)!.maxX, 'on to the letter');
    });

  for (const text of ["Rosa 'Öland'", 'Aster ‘Mönch’', 'Rosa “Olga”', "Thyme 'Doone'"])
    for (const font of ['Pacifico', 'dancing.woff'])
      it(`keep a word that opens with a quotation mark clear of the word before: ${text} in ${font}`, async () => {
        const made = await slid(text, 'x_height: 9 mm, overlap: auto', font);
        const written = lettersOf(made).filter((letter) => /\p{L}/u.test(letter.text));
        const opens = /[^\p{L}\s]\p{L}/u.exec(text)!.index - 1;
        const [before, after] = [written.slice(0, opens), written.slice(opens)].map((letters) =>
          letters.flatMap(({ region }) => region),
        );
        assert.equal(area(intersection(before!, after!)), 0);
        assert.equal(partsOf(made.region).length, 1);
        const closing = boundsOf(lettersOf(made).at(-1)!.region)!;
        assert.ok(closing.minX < boundsOf(after!)!.maxX + 0.2 * 9, 'the closing mark stands at its letter');
      });

  it('keep a closing mark off the stem of an “a”, with which it would be a “d”', async () => {
    const letters = lettersOf(await slid("Mint 'Eva'", 'x_height: 9 mm, overlap: auto', 'Pacifico'));
    const { x } = boxCentre(boundsOf(letters.at(-1)!.region)!);
    const { baseline = 0, region } = letters.at(-2)!;
    const column = [rectangle(x - 0.1, baseline, x + 0.1, baseline + 9)];
    assert.ok(area(intersection(region, column)) / 0.2 < 0.5 * 9);
  });

  it('make a full stop large enough to be told from the bar on which it stands', async () => {
    const made = await slid('No. 5', 'x_height: 9 mm, overlap: auto', 'quicksand.woff');
    const stop = boundsOf(lettersOf(made)[2]!.region)!;
    const asSet = boundsOf(lettersOf(made)[2]!.asSet!)!;
    assert.ok(stop.maxX - stop.minX > 1.3 * 1.5, `${stop.maxX - stop.minX} mm wide`);
    assertNear(stop.maxY - stop.minY, 1.5 * (asSet.maxY - asSet.minY), 0.4, 'no more than half as large again');
  });

  it('keep two dots above the stems at whose edges they stand, apart and with no post that rises beside them', async () => {
    for (const font of ['fredoka.woff', 'parisienne.woff']) {
      const made = await slid('ü', 'x_height: 9 mm, overlap: auto, grow: 0.3 mm', font);
      const [base, ...dots] = partsOf(lettersOf(made)[0]!.region)
        .map((part) => boundsOf(part)!)
        .sort((a, b) => a.minY - b.minY);
      const [left, right] = dots.sort((a, b) => a.minX - b.minX);
      assert.equal(dots.length, 2, font);
      assert.ok(left!.minY > base!.maxY && right!.minY > base!.maxY, `above: ${font}`);
      assert.ok(right!.minX - left!.maxX > 2 * 0.3 + 0.5, `apart: ${font}`);
      assertNear(made.bounds.maxY, Math.max(left!.maxY, right!.maxY) + 0.3, 0.02, `nothing above the dots: ${font}`);
    }
  });

  it('keep two dots off the tips of strokes no wider than they are, into which they would melt', async () => {
    for (const font of ['dancing.woff', 'caveat.woff', 'Great Vibes']) {
      const made = await slid('Kürbis', 'x_height: 12 mm, overlap: auto, grow: 0.3 mm', font);
      const [base, ...marks] = partsOf(lettersOf(made)[1]!.region).sort((a, b) => area(b) - area(a));
      assert.equal(marks.length, 2, font);
      assert.ok(area(intersection(base!, marks.flat())) < 0.06 * area(marks.flat()), font);
    }
  });

  for (const [what, text, font] of [
    ['the leg of a K', 'Karl', 'Great Vibes'],
    ['the i of a ligature Ti', 'Tim', 'lobster.woff'],
    ['the i of a ligature Fi', 'Fiona', 'lobster.woff'],
  ] as const) {
    it(`keep ${what} on the baseline: it is no mark`, async () => {
      const heights = async (more: string) => {
        const made = await slid(text, `x_height: 12 mm${more}`, font);
        const boxes = partsOf(lettersOf(made)[0]!.region).map((part) => boundsOf(part)!);
        const top = Math.max(...boxes.map(({ maxY }) => maxY));
        return boxes.map(({ minY, maxY }) => [top - maxY, top - minY]).sort((a, b) => b[1]! - a[1]! || a[0]! - b[0]!);
      };
      const [plain, joined] = [await heights(''), await heights(', overlap: 0.6 mm')];
      assert.equal(joined.length, 2);
      joined.flat().forEach((each, index) => {
        assertNear(each, plain.flat()[index]!, 0.01, 'height in the letter');
      });
    });
  }

  it('stand on a bar that ends with their feet', async () => {
    // Two stems would be one broad stroke, so they keep their distance.
    const made = await slid('ii', 'x_height: 12 mm, overlap: 0.6 mm', 'Nunito, weight: 800');
    const letters = boundsOf(lettersOf(made).flatMap(({ region }) => [...region]))!;
    const bar = strip(made, (letters.minX + letters.maxX) / 2);
    const { baseline } = [...made.report.tag!.made.values()][0]!.band!;
    assertNear(bar.minY, baseline, 0.03, 'its lower edge');
    assert.ok(bar.maxY - bar.minY >= 1.5, `${bar.maxY - bar.minY} mm high`);
  });

  for (const [text, left] of [
    ['OIE', 1],
    ['FIFI', 1],
    ['HI', 0],
  ] as const)
    it(`show the feet of ${text} below a bar, which would be the arm of an L beside a bare stem`, async () => {
      const made = await slid(text, 'cap_height: 16 mm, overlap: 0.6 mm', 'Nunito, weight: 800');
      const [stem, next] = lettersOf(made)
        .slice(left)
        .map(({ region }) => boundsOf(region)!);
      const bar = strip(made, (stem!.maxX + next!.minX) / 2);
      const { baseline } = [...made.report.tag!.made.values()][0]!.band!;
      // Between the foot, of an L, and the middle, of an H.
      assert.ok(bar.minY - baseline >= 16 / 5 && bar.maxY - baseline <= (2 * 16) / 5, `${bar.minY - baseline} mm up`);
    });

  it('keep two dots side by side evenly beside their post', async () => {
    const made = await slid('Loïc', 'x_height: 12 mm, overlap: 0.6 mm, grow: 0.12 mm', 'Pacifico');
    const parts = partsOf(lettersOf(made)[2]!.region).map((part) => boundsOf(part)!);
    const [left, right] = parts
      .sort((a, b) => b.minY - a.minY)
      .slice(0, 2)
      .sort((a, b) => a.minX - b.minX);
    assertNear(right!.minX - left!.maxX, 0.85 * 1.5, 0.5, 'gap between the dots');
  });

  for (const [name, font, index] of [
    ['Loïc', 'Pacifico', 2],
    ['Anaïs', 'Great Vibes', 3],
    ['Naïma', 'Nunito, weight: 800', 2],
  ] as const)
    it(`keep two dots off a stem that is narrower than they: sunk into it they make a “τ” of the “ï” (${name} in ${font})`, async () => {
      const made = await slid(name, 'x_height: 12 mm, overlap: 0.6 mm', font);
      const [stem, ...dots] = partsOf(lettersOf(made)[index]!.region).toSorted((a, b) => area(b) - area(a));
      const top = boundsOf(stem!)!.maxY;
      assert.equal(dots.length, 2);
      // White below the middle of each dot, beside the post.
      for (const dot of dots) {
        const { minX, maxX, minY } = boundsOf(dot)!;
        const middle = (minX + maxX) / 2;
        assert.ok(minY - top > 0.05 * 12, `${(minY - top).toFixed(2)} mm above its stem`);
        assert.equal(area(intersection(made.region, [box(middle - 0.1, top + 0.1, middle + 0.1, minY - 0.1)])), 0);
      }
      assert.equal(partsOf(made.region).length, 1);
      assert.deepEqual(findNecks(made.region, 1.5), []);
    });

  it('sink two dots side by side into their letter instead, by at most a quarter of their height, and hold them', async () => {
    for (const text of ['ü', 'ö', 'ë']) {
      for (const xHeight of [6, 12, 25]) {
        const made = await slid(text, `x_height: ${xHeight} mm, overlap: 0.6 mm`);
        const [base, ...dots] = partsOf(lettersOf(made)[0]!.region);
        assert.equal(dots.length, 2, text);
        for (const dot of dots) {
          const lost = area(intersection([dot[0]!], [base![0]!])) / area(dot);
          assert.ok(lost > 0.01 && lost < 0.25, `${text} at ${xHeight} mm: ${lost.toFixed(3)} of a dot is sunk`);
        }
        assert.equal(partsOf(made.region).length, 1);
        const top = boundsOf(base!)!.maxY;
        const necks = findNecks(made.region, 1.5).filter(
          ({ ends }) => Math.max(ends[0].y, ends[1].y) > top - 0.1 * xHeight,
        );
        assert.deepEqual(
          necks.map(({ width }) => width),
          [],
          `${text} at ${xHeight} mm`,
        );
      }
    }
  });

  it('can be stopped at every letter', async () => {
    const face = await bundledFace('Pacifico');
    let left = 30;
    const checkpoint = () => (left-- > 0 ? Promise.resolve() : Promise.reject(new Error('no longer wanted')));
    const set = setText(face, textOf('sow basil and dill '.repeat(3)), {});
    assert.ok('curves' in set);
    const cache = new StageCache();
    const slide = { overlap: 0.6, web: 1.5, grow: 0 };
    const outline = slidOutline({ ...set, xHeight: face.xHeight, path: [] }, slide, { cache, face });
    const wait = async () => outline.at(20, 20, checkpoint);
    await assert.rejects(wait, /no longer wanted/);
    left = Infinity;
    assert.equal(partsOf((await wait()).region).length, 1);
  });

  it('leave a single stem as it is', async () => {
    const plain = await slid('I', 'x_height: 12 mm');
    const joined = await slid('I', 'x_height: 12 mm, overlap: 0.6 mm');
    assertNear(joined.area, plain.area, 1e-4);
  });
});

describe('Dots beside tall letters', () => {
  for (const [text, font] of [
    ['Wild', 'kaushan.woff'],
    ['Filip', 'kaushan.woff'],
    ['Tilly', 'Great Vibes'],
    ['Phil', 'Great Vibes'],
    ['Julia', 'Nunito, weight: 800'],
  ] as const) {
    it(`of ${text} in ${font} keep clear of the letters beside them`, async () => {
      const made = await slid(text, 'x_height: 12 mm, overlap: 0.6 mm', font);
      const letters = lettersOf(made);
      letters.forEach(({ region }, index) => {
        for (const mark of marksAbove(region)) {
          const points = mark.flat();
          for (const other of letters.filter((_, k) => k !== index)) {
            const least = Math.min(
              ...other.region.flat().flatMap(({ x, y }) => points.map((at) => Math.hypot(at.x - x, at.y - y))),
            );
            assert.ok(least > 0.03 * 12, `${least} mm between ${other.text} and the dot of ${letters[index]!.text}`);
          }
        }
      });
      assert.equal(letters.flatMap(({ region }) => marksAbove(region)).length, text === 'Filip' ? 2 : 1);
    });
  }

  it('stay above their stem in a slanted face: lowered along its slant', async () => {
    const letter = async (more: string) => {
      const [only] = lettersOf(await slid('i', `x_height: 12 mm${more}`, 'Great Vibes'));
      const [dot] = marksAbove(only!.region);
      const [box, whole] = [boundsOf(dot!)!, boundsOf(only!.region)!];
      return { right: whole.maxX - (box.minX + box.maxX) / 2, top: whole.maxY - whole.minY };
    };
    const [plain, joined] = [await letter(''), await letter(', overlap: 0.6 mm')];
    const lowered = plain.top - joined.top;
    assert.ok(lowered > 0.5, `${lowered} mm`);
    // The pen of that face leans by about 35° (measured on its stems, our own): some tenths of a mm to the left for a mm down.
    assert.ok(joined.right - plain.right > 0.3 * lowered, `${joined.right - plain.right} mm for ${lowered} mm`);
  });
});

describe('A single dot', () => {
  const at = 'x_height: 9 mm, overlap: 0.6 mm, grow: 0.15 mm';
  for (const font of ['kaushan.woff', 'caveat.woff', 'Great Vibes', 'Nunito']) {
    it(`in ${font} is 1.7 times as wide as its post, or 1.5 times as wide as drawn, and stands clear of its stem`, async () => {
      const [letter] = lettersOf(await slid('i', at, font));
      const [dot] = marksAbove(letter!.region);
      const width = (region: Region) => boundsOf(region)!.maxX - boundsOf(region)!.minX;
      const drawn = width(marksAbove(letter!.asSet!)[0]!);
      const [stem] = partsOf(letter!.region);
      assertNear(width(dot!), Math.max(drawn, Math.min(1.7 * 1.5 - 2 * 0.15, 1.5 * drawn)), 0.01, 'its width');
      assert.deepEqual(intersection(dot!, stem!), []);
    });
  }

  it('is a disc twice as wide as its post in parisienne.woff, which draws a short stroke', async () => {
    const [dot] = marksAbove(lettersOf(await slid('i', at, 'parisienne.woff'))[0]!.region);
    assertNear(area(dot!), (Math.PI / 4) * (2 * 1.5 - 2 * 0.15) ** 2, 0.1);
  });
});

describe('An apostrophe', () => {
  const most = 1.5;
  for (const [text, font] of [
    ["Lili's", 'Pacifico'],
    ["Lili's", 'Nunito, weight: 800'],
    ["Gwen's", 'kaushan.woff'],
    ["Dad's", 'caveat.woff'],
    ['Lili’s', 'lobster.woff'],
    ['Jo’el', 'Great Vibes'],
    ['Ka’ahu', 'Alfa Slab One'],
  ] as const) {
    it(`of ${text} in ${font} stands on a letter with at most a quarter of itself, and is at most ${most} times as wide`, async () => {
      const made = await slid(text, 'x_height: 12 mm, overlap: 0.6 mm', font);
      assert.equal(partsOf(made.region).length, 1);
      const letters = lettersOf(made);
      const sign = letters.find((each) => /['’]/.test(each.text))!;
      const box = boundsOf(sign.region)!;
      const set = boundsOf(sign.asSet!)!;
      assert.ok(box.maxX - box.minX <= most * (set.maxX - set.minX) + 0.01);
      assertNear(box.maxY - box.minY, set.maxY - set.minY, 0.01, 'its height');
      for (const other of letters) {
        if (other === sign) continue;
        const reaches = boundsOf(intersection(other.region, [rectangle(-1e3, box.minY, 1e3, box.maxY)]));
        const isTall = reaches && reaches.maxY - reaches.minY > 0.6 * (box.maxY - box.minY);
        if (isTall) continue;
        const within = area(intersection(sign.region, other.region)) / area(sign.region);
        assert.ok(within < 0.25, `${(100 * within).toFixed()} % of it are in the ${other.text}`);
      }
    });
  }

  it('is never raised by more than 0.05 of the x-height, on a post as an accent has', async () => {
    for (const font of ['Nunito, weight: 800', 'lobster.woff', 'Alfa Slab One', 'Pacifico']) {
      for (const text of ['Leo’s', 'Noa’s', 'Jo’el', 'Ka’ahu']) {
        const letters = lettersOf(await slid(text, 'x_height: 12 mm, overlap: 0.6 mm', font));
        const above = (region: Region, first: Region) => boundsOf(region)!.minY - boundsOf(first)!.minY;
        const sign = letters.find((each) => each.text === '’')!;
        const raised = above(sign.region, letters[0]!.region) - above(sign.asSet!, letters[0]!.asSet!);
        assert.ok(raised < 0.05 * 12, `${text} in ${font}: ${raised.toFixed(2)} mm`);
      }
    }
  });

  for (const [text, font] of [
    ["Bee's", 'kaushan.woff'],
    ["Nan's", 'dancing.woff'],
    ["Leo's", 'lobster.woff'],
    ["Bee's", 'Pacifico'],
  ] as const)
    it(`stands before the letter behind it, not over it as its accent: ${text} in ${font}`, async () => {
      const made = await slid(text, 'x_height: 12 mm, overlap: 0.6 mm', font);
      const [sign, letter] = lettersOf(made).slice(-2);
      const { baseline = 0 } = letter!;
      const box = boundsOf(sign!.region)!;
      const third = rectangle(box.minX, box.minY, box.maxX, box.minY + (box.maxY - box.minY) / 3);
      const foot = boxCentre(boundsOf(intersection(sign!.region, [third]))!);
      const shoulder = rectangle(-1e3, baseline + 0.6 * 12, 1e3, baseline + 12);
      const { minX } = boundsOf(intersection(letter!.region, [shoulder]))!;
      assert.ok(foot.x < minX + 0.15 * 12, `${((foot.x - minX) / 12).toFixed(2)} x-heights into the letter`);
      assert.ok(box.maxY > baseline + 1.2 * 12, 'it rises above small letters');
    });

  for (const font of ['kaushan.woff', 'Pacifico', 'parisienne.woff'])
    it(`that closes a word is told from its last letter, on a link: 'Rosa' in ${font}`, async () => {
      const made = await slid("'Rosa'", 'x_height: 12 mm, overlap: 0.6 mm', font);
      assert.equal(partsOf(made.region).length, 1);
      const [letter, sign] = lettersOf(made).slice(-2);
      assert.deepEqual(intersection(offset(sign!.region, 0.05 * 12), letter!.region), []);
    });

  for (const font of ['Pacifico', 'parisienne.woff', 'Nunito, weight: 800'])
    it(`that closes a word stays with it, however tall the next one begins: Rosa' Bo in ${font}`, async () => {
      const letters = lettersOf(await slid("Rosa' Bo", 'x_height: 12 mm, overlap: 0.6 mm', font));
      const [last, sign, next] = letters.slice(3).map(({ region }) => boundsOf(region)!);
      assert.ok(sign!.minX - last!.maxX < next!.minX - sign!.maxX);
    });

  it('is nothing that a bar between two words starts from, as the arm of a T', async () => {
    const made = await slid("Ol' Jo", 'cap_height: 16 mm, overlap: 0.6 mm', 'Nunito, weight: 800');
    const [sign, next] = lettersOf(made)
      .slice(2)
      .map(({ region }) => boundsOf(region)!);
    const { baseline } = [...made.report.tag!.made.values()][0]!.band!;
    assert.ok(strip(made, (sign!.maxX + next!.minX) / 2).maxY < baseline + 16 / 2);
  });

  for (const [text, font] of [
    ["Jill's", 'Nunito'],
    ["Will's", 'Alfa Slab One'],
  ] as const)
    it(`keeps off the tall letter before it, on a bar with white above and below, and the letter after it is not below it: ${text} in ${font}`, async () => {
      const made = await slid(text, 'x_height: 12 mm, overlap: 0.6 mm', font);
      assert.equal(partsOf(made.region).length, 1);
      const [tall, sign, last] = lettersOf(made).slice(3) as [Letter, Letter, Letter];
      const { minX, minY, maxX, maxY } = boundsOf(sign.region)!;
      assert.equal(area(intersection(sign.region, tall.region)), 0);
      assert.ok(boundsOf(last.region)!.minX >= maxX - 0.01, 'behind it');
      const beside: Region = [rectangle(minX - 0.08 * 12, minY, maxX, maxY)];
      const white =
        area(difference(beside, [made.region])) - area(difference([rectangle(minX, minY, maxX, maxY)], [made.region]));
      assert.ok(white > 0.3 * 0.08 * 12 * (maxY - minY), `${white} mm² of white`);
    });

  it('hangs from a letter as tall as itself', async () => {
    const made = await slid('O’Neill', 'x_height: 12 mm, overlap: 0.6 mm', 'Nunito, weight: 800');
    const [, sign, capital] = lettersOf(made);
    assert.ok(area(intersection(sign!.region, capital!.region)) > 0);
  });
});

describe('A full stop', () => {
  const gapOf = (made: Unchecked, a: number, b: number) => {
    const letters = lettersOf(made);
    return boundsOf(letters[b]!.region)!.minX - boundsOf(letters[a]!.region)!.maxX;
  };

  it('stands off the letters on both sides of it, which would take it for a serif, a space or not', async () => {
    for (const font of ['Nunito, weight: 800', 'Alfa Slab One']) {
      const made = await slid('A. B.', 'x_height: 12 mm, overlap: 0.6 mm', font);
      assert.equal(partsOf(made.region).length, 1);
      for (const [a, b] of [
        [0, 1],
        [1, 2],
        [2, 3],
      ] as const)
        assert.ok(gapOf(made, a, b) > 0.1 * 12, `${gapOf(made, a, b)} mm between letters ${a} and ${b}, ${font}`);
    }
  });

  it('is a colon too: its dots were part of the digits (“7:30”)', async () => {
    for (const font of ['Nunito', 'Nunito, weight: 800', 'Pacifico']) {
      const made = await slid('7:30', 'x_height: 12 mm, overlap: auto', font);
      assert.equal(partsOf(made.region).length, 1);
      const [seven, colon, three] = lettersOf(made).map(({ region }) => region);
      for (const digit of [seven!, three!])
        assert.ok(distance(digit, colon!) > 0.1 * 12, `${distance(digit, colon!)} mm, ${font}`);
    }
  });

  it('lets the letters before and behind it come no nearer to each other than a fifth of the x-height', async () => {
    const made = await slid('T. S.', 'x_height: 12 mm, overlap: 0.6 mm', 'Alfa Slab One');
    assert.equal(partsOf(made.region).length, 1);
    assert.ok(gapOf(made, 0, 2) > 0.2 * 12 - 0.05, `${gapOf(made, 0, 2)} mm from the arm of the T to the S`);
  });
});

describe('A bar between words', () => {
  // Seen in pictures: at the foot it reads as an underscore, halfway up as a hyphen. Our own judgement.
  for (const [text, height] of [
    ['Iris moss', 'x_height'],
    ['IRIS MOSS', 'cap_height'],
  ] as const) {
    it(`lies just below the top of the letters: ${text}`, async () => {
      const made = await slid(text, `${height}: 12 mm, overlap: 0.6 mm`, 'Nunito, weight: 800');
      const [before, after] = [3, 4].map((k) => boundsOf(lettersOf(made)[k]!.region)!);
      const middle = (before!.maxX + after!.minX) / 2;
      const { baseline } = [...made.report.tag!.made.values()][0]!.band!;
      const between = [rectangle(middle - 0.01, baseline - 9, middle + 0.01, baseline + 30)];
      const bar = boundsOf(intersection(made.region, between))!;
      assertNear(bar.maxY, baseline + 12, 0.2, 'its upper edge');
      assertNear(bar.minY, baseline + 12 - 1.5, 0.2, 'its lower edge');
    });
  }

  it('lies along the baseline between two bare stems, with which it would be a Π at the top: LILI IDA', async () => {
    const made = await slid('LILI IDA', 'cap_height: 16 mm, overlap: 0.6 mm', 'Nunito');
    const [before, after] = [3, 4].map((k) => boundsOf(lettersOf(made)[k]!.region)!);
    const { baseline } = [...made.report.tag!.made.values()][0]!.band!;
    assertNear(strip(made, (before!.maxX + after!.minX) / 2).maxY, baseline + 1.6, 0.1);
  });

  it('leaves two words as far apart as half the x-height over one another as well: Mary Jo in Pacifico', async () => {
    const made = await slid('Mary Jo', 'x_height: 12 mm, overlap: 0.6 mm', 'Pacifico');
    const { baseline } = [...made.report.tag!.made.values()][0]!.band!;
    const above = [rectangle(-1e3, baseline, 1e3, baseline + 1e3)];
    const [before, after] = [3, 4].map((k) => boundsOf(intersection(lettersOf(made)[k]!.region, above))!);
    assert.ok(after!.minX - before!.maxX > 0.48 * 12, `${after!.minX - before!.maxX} mm apart`);
  });

  it('lies along the baseline where it would be much longer at the top', async () => {
    const made = await slid('La Av', 'x_height: 12 mm, overlap: 0.6 mm', 'Alfa Slab One');
    const [before, after] = [1, 2].map((k) => boundsOf(lettersOf(made)[k]!.region)!);
    const { baseline } = [...made.report.tag!.made.values()][0]!.band!;
    assertNear(strip(made, (before!.maxX + after!.minX) / 2).minY, baseline, 0.03);
  });
});

describe('A bar between two stems', () => {
  it('runs into them with fillets as round as there is room for', async () => {
    const made = await slid('II', 'x_height: 12 mm, overlap: 0.6 mm', 'Nunito, weight: 800');
    const [left, right] = lettersOf(made).map(({ region }) => boundsOf(region)!);
    const gap = right!.minX - left!.maxX;
    const middle = (left!.maxX + right!.minX) / 2;
    const top = strip(made, middle).maxY;
    // A circle beside either stem, 0.35 of min_web or 0.4 of the gap: at the height h it leaves r − √(r² − (r − h)²) of the gap filled.
    const radius = Math.min(0.35 * 1.5, 0.4 * gap);
    for (const height of [0.1, 0.3]) {
      const filled = radius - Math.sqrt(radius ** 2 - (radius - height) ** 2);
      const band = [rectangle(left!.maxX - 0.2, top + height, right!.minX + 0.2, top + height + 0.001)];
      const open = gap + 0.4 - area(intersection(made.region, band)) / 0.001;
      assertNear(open, gap - 2 * filled, 0.1, `open ${height} mm above the bar`);
    }
  });
});

describe('A link between the letters of a script', () => {
  /** The edges of what is between two letters, at shares of the way from one to the other along the baseline. */
  function between(made: Unchecked, index: number, shares: readonly number[]) {
    const { baseline } = [...made.report.tag!.made.values()][0]!.band!;
    const band = [rectangle(-200, baseline + 0.8, 200, baseline + 0.9)];
    const [before, after] = [index, index + 1].map((k) => boundsOf(intersection(lettersOf(made)[k]!.region, band))!);
    return shares.map((share) => strip(made, before!.maxX + share * (after!.minX - before!.maxX), baseline + 8));
  }

  for (const [text, index, font, rise] of [
    ['Tom', 0, 'Pacifico', 0.3],
    ['Mirabel', 0, 'lobster.woff', 0.1],
    ['Anna Lena', 3, 'Pacifico', 0.15],
  ] as const) {
    it(`leaves the foot of the one and rises into the next, ${text} in ${font}`, async () => {
      const made = await slid(text, 'x_height: 12 mm, overlap: 0.6 mm, grow: 0.24 mm', font);
      const [near, far] = between(made, index, [0.4, 0.75]);
      const { baseline } = [...made.report.tag!.made.values()][0]!.band!;
      assert.ok(near!.minY > baseline - 0.5, `${(near!.minY - baseline).toFixed(2)} mm from the baseline`);
      assert.ok(far!.minY - near!.minY > rise, `it rises by ${(far!.minY - near!.minY).toFixed(2)} mm`);
      for (const edge of [near!, far!]) assert.ok(edge.maxY - edge.minY >= 1.5);
      assert.equal(partsOf(made.region).length, 1);
    });
  }

  for (const [text, letter, font, most] of [
    ['Søren', 'ø', 'kaushan.woff', 0.45],
    ['Gustav', 's', 'kaushan.woff', 0.35],
    ['Désirée', 's', 'caveat.woff', 0.15],
    ['Eloïse', 's', 'caveat.woff', 0.15],
  ] as const) {
    it(`leaves the bays and counters of the ${letter} in ${text} open, or it reads as another letter`, async () => {
      const made = await slid(text, 'x_height: 9 mm, overlap: auto', font);
      const letters = lettersOf(made);
      const { region } = letters.find((each) => each.text === letter)!;
      const bays = difference(offset(offset(region, 2), -2), [region]);
      const filled = area(intersection(bays, made.region)) / area(bays);
      assert.ok(filled < most, `${(100 * filled).toFixed()} % filled`);
    });
  }

  it('begins at the edge of a bowl that it holds by, and is no shelf below that', async () => {
    for (const text of ['Pia', 'Pip']) {
      const made = await slid(text, 'x_height: 12 mm, overlap: 0.6 mm, grow: 0.24 mm', 'dancing.woff');
      const letters = offset(
        lettersOf(made).flatMap(({ region }) => region),
        0.26,
      );
      const added = partsOf(difference(made.region, [letters])).map((part) => boundsOf(part)!);
      const longest = Math.max(...added.map(({ minX, maxX }) => maxX - minX));
      assert.ok(longest < 0.65 * 12, `${text}: ${longest.toFixed(2)} mm of it are seen`);
      assert.equal(partsOf(made.region).length, 1);
      assert.deepEqual(findNecks(made.region, 1.5), []);
    }
  });

  it('is at the height of the arm of an F or a P, where the letter after it has a dot: that would melt into it', async () => {
    for (const font of ['Nunito, weight: 800', 'quicksand.woff', 'fredoka.woff', 'josefin.woff'])
      for (const text of ['Fiona', 'Pia']) {
        const made = await slid(text, 'x_height: 12 mm, overlap: 0.6 mm', font);
        assert.equal(partsOf(made.region).length, 1);
        const [first, i] = lettersOf(made);
        const [dot] = marksAbove(i!.region);
        const gap = distance(dot!, first!.region);
        assert.ok(gap > 0.1 * 12, `${text}, ${font}: ${gap} mm between the dot and the ${text[0]!}`);
        // At the foot it would be the lowest arm of an E.
        const foot = boundsOf(i!.region.flatMap((ring) => [ring.filter(({ y }) => y < i!.baseline! + 3)]))!;
        const aside = rectangle(foot.minX - 0.6, -30, foot.minX - 0.3, i!.baseline! + 0.35 * 12);
        assert.deepEqual(intersection(made.region, [aside]), [], `${text}, ${font}`);
      }
  });

  it('gives way to the dot of an i that meets what stands over it', async () => {
    for (const font of ['Pacifico']) {
      const made = await slid('Pia', 'x_height: 12 mm, overlap: 0.6 mm', font);
      const [p, i] = lettersOf(made);
      const [dot] = marksAbove(i!.region);
      assert.ok(intersection(dot!, p!.region).length > 0, `${font}: the dot meets the bowl of the P`);
    }
  });
});

/** The bounds of a piece, up to a height, on a line from top to bottom. */
function strip({ region }: Unchecked, x: number, top = 200): Bounds {
  return boundsOf(intersection(region, [rectangle(x - 0.01, -200, x + 0.01, top)]))!;
}

function rectangle(left: number, bottom: number, right: number, top: number): Ring {
  return [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
}

describe('What joining letters leaves', () => {
  for (const [text, font, grow] of [
    ['Anna', 'caveat.woff', 0],
    ['O’Neill', 'caveat.woff', 0],
    ['Adam', 'kaushan.woff', 0.36],
    ['William', 'kaushan.woff', 0.36],
  ] as const) {
    it(`is no sliver in ${text}, ${font}`, async () => {
      const more = grow > 0 ? `, grow: ${grow} mm` : '';
      const made = await slid(text, `x_height: 12 mm, overlap: 0.6 mm${more}`, font);
      const sizes = made.region.map((ring) => {
        const { minX, minY, maxX, maxY } = boundsOf([ring])!;
        return Math.max(maxX - minX, maxY - minY);
      });
      assert.ok(Math.min(...sizes) >= 0.1, `${Math.min(...sizes)} mm`);
    });
  }

  it('is dropped below a tenth of a millimetre, and below a fiftieth of the x-height of what is smaller', () => {
    const square = (size: number): Region => [
      [
        { x: 0, y: 0 },
        { x: size, y: 0 },
        { x: size, y: size },
        { x: 0, y: size },
      ],
    ];
    const lettering = (xHeight: number) =>
      new Lettering({ path: [], xHeight, grow: 0, as: 'material', slid: true }, () => []);
    const left = (size: number, xHeight: number) =>
      withoutSlivers(square(size), { region: [], lettering: [lettering(xHeight)] }).length;
    assert.equal(left(0.099, 12), 0);
    assert.equal(left(0.101, 12), 1);
    assert.equal(left(0.0399, 2), 0);
    assert.equal(left(0.0401, 2), 1);
  });

  it('is no hole below 0.8 mm either, but for counters', () => {
    const ring = (size: number): Ring => rectangle(5, 5, 5 + size, 5 + size).toReversed();
    const left = (size: number, letter: Region): number => {
      const about = { path: [], xHeight: 12, grow: 0, as: 'material', slid: true } as const;
      const lettering = [new Lettering(about, () => [{ text: 'o', region: letter }])];
      return withoutSlivers([rectangle(0, 0, 20, 20), ring(size)], { region: [], lettering }).length;
    };
    assert.equal(left(0.79, [rectangle(0, 0, 20, 20)]), 1);
    assert.equal(left(0.81, [rectangle(0, 0, 20, 20)]), 2);
    assert.equal(left(0.79, [rectangle(0, 0, 20, 20), rectangle(4, 4, 8, 8).toReversed()]), 2);
  });

  it('is no speck where growth closes the mouth of a notch before its ground', async () => {
    const made = await make(specSlid('Max', 'x_height: 12 mm, overlap: 0.6 mm, grow: 0.5 mm', 'Alfa Slab One'), engine);
    assert.ok(made.region.every((ring) => !isSpeck(ring, 0.16)));
    assert.equal(made.report.issues.filter(({ code }) => code === 'speck').length, 0);
  });
});

describe('What is seen of a mark', () => {
  for (const [text, font, grow] of [
    ['i', 'Nunito, weight: 800', 0],
    ['j', 'Pacifico', 0.12],
    ['é', 'Alfa Slab One', 0.12],
    ['i', 'lobster.woff', 0.12],
  ] as const) {
    it(`${text} in ${font}: at least two fifths of what lies between it and its letter stay white`, async () => {
      const made = await slid(text, `x_height: 12 mm, overlap: 0.6 mm, grow: ${grow} mm`, font);
      const parts = partsOf(offset(lettersOf(made)[0]!.region, grow)).map((part) => boundsOf(part)!);
      const [mark, base] = parts.sort((a, b) => b.minY - a.minY);
      // As wide as the mark, from its lowest point down to the highest of the letter; a slanted pair has less of it.
      const [top, bottom] = [mark!.minY, base!.maxY];
      assert.ok(top - bottom > 0.05 * 12, `${top - bottom} mm between them`);
      const between = [
        [
          { x: mark!.minX, y: bottom },
          { x: mark!.maxX, y: bottom },
          { x: mark!.maxX, y: top },
          { x: mark!.minX, y: top },
        ],
      ];
      const white = area(between) - area(intersection(between, made.region));
      assert.ok(white > 0.4 * area(between), `${((100 * white) / area(between)).toFixed(0)} % white`);
    });
  }
});

describe('Gaps between letters that meet', () => {
  for (const [text, font, grow] of [
    ['Gwen', 'Nunito, weight: 800', 0.12],
    ['Vera', 'Nunito, weight: 800', 0.12],
    ['Kit', 'Alfa Slab One', 0.36],
  ] as const) {
    it(`${text} in ${font} has none that closes`, async () => {
      const made = await make(specSlid(text, `x_height: 12 mm, overlap: 0.6 mm, grow: ${grow} mm`, font), engine);
      assert.deepEqual(
        made.issues.map(({ code }) => code),
        [],
      );
    });
  }
});

describe('Text without overlap', () => {
  for (const [text, font] of [
    ['Hannah', 'Nunito, weight: 800'],
    ['Zoë K.', 'Pacifico'],
    ['Karl', 'Great Vibes'],
  ] as const) {
    it(`${text} in ${font} is what its curves are, point for point`, async () => {
      const made = await slid(text, 'x_height: 12 mm', font);
      const face = await (font.startsWith('Nunito') ? bundledFace('Nunito', 800) : bundledFace(font));
      const layout = layoutText(face, { text, align: 'center' });
      const em = 12 / face.xHeight;
      const centre = boxCentre(curveBounds(layout.curves)!);
      const affine = { a: em, b: 0, c: 0, d: em, e: -em * centre.x, f: -em * centre.y };
      const [solid] = [...made.report.tag!.made.values()];
      assert.deepEqual(solid!.region, normalise(flatten(layout.curves, { affine })));
    });
  }
});

describe('Hairlines of letters that slide', () => {
  const least = (made: Unchecked): number => Math.min(...findNecks(made.region, 2).map(({ width }) => width));

  it('become as wide as min_web without growth, and all other strokes stay', async () => {
    const plain = await slid('An', 'x_height: 12 mm', 'Great Vibes');
    const made = await slid('An', 'x_height: 12 mm, overlap: 0.6 mm', 'Great Vibes');
    assertNear(least(made), 1.5, 0.02);
    assert.equal(partsEroded(made.region, 1.46), 1);
    // Growing all of it until the finest hold, by 0.48 mm, adds nearly twice as much.
    const added = area(made.region) - area(plain.region);
    assert.ok(added < 0.6 * (area(offset(plain.region, 0.48)) - area(plain.region)));
    const stems = offset(offset(plain.region, -0.8), 0.8);
    const beside = (region: Region) => area(intersection(region, offset(stems, 0.3)));
    assert.ok(beside(made.region) < 1.25 * beside(plain.region));
  });

  it('become no wider than 0.17 of the x-height: small letters need growth as well', async () => {
    const made = async (xHeight: number) =>
      least(await slid('an', `x_height: ${xHeight} mm, overlap: 0.6 mm`, 'Great Vibes'));
    assertNear(await made(8.4), 0.17 * 8.4, 0.03);
    assertNear(await made(9.2), 1.5, 0.03);
  });

  it('leave a counter two fifths open, or go round it', () => {
    const ringed = (radius: number) => {
      const ring = [disc(0, 0, radius + 0.5), disc(0, 0, radius).toReversed()];
      const hairlines = hairlinesOf(ring, 1.5);
      const left = difference([disc(0, 0, radius)], [ring, hairlineStrokes(hairlines)]);
      return { widths: hairlines.map(({ width }) => width), open: Math.sqrt(area(left) / Math.PI) };
    };
    // Strokes along the middle of a ring 0.5 mm wide reach 0.5 mm into it: (1 − 0.5/r)² is 0.4 for r = 1.360.
    assert.deepEqual(ringed(1.38).widths, [1.5]);
    assertNear(ringed(1.38).open, 0.88, 0.01);
    // Moved off it, they reach in by a fifth of half their width.
    assert.deepEqual(ringed(1.34).widths, [1.5]);
    assertNear(ringed(1.34).open, 1.34 - 0.15, 0.02);
    // (1 − 0.15/r)² is 0.4 for r = 0.408; smoothed, a line round so small an eye sinks.
    assert.deepEqual(ringed(0.55).widths, [1.5]);
    assert.deepEqual(ringed(0.4).widths, []);
    // Nobody reads by an eyelet that a disc of 0.4 · 1.5 mm does not go through.
    assert.deepEqual(ringed(0.29).widths, [1.5]);
  });

  it('are narrower between two counters, where there is no side to go to', () => {
    const eyes = [-1, 1].map((side) => disc(side * 0.65, 0, 0.45).toReversed());
    const between = hairlinesOf([rectangle(-4, -4, 4, 4), ...eyes], 1.5);
    assert.deepEqual(
      between.map(({ width }) => width),
      [0.8 * 1.5],
    );
  });

  it('leave the ring of an Å open: it is enlarged as far as its stroke needs', async () => {
    for (const font of ['parisienne.woff', 'Great Vibes']) {
      const made = await slid('Åsa', 'x_height: 9 mm, overlap: auto', font);
      const [ring] = marksAbove(lettersOf(made)[0]!.region);
      const opening = [ring!.find((each) => ringArea(each) < 0)!.toReversed()];
      assert.ok(area(difference(opening, [made.region])) > 0.4 * area(opening), font);
      const { minX, maxX, minY, maxY } = widenedBox(boundsOf(ring!)!, 1);
      const stroke = findNecks(intersection(made.region, [rectangle(minX, minY, maxX, maxY)]), 1.4);
      assert.deepEqual(stroke, [], font);
    }
  });

  it('are thinner than half of min_web; what lacks less is left to growth', async () => {
    const bar = (height: number) => [rectangle(0, 0, 12, height), rectangle(0, 2, 12, 5)];
    assert.ok(hasHairlines(bar(0.74), 1.5));
    assert.ok(!hasHairlines(bar(0.76), 1.5));
    const made = await slid('Tim', 'x_height: 12 mm, overlap: 0.6 mm', 'Pacifico');
    assert.equal([...made.report.tag!.made.values()][0]!.lettering![0]!.hairline, 0);
  });

  it('count as thickened where it is asked whether the letters can be read', async () => {
    const made = await slid('seesee', 'x_height: 12 mm, overlap: 0.6 mm', 'Great Vibes');
    const [solid] = [...made.report.tag!.made.values()];
    const [lettering] = solid!.lettering!;
    assertNear(lettering!.hairline, 1.51, 1e-9);
    const bold = (each: Lettering) => readability(each, { beam: 0.16 })!.figures.bold;
    const { path, xHeight, grow, as, slid: isSlid, letters } = lettering!;
    const asDrawn = new Lettering({ path, xHeight, grow, as, slid: isSlid }, () => letters);
    assert.ok(bold(lettering!) > bold(asDrawn) + 0.03);
  });
});

describe('Sizes of letters that slide', () => {
  it('are what is asked for, also where the letters have found other places a little below', async () => {
    for (const width of [84, 85, 86]) {
      const made = await slid('Zoë', `width: ${width} mm, overlap: auto`, 'lobster.woff');
      const { minX, maxX } = boundsOf(made.region)!;
      assertNear(maxX - minX, width, 0.01);
    }
  });

  it('are those before growth, which adds itself on each side and no more, wherever it lets the letters stand', async () => {
    for (const name of ['Leo', 'Paul', 'Rosa', 'Oskar']) {
      for (const grow of ['0.5 mm', 'auto']) {
        const made = await slid(name, `width: 60 mm, overlap: auto, grow: ${grow}`, 'lobster.woff');
        const { tag } = made.report;
        const by = grow === 'auto' ? [...tag!.growths!.values()][0]! : 0.5;
        assertNear(made.width, 60 + 2 * by, 0.06, `${name}, ${grow}`);
      }
      assertNear((await slid(name, 'width: 60 mm, overlap: auto', 'lobster.woff')).width, 60, 0.01, name);
    }
  });

  it('of the font are those of each letter: growing never shrinks one', async () => {
    const [plain, grown] = [
      await slid('Leo', 'x_height: 16 mm, overlap: 0.6 mm'),
      await slid('Leo', 'x_height: 16 mm, overlap: 0.6 mm, grow: 0.5 mm'),
    ];
    const areas = (made: Unchecked) => lettersOf(made).map(({ region }) => area(region));
    areas(plain).forEach((each, index) => {
      assertNear(areas(grown)[index]!, each, 1e-3, 'area of a letter');
    });
  });

  it('are met by width and height together', async () => {
    const made = await slid('Leo', 'width: 50 mm, height: 40 mm, overlap: 0.6 mm');
    assertNear(made.width, 50, 0.02);
    assertNear(made.height, 40, 0.02);
  });

  it('are found by fit, growth included', async () => {
    const shapes = ['plate: {rectangle: [80 mm, 40 mm]}'];
    const text =
      'body: {text: Leo, font: Nunito, weight: 800, overlap: 0.6 mm, grow: 0.3 mm, fit: {in: plate, margin: 3 mm}}';
    const made = await make(specOf([...shapes, text], 'body: [body], parts: many', head), engine);
    assert.ok(made.width <= 74.02 && made.height <= 34.02);
    // About the centre for the eye, which is not that of the box, as without sliding.
    const plain = await make(
      specOf([...shapes, text.replace('overlap: 0.6 mm, ', '')], 'body: [body], parts: many', head),
      engine,
    );
    assertNear(made.height, plain.height, 0.5);
  });
});

describe('Every script and form', () => {
  for (const [what, text, font, more] of [
    ['right to left', 'ليلى', 'amiri.woff', 'size: 30 mm'],
    ['Arabic with stacked marks', 'مُحَمَّد', 'amiri.woff', 'size: 30 mm'],
    ['Hebrew', 'נועה', 'ruhl.woff', 'size: 30 mm'],
    ['several lines', 'Bo\\nLi', 'Nunito, weight: 800', 'x_height: 12 mm'],
    ['on top of an arc', 'Hannah', 'Nunito, weight: 800', 'x_height: 12 mm, arc: {radius: 60 mm}'],
    ['along the bottom of an arc', 'Hannah', 'Nunito, weight: 800', 'width: 80 mm, arc: {sweep: 90, at: bottom}'],
    ['letters of blocks without counters', 'Xp É', 'blocks.otf', 'size: 10 mm'],
    ['signs alone', '“…”', 'Nunito, weight: 800', 'x_height: 12 mm'],
  ] as const) {
    it(`${what}: one part`, async () => {
      const made = await slid(text.replace('\\n', '\n'), `${more}, overlap: 0.6 mm`, font);
      assert.equal(partsOf(made.region).length, 1);
    });
  }

  for (const [font, text] of [
    ['Pacifico', 'Nana\nBear'],
    ['Great Vibes', 'Spring\nsowing'],
    ['Alfa Slab One', 'Ada\nEli'],
  ] as const)
    it(`lines rise until they meet: ${text.replace('\n', ' / ')} in ${font}`, async () => {
      const height = async (more: string): Promise<number> => {
        const { region } = await slid(text, `x_height: 12 mm, align: center${more}`, font);
        if (more.includes('overlap')) assert.equal(partsOf(region).length, 1);
        const { minY, maxY } = boundsOf(region)!;
        return maxY - minY;
      };
      const [apart, together] = [await height(''), await height(', overlap: 0.6 mm')];
      assert.ok(together < apart - 0.2 * 12 && together > apart - 0.55 * 12, `${apart} to ${together}`);
      // As far apart as is asked for, by a strap.
      const wide = [await height(', line_height: 3'), await height(', line_height: 3, overlap: 0.6 mm')];
      assertNear(wide[1]!, wide[0]!, 0.1 * 12);
    });

  it('200 letters come to an end soon', async () => {
    const start = worked();
    const made = await slid('Hannah and Zoë '.repeat(14).trim(), 'x_height: 5 mm, overlap: 0.3 mm');
    assert.equal(partsOf(made.region).length, 1);
    assertWorked(start, 5);
  });
});

describe('The key overlap', () => {
  it('goes with text alone', async () => {
    assert.deepEqual(await problems('{rectangle: [20 mm, 10 mm], overlap: 0.6 mm}'), [
      'overlap: “overlap” goes with text, but this shape is a rectangle.',
    ]);
  });

  it('is above 0', async () => {
    assert.equal((await problems('{text: Bo, x_height: 9 mm, overlap: 0 mm}')).length, 1);
    assert.equal((await problems('{text: Bo, x_height: 9 mm, weight: 800, overlap: 0.01 mm}')).length, 0);
  });

  it('does not go with a circle whose radius would follow from a width', async () => {
    assert.deepEqual(await problems('{text: Bo, weight: 800, width: 30 mm, arc: {radius: 40 mm}, overlap: 0.6 mm}'), [
      'overlap: “overlap” changes the width, and so the circle; give “x_height” or “size” instead of “width”, or “sweep” instead of the radius.',
    ]);
  });
});
