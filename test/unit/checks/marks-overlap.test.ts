import assert from 'node:assert/strict';
import { intersectionAreaByJts, lengthInsideByJts } from '../support/reference.ts';
import { assertNear, make, placeOf, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertSilent, found, only } from './found.ts';

const plate = 'plate: {rectangle: [90, 44]}';

function marked(shapes: readonly string[], rest: string): Promise<Made> {
  return make(specOf([plate, ...shapes], `body: [plate], ${rest}`));
}

/** The figures of a message, such as areas and lengths. */
const figures = (message: string) => [...message.matchAll(/\d+\.\d+/g)].map(([figure]) => Number(figure));

describe('A mark that lies on another', () => {
  it('is told with what they share, at the later one, in the middle of the largest overlap', async () => {
    const shapes = ['leaf: {ellipse: [40, 20]}', 'word: {text: Tansy, font: Pacifico, width: 60, nudge: {up: 8}}'];
    const made = await marked(shapes, 'engrave: [leaf, word]');
    const issue = only(made, 'marks-overlap');
    assert.equal(issue.severity, 'warning');
    assert.equal(issue.piece, 'tag');
    assert.equal(placeOf(made.report, issue).text, 'word');
    assert.match(issue.message, /^“word” lies over “leaf” \(/);
    // The area by jsts, an independent library; ours is of outlines within 0.01 mm.
    const [leaf, word] = made.pieces[0]!.marks.map(({ region }) => region);
    assertNear(figures(issue.message)[0]!, intersectionAreaByJts(leaf!, word!), 0.25);
  });

  it('is told more quietly where neither is lettering: together they are one dark shape', async () => {
    const made = await marked(
      ['leaf: {ellipse: [40, 20]}', 'stem: {rectangle: [30, 2], nudge: {right: 20}}'],
      'engrave: [leaf, stem]',
    );
    assert.equal(only(made, 'marks-overlap').severity, 'info');
  });

  it('is told where it vanishes in an engraved field, whatever it is', async () => {
    for (const shape of ['{text: Tansy, font: Alfa Slab One, width: 40}', '{heart: 14}']) {
      const made = await marked(['field: {rectangle: [70, 30]}', `mark: ${shape}`], 'engrave: [field, mark]');
      const issue = only(made, 'marks-overlap');
      assert.equal(issue.severity, 'warning');
      assert.match(issue.message, /^“mark” lies entirely inside “field”/);
    }
  });

  // Exact: of bars side by side, 10 long, the overlap is 10 times its depth.
  it('is silent up to a depth of 0.2 mm', async () => {
    const over = (by: number) =>
      marked(
        [
          'a: {text: l, font: Nunito, width: 3}',
          `b: {rectangle: [10, 8]}`,
          `c: {rectangle: [10, 8], nudge: {up: ${8 - by}}}`,
        ],
        'engrave: [b, c]',
      );
    assertSilent(await over(0.18), 'marks-overlap');
    assertNear(figures(only(await over(0.22), 'marks-overlap').message)[0]!, 2.2, 0.051);
  });

  // Exact: an overlap of two squares at their corners is the product of its sides.
  it('is silent up to half a square millimetre', async () => {
    const over = (side: number) =>
      marked(
        ['b: {rectangle: [8, 8]}', `c: {rectangle: [8, 8], nudge: {up: ${8 - side}, right: ${8 - side}}}`],
        'engrave: [b, c]',
      );
    assertSilent(await over(0.69), 'marks-overlap');
    only(await over(0.72), 'marks-overlap');
  });

  describe('of which one is lettering', () => {
    // The top of a slab is straight, so what a bar shares with it is as long as the bar and as deep as it is pushed in.
    const touching = (long: number, deep: number) =>
      marked(
        [
          'year: {text: I, font: Alfa Slab One, height: 8}',
          `line: {rectangle: [${long}, 1], nudge: {up: ${4.5 - deep}}}`,
        ],
        'engrave: [year, line]',
      );

    it('is told where it touches over 1 mm, at least 0.05 mm deep', async () => {
      // Less is still said, as letters that are too near.
      assert.match(only(await touching(2, 0.045), 'marks-overlap').message, /^No room between/);
      const issue = only(await touching(2, 0.06), 'marks-overlap');
      assert.equal(issue.severity, 'warning');
      assert.match(issue.message, /^“line” touches “year” \(2\.\d mm\): engraved together, they merge\.$/);
      assert.match(only(await touching(0.8, 0.15), 'marks-overlap').message, /^No room between/);
      assert.match(only(await touching(0.9, 0.15), 'marks-overlap').message, /touches/);
    });

    it('is told where it is more than a hair deep, however short', async () => {
      assert.equal(only(await touching(0.5, 0.18), 'marks-overlap').severity, 'info');
      assert.match(only(await touching(0.5, 0.22), 'marks-overlap').message, /touches “year” \(0\.7 mm\)/);
    });

    it('is not told where a glued piece hides the touch', async () => {
      const shapes = [
        plate,
        'year: {text: I, font: Alfa Slab One, height: 8}',
        'line: {rectangle: [2, 1], nudge: {up: 4.4}}',
      ];
      const glued = (up: number) =>
        make(
          `${specOf([...shapes, `button: {ellipse: 6, nudge: {up: ${up}}}`], 'body: [plate], engrave: [year, line]')}  on: {body: [button], glue_to: tag}\n`,
        );
      only(await glued(-12), 'marks-overlap');
      assertSilent(await glued(4), 'marks-overlap');
    });
  });

  it('counts many thin crossings together', async () => {
    const comb = 'comb: {union: [tooth, {from: tooth, nudge: {right: 3}}, {from: tooth, nudge: {right: 6}}]}';
    const made = await marked(
      ['tooth: {rectangle: [0.5, 10]}', comb, 'line: {rectangle: [20, 0.5]}'],
      'engrave: [comb, line]',
    );
    assert.deepEqual(figures(only(made, 'marks-overlap').message), [0.8]);
    assert.match(only(made, 'marks-overlap').message, /in 3 places/);
  });

  it('is told more quietly where letters nearly touch it, up to 0.5 mm; other marks are not', async () => {
    // The border's inner edge is 42.2 mm from the middle.
    const beside = (shape: string, gap: number) =>
      marked(
        ['edge: {border: {of: plate, inset: 2, width: 0.8}}', shape.replace('WIDTH', `${2 * (42.2 - gap)}`)],
        'engrave: [edge, mark]',
      );
    const word = 'mark: {text: HERBS, font: Nunito, width: WIDTH}';
    assertSilent(await beside(word, 0.51), 'marks-overlap');
    const issue = only(await beside(word, 0.49), 'marks-overlap');
    assert.equal(issue.severity, 'info');
    assert.equal(issue.message, 'Only 0.49 mm between “mark” and “edge”: it looks like a mistake; minimum 0.50 mm.');
    assertSilent(await beside('mark: {rectangle: [WIDTH, 8]}', 0.1), 'marks-overlap');
  });

  it('is one finding for each pair', async () => {
    const made = await marked(['a: {ellipse: 20}', 'b: {ellipse: 16}', 'c: {ellipse: 12}'], 'engrave: [a, b, c]');
    assert.equal(found(made, 'marks-overlap').length, 3);
  });

  it('is told on any size of the whole piece', async () => {
    const made = await marked(['a: {ellipse: 20}', 'b: {text: Rue, width: 30}'], 'width: 60, engrave: [a, b]');
    only(made, 'marks-overlap');
  });
});

describe('A score line through engraving', () => {
  it('is told with its length there', async () => {
    const shapes = ['frame: {rectangle: [60, 14], nudge: {up: 3}}', 'word: {text: Hyssop, font: Pacifico, width: 50}'];
    const made = await marked(shapes, 'engrave: [word], score: [frame]');
    const issue = only(made, 'marks-overlap');
    assert.equal(placeOf(made.report, issue).text, 'frame');
    assert.match(issue.message, /^The score line of “frame” runs through the engraving of “word” \(/);
    const marks = made.pieces[0]!.marks;
    // By jsts, in the lettering less a tenth of a millimetre all round; its curves are flattened otherwise than ours.
    const expected = lengthInsideByJts(marks[1]!.region, marks[0]!.region, 0.1);
    assertNear(figures(issue.message)[0]!, expected, 0.15);
  });

  // Exact: a tenth of a millimetre inside both edges of a bar, the line is 0.2 shorter than the bar is wide.
  it('is silent up to a millimetre in all', async () => {
    const across = (width: number) =>
      marked(
        [`bar: {rectangle: [${width}, 6]}`, 'line: {rectangle: [30, 12], nudge: {up: 6}}'],
        'engrave: [bar], score: [line]',
      );
    assertSilent(await across(1.15), 'marks-overlap');
    assertNear(figures(only(await across(1.25), 'marks-overlap').message)[0]!, 1.05, 0.06);
  });

  it('is silent along the edge of what is engraved, up to a tenth of a millimetre inside', async () => {
    const along = (grow: number) =>
      marked(
        ['bar: {rectangle: [30, 6]}', `other: {rectangle: [${30 + 2 * grow}, ${6 + 2 * grow}]}`],
        'engrave: [bar], score: [other]',
      );
    assertSilent(await along(0), 'marks-overlap');
    assertSilent(await along(-0.09), 'marks-overlap');
    only(await along(-0.11), 'marks-overlap');
  });

  it('is told across scored letters too, and not across other lines', async () => {
    const shapes = [
      'word: {text: Sage, font: Nunito, weight: 800, width: 50}',
      'line: {rectangle: [80, 20], nudge: {up: 10}}',
    ];
    for (const score of ['word, line', 'line, word']) {
      const issue = only(await marked(shapes, `score: [${score}]`), 'marks-overlap');
      assert.match(issue.message, /“line” runs through the letters of “word”/);
    }
    const grid = ['a: {rectangle: [60, 10]}', 'b: {rectangle: [10, 40]}'];
    assertSilent(await marked(grid, 'score: [a, b]'), 'marks-overlap');
  });
});

describe('Marks that keep clear of each other', () => {
  const word = 'word: {text: Marigold, font: Pacifico, width: 60}';
  for (const [name, shapes, rest] of [
    [
      'a field that the name is cut out of',
      ['panel: {rectangle: [80, 34]}', 'field: {difference: [panel, word]}'],
      'engrave: [field]',
    ],
    [
      'frames round a name',
      [
        'outer: {rectangle: [86, 40]}',
        'frame: {difference: [outer, {from: outer, grow: -1}]}',
        'line: {rectangle: [80, 34]}',
      ],
      'engrave: [frame, word], score: [line]',
    ],
    ['a scored edge', [], 'engrave: [word], score: [word]'],
    [
      'a halo, an inline and a shadow of the same letters',
      [],
      'engrave: [word], score: [{from: word, grow: 0.6}, {from: word, grow: -0.4}, {from: word, nudge: {right: 0.8, down: 0.8}}]',
    ],
    ['an engraved halo', ['halo: {difference: [{from: word, grow: 1}, word]}'], 'engrave: [word, halo]'],
    [
      'two lines of text, one below the other',
      ['sown: {text: sown in May, x_height: 3, nudge: {down: 16}}'],
      'engrave: [word, sown]',
    ],
  ] as const) {
    it(`such as ${name}`, async () => {
      assertSilent(await marked([word, ...shapes], rest), 'marks-overlap');
    });
  }

  it('or do not, where a glued piece hides both', async () => {
    const under = (size: number) =>
      make(`tagwright: 1
shapes:
  ground: {rectangle: [90, 44]}
  sun: {ellipse: 16}
  badge: {ellipse: ${size}}
pieces:
  back: {body: [ground], engrave: [sun, {text: B2, width: 20}], score: [{from: badge, grow: ${12 - size / 2}}]}
  badge: {body: [badge], glue_to: back}
`);
    assertSilent(await under(26), 'marks-overlap');
    // Half of the score line's circle of 12 mm is inside the letters, wherever they are.
    only(await under(4), 'marks-overlap');
  });
});
