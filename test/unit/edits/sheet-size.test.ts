import assert from 'node:assert/strict';
import { writtenSize } from '../../../src/core/units.ts';
import { sheetSizeEdit, sheetSizesFor } from '../../../src/edits/sheet-size.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { report } from '../support/engine.ts';
import { samples } from '../support/samples.ts';

function written(text: string, units: 'mm' | 'in' = 'mm'): string | undefined {
  const edit = sheetSizeEdit(new SpecSource(text), sheetSizesFor({ width: 1, height: 1 }, units)[0]!, units);
  return edit && text.slice(0, edit.range.start) + edit.text + text.slice(edit.range.end);
}

describe('The size of a sheet', () => {
  const line = 'sheet: {size: [300 mm, 200 mm], margin: 5 mm}\n';
  const rest = '\n# What it is.\nshapes: {p: {rectangle: [60, 20]}}\npieces: {t: {body: [p]}}\n';

  it('is written as one line, below what the tag is made of', () => {
    for (const head of [
      'tagwright: 1\n',
      'tagwright: 1\ntitle: Plate   # the one by the door\n',
      'tagwright: 1\nstock: {material: oak, thickness: 3 mm}\ntie: {twine: 2 mm}\n',
      'tagwright: 1\nstock:\n  material: oak\n  # as measured\n  thickness: 3 mm\n',
    ])
      assert.equal(written(head + rest), head + line + rest);
  });

  it('keeps line ends, and goes into brackets where the spec is in brackets', () => {
    const windows = `tagwright: 1\n${rest}`.replaceAll('\n', '\r\n');
    assert.equal(written(windows), `tagwright: 1\n${line}${rest}`.replaceAll('\n', '\r\n'));
    assert.equal(
      written('{tagwright: 1, shapes: {p: {ellipse: 20}}, pieces: {t: {body: [p]}}}'),
      '{tagwright: 1, shapes: {p: {ellipse: 20}}, pieces: {t: {body: [p]}}, sheet: {size: [300 mm, 200 mm], margin: 5 mm}}',
    );
  });

  it('is not written where there is one', () => {
    assert.equal(written('tagwright: 1\nsheet: {size: [10, 10]}\n'), undefined);
    assert.equal(written('- a list'), undefined);
  });

  it('makes a sheet of every sample without one, and no new problem', async () => {
    for (const { name, text } of samples.filter((sample) => !/^sheet:/m.test(sample.text))) {
      const [before, after] = [await report(text), await report(written(text)!)];
      assert.deepEqual(after.tag?.sheet && [after.tag.sheet.width, after.tag.sheet.height], [300, 200], name);
      assert.deepEqual(
        after.issues.map(({ message }) => message),
        before.issues.map(({ message }) => message),
        name,
      );
    }
  });

  it('is offered only where the largest piece goes on it, in the units of the spec', () => {
    assert.equal(sheetSizesFor({ width: 299.9, height: 199.9 }, 'mm').length, 4);
    assert.equal(sheetSizesFor({ width: 300, height: 100 }, 'mm').length, 3);
    assert.equal(sheetSizesFor({ width: 700, height: 100 }, 'mm').length, 0);
    const inches = sheetSizesFor({ width: 300, height: 200 }, 'in');
    assert.deepEqual(
      inches.map(({ width, height }) => writtenSize(width, height, 'in')),
      ['12 × 8 in', '12 × 12 in', '24 × 12 in', '24 × 18 in'],
    );
    assert.match(written('tagwright: 1\nunits: in\n', 'in')!, /sheet: \{size: \[12 in, 8 in\], margin: 1\/4 in\}/);
  });
});
