import assert from 'node:assert/strict';
import { contains } from '../../../src/geometry/measure.ts';
import { assertNear, make, newEngine, placeOf, report, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertSilent, found, only } from './found.ts';

const plate = 'plate: {rectangle: [60, 20]}';

function marked(shapes: readonly string[], rest: string): Promise<Made> {
  return make(specOf([plate, ...shapes], `body: [plate], ${rest}`));
}

/** Both, the smaller first. */
const sizes = (message: string) =>
  [...message.matchAll(/(\d+\.\d\d)(?= mm| ×)/g)].map(([, figure]) => Number(figure)).sort((a, b) => a - b);

describe('A mark that runs off its piece', () => {
  // Exact: of a patch of 10 × 4 whose middle is 3 from the edge across its length, 2 × 4 are beyond.
  for (const [side, patch] of [
    ['right', '{rectangle: [10, 4], nudge: {right: 27}}'],
    ['left', '{rectangle: [10, 4], nudge: {left: 27}}'],
    ['top', '{rectangle: [10, 4], rotate: 90, nudge: {up: 7}}'],
    ['bottom', '{rectangle: [4, 10], nudge: {down: 7}}'],
    ['mirrored', '{rectangle: [10, 4], mirror: left-right, nudge: {left: 27}}'],
  ] as const) {
    it(`is told how much, at the ${side}`, async () => {
      for (const [use, words] of [
        ['engrave', 'Engraving'],
        ['score', 'A score line'],
      ] as const) {
        const made = await marked([`patch: ${patch}`], `${use}: [plate, patch]`);
        const issue = only(made, 'mark-off-body');
        assert.equal(issue.severity, 'warning');
        assert.equal(issue.piece, 'tag');
        assert.ok(issue.message.startsWith(`${words} runs beyond the edge of “tag”`), issue.message);
        assert.deepEqual(sizes(issue.message), [2, 4]);
        assert.deepEqual(placeOf(made.report, issue).text, 'patch');
        assert.equal(placeOf(made.report, issue).line, 6);
        const [point] = issue.points!;
        assert.ok(!contains(made.region, point!) && Math.abs(point!.x) < 32 && Math.abs(point!.y) < 12);
      }
    });
  }

  it('is an error where more than nine tenths of any other mark are lost', async () => {
    // Of a patch 10 mm wide whose left edge is at 30 − kept, so much is kept.
    for (const [kept, severity] of [
      [0.9, 'error'],
      [1.1, 'warning'],
    ] as const) {
      const made = await marked([`patch: {rectangle: [10, 4], nudge: {right: ${35 - kept}}}`], 'engrave: [patch]');
      const issue = only(made, 'mark-off-body');
      assert.equal(issue.severity, severity, issue.message);
      assert.equal(issue.message.endsWith(' 91 % of it is lost.'), severity === 'error', issue.message);
    }
  });

  it('is told more quietly where letters just miss the edge, up to 0.5 mm; nothing else is', async () => {
    const beside = (shape: string, width: number) => marked([shape.replace('WIDTH', `${width}`)], 'engrave: [word]');
    const word = 'word: {text: HERBS, font: Nunito, width: WIDTH}';
    assertSilent(await beside(word, 60 - 2 * 0.51), 'mark-off-body');
    const made = await beside(word, 60 - 2 * 0.49);
    const issue = only(made, 'mark-off-body');
    assert.equal(issue.severity, 'info');
    assert.match(issue.message, /^Only 0\.49 mm between these letters and the edge of “tag”/);
    const [point] = issue.points!;
    assertNear(Math.abs(point!.x), 30 - 0.49, 0.02);
    assertSilent(await beside('word: {rectangle: [WIDTH, 8]}', 60 - 2 * 0.1), 'mark-off-body');
  });

  it('is an error where more than a tenth of a lettering is lost, and a warning below that', async () => {
    // A line of thirty bars, of which the plate, 60 mm wide, shows what does not reach beyond it.
    for (const [aside, severity] of [
      [7.5, 'error'],
      [4.5, 'warning'],
    ] as const) {
      const word = `word: {text: ${'l'.repeat(30)}, font: Nunito, width: 60, nudge: {right: ${aside}}}`;
      const issue = only(await marked([word], 'engrave: [word]'), 'mark-off-body');
      assert.equal(issue.severity, severity, issue.message);
      // A copy of a text is lettering too.
      const copy = [word.replace(`right: ${aside}`, 'right: 0'), `again: {from: word, nudge: {right: ${aside}}}`];
      assert.equal(only(await marked(copy, 'engrave: [again]'), 'mark-off-body').severity, severity);
      assert.equal(/1[0-4] % of its letters are lost\.$/.test(issue.message), severity === 'error', issue.message);
    }
  });

  it('is not of score lines that end at the edge, as those of a ruler do, but of longer ones', async () => {
    const ticks = (up: number) => [
      'tick: {path: "M0 0 L0 6", lines: true}',
      `ticks: {repeat: {shape: tick, count: 5, spacing: 5}, nudge: {up: ${up}}}`,
    ];
    // Drawn from the origin down.
    const edge = 20 / 2;
    assertSilent(await marked(ticks(edge), 'score: [ticks]'), 'mark-off-body');
    assertSilent(await marked(ticks(edge), 'score: [{intersection: [ticks, plate]}]'), 'mark-off-body');
    assert.match(only(await marked(ticks(edge + 0.1), 'score: [ticks]'), 'mark-off-body').message, /5 places/);
  });

  it('is told in how many places', async () => {
    const made = await marked(['band: {rectangle: [70, 4]}'], 'engrave: [band]');
    assert.match(only(made, 'mark-off-body').message, /\(2 places, the largest 5\.00 × 4\.00 mm\)/);
  });

  it('is one finding for each mark', async () => {
    const made = await marked(['band: {rectangle: [70, 4]}'], 'engrave: [band], score: [band]');
    assert.equal(found(made, 'mark-off-body').length, 2);
  });

  it('is told where it only spans a notch', async () => {
    const shapes = [
      'notched: {path: "M0 0 L10 10 L20 0 V20 H0 Z"}',
      'band: {rectangle: [16, 6], nudge: {right: 10, down: 8}}',
    ];
    const made = await make(specOf(shapes, 'body: [notched], engrave: [band]'));
    // Exact: the notch is 45°; from y −5 down to its point at −10, it is 10 wide at the band's upper edge.
    assert.deepEqual(sizes(only(made, 'mark-off-body').message), [5, 10]);
  });

  it('is told where it runs into a window', async () => {
    const made = await marked(
      ['window: {rectangle: [10, 10]}', 'band: {rectangle: [20, 4]}', 'line: {from: band}'],
      'cut: [window], engrave: [band]',
    );
    const issue = only(made, 'mark-off-body');
    assert.match(issue.message, /Engraving runs into an opening of “tag” \(10\.00 × 4\.00 mm\)/);
    assertNear(issue.points![0]!.x, 0, 0.01);
  });

  it('is told why lines of a drawing do not fit the rest of it, which they do by the size of the piece', async () => {
    const acorn =
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 130" width="100mm" height="130mm"><path d="M10 20 H90 V120 H10 Z"/><path d="M14 40 C30 48 70 48 86 40" fill="none" stroke="#000"/></svg>';
    const spec = (own: string, whole: string): string =>
      `tagwright: 1\nshapes:\n  acorn: {drawing: acorn.svg${own}}\n  rim: {drawing: acorn.svg, lines: true${own}}\npieces:\n  tag: {body: acorn, score: rim${whole}}\n`;
    const engine = newEngine({ 'acorn.svg': acorn });
    const off = (await report(spec(', height: 80 mm', ''), engine)).issues.find(({ code }) => code === 'mark-off-body');
    assert.match(off!.message, /one drawing, each as large as it says by itself: give the size to the piece instead/);
    assert.deepEqual((await report(spec('', ', height: 80 mm'), engine)).issues, []);
  });

  it('is told beyond the lug of a ring, and not on it', async () => {
    const ring = 'hanger: {ring: {at: {up: 11.4}, diameter: 2.8, wall: 3}}';
    const on = 'on: {ellipse: 1.5, nudge: {right: 2.9, up: 11.4}}';
    assertSilent(await marked([on], `engrave: [on], ${ring}`), 'mark-off-body');
    const off = 'off: {ellipse: 1.5, nudge: {right: 4.4, up: 11.4}}';
    only(await marked([off], `engrave: [off], ${ring}`), 'mark-off-body');
  });
});

