import assert from 'node:assert/strict';
import { boundsOf } from '../../../src/geometry/measure.ts';
import type { Bounds, Line } from '../../../src/geometry/types.ts';
import { estimateJob } from '../../../src/toolpath/estimate.ts';
import { planCuts } from '../../../src/toolpath/cut-plan.ts';
import { wordsOn } from '../../../src/export/words/words-on.ts';
import { report } from '../support/engine.ts';

const spec = (text: string, list = 'score') =>
  `tagwright: 1\nshapes:\n  plate: {rectangle: [90 mm, 50 mm]}\n  note: {text: ${text}}\npieces:\n  tag: {body: [plate], ${list}: [note]}\n`;

async function strokes(text: string): Promise<readonly Line[]> {
  const { tag, issues } = await report(spec(text));
  assert.ok(tag, issues.map(({ message }) => message).join('\n'));
  return tag.pieces[0]!.marks[0]!.lines!;
}

const messagesOf = async (text: string, list?: string) =>
  (await report(spec(text, list))).issues.map(({ message }) => message).join('\n');

const heightOf = (lines: readonly Line[]) => {
  const { minY, maxY } = boundsOf(lines)!;
  return maxY - minY;
};
const lengthOf = (lines: readonly Line[]) =>
  lines.reduce(
    (sum, line) =>
      sum + line.slice(1).reduce((all, to, i) => all + Math.hypot(to.x - line[i]!.x, to.y - line[i]!.y), 0),
    0,
  );

