import assert from 'node:assert/strict';
import { differenceAreaByJts } from '../support/reference.ts';
import { findFixes, withEdits } from '../../../src/fixes/find-fixes.ts';
import { assertNear, make, newEngine, placeOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertSilent, found, only } from './found.ts';

/** A front of a shape glued on a back of another. */
function glued(back: string, front: string, more = '', shapes: readonly string[] = []): Promise<Made> {
  return make(`tagwright: 1
stock: {thickness: 3, min_web: 1}
shapes:
  ground: ${back}
  top: ${front}
${shapes.map((shape) => `  ${shape}\n`).join('')}pieces:
  back: {body: [ground], title: Backing}
  front: {body: [top], title: Letters, glue_to: back, parts: many}
${more}`);
}

describe('A glued piece that overhangs its backing', () => {
  it('is told by how far, and where', async () => {
    const made = await glued('{rectangle: [60, 30]}', '{rectangle: [20, 10], nudge: {right: 22.4}}');
    const issue = only(made, 'off-backing');
    assert.equal(issue.severity, 'warning');
    assert.equal(issue.piece, 'front');
    assert.equal(issue.message, '“Letters” overhangs “Backing” by 2.40 mm.');
    // Exact: half of 60 is 30, and 22.4 + 10 is 2.4 more.
    assertNear(issue.width!, 2.4, 0.001);
    assertNear(issue.points![0]!.x, 32.4, 0.001);
    assert.equal(placeOf(made.report, issue).line, 5);
  });

  it('is told once, with the part that reaches furthest', async () => {
    const made = await glued('{rectangle: [60, 24]}', '{text: HORUS, font: Nunito, weight: 800, width: 70}');
    const issue = only(made, 'off-backing');
    assert.match(
      issue.message,
      /^2 of the 5 parts of “Letters” overhang “Backing”, by up to 5\.0\d mm \(part [15] from/,
    );
    // By jsts, an independent library: nothing of it is further out than told.
    const [back, front] = made.pieces;
    assert.ok(differenceAreaByJts(front!.region, back!.region) > 10);
    const wider = [-30 - issue.width! - 0.01, 30 + issue.width! + 0.01];
    const frame = [
      [wider[0]!, -50],
      [wider[1]!, -50],
      [wider[1]!, 50],
      [wider[0]!, 50],
    ].map(([x, y]) => ({ x: x!, y: y! }));
    assertNear(differenceAreaByJts(front!.region, [frame]), 0, 1e-6);
  });

  it('may by up to 0.3 mm', async () => {
    const over = (by: number) => glued('{rectangle: [60, 30]}', `{rectangle: [20, 10], nudge: {right: ${20 + by}}}`);
    assertSilent(await over(0.29), 'off-backing');
    only(await over(0.31), 'off-backing');
  });

  it('is measured from a round edge as well', async () => {
    // Exact: a disc of radius 5 whose middle is 18 from that of a disc of radius 20 reaches 3 beyond it.
    const made = await glued('{ellipse: 40}', '{ellipse: 10, nudge: {right: 18}}');
    assertNear(only(made, 'off-backing').width!, 3, 0.01);
  });

  it('is carried by what lies as high as its backing, too', async () => {
    const shapes = [
      'left: {rectangle: [20, 20], nudge: {left: 10}}',
      'right: {rectangle: [20, 20], nudge: {right: 10}}',
    ];
    const pieces = (second: string) => `  left: {body: [left], glue_to: back}
${second}  over: {body: [{rectangle: [30, 10]}], glue_to: left}
`;
    const back = '{rectangle: [60, 40]}';
    const front = '{ellipse: 4, nudge: {up: 16}}';
    assertSilent(await glued(back, front, pieces('  right: {body: [right], glue_to: back}\n'), shapes), 'off-backing');
    assertNear(only(await glued(back, front, pieces(''), shapes), 'off-backing').width!, 15, 0.001);
  });
});

describe('A glued piece with nothing to be glued to', () => {
  it('is an error beside its backing, and over an opening of it', async () => {
    const beside = only(await glued('{ellipse: 40}', '{ellipse: 10, nudge: {right: 30}}'), 'off-backing');
    assert.equal(beside.severity, 'error');
    assert.match(beside.message, /^“Letters” lies beside “Backing”: there is nothing to glue it to\.$/);
    const over = only(await glued('{difference: [{ellipse: 40}, {ellipse: 20}]}', '{ellipse: 10}'), 'off-backing');
    assert.equal(over.severity, 'error');
    assert.match(over.message, /^“Letters” lies over an opening of “Backing”/);
  });

  it('fills an opening on a piece below both, which is told once and by name', async () => {
    const inlay = (more: string) => `tagwright: 1
shapes:
  disc: {circle: 60}
  heart: {heart: 26, place: disc}
pieces:
${more}  inlay: {body: heart, glue_to: plate}
`;
    const without = await make(inlay('  plate: {body: disc, cut: heart}\n'));
    assert.match(only(without, 'off-backing').message, /opening of “plate”.* it needs a piece below both/);
    assertSilent(without, 'pieces-overlap');
    const text = inlay('  back: {body: disc}\n  plate: {body: disc, cut: heart, glue_to: back}\n');
    const made = await make(text);
    const issue = only(made, 'off-backing');
    assert.match(issue.message, /It lies on “back”: let it be glued to that\.$/);
    const engine = newEngine();
    const options = { locate: () => undefined };
    const report = await engine.compute(text, options);
    const [fix] = await findFixes(engine, report, report.issues[0]!, options);
    assert.equal(fix!.title, 'Glue it to “back”: glue_to back');
    assert.deepEqual((await engine.compute(withEdits(text, fix!.edits), options)).issues, []);
  });

  it('is told part by part', async () => {
    const word = '{text: HORUS, font: Nunito, weight: 800, width: 70}';
    const one = only(await glued('{rectangle: [60, 24], nudge: {left: 7.4}}', word), 'off-backing');
    assert.match(one.message, /^The last part of “Letters” lies beside “Backing”/);
    const two = found(await glued('{rectangle: [36, 24], nudge: {left: 20}}', word), 'off-backing');
    assert.match(two[0]!.message, /^2 of the 5 parts of “Letters” \(from the left: 4, 5\) do not lie on “Backing”/);
    const none = only(await glued('{rectangle: [60, 24], nudge: {up: 60}}', word), 'off-backing');
    assert.match(none.message, /^None of the 5 parts of “Letters” lies on “Backing”/);
  });

  // Exact: of a square of 10, a strip as wide as a share of 10 lies on the backing.
  it('has less than a twentieth of itself on it', async () => {
    const on = (share: number) =>
      glued('{rectangle: [60, 30]}', `{rectangle: [10, 10], nudge: {right: ${35 - 10 * share}}}`);
    const sliver = only(await on(0.049), 'off-backing');
    assert.equal(sliver.severity, 'error');
    assert.match(sliver.message, /^“Letters” has only 4\.9 mm² on “Backing”: too little to glue\.$/);
    assert.equal(only(await on(0.051), 'off-backing').severity, 'warning');
  });
});

describe('A glued piece that lies well', () => {
  for (const [name, back, front] of [
    ['flush with its backing', '{heart: 40}', '{heart: 40}'],
    ['on a backing that follows it', '{around: top, by: 6}', '{text: Rosehip, font: Nunito, weight: 800, width: 70}'],
    ['across a hoop', '{difference: [{ellipse: 60}, {ellipse: 50}]}', '{rectangle: [58, 6]}'],
    [
      'as a frame round an opening',
      '{difference: [{ellipse: 40}, {ellipse: 20}]}',
      '{difference: [{ellipse: 30}, {ellipse: 22}]}',
    ],
    [
      'with a window of its own over that of the backing',
      '{difference: [{ellipse: 40}, {ellipse: 20}]}',
      '{difference: [{ellipse: 40}, {ellipse: 14}]}',
    ],
  ] as const) {
    it(`such as ${name}`, async () => {
      assertSilent(await glued(back, front), 'off-backing');
    });
  }
});