describe('A mark that stays on its piece', () => {
  it('may end at the very edge, and may be drawn with other points than the edge', async () => {
    assertSilent(
      await marked(['band: {rectangle: [60, 4]}'], 'engrave: [band, plate], score: [plate]'),
      'mark-off-body',
    );
    const discs = ['plate: {ellipse: 40}', 'coarse: {ellipse: 10, width: 40}', 'fine: {ellipse: 200, width: 40}'];
    for (const mark of ['coarse', 'fine']) {
      assertSilent(await make(specOf(discs, `body: [plate], engrave: [${mark}]`)), 'mark-off-body', mark);
    }
  });

  it('is silent up to a twentieth of a millimetre', async () => {
    const over = (by: number) => marked([`band: {rectangle: [10, 4], nudge: {right: ${25 + by}}}`], 'engrave: [band]');
    assertSilent(await over(0.04), 'mark-off-body');
    only(await over(0.06), 'mark-off-body');
  });

  it('may go round a window: as a line, or as a field that the window is cut out of', async () => {
    const shapes = ['window: {ellipse: 8}', 'round: {ellipse: 12}'];
    assertSilent(await marked(shapes, 'cut: [window], score: [round], engrave: [plate]'), 'mark-off-body');
  });

  it('may cross the hole for the tie, which is told as that', async () => {
    for (const hanger of ['hole: {at: {up: 5}, diameter: 4}', 'slot: {at: top, length: 11}', 'ring: {at: top}']) {
      const made = await marked(
        ['band: {rectangle: [4, 20], nudge: {right: 1}}'],
        `engrave: [band], hanger: {${hanger}}`,
      );
      assertSilent(made, 'mark-off-body', hanger);
    }
    const made = await marked(
      ['band: {rectangle: [60, 3], nudge: {up: 5}}'],
      'engrave: [band], hanger: {hole: {at: {up: 5}, diameter: 4}}',
    );
    assertSilent(made, 'mark-off-body');
    only(made, 'hole-blocked');
  });

  it('is judged on each piece that it is drawn on', async () => {
    const text = `tagwright: 1
shapes:
  large: {rectangle: [60, 20]}
  small: {rectangle: [20, 20]}
  band: {rectangle: [40, 4]}
pieces:
  one: {body: [large], engrave: [band]}
  two: {body: [small], engrave: [band]}
`;
    assert.equal(only(await make(text), 'mark-off-body').piece, 'two');
  });
});
