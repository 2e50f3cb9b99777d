import assert from 'node:assert/strict';
import { assertNear, make, newEngine, placeOf, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertSilent, found, only } from './found.ts';

const plate = 'plate: {rectangle: [60, 20]}';

function cut(shapes: readonly string[], rest: string, body = plate): Promise<Made> {
  return make(specOf([body, ...shapes], `body: [plate], parts: many, ${rest}`, ['stock: {min_web: 0.2, kerf: 0}']));
}

describe('A cut that misses its piece', () => {
  it('cuts nothing, and is told how far off it lies, at its entry in the list', async () => {
    const made = await cut(['window: {rectangle: [10, 10], nudge: {right: 38}}'], 'cut: [window]');
    const issue = only(made, 'cut-off-body');
    assert.equal(issue.severity, 'warning');
    assert.equal(issue.piece, 'tag');
    // Exact: 38 − 5 − 30.
    assert.equal(issue.message, '“window” cuts nothing: it lies 3.00 mm beside “tag”.');
    assert.deepEqual(issue.path, ['pieces', 'tag', 'cut', 0]);
    assert.equal(placeOf(made.report, issue).text, 'window');
  });

  it('is told as lettering, and as a shape without a name', async () => {
    const made = await cut([], 'cut: [{text: Leek, width: 20, nudge: {up: 40}}, {ellipse: 4, nudge: {down: 20}}]');
    assert.deepEqual(
      found(made, 'cut-off-body').map(({ message }) => message.replace(/\d+\.\d+/, '…')),
      ['“Leek” cuts nothing: it lies … mm beside “tag”.', 'A shape cuts nothing: it lies … mm beside “tag”.'],
    );
  });

  it('is none that bites by more than a touch', async () => {
    // Exact: 10 wide, so 0.02 mm² are 0.002 deep. It is told as shallow then.
    const touching = (by: number) =>
      cut([`window: {rectangle: [10, 10], nudge: {right: ${35 - by}}}`], 'cut: [window]');
    assert.match(only(await touching(0.001), 'cut-off-body').message, /cuts nothing/);
    assert.match(only(await touching(0.004), 'cut-off-body').message, /barely touches/);
  });

  it('is none that cuts the lug of a ring', async () => {
    const ring = 'hanger: {ring: {at: top, diameter: 3, wall: 3}}';
    assertSilent(await cut(['dot: {ellipse: 1, nudge: {up: 13.8}}'], `cut: [dot], ${ring}`), 'cut-off-body');
  });
});

describe('A cut that lies entirely inside another opening', () => {
  it('cuts nothing: in another cut, a counter, or the opening of a hanger', async () => {
    for (const [shapes, rest, where] of [
      [['a: {ellipse: 10}', 'b: {ellipse: 6}'], 'cut: [a, b]', 'the cut “a”'],
      [['a: {ellipse: 10}', 'b: {ellipse: 6}'], 'cut: [b, a]', 'the cut “a”'],
      [['a: {ellipse: 10}', 'b: {from: a}'], 'cut: [a, b]', 'the cut “a”'],
      [['b: {ellipse: 3}'], 'cut: [b], hanger: {hole: {at: {up: 0}, diameter: 4}}', 'the hole for the tie'],
    ] as const) {
      const issue = only(await cut(shapes, rest), 'cut-off-body');
      assert.equal(issue.message, `“b” cuts nothing: it lies entirely inside ${where}.`);
    }
    const frame = 'plate: {difference: [{rectangle: [60, 20]}, {ellipse: 14}]}';
    const issue = only(await cut(['b: {ellipse: 6}'], 'cut: [b]', frame), 'cut-off-body');
    assert.equal(issue.message, '“b” cuts nothing: it lies entirely inside an opening of the body.');
  });

  it('is none that reaches out of it', async () => {
    const out = (right: number) =>
      cut(['a: {rectangle: [10, 10]}', `b: {rectangle: [4, 4], nudge: {right: ${right}}}`], 'cut: [a, b]');
    // Exact: flush at 3; beyond it 4 wide, so 0.02 mm² are 0.005.
    only(await out(3.004), 'cut-off-body');
    assertSilent(await out(3.006), 'cut-off-body');
  });
});

