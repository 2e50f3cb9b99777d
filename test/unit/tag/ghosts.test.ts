import assert from 'node:assert/strict';
import { boundsOf } from '../../../src/geometry/measure.ts';
import { lensesOf } from '../../../src/language/navigation/lenses.ts';
import { sceneOf } from '../../../src/scene/scene.ts';
import { assertNear, report } from '../support/engine.ts';

const head = 'tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm, kerf: 0}\nshapes:\n';
const plate = '  plate: {rectangle: [60 mm, 30 mm]}\n';
const plain = 'pieces:\n  tag: {body: [plate]}\n';

describe('A shape that no piece uses', () => {
  it('is drawn before there is any piece, however far that is written', async () => {
    const ends = ['', 'pieces:\n', 'pieces:\n  tag:\n', 'pieces:\n  tag:\n    body:\n', 'pieces:\n  tag: {body: []}\n'];
    for (const end of ends) {
      const { tag, issues } = await report(head + plate + end);
      const [ghost, ...others] = tag?.ghosts ?? [];
      assert.deepEqual([ghost?.name, ghost?.why, others.length], ['plate', 'unused', 0], end);
      const { minX, maxX } = boundsOf(ghost!.region)!;
      assertNear(maxX - minX, 60, 0.001, 'width');
      assert.equal(issues.length, 1, 'and what lacks is said');
      const scene = sceneOf(tag!, () => 0);
      assert.deepEqual(scene.bounds, [-30, -15, 30, 15]);
      assert.equal(scene.ghosts[0]!.label, 'plate: not used by any piece yet');
    }
  });

  it('is none where it is what another is placed on, fitted in, made from or hung on', async () => {
    const panel = '  panel: {rectangle: [50 mm, 20 mm]}\n';
    for (const name of [
      '  name: {text: Ida, font: Nunito, x_height: 4 mm, place: {on: panel}}\n',
      '  name: {text: Ida, font: Nunito, fit: {in: panel}}\n',
      '  name: {from: panel, grow: -4 mm}\n',
    ]) {
      const { tag } = await report(head + plate + panel + name + 'pieces:\n  tag: {body: [plate], engrave: [name]}\n');
      assert.deepEqual(tag?.ghosts, [], name);
    }
    const hung = await report(`${head}${plate}${panel}pieces:\n  tag: {body: [plate], hanger: {hole: {on: panel}}}\n`);
    assert.deepEqual(hung.tag?.ghosts, []);
    const spare = await report(`${head}${plate}${panel}${plain}`);
    assert.deepEqual(
      spare.tag?.ghosts?.map(({ name }) => name),
      ['panel'],
    );
  });
});

describe('A shape that lacks what it needs', () => {
  it('is drawn where it would be, with a pin, and its piece is not called sound', async () => {
    const name = '  name: {text: Ida, font: Nowhere Sans, x_height: 6 mm, place: {on: plate}, nudge: {right: 10 mm}}\n';
    const made = await report(`${head}${plate}${name}pieces:\n  tag: {body: [plate], engrave: [name]}\n`);
    const [ghost] = made.tag?.ghosts ?? [];
    assert.equal(ghost?.why, 'lacking');
    assert.equal(made.tag?.pieces[0]?.marks.filter(({ region }) => region.length > 0).length, 0, 'and it is not made');
    const { minX, maxX } = boundsOf(ghost.region)!;
    assertNear((minX + maxX) / 2, 10, 1.5, 'where the text would be, centred for the eye');
    const [issue] = made.issues;
    assert.equal(issue?.code, 'unknown-font');
    assertNear(issue.points![0]!.x, (minX + maxX) / 2, 0.001, 'the pin');
    assert.match(lensesOf(made, made.source)[0]!.text, /1 error$/);
  });

  it('may be a drawing, and the body itself', async () => {
    const made = await report(`${head}  crest: {drawing: none.svg}\npieces:\n  tag: {body: [crest]}\n`);
    const [ghost] = made.tag?.ghosts ?? [];
    assert.equal(ghost?.why, 'lacking');
    const { minX, maxX } = boundsOf(ghost.region)!;
    assertNear(maxX - minX, 30, 0.001, 'a frame');
    assert.deepEqual(made.tag?.pieces, []);
  });
});
