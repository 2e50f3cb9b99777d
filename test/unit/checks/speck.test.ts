import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { shapesBeside, specks } from '../../../src/checks/speck.ts';
import type { Region, Ring } from '../../../src/geometry/types.ts';
import type { Piece } from '../../../src/tag/tag.ts';
import { checked } from '../support/checked.ts';
import { assertNear, make, specOf } from '../support/engine.ts';
import { assertWorked, worked } from '../support/effort.ts';
import { box } from '../support/shapes.ts';

const kerf = ['stock: {kerf: 0.2 mm}'];

function specksOf(shapes: readonly string[], piece: string) {
  return checked(specOf(shapes, piece, kerf), specks);
}

const plate = 'plate: {rectangle: [60, 30]}';

describe('Specks', () => {
  it('are holes less than 0.8 mm across, told at what cuts them, on the hole', async () => {
    const dot = (size: number): string[] => [plate, `dot: {ellipse: ${size}, nudge: {right: 9, up: 4}}`];
    const { issues, lines } = await specksOf(dot(0.7), 'body: [plate], cut: [dot]');
    assert.equal(issues.length, 1);
    assert.deepEqual(lines, [5]);
    assert.equal(issues[0]!.severity, 'warning');
    assertNear(issues[0]!.width!, 0.7, 0.01);
    assertNear(issues[0]!.points![0]!.x, 9, 0.01);
    assertNear(issues[0]!.points![0]!.y, 4, 0.01);
    for (const word of ['0.70 mm', 'hole', 'tidy']) assert.ok(issues[0]!.message.includes(word), issues[0]!.message);
    assert.deepEqual((await specksOf(dot(0.9), 'body: [plate], cut: [dot]')).issues, []);
  });

  it('of one shape are one finding, at the largest; those of another are another', async () => {
    const shapes = [
      plate,
      'dots: {union: [{ellipse: 0.4}, {ellipse: 0.6, nudge: {right: 3}}, {ellipse: 0.5, nudge: {right: 6}}]}',
      'other: {ellipse: 0.3, nudge: {left: 8}}',
    ];
    const { issues, lines } = await specksOf(shapes, 'body: [plate], cut: [dots, other]');
    assert.deepEqual(lines, [5, 6]);
    assert.match(issues[0]!.message, /^3 holes/);
    assertNear(issues[0]!.width!, 0.6, 0.01);
    assertNear(issues[0]!.points![0]!.x, 3, 0.01);
  });

  it('between shapes are removed from their union, as the message says', async () => {
    const shapes = [
      'left: {difference: [{rectangle: [40, 30]}, {ellipse: 0.6, nudge: {right: 20}}]}',
      'right: {rectangle: [20, 30], nudge: {right: 30}}',
    ];
    const { issues } = await specksOf(shapes, 'body: [left, right]');
    assert.deepEqual(
      issues.map(({ message }) => message),
      [
        'A hole only 0.60 mm across burns out. It lies between “left” and “right”: write {union: [left, right], tidy: …} for them in “body”.',
      ],
    );
    assert.deepEqual((await specksOf(shapes, 'body: [{union: [left, right], tidy: 0.8}]')).issues, []);
    assert.equal(
      (
        await specksOf(
          shapes.map((each) => each.replace(/\}$/, ', tidy: 0.8}')),
          'body: [left, right]',
        )
      ).issues.length,
      1,
    );
  });

  it('lie between the shapes that they touch, and in none that has them as a hole of its own', () => {
    const hole = box(10, 4, 10.6, 5).toReversed();
    const left = [box(0, 0, 10, 9)];
    const right = [box(10.6, 0, 20, 9)];
    const far = [box(21, 0, 30, 9)];
    const frame = (own: Ring) => [box(0, 0, 20, 9), own];
    const beside = (...regions: Region[]): number[] => {
      const sources = regions.map((region) => ({ region }));
      const found = shapesBeside(hole, { sources } as unknown as Piece);
      return found.map((each) => sources.indexOf(each));
    };
    assert.deepEqual(beside(left, far, right), [0, 2]);
    assert.deepEqual(beside(left, right, frame(hole)), []);
    assert.deepEqual(beside(frame(hole), left), []);
    // Holes that differ on one side only are another's.
    for (const other of [box(9.9, 4, 10.6, 5), box(10, 3.9, 10.6, 5), box(10, 4, 10.7, 5), box(10, 4, 10.6, 5.1)])
      assert.deepEqual(
        beside(left, [other.toReversed()], right).filter((index) => index !== 1),
        [0, 2],
      );
  });

  it('between shapes of which one has no name are told to be united', async () => {
    const unnamed = '{rectangle: [20, 30], nudge: {right: 30}}';
    const left = 'left: {difference: [{rectangle: [40, 30]}, {ellipse: 0.6, nudge: {right: 20}}]}';
    const { issues } = await specksOf([left], `body: [left, ${unnamed}]`);
    assert.deepEqual(
      issues.map(({ message }) => message),
      ['A hole only 0.60 mm across burns out. It lies between shapes: unite them by “union”, with “tidy”.'],
    );
  });

  it('are also short holes narrower than the kerf, but long ones are gaps', async () => {
    const slot = (width: number, length: number): string[] => [plate, `slot: {rectangle: [${width}, ${length}]}`];
    const found = async (...size: [number, number]) =>
      (await specksOf(slot(...size), 'body: [plate], cut: [slot]')).issues.length;
    assert.equal(await found(0.15, 1.5), 1);
    assert.equal(await found(0.25, 1.5), 0);
    assert.equal(await found(0.15, 6), 0);
    // 1.5 mm is no small figure: what is too small is the width.
    const one = await specksOf(slot(0.15, 1.5), 'body: [plate], cut: [slot]');
    assert.match(one.issues[0]!.message, /^A hole 1\.50 mm long but narrower than the kerf of 0\.20 mm burns out\. /);
    const two = '{union: [{rectangle: [0.15, 1.5]}, {ellipse: 0.6, nudge: {right: 3}}]}';
    const several = await specksOf([plate, `slot: ${two}`], 'body: [plate], cut: [slot]');
    assert.match(
      several.issues[0]!.message,
      /^2 holes, the largest 1\.50 mm long but narrower than the kerf of 0\.20 mm, burn out\. /,
    );
  });

  it('are small parts where separate parts are meant, and elsewhere are parts that fall out', async () => {
    const shapes = [plate, 'crumb: {ellipse: 0.7, nudge: {up: 20}}'];
    const { issues, lines } = await specksOf(shapes, 'body: [plate, crumb], parts: many');
    assert.deepEqual(lines, [5]);
    assert.match(issues[0]!.message, /part/);
    assert.deepEqual((await specksOf(shapes, 'body: [plate, crumb]')).issues, []);
  });

  it('do not count the opening of the hanger', async () => {
    assert.deepEqual((await specksOf([plate], 'body: [plate], hanger: {hole: {diameter: 0.7}}')).issues, []);
  });

  it('are gone once “tidy” says a little more than the size told', async () => {
    const drawing = (tidy: string): string[] => [
      `body: {path: "M0 0H30V20H0Z M10 10v0.5h0.6v-0.5z M20 10v0.3h0.7v-0.3z"${tidy}}`,
    ];
    const { issues } = await specksOf(drawing(''), 'body: [body]');
    assert.equal(issues.length, 1);
    const { width } = issues[0]!;
    assertNear(width!, 0.7, 1e-4);
    assert.deepEqual((await specksOf(drawing(`, tidy: ${width! + 0.01}`), 'body: [body]')).issues, []);
    const kept = await make(specOf(drawing(`, tidy: ${width! - 0.01}`), 'body: [body]', kerf));
    assert.equal(kept.region.length, 2);
  });

  it('are in no sample', async () => {
    const folder = new URL('../../../samples/', import.meta.url);
    for (const name of readdirSync(folder).filter((each) => each.endsWith('.tag.yaml'))) {
      const { issues } = await checked(readFileSync(new URL(name, folder), 'utf8'), specks);
      assert.deepEqual(issues, [], name);
    }
  });

  it('by the thousand are still told, with little work', async () => {
    const holes = Array.from({ length: 8_000 }, (_, i) => `M${1 + (i % 100)} ${1 + Math.floor(i / 100)}v.3h.3v-.3z`);
    const { made } = await specksOf([`body: {path: "M0 0H102V102H0Z ${holes.join('')}"}`], 'body: [body]');
    const started = worked();
    const [issue] = specks({ ...made.report.tag!, pieces: [{ ...made.pieces[0]!, region: [...made.region] }] });
    assertWorked(started, 4);
    assert.match(issue!.message, /^8000 holes/);
  });
});
