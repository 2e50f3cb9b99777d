import assert from 'node:assert/strict';
import type { FontFace } from '../../../src/text/font-face.ts';
import { layoutText } from '../../../src/text/text-layout.ts';
import { itemise } from '../../../src/text/itemise.ts';
import { packagedFace } from '../../fonts/faces.ts';

function seen(face: FontFace, text: string): string[] {
  return layoutText(face, { text, align: 'left' }).glyphs.map((glyph) => glyph.text);
}

const all = (): boolean => true;

/** The runs of a line as they are seen from left to right, a run that runs the other way turned round. */
function visualRuns(line: string): string {
  const { text, runs } = itemise(line, all);
  return runs
    .map(({ start, end, level }) => {
      const letters = Array.from(text.slice(start, end));
      return (level % 2 === 1 ? letters.reverse() : letters).join('');
    })
    .join('');
}

describe('right-to-left text', () => {
  it('sets Hebrew from right to left, its first letter last', async () => {
    const face = await packagedFace('frank-ruhl-libre', 'hebrew');
    const layout = layoutText(face, { text: 'זרע', align: 'left' });
    assert.deepEqual(
      layout.glyphs.map((glyph) => glyph.text),
      ['ע', 'ר', 'ז'],
    );
    assert.deepEqual(layout.missing, []);
    const xs = layout.glyphs.map((glyph) => glyph.x);
    assert.deepEqual(
      xs,
      [...xs].sort((a, b) => a - b),
    );
  });

  it('joins Arabic letters: alone, a letter has another glyph than within a word', async () => {
    const face = await packagedFace('amiri', 'arabic');
    const glyphOf = (text: string, letter: string): number =>
      layoutText(face, { text, align: 'left' }).glyphs.find((glyph) => glyph.text === letter)!.id;
    const forms = [glyphOf('ب', 'ب'), glyphOf('بذر', 'ب'), glyphOf('طبق', 'ب'), glyphOf('حب', 'ب')];
    assert.equal(new Set(forms).size, 4, 'isolated, initial, medial and final forms (Unicode 9.2, cursive joining)');
    assert.deepEqual(seen(face, 'بذر'), ['ر', 'ذ', 'ب']);
  });

  // Cases by the rules of UAX #9, capitals in its examples being right-to-left letters.
  for (const [rule, logical, visual] of [
    ['one direction', 'abc', 'abc'],
    ['a Hebrew line', 'אבג', 'גבא'],
    ['Hebrew within Latin', 'ab אב cd', 'ab בא cd'],
    ['Latin within Hebrew: the line takes its direction from its first letter (P2, P3)', 'אב ab גד', 'דג ab בא'],
    ['a number within Hebrew runs from left to right (W2, I1)', 'אב 17 גד', 'דג 17 בא'],
    ['two Hebrew words within Latin change places together (N1)', 'ab אב גד cd', 'ab דג בא cd'],
  ] as const) {
    it(`orders ${rule}`, () => {
      assert.equal(visualRuns(logical), visual);
    });
  }

  it('keeps the places of missing letters in the text as typed', async () => {
    const face = await packagedFace('frank-ruhl-libre', 'hebrew');
    const { missing } = layoutText(face, { text: 'זרע 🌱 Ж', align: 'left' });
    assert.deepEqual(missing, [
      { text: '🌱', index: 4 },
      { text: 'Ж', index: 7 },
    ]);
  });
});
