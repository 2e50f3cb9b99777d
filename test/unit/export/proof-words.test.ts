import assert from 'node:assert/strict';
import { jobOf } from '../../../src/export/job/job.ts';
import { proofPage } from '../../../src/export/proof/proof.ts';
import { wordsOn } from '../../../src/export/words/words-on.ts';
import { union } from '../../../src/geometry/clipper.ts';
import { curveBounds } from '../../../src/geometry/curves.ts';
import { boundsOf } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { packagedFont } from '../../fonts/font-files.ts';
import { make, newEngine } from '../support/engine.ts';
import { tools } from '../support/tools.ts';

const spec = (turned: string) => `tagwright: 1
stock: {thickness: 3 mm}
shapes:
  plate: {rectangle: [60 mm, 40 mm]}
  front: {text: Rue, font: Nunito, width: 30 mm, place: plate${turned}}
  sign: {text: Rue, font: single line, width: 20 mm, place: {on: plate, at: bottom, margin: 2 mm}${turned}}
pieces:
  tag: {body: plate, engrave: [front], score: [sign]}
`;

const jobFrom = async (text: string) => jobOf((await make(text)).report)!;

/** Corners of each letter, from the middle of them all, at one width. */
function upToSize(letters: readonly Region[]): number[] {
  const { minX, maxX, minY, maxY } = boundsOf(letters.flat())!;
  const size = maxX - minX;
  return letters.flatMap((region) => {
    const box = boundsOf(region)!;
    return [box.minX - minX, box.maxX - minX, box.minY - minY, box.maxY - maxY].map((each) => each / size);
  });
}

describe('The words of a proof, as they are spelt', () => {
  it('are drawn to be read, however they are turned and mirrored', async () => {
    const upright = wordsOn(await jobFrom(spec('')))[0]!.lettering!;
    for (const turned of [
      ', mirror: left-right',
      ', mirror: up-down',
      ', rotate: 90',
      ', mirror: left-right, rotate: 30',
    ]) {
      const { lettering } = wordsOn(await jobFrom(spec(turned)))[0]!;
      const [now, was] = [upToSize(lettering!.toRead()), upToSize(upright.toRead())];
      assert.equal(now.length, was.length);
      for (const [index, each] of now.entries()) assert.ok(Math.abs(each - was[index]!) < 1e-6, `${turned}: ${each}`);
    }
  });

  it('stand as their font sets them where they were slid together, clear of the note below, and are the heading too', async () => {
    const text = `tagwright: 1
stock: {thickness: 3 mm}
shapes:
  name: {text: שושנה, font: ruhl.woff, height: 20 mm, overlap: auto}
pieces:
  tag: {body: [name]}
`;
    const engine = newEngine({ 'ruhl.woff': await packagedFont('frank-ruhl-libre', 'hebrew', 700) });
    const job = jobOf((await make(text, engine)).report)!;
    const { lettering } = wordsOn(job)[0]!;
    assert.ok(
      lettering!.letters.every(({ asSet }) => asSet),
      'its letters were slid',
    );
    // Five letters that do not touch in this font; the left leg of the last is a part of its own.
    assert.equal(partsOf(union(lettering!.toRead())).length, 6);
    const page = await proofPage(job, tools, true);
    const black = page.drawings.flatMap((each) =>
      'path' in each && each.fill === '#222222' ? [curveBounds(each.path)!.minY] : [],
    );
    assert.equal(black.length, 2, 'the heading and the words');
    const note = page.words.find(({ text: said }) => said.startsWith('Cut out, in'))!;
    // Capitals of Nunito are 0.705 em high.
    assert.ok(Math.min(...black) > note.y + 0.705 * note.size, `${Math.min(...black)} ${note.y}`);
  });

  it('have fractions that the font of the page lacks in figures, and leave none out', async () => {
    const text = spec('').replace('{text: Rue, font: single line', '{text: "1⅔ in, ½", font: single line');
    const { words } = await proofPage(await jobFrom(text), tools, true);
    assert.ok(
      words.some((each) => each.text === '1 2/3 in, 1/2' || each.text === '1 2/3 in, ½'),
      words.map((each) => each.text).join('\n'),
    );
  });

  it('have the note on how they are made nearer than the words that follow', async () => {
    for (const more of [0, 4]) {
      const others = Array.from({ length: more }, (_, index) => `  t${index}: {text: Ty, font: Caveat, width: 9 mm}\n`);
      const names = others.map((_, index) => `, t${index}`).join('');
      const text = spec('')
        .replace('pieces:', `${others.join('')}pieces:`)
        .replace('[front]', `[front${names}]`);
      const { words } = await proofPage(await jobFrom(text), tools, true);
      const note = words.findIndex((each) => each.text === 'Engraved, in Nunito SemiBold');
      const [own, said, next] = words.slice(note - 1, note + 2);
      // Capitals of Nunito are 0.705 em high, and its p and g reach 0.205 em below the line.
      const above = own!.y - (said!.y + 0.705 * said!.size);
      const below = said!.y - (next!.y + 0.705 * next!.size);
      assert.ok(above > 0.205 * own!.size, `${more}: ${above}`);
      assert.ok(below > 1.5 * above, `${more}: ${above} ${below}`);
    }
  });

  it('are said to be mirrored where they are', async () => {
    const notes = async (turned: string) =>
      (await proofPage(await jobFrom(spec(turned)), tools, true)).words
        .map(({ text }) => text)
        .filter((text) => /, in /.test(text));
    assert.deepEqual(await notes(', mirror: left-right'), [
      'Engraved, mirrored, in Nunito SemiBold',
      'Drawn as a fine line, mirrored, in single strokes',
    ]);
    for (const turned of ['', ', rotate: 180'])
      assert.deepEqual(await notes(turned), [
        'Engraved, in Nunito SemiBold',
        'Drawn as a fine line, in single strokes',
      ]);
  });
});
