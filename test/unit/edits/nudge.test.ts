import assert from 'node:assert/strict';
import fc from 'fast-check';
import { parse } from 'yaml';
import { nudgeAt, nudgeEdits } from '../../../src/edits/nudge.ts';
import { withEdits } from '../../../src/fixes/find-fixes.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';

const path = ['shapes', 'word'];

function nudged(text: string, x: number, y: number, units: 'mm' | 'in' = 'mm', at: string[] = path): string {
  const edits = nudgeEdits(new SpecSource(text), at, { x, y }, units);
  assert.ok(edits, 'there is a place for it');
  return withEdits(text, edits);
}

describe('A nudge by hand', () => {
  it('is added in the style of the map', () => {
    assert.equal(
      nudged('shapes:\n  word: {text: Dill, width: 40 mm}  # seed\n', 2, -0.5),
      'shapes:\n  word: {text: Dill, width: 40 mm, nudge: {right: 2 mm, down: 0.5 mm}}  # seed\n',
    );
    assert.equal(
      nudged('shapes:\n  word:\n    text: Dill  # seed\n    width: 40 mm # wide\npieces: {}\n', -3, 0),
      'shapes:\n  word:\n    text: Dill  # seed\n    width: 40 mm # wide\n    nudge: {left: 3 mm}\npieces: {}\n',
    );
    assert.equal(
      nudged('pieces:\n  tag:\n    hanger: {ring: {}}\n', 0, 1, 'mm', ['pieces', 'tag', 'hanger', 'ring']),
      'pieces:\n  tag:\n    hanger: {ring: {nudge: {up: 1 mm}}}\n',
    );
  });

  it('keeps the line ends of the file', () => {
    assert.equal(
      nudged('shapes:\r\n  word:\r\n    text: Dill\r\npieces: {}\r\n', 1, 0),
      'shapes:\r\n  word:\r\n    text: Dill\r\n    nudge: {right: 1 mm}\r\npieces: {}\r\n',
    );
  });

  it('adds to the one that is there, figure by figure, with comments, order and units as they were', () => {
    const block =
      'shapes:\n  word:\n    nudge:\n      up: 1 cm  # clear of the tail\n      left: 2   # and of the hole\n';
    assert.equal(
      nudged(block, 0.5, 1),
      'shapes:\n  word:\n    nudge:\n      up: 1.1 cm  # clear of the tail\n      left: 1.5   # and of the hole\n',
    );
    assert.equal(
      nudged('shapes:\n  word: {text: Dill, nudge: {up: 1/4 in}}\n', 0, 0.635),
      'shapes:\n  word: {text: Dill, nudge: {up: 0.275 in}}\n',
    );
    assert.equal(
      nudged('shapes:\n  word: {text: Dill, nudge: {up: 1 mm}}\n', -2, 0),
      'shapes:\n  word: {text: Dill, nudge: {up: 1 mm, left: 2 mm}}\n',
    );
  });

  it('turns a word round where the sum goes to the other side', () => {
    assert.equal(
      nudged('shapes:\n  word: {nudge: {right: 1 mm}, text: Dill}\n', -3, 0),
      'shapes:\n  word: {nudge: {left: 2 mm}, text: Dill}\n',
    );
    assert.equal(
      nudged('shapes:\n  word: {nudge: {right: -1 mm}, text: Dill}\n', -1, 0),
      'shapes:\n  word: {nudge: {left: 2 mm}, text: Dill}\n',
    );
  });

  it('goes away where it comes to nothing, unless a comment would go with it', () => {
    assert.equal(
      nudged('shapes:\n  word: {text: Dill, nudge: {right: 1 mm}, width: 4}\n', -1, 0),
      'shapes:\n  word: {text: Dill, width: 4}\n',
    );
    assert.equal(nudged('shapes:\n  word: {nudge: {right: 1 mm}, width: 4}\n', -1, 0), 'shapes:\n  word: {width: 4}\n');
    assert.equal(
      nudged('shapes:\n  word:\n    text: Dill\n    nudge: {right: 1 mm}\n    width: 4\n', -1, 0),
      'shapes:\n  word:\n    text: Dill\n    width: 4\n',
    );
    assert.equal(
      nudged('shapes:\n  word:\n    text: Dill\n    nudge: {right: 1 mm}  # by eye\n', -1, 0),
      'shapes:\n  word:\n    text: Dill\n    nudge: {right: 0 mm}  # by eye\n',
    );
    assert.equal(
      nudged('shapes:\n  word: {text: Dill, nudge: {right: 1 mm, up: 2 mm}}\n', -1, 0),
      'shapes:\n  word: {text: Dill, nudge: {up: 2 mm}}\n',
    );
    assert.equal(nudged('shapes:\n  word: {text: Dill}\n', 0, 0), 'shapes:\n  word: {text: Dill}\n');
  });

  it('is written in the units of the spec', () => {
    assert.equal(
      nudged('units: in\nshapes:\n  word: {text: Dill}\n', 25.4, 12.7, 'in'),
      'units: in\nshapes:\n  word: {text: Dill, nudge: {right: 1 in, up: 0.5 in}}\n',
    );
    assert.deepEqual(nudgeAt(new SpecSource('shapes: {word: {nudge: {right: 1, down: 2 mm}}}'), path, 'in'), {
      x: 25.4,
      y: -2,
    });
  });

  it('leaves alone what shares a nudge through an alias, and moves what is one shape through an alias', () => {
    assert.equal(
      nudged('shapes:\n  other: {text: Rue, nudge: &n {up: 1 mm}}\n  word: {text: Dill, nudge: *n}\n', 2, 0),
      'shapes:\n  other: {text: Rue, nudge: &n {up: 1 mm}}\n  word: {text: Dill, nudge: {right: 2 mm, up: 1 mm}}\n',
    );
    assert.equal(
      nudged('shapes:\n  other: &o {text: Rue}\n  word: *o\n', 2, 0),
      'shapes:\n  other: &o {text: Rue, nudge: {right: 2 mm}}\n  word: *o\n',
    );
  });

  it('says that there is no place for it where there is no map', () => {
    assert.equal(nudgeEdits(new SpecSource('shapes:\n  word: Dill\n'), path, { x: 1, y: 0 }, 'mm'), undefined);
  });

  it('moves by what was asked, whatever was written before (read back by the yaml library)', () => {
    const tenths = fc.integer({ min: -300, max: 300 }).map((n) => n / 10);
    const styles = [
      (x: number, y: number) => `shapes:\n  word: {text: Dill, nudge: {right: ${x}, up: ${y} mm}}\n`,
      (x: number, y: number) =>
        `shapes:\n  word:\n    nudge:\n      left: ${-x} mm # a\n      up: ${y} # b\n    text: Dill\n`,
      (x: number, y: number) => `shapes: {word: {nudge: {down: ${-y} mm, right: ${x} mm}}}`,
    ];
    fc.assert(
      fc.property(tenths, tenths, tenths, tenths, fc.constantFrom(...styles), (x, y, dx, dy, style) => {
        const text = style(x, y);
        const after = nudged(text, dx, dy);
        const value = (parse(after) as { shapes: { word: { nudge?: Record<string, number | string> } } }).shapes.word;
        const figure = (word: string) => Number.parseFloat(String(value.nudge?.[word] ?? 0));
        assert.ok(Math.abs(figure('right') - figure('left') - (x + dx)) < 0.006, after);
        assert.ok(Math.abs(figure('up') - figure('down') - (y + dy)) < 0.006, after);
        const comments = (each: string) => each.match(/#.*/g)?.length ?? 0;
        assert.equal(comments(after), comments(text));
      }),
      { numRuns: 300 },
    );
  });
});
