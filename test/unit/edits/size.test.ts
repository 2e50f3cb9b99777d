import assert from 'node:assert/strict';
import { sizeAxes, sizeEdit, whatSetsSize, type Axis } from '../../../src/edits/size.ts';
import { withEdits } from '../../../src/fixes/find-fixes.ts';
import { parseSpec } from '../../../src/spec/parse.ts';

/** A whole spec round one shape. */
const specOf = (shape: string): string =>
  `tagwright: 1\nshapes:\n  a: ${shape}\n  room: {rectangle: [90, 90]}\npieces: {tag: {body: [a]}}\n`;

function read(text: string) {
  const { source, model } = parseSpec(text);
  assert.ok(model, 'it is a spec');
  return { source, shape: model.shapes.get('a')! };
}

function sized(shape: string, axis: Axis, by: number): string {
  const text = specOf(shape);
  const { source, shape: read_ } = read(text);
  const edit = sizeEdit(source, read_, axis, by, 'mm');
  assert.ok(edit, shape);
  const after = withEdits(text, [edit]);
  assert.ok(parseSpec(after).model, after);
  return /a: (.*)/.exec(after)![1]!;
}

const axesOf = (shape: string): Axis[] => {
  const { source, shape: made } = read(specOf(shape));
  return sizeAxes(source, made);
};

const setBy = (shape: string): string => {
  const { source, shape: made } = read(specOf(shape));
  return whatSetsSize(source, made);
};

describe('A size by hand', () => {
  it('that is not there is told with what sets it', () => {
    assert.equal(setBy('{rectangle: [80, 40]}'), '');
    assert.match(setBy('{text: Dill, fit: {in: room}}'), /^“fit” sets its size; change its margin/);
    assert.match(setBy('{text: Dill, width: 40, rotate: 30}'), /^it is turned/);
    assert.match(setBy('{text: Dill, width: 40}'), /^only its width is written/);
    assert.match(setBy('{around: room, by: 3}'), /in the text$/);
  });

  it('is the width or the height that is written, in its own unit', () => {
    assert.equal(sized('{text: Dill, width: 40 mm}', 'width', 2.5), '{text: Dill, width: 42.5 mm}');
    assert.equal(sized('{text: Dill, height: 1 in}', 'height', 12.7), '{text: Dill, height: 1.5 in}');
    assert.deepEqual(axesOf('{text: Dill, width: 40 mm}'), ['width']);
    assert.deepEqual(axesOf('{text: Dill, width: 40 mm, height: 20}'), ['width', 'height']);
  });

  it('is a figure of the plate where the plate has one', () => {
    assert.equal(sized('{rectangle: [80 mm, 40]}', 'height', -5), '{rectangle: [80 mm, 35]}');
    assert.equal(sized('{ellipse: 30 mm}', 'height', 5), '{ellipse: 35 mm}');
    assert.equal(sized('{polygon: {sides: 6, across: 40}}', 'width', 1), '{polygon: {sides: 6, across: 41}}');
    assert.equal(sized('{arrow: {length: 90, width: 20}}', 'width', 6), '{arrow: {length: 96, width: 20}}');
    assert.equal(sized('{ticket: {size: [60, 30]}}', 'width', 4), '{ticket: {size: [64, 30]}}');
    assert.deepEqual(axesOf('{arrow: {length: 90, width: 20}}'), ['width']);
  });

  it('never falls to nothing', () => {
    assert.equal(sized('{rectangle: [80 mm, 40]}', 'height', -100), '{rectangle: [80 mm, 0.5]}');
  });

  it('is not there for what is fitted, turned, or as large as something else makes it', () => {
    assert.deepEqual(axesOf('{text: Dill, fit: {in: room}}'), []);
    assert.deepEqual(axesOf('{text: Dill, width: 40, rotate: 30}'), []);
    assert.deepEqual(axesOf('{text: Dill, width: 40, rotate: 180}'), ['width']);
    assert.deepEqual(axesOf('{around: room, by: 3}'), []);
    assert.deepEqual(axesOf('{text: Dill, size: 12}'), []);
    const { source, shape } = read(specOf('{around: room, by: 3}'));
    assert.equal(sizeEdit(source, shape, 'width', 1, 'mm'), undefined);
  });
});
