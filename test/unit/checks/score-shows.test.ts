import assert from 'node:assert/strict';
import { assertNear, make, placeOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertSilent, only } from './found.ts';

const word = 'word: {text: Sorrel, font: Pacifico, width: 82}';
const badge = 'badge: {rectangle: [30, 12]}';

/** A back with lines on it, and a piece glued on it. */
function glued(shapes: readonly string[], score: string, front: string, more = ''): Promise<Made> {
  return make(`tagwright: 1
shapes:
  ground: {rectangle: [120, 60]}
${shapes.map((shape) => `  ${shape}\n`).join('')}pieces:
  back: {body: [ground], score: [${score}]}
  front: {body: [${front}], title: Name, glue_to: back, parts: many}
${more}`);
}

describe('A placement line', () => {
  // Rule of thumb, no source: drawn 0.5 mm inside what hides it.
  for (const [name, shapes, shape] of [
    ['a plate', [badge], 'badge'],
    ['a turned plate', ['badge: {rectangle: [30, 12], rotate: 30, nudge: {up: 5, left: 3}}'], 'badge'],
    ['lettering', [word], 'word'],
    ['mirrored lettering', ['word: {text: Sorrel, font: Pacifico, width: 82, mirror: left-right}'], 'word'],
  ] as const) {
    it(`half a millimetre inside ${name} is hidden; the same outside is seen, and told by how much`, async () => {
      assertSilent(await glued(shapes, `{from: ${shape}, grow: -0.5}`, shape), 'score-shows');
      const made = await glued(shapes, `{from: ${shape}, grow: 0.5}`, shape);
      const issue = only(made, 'score-shows');
      assert.equal(issue.severity, 'warning');
      assert.equal(issue.piece, 'back');
      // Exact: what is grown round by 0.5 lies 0.5 outside everywhere.
      assertNear(issue.width!, 0.5, 0.01);
      assert.match(issue.message, /up to 0\.(49|50) mm outside “Name”/);
      const place = placeOf(made.report, issue);
      assert.equal(place.line, 6);
      assert.equal(place.text, `{from: ${shape}, grow: 0.5}`);
      assert.equal(issue.points!.length, 1);
    });
  }

  it('must lie a tenth of a millimetre inside', async () => {
    assertSilent(await glued([badge], '{from: badge, grow: -0.11}', 'badge'), 'score-shows');
    assert.match(
      only(await glued([badge], '{from: badge, grow: -0.09}', 'badge'), 'score-shows').message,
      /right along the edge/,
    );
    for (const shape of [badge, word]) {
      const name = shape.split(':')[0]!;
      const issue = only(await glued([shape], name, name), 'score-shows');
      assert.match(issue.message, /runs right along the edge of “Name”/);
      assert.equal(issue.width, 0);
    }
  });

  it('is seen on one side where it is a little off', async () => {
    const made = await glued([badge], '{from: badge, grow: -0.5, nudge: {right: 0.8}}', 'badge');
    const issue = only(made, 'score-shows');
    // Exact: 0.8 − 0.5 at the right-hand edge.
    assertNear(issue.width!, 0.3, 0.01);
    assertNear(issue.points![0]!.x, 15.3, 0.01);
  });

  it('is seen where the piece made from the same shape has been moved away from it', async () => {
    const moved = '{from: letters, nudge: {right: 6, up: 4}}';
    const shapes = [word, 'letters: {from: word, grow: 0.3}'];
    for (const score of ['{from: letters, grow: -0.5}', '{from: word, grow: -0.2}']) {
      const issue = only(await glued(shapes, score, moved), 'score-shows');
      assert.match(issue.message, /more than 1\.00 mm outside “Name”/);
    }
    const other = '  other: {body: [{rectangle: [20, 6], nudge: {down: 24}}], glue_to: back}\n';
    only(await glued(shapes, '{from: letters, grow: -0.5}', moved, other), 'score-shows');
    assertSilent(await glued(shapes, '{from: letters, grow: -0.5, nudge: {right: 6, up: 4}}', moved), 'score-shows');
  });

  it('may be hidden by any of the pieces that are glued on', async () => {
    const shapes = [
      'left: {ellipse: 20, nudge: {left: 12}}',
      'right: {ellipse: 20, nudge: {right: 12}}',
      'dot: {ellipse: 0.9, nudge: {right: 1.4}}',
    ];
    const dot = '  dot: {body: [dot], glue_to: back}\n  right: {body: [right], glue_to: back}\n';
    // The dot lies within a millimetre of the right-hand disc; its line is under the dot all the same.
    const lines = '{from: left, grow: -0.5}, {from: right, grow: -0.5}, {from: dot, grow: -0.2}';
    assertSilent(await glued(shapes, lines, 'left', dot), 'score-shows');
    const larger = lines.replace('{from: dot, grow: -0.2}', '{from: dot, grow: 0.1}');
    const issue = only(await glued(shapes, larger, 'left', dot), 'score-shows');
    assertNear(issue.width!, 0.1, 0.01);
    assert.match(issue.message, /“dot”/);
  });

  it('is judged on what is glued on its own piece', async () => {
    const text = `tagwright: 1
shapes:
  ground: {rectangle: [120, 60]}
  badge: {rectangle: [30, 12]}
pieces:
  back: {body: [ground], score: [{from: badge, grow: 0.5}]}
  front: {body: [badge]}
`;
    assertSilent(await make(text), 'score-shows');
    assertSilent(await make(`${text}  middle: {body: [badge], glue_to: front}\n`), 'score-shows');
  });
});

describe('A decoration is no placement line', () => {
  for (const [name, line] of [
    ['a border far from the letters', '{rectangle: [110, 50], radius: 4}'],
    ['a halo round the letters', '{from: word, grow: 1.5}'],
    ['a line under the letters, partly covered', '{rectangle: [100, 0.8], nudge: {down: 6}}'],
    ['a wreath across the letters', '{ellipse: [60, 40]}'],
    ['a shadow beside the letters', '{from: word, nudge: {right: 1.5, down: 1.5}}'],
    ['a dot far from the letters', '{ellipse: 2, nudge: {right: 52, up: 22}}'],
  ] as const) {
    it(`such as ${name}`, async () => {
      assertSilent(await glued([word], line, 'word'), 'score-shows');
    });
  }

  it('such as a dot close beside a plate', async () => {
    assertSilent(await glued([badge], '{ellipse: 0.6, nudge: {right: 15.5}}', 'badge'), 'score-shows');
    assertSilent(await glued([badge], '{ellipse: 0.6, nudge: {up: 6.6}}', 'badge'), 'score-shows');
  });

  it('such as engraving', async () => {
    const made = await glued([badge], '{from: badge, grow: -0.5}], engrave: [{from: badge, grow: 0.5}', 'badge');
    assertSilent(made, 'score-shows');
  });
});
