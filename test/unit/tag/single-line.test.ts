import assert from 'node:assert/strict';
import { boundsOf } from '../../../src/geometry/measure.ts';
import type { Line } from '../../../src/geometry/types.ts';
import { estimateJob } from '../../../src/toolpath/estimate.ts';
import { planCuts } from '../../../src/toolpath/cut-plan.ts';
import { wordsOn } from '../../../src/export/words-on.ts';
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

  it('cannot be cut out, grown or slid together', async () => {
    assert.match(
      await messagesOf('Dill, font: single line, width: 40 mm', 'cut'),
      /“note” is made of lines, which enclose nothing/,
    );
    assert.match(
      await messagesOf('Dill, font: single line, width: 40 mm, grow: 1 mm'),
      /“grow” is for areas; lines have no width/,
    );
    assert.match(
      await messagesOf('Dill, font: single line, width: 40 mm, overlap: 1 mm'),
      /“overlap” does not go with single-line/,
    );
    assert.match(
      await messagesOf('Dill, font: [Nunito, single line], width: 40 mm'),
      /“single line” is for one text by itself/,
    );
  });

  it('is read by the customer as any other words', async () => {
    const { tag } = await report(spec('Sorrel, font: single line, width: 40 mm'));
    assert.equal(tag!.title, 'Sorrel');
    const [words] = wordsOn({ tag: tag!, fonts: [] });
    assert.deepEqual([words!.lines, words!.way, words!.font], [['Sorrel'], 'drawn as a fine line', 'single strokes']);
  });
});