describe('Single-line lettering', () => {
  it('loses no stroke of any letter on the way to the machine', async () => {
    for (const letters of ['abcdefghijklm', 'nopqrstuvwxyz', 'ABCDEFGHIJKLM', 'NOPQRSTUVWXYZ', '0123456789é&?!']) {
      const made = await report(spec(`"${letters}", font: single line, width: 80 mm`));
      const plan = planCuts(made.tag!)!;
      const drawn = lengthOf(made.tag!.pieces[0]!.marks[0]!.lines!);
      const { scoreLength } = estimateJob(made.tag!, plan);
      assert.ok(Math.abs(scoreLength - drawn) < 0.002 * drawn, `${letters}: ${scoreLength} of ${drawn} mm`);
    }
  });

  it('draws each letter with the strokes that a pen would make', async () => {
    // Two stems of the height of the letter, and a bar: 14 units where the stems are 21 apart from foot to head (Hershey’s table).
    const lines = await strokes('H, font: single line, cap_height: 21 mm');
    assert.equal(lines.length, 3);
    assert.ok(Math.abs(lengthOf(lines) - (21 + 21 + 14)) < 1e-6, `${lengthOf(lines)}`);
  });

  it('draws fractions of small figures and a slash, within the height of a capital', async () => {
    assert.equal(await messagesOf('½ ¼ ¾ ⅜ 1⁄2, font: single line, cap_height: 6 mm'), '');
    const lines = await strokes('½, font: single line, cap_height: 21 mm');
    // A one, a slash and a two, of a stroke each.
    assert.equal(lines.length, 3);
    assert.ok(Math.abs(heightOf(lines) - 21) < 1e-6, `${heightOf(lines)}`);
    const boxes = lines.map((line) => boundsOf([line])!);
    const middle = (boundsOf(lines)!.minY + boundsOf(lines)!.maxY) / 2;
    const [over, slash, under] = [...boxes].sort((a, b) => a.minX - b.minX) as [Bounds, Bounds, Bounds];
    assert.ok(over.minY > middle - 3 && over.maxX < slash.maxX && under.maxY < middle + 3 && under.minX > slash.minX);
  });

  it('is as high as its capitals or its small letters are asked for', async () => {
    assert.ok(Math.abs(heightOf(await strokes('HE, font: single line, cap_height: 10 mm')) - 10) < 1e-6);
    assert.ok(Math.abs(heightOf(await strokes('xz, font: single line, x_height: 4 mm')) - 4) < 1e-6);
    const wide = boundsOf(await strokes('Sorrel and dill, font: single line, width: 60 mm'))!;
    assert.ok(Math.abs(wide.maxX - wide.minX - 60) < 1e-6);
  });

  it('stands with the middle of its box where any shape does', async () => {
    const { minX, maxX, minY, maxY } = boundsOf(await strokes('"Sorrel\\nand dill", font: single line, width: 60 mm'))!;
    assert.ok(Math.abs(minX + maxX) < 1e-6 && Math.abs(minY + maxY) < 1e-6);
  });

  it('fits into a shape', async () => {
    const { minX, maxX } = boundsOf(
      await strokes('Sorrel and dill, font: single line, fit: {in: plate, margin: 5 mm}'),
    )!;
    assert.ok(maxX - minX > 79 && maxX - minX < 80.01, `${maxX - minX}`);
  });

  it('puts accents over letters, in place of a dot, and cedillas below', async () => {
    const plain = await strokes('e, font: single line, x_height: 5 mm');
    assert.equal((await strokes('é, font: single line, x_height: 5 mm')).length, plain.length + 1);
    assert.equal((await strokes('í, font: single line, x_height: 5 mm')).length, 2, 'a stem and an acute');
    const [c, cedilla] = [
      await strokes('c, font: single line, x_height: 5 mm'),
      await strokes('ç, font: single line, x_height: 5 mm'),
    ];
    assert.ok(heightOf(cedilla) > heightOf(c) + 1);
  });

  it('says which letters it lacks', async () => {
    assert.match(await messagesOf('"Žlutá Ж", font: single line, x_height: 5 mm'), /Single-line lettering has no “Ж”/);
    assert.equal(await messagesOf('"Žlutá – 12 × 3 °, Straße’s", font: single line, width: 70 mm'), '');
  });

  it('has the letters of Latin alphabets that are no letter with an accent', async () => {
    assert.equal(await messagesOf('"Łódź, Æbleø, Őrség, Șișești, Þórðr, cœur", font: single line, width: 80 mm'), '');
  });

  it('is spaced out and bent as other lettering is', async () => {
    const straight = boundsOf(await strokes('nnn, font: single line, x_height: 4 mm'))!;
    const spaced = boundsOf(await strokes('nnn, font: single line, x_height: 4 mm, letter_spacing: 1 mm'))!;
    assert.ok(Math.abs(spaced.maxX - spaced.minX - (straight.maxX - straight.minX) - 2) < 1e-6);
    // The feet of letters over the top of a circle stand on it, two corners of each foot aside.
    const lines = await strokes('HHHHHH, font: single line, cap_height: 4 mm, arc: {radius: 15 mm, at: top}');
    const radii = lines.flat().map(({ x, y }) => Math.hypot(x, y));
    assert.ok(Math.min(...radii) > 15 - 1e-6 && Math.min(...radii) < 15.3, `${Math.min(...radii)}`);
    assert.ok(Math.max(...radii) > 19 - 1e-6 && Math.max(...radii) < 19.3, `${Math.max(...radii)}`);
  });

  it('cannot be cut out, grown or slid together', async () => {
    assert.match(
      await messagesOf('Dill, font: single line, width: 40 mm', 'cut'),
      /“note” is made of lines, which enclose nothing/,
    );
    assert.match(
      await messagesOf('Dill, font: single line, width: 40 mm, grow: 1 mm'),
      /“grow” is for areas, and lines have no width/,
    );
    assert.match(
      await messagesOf('Dill, font: single line, width: 40 mm, overlap: 1 mm'),
      /“overlap” does not go with single-line/,
    );
    assert.match(
      await messagesOf('Dill, font: [Nunito, single line], width: 40 mm'),
      /“single line” cannot be in a list of fonts/,
    );
  });

  it('is read by the customer as any other words', async () => {
    const { tag } = await report(spec('Sorrel, font: single line, width: 40 mm'));
    assert.equal(tag!.title, 'Sorrel');
    const [words] = wordsOn({ tag: tag!, fonts: [] });
    assert.deepEqual([words!.lines, words!.way, words!.font], [['Sorrel'], 'drawn as a fine line', 'single strokes']);
  });
});

