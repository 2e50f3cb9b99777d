import assert from 'node:assert/strict';
import { hardToRead } from '../../../src/checks/hard-to-read.ts';
import { lostInWords, lostMarks } from '../../../src/checks/measures/lost-marks.ts';
import { union } from '../../../src/geometry/clipper.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { Lettering } from '../../../src/tag/lettering/letters.ts';
import { packagedFont } from '../../fonts/font-files.ts';
import { make, newEngine, specOf } from '../support/engine.ts';
import { box } from '../support/shapes.ts';

const engine = newEngine({
  'kaushan.woff': new Uint8Array(await packagedFont('kaushan-script', 'latin', 400)),
  'lobster.woff': new Uint8Array(await packagedFont('lobster', 'latin', 400)),
  'dancing.woff': new Uint8Array(await packagedFont('dancing-script', 'latin', 700)),
});

/** Of an i 2 mm wide and its dot, `width` wide on a post as wide as the stem. */
function lostOf(width: number, isMoved = true) {
  const [stem, dot] = [[box(-1, 0, 1, 10)], [box(-width / 2, 12, width / 2, 15)]];
  const region: Region = [...stem, ...dot];
  const letters = [{ text: 'i', region, ...(isMoved ? { asSet: region } : {}) }];
  const lettering = new Lettering({ path: [], xHeight: 10, grow: 0, as: 'material' }, () => letters);
  return lostMarks(lettering, union([stem, dot, [box(-1, 9, 1, 13)]]));
}

describe('A dot that melts into its letter', () => {
  it('is one hardly wider than its post', () => {
    assert.deepEqual(
      lostOf(2).map(({ text }) => text),
      ['i'],
    );
    assert.equal(lostOf(2.05).length, 1);
    assert.equal(lostOf(3).length, 0);
  });

  it('is looked for only where letters were moved', () => {
    assert.equal(lostOf(2, false).length, 0);
  });

  const said = async (text: string, font: string, xHeight = 9, grow = 0.15) => {
    const shape = `name: {text: ${text}, font: ${font}, x_height: ${xHeight}, overlap: auto, grow: ${grow}}`;
    const made = await make(specOf([shape], 'body: [name], parts: many', ['stock: {kerf: 0.15}']), engine);
    return hardToRead(made.report.tag!).map(({ severity, message }) => `${severity}: ${message}`);
  };

  it('is said by name: the two dots of an ö that are one bump', async () => {
    assert.deepEqual(await said('Göran', 'kaushan.woff', 5), [
      'info: “Göran” may be hard to read: the dots of the “ö” hardly stand out from the letter.',
    ]);
  });

  it('is one in the bowl of an open letter, whose white is not that of its dots', async () => {
    assert.deepEqual(await said('Über', 'lobster.woff', 6.5, 0.4), [
      'info: “Über” may be hard to read: the dots of the “Ü” hardly stand out from the letter.',
    ]);
  });

  it('is one with white on one side alone, where another letter has taken the other', async () => {
    assert.deepEqual(await said('Tilly', 'kaushan.woff', 12, 0), [
      'info: “Tilly” may be hard to read: the dot of the “i” hardly stands out from the letter.',
    ]);
    assert.deepEqual(await said('Lilly', 'kaushan.woff', 12, 0), []);
  });

  it('is none that meets nothing on its side without white but its own neck', () => {
    const base = box(-3, 0, 3, 10);
    const accent: Region[number] = [
      { x: 0, y: 13 },
      { x: 2, y: 13 },
      { x: 6, y: 19 },
      { x: 4, y: 19 },
    ];
    const [neck, ascender] = [box(-6, 9, 1.2, 14), box(-9, 0, -6, 20)];
    const lost = (ofOther: Region) => {
      const letters = [
        { text: 'l', region: [ascender], asSet: [ascender] },
        { text: 'é', region: [base, accent], asSet: [base, accent] },
      ];
      const lettering = new Lettering({ path: [], xHeight: 10, grow: 0, as: 'material' }, () => [
        { ...letters[0]!, region: ofOther },
        letters[1]!,
      ]);
      return lostMarks(lettering, union([[base], [accent], [neck], ofOther])).map(({ text }) => text);
    };
    assert.deepEqual(lost([ascender]), []);
    // An arm that reaches over to the accent.
    assert.deepEqual(lost([...union([[ascender], [box(-7, 10, -0.2, 15)]])]), ['é']);
  });

  it('is none of a letter that the face of a stencil cuts into parts', () => {
    const e = { text: 'e', region: [box(-1, 0, 1, 10), box(-1, 12, 1, 15)] };
    const lettering = new Lettering({ path: [], xHeight: 10, grow: 0, as: 'material' }, () => [
      { ...e, asSet: e.region },
    ]);
    assert.deepEqual(lostMarks(lettering, [box(-1, 0, 1, 15)]), []);
  });

  it('is said once of letters that are many times the same', () => {
    const i = { text: 'i', region: [box(0, 0, 1, 5), box(0, 6, 1, 7)] };
    assert.equal(
      lostInWords([i, { ...i, text: 'ö' }, i, i]),
      'the dots or accents of “i” (3) and “ö” hardly stand out from their letters',
    );
  });

  it('is none where the dots are seen', async () => {
    for (const font of ['Pacifico', 'Nunito', 'dancing.woff', 'Alfa Slab One'])
      for (const text of ['Nils', 'Göran', 'Réka', 'Zoë'])
        assert.deepEqual(await said(text, font), [], `${text}, ${font}`);
  });

  it('is none by which an i hangs from the bowl of a P', async () => {
    for (const font of ['Pacifico', 'dancing.woff', 'kaushan.woff'])
      for (const text of ['Pip', 'Pia']) assert.deepEqual(await said(text, font), [], `${text}, ${font}`);
  });
});