describe('Lettering and drawings cut off the edge', () => {
  const over = (by: number) =>
    cut([`word: {text: HI, font: Nunito, weight: 800, width: 20, nudge: {right: ${20 + by}}}`], 'cut: [word]');

  it('are told where part of them is lost', async () => {
    const issue = only(await over(2), 'cut-off-body');
    assert.match(
      issue.message,
      /^“word” is cut beyond the edge of “tag” \(2\.00 × .* mm\): part of it is lost, and the edge is open there\.$/,
    );
    assertNear(issue.points![0]!.x, 31, 0.1);
    const around = await cut(['word: {text: HIHIHI, font: Nunito, weight: 800, width: 64}'], 'cut: [word]');
    assert.match(only(around, 'cut-off-body').message, /2 places, the largest/);
  });

  it('are told from a twentieth of a millimetre on', async () => {
    assertSilent(await over(0.04), 'cut-off-body');
    only(await over(0.06), 'cut-off-body');
    assertSilent(await over(-1), 'cut-off-body');
  });

  it('are told where they run into an opening of the body', async () => {
    const frame = 'plate: {difference: [{rectangle: [60, 20]}, {ellipse: 8}]}';
    const made = await cut(['word: {text: H, font: Nunito, weight: 800, height: 10}'], 'cut: [word]', frame);
    assert.match(only(made, 'cut-off-body').message, /is cut into an opening of “tag” .*: part of it is lost\.$/);
  });

  it('are told of drawings and of what is made from either, but not of an outline round them', async () => {
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="8mm" viewBox="0 0 20 8"><path d="M0 0H20V8H0Z"/></svg>';
    const engine = newEngine({ 'leaf.svg': svg });
    const body = (shape: string) => specOf([plate, `leaf: ${shape}`], 'body: [plate], parts: many, cut: [leaf]');
    only(await make(body('{drawing: leaf.svg, nudge: {right: 18}}'), engine), 'cut-off-body');
    const word = '{text: HI, font: Nunito, weight: 800, width: 20, nudge: {right: 22}}';
    only(await make(body(`{from: ${word}}`)), 'cut-off-body');
    only(await make(body(`{union: [{ellipse: 3}, ${word}]}`)), 'cut-off-body');
    assertSilent(await make(body(`{around: ${word}, by: 2}`)), 'cut-off-body');
  });
});

describe('A plain shape cut over the edge', () => {
  it('makes a notch or a hollow side, and is left alone', async () => {
    for (const shape of [
      '{ellipse: 8, nudge: {up: 10}}',
      // A hollow side: 2.5 mm deep, and hardly a twentieth of the disc.
      '{ellipse: 80, nudge: {up: 47.5}}',
      '{rectangle: [8, 8], rotate: 45, nudge: {right: 30}}',
      '{polygon: {sides: 3, across: 12}, nudge: {left: 28, up: 8}}',
      '{path: "M0 0h10v10h-10z", nudge: {right: 25}}',
    ]) {
      assertSilent(await cut([`notch: ${shape}`], 'cut: [notch]'), 'cut-off-body', shape);
    }
  });

  it('is told where almost all of it lies beyond, and it bites less than two millimetres', async () => {
    const issue = only(await cut(['w: {rectangle: [10, 10], nudge: {right: 34}}'], 'cut: [w]'), 'cut-off-body');
    assert.equal(
      issue.message,
      '“w” barely touches “tag”: 90 % of it lies beyond the edge, and it cuts only 1.00 mm deep.',
    );
    // By its share: of 5 mm, 1.01 or 0.99 are on the plate.
    assertSilent(await cut(['w: {rectangle: [5, 10], nudge: {right: 31.49}}'], 'cut: [w]'), 'cut-off-body');
    only(await cut(['w: {rectangle: [5, 10], nudge: {right: 31.51}}'], 'cut: [w]'), 'cut-off-body');
    // By its depth: of 20 mm, less than a fifth in either case.
    assertSilent(await cut(['w: {rectangle: [20, 10], nudge: {right: 37.99}}'], 'cut: [w]'), 'cut-off-body');
    only(await cut(['w: {rectangle: [20, 10], nudge: {right: 38.01}}'], 'cut: [w]'), 'cut-off-body');
  });
});

describe('A cut within its piece', () => {
  it('is left alone: windows, lettering with bridges, slots side by side, and what overlaps', async () => {
    for (const [shapes, rest] of [
      [['window: {heart: 12}'], 'cut: [window]'],
      [['word: {text: Bo, font: Nunito, weight: 800, height: 12, bridges: 1.5}'], 'cut: [word]'],
      [['leaf: {ellipse: [12, 6]}', 'stem: {rectangle: [16, 2], nudge: {right: 8}}'], 'cut: [leaf, stem]'],
      [['window: {ellipse: 6}'], 'cut: [window], hanger: {hole: {at: {left: 24}}}'],
    ] as const) {
      assertSilent(await cut(shapes, rest), 'cut-off-body', rest);
    }
  });
});