describe('Single-line lettering among lines', () => {
  const note = '{text: xx, font: single line}';
  const mark = async (lines: string, more = 'width: 60 mm', list = 'engrave') => {
    const { tag, issues } = await report(
      `tagwright: 1\nshapes:\n  plate: {rectangle: [90 mm, 50 mm]}\n  note: {lines: [${lines}], ${more}}\npieces:\n  tag: {body: [plate], ${list}: [note]}\n`,
    );
    assert.ok(tag, issues.map(({ message }) => message).join('\n'));
    return { tag, mark: tag.pieces[0]!.marks[0]! };
  };

  it('is followed, where the letters of other lines are filled, or followed round in a score', async () => {
    const { tag, mark: both } = await mark(`{text: xx, font: Nunito}, ${note}`);
    const alone = await mark('{text: xx, font: Nunito}', 'x_height: 10 mm');
    assert.equal(both.lines!.length, 4, 'two strokes for each x');
    assert.equal(both.filled!.length, alone.mark.region.length);
    const { scoreLength } = estimateJob(tag, planCuts(tag)!);
    assert.equal(scoreLength, 0);
    const scored = await mark(`{text: xx, font: Nunito}, ${note}`, 'width: 60 mm', 'score');
    const { scoreLength: whole } = estimateJob(scored.tag, planCuts(scored.tag)!);
    const outlines = (both.filled ?? []).map((ring) => [...ring, ring[0]!]);
    assert.ok(Math.abs(whole - lengthOf(both.lines!) - lengthOf(outlines)) < 0.003 * whole);
  });

  it('has letters as large as its share, in one size with those of the others', async () => {
    const { mark: both } = await mark(`${note}, {text: x, font: single line, share: 2}`, 'x_height: 8 mm');
    const heights = both.lines!.map((line) => heightOf([line])).sort((a, b) => a - b);
    for (const [index, height] of [4, 4, 4, 4, 8, 8].entries()) assert.ok(Math.abs(heights[index]! - height) < 1e-6);
  });

  it('stands as far from the others as they do from each other: from ink to ink', async () => {
    const { mark: both } = await mark(
      `{text: HH, font: Nunito}, {text: HH, font: single line}`,
      'width: 60 mm, gap: 3 mm',
    );
    const gap = boundsOf(both.filled!)!.minY - boundsOf(both.lines!)!.maxY;
    assert.ok(Math.abs(gap - 3) < 0.05, `${gap}`);
  });

  it('runs over the top and along the bottom', async () => {
    const { mark: round } = await mark(
      '{text: SEED LIBRARY, arc: top, font: single line}, {text: Dill, font: Pacifico}, {text: plant swap, arc: bottom, font: single line}',
      'fit: {in: plate, margin: 3 mm}',
    );
    assert.ok(round.lines!.length > 30 && round.filled!.length > 3);
  });

  it('cannot be cut out or grown with the others', async () => {
    const messages = async (more: string, list: string) => {
      const { issues } = await report(
        `tagwright: 1\nshapes:\n  plate: {rectangle: [90 mm, 50 mm]}\n  note: {lines: [{text: Dill}, ${note}], width: 40 mm${more}}\npieces:\n  tag: {body: [plate], ${list}: [note]}\n`,
      );
      return issues.map(({ message }) => message).join('\n');
    };
    assert.equal(await messages('', 'cut'), '“note” has lines in it, which enclose nothing: score or engrave it.');
    assert.match(await messages(', grow: 1 mm', 'score'), /“grow” is for areas/);
  });

  it('is read by the customer in its place among the others', async () => {
    const { tag } = await mark(
      `{text: Dill, font: Pacifico}, {text: sown, font: single line}, {text: May, font: Nunito}`,
    );
    assert.equal(tag.title, 'Dill, sown, May');
    assert.deepEqual(
      wordsOn({ tag, fonts: [] }).map(({ lines, font }) => [...lines, font]),
      [
        ['Dill', 'Pacifico'],
        ['sown', 'single strokes'],
        ['May', 'Nunito'],
      ],
    );
  });
});
