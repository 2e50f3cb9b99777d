import assert from 'node:assert/strict';
import { intersectionAreaByJts } from '../support/reference.ts';
import { assertNear, make, placeOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { area } from '../../../src/geometry/measure.ts';
import { assertSilent, found, only } from './found.ts';

/** Pieces on a plate of 100 × 60; `back` is what is done to the plate. */
function glued(shapes: readonly string[], pieces: readonly string[], back = ''): Promise<Made> {
  return make(`tagwright: 1
stock: {thickness: 3, min_web: 1}
shapes:
  plate: {rectangle: [100, 60]}
${shapes.map((shape) => `  ${shape}\n`).join('')}pieces:
  back: {body: [plate]${back}}
${pieces.map((piece) => `  ${piece}\n`).join('')}`);
}

const areaIn = (message: string) => Number(/\d+\.\d/.exec(message)![0]);

describe('Glued pieces in one layer', () => {
  const discs = (apart: number) => [`a: {ellipse: 20}`, `b: {ellipse: 20, nudge: {right: ${apart}}}`];

  it('that lie on one another are an error, at the later one', async () => {
    const made = await glued(discs(16), ['one: {body: [a], glue_to: back}', 'two: {body: [b], glue_to: back}']);
    const issue = only(made, 'pieces-overlap');
    assert.equal(issue.severity, 'error');
    assert.equal(issue.piece, 'two');
    assert.equal(placeOf(made.report, issue).line, 6);
    // Exact: a lens of two discs of radius 10 whose middles are 16 apart, 2·(100·acos 0.8 − 8·6); and by jsts.
    assertNear(areaIn(issue.message), 2 * (100 * Math.acos(0.8) - 48), 0.2);
    assertNear(areaIn(issue.message), intersectionAreaByJts(made.pieces[1]!.region, made.pieces[2]!.region), 0.2);
    assertNear(issue.points![0]!.x, 8, 0.05);
  });

  it('may touch, up to 0.2 mm', async () => {
    const squares = (by: number) =>
      glued(
        ['a: {rectangle: [20, 20]}', `b: {rectangle: [20, 20], nudge: {right: ${20 - by}}}`],
        ['one: {body: [a], glue_to: back}', 'two: {body: [b], glue_to: back}'],
      );
    assertSilent(await squares(0), 'pieces-overlap');
    assertSilent(await squares(0.18), 'pieces-overlap');
    only(await squares(0.22), 'pieces-overlap');
  });

  it('are those as high as each other, on whatever they are glued', async () => {
    const shapes = [
      'l: {ellipse: 30, nudge: {left: 18}}',
      'r: {ellipse: 30, nudge: {right: 18}}',
      'a: {ellipse: 20, nudge: {left: 6}}',
      'b: {ellipse: 20, nudge: {right: 6}}',
    ];
    const below = ['l: {body: [l], glue_to: back}', 'r: {body: [r], glue_to: back}'];
    const made = await glued(shapes, [...below, 'a: {body: [a], glue_to: l}', 'b: {body: [b], glue_to: r}']);
    assert.match(only(made, 'pieces-overlap').message, /^“b” and “a” are in the same layer/);
    // One on the other, they are in nobody's way; nor are two tags that lie on one another only on the drawing.
    assertSilent(
      await glued(shapes, [...below, 'a: {body: [a], glue_to: l}', 'b: {body: [b], glue_to: a}']),
      'pieces-overlap',
    );
    assertSilent(await glued(shapes, ['a: {body: [a]}', 'b: {body: [b]}']), 'pieces-overlap');
  });
});

describe('What a glued piece covers of the one below', () => {
  const word = 'word: {text: Harvest, font: Nunito, weight: 800, width: 60}';
  const badge = (width: number, right: number) => `badge: {rectangle: [${width}, 30], nudge: {right: ${right}}}`;
  const front = 'front: {body: [badge], glue_to: back}';

  it('is told of lettering that is cut short, with the share that is lost', async () => {
    const made = await glued([word, badge(20, 25)], [front], ', engrave: [word]');
    const issue = only(made, 'pieces-overlap');
    assert.equal(issue.severity, 'warning');
    const mark = made.pieces[0]!.marks[0]!.region;
    const share = intersectionAreaByJts(mark, made.pieces[1]!.region) / area(mark);
    assert.equal(issue.message, `“front” covers ${Math.round(100 * share)} % of “word” on “back”.`);
    only(await glued([word, badge(20, 25)], [front], ', score: [word]'), 'pieces-overlap');
  });

  it('is told of lettering two layers below', async () => {
    const shapes = [word, 'rim: {difference: [plate, {from: plate, grow: -6}]}', badge(44, 27)];
    const pieces = ['rim: {body: [rim], glue_to: back}', 'front: {body: [badge], glue_to: rim}'];
    const messages = found(await glued(shapes, pieces, ', engrave: [word]'), 'pieces-overlap').map(
      ({ message }) => message,
    );
    assert.ok(
      messages.some((message) => /covers \d+ % of “word” on “back”/.test(message)),
      messages.join('\n'),
    );
  });

  it('is only an info where lettering vanishes, as an assembly mark does, and nothing where an ornament does', async () => {
    assert.equal(
      only(await glued([word, badge(64, 0)], [front], ', engrave: [word]'), 'pieces-overlap').severity,
      'info',
    );
    assertSilent(await glued(['leaf: {ellipse: 20}', badge(30, 0)], [front], ', engrave: [leaf]'), 'pieces-overlap');
  });

  // Exact: of a square of 24, the badge covers a share as wide as it reaches in.
  it('is told of an ornament from two thirds on', async () => {
    const over = (share: number) =>
      glued(['leaf: {rectangle: [24, 24]}', badge(30, 3 + 24 * (1 - share))], [front], ', engrave: [leaf]');
    assertSilent(await over(0.65), 'pieces-overlap');
    assert.match(only(await over(0.68), 'pieces-overlap').message, /covers 68 % of “leaf”/);
  });

  for (const [name, shapes, back] of [
    ['a field that it is set in', ['field: {rectangle: [34, 34]}', badge(30, 0)], 'engrave: [field]'],
    ['a rim of the same shape', [badge(30, 0)], 'engrave: [{from: badge, grow: 1}]'],
    ['a placement line', [badge(30, 0)], 'score: [{from: badge, grow: -0.5}]'],
    ['a stripe behind it', ['stripe: {rectangle: [100, 8]}', badge(30, 0)], 'engrave: [stripe]'],
  ] as const) {
    it(`is right where it is ${name}`, async () => {
      assertSilent(await glued(shapes, [front], `, ${back}`), 'pieces-overlap');
    });
  }
});

describe('An opening below a glued piece', () => {
  const window = 'window: {rectangle: [20, 20]}';
  const cut = ', cut: [window]';
  const over = (shape: string, shapes: readonly string[] = [window], back = cut) =>
    glued([...shapes, `badge: ${shape}`], ['front: {body: [badge], glue_to: back}'], back);

  it('is told where it is covered, or reached into', async () => {
    assert.match(
      only(await over('{rectangle: [30, 30]}'), 'pieces-overlap').message,
      /^“front” covers an opening of “back” \(400\.0 mm²\)\.$/,
    );
    const partly = only(await over('{rectangle: [30, 10], nudge: {right: 20}}'), 'pieces-overlap');
    assert.match(partly.message, /^“front” reaches into an opening of “back” \(50\.0 mm²\)\.$/);
  });

  it('may be reached into by 0.2 mm', async () => {
    assertSilent(await over('{rectangle: [30, 10], nudge: {right: 24.82}}'), 'pieces-overlap');
    only(await over('{rectangle: [30, 10], nudge: {right: 24.78}}'), 'pieces-overlap');
  });

  it('may be spanned by what is smaller than it, as a hoop by a name', async () => {
    assertSilent(await over('{rectangle: [30, 8]}'), 'pieces-overlap');
    // What is larger than the opening does not span it but hides it.
    only(await over('{rectangle: [60, 8]}'), 'pieces-overlap');
  });

  it('may be framed, and may belong to a lattice', async () => {
    assertSilent(await over('{difference: [{rectangle: [30, 30]}, {rectangle: [16, 16]}]}'), 'pieces-overlap');
    const row = (count: number) => [
      `window: {union: [${Array.from({ length: count }, (_, i) => `{ellipse: 6, nudge: {right: ${8 * i - 24}}}`).join(', ')}]}`,
    ];
    assertSilent(await over('{rectangle: [40, 9]}', row(6)), 'pieces-overlap');
    assert.match(only(await over('{rectangle: [40, 9]}', row(5)), 'pieces-overlap').message, /openings of “back”/);
  });

  it('is the business of other checks where nothing holds the piece, or the tie goes through', async () => {
    assertSilent(await over('{rectangle: [10, 10]}'), 'pieces-overlap');
    const hung = ', hanger: {hole: {at: {up: 0}, diameter: 6}}';
    assertSilent(await over('{rectangle: [10, 10]}', [], hung), 'pieces-overlap');
  });
});
