import assert from 'node:assert/strict';
import { centroid } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { distance } from '../support/distance.ts';
import { report } from '../support/engine.ts';

const plywood = 'stock: {material: birch plywood, thickness: 3 mm}';

async function madeWithHanger(shapes: readonly string[], piece: string, hanger: string, more = '') {
  const text = `tagwright: 1\n${plywood}\nshapes:\n${shapes.map((shape) => `  ${shape}\n`).join('')}pieces:\n  tag: {body: [plate], ${piece}hanger: ${hanger}}\n${more}`;
  const { tag, issues } = await report(text);
  assert.ok(tag, JSON.stringify(issues));
  const piece0 = tag.pieces[0]!;
  const [hanger0] = piece0.hangers;
  const middle = centroid(piece0.body)!;
  const up = { x: hanger0!.centre.x - middle.x, y: hanger0!.centre.y - middle.y };
  const codes = issues.filter(({ severity }) => severity !== 'info').map(({ code }) => code);
  return { tag, up, hanger: hanger0!, codes, gapTo: (region: Region) => distance(hanger0!.opening, region) };
}

const tall = 'plate: {rectangle: [40 mm, 70 mm], radius: 4 mm}';
const wide = 'plate: {rectangle: [90 mm, 36 mm], radius: 4 mm}';

describe('A hole whose place is left open', () => {
  it('is where it always was while nothing is in its way', async () => {
    const { up } = await madeWithHanger(
      [tall, 'name: {text: Savory, font: Nunito, width: 30 mm, place: plate}'],
      'engrave: [name], ',
      '{hole: top}',
    );
    // 35 mm to the edge, less the radius of 1.4 mm, less one and a half times the 3 mm of the sheet.
    assert.ok(Math.abs(up.y - (35 - 1.4 - 4.5)) < 1e-3 && Math.abs(up.x) < 1e-3);
  });

  it('goes nearer to the edge, as far as it may, from lettering below it', async () => {
    const shapes = [
      tall,
      'name: {text: BASIL, font: Alfa Slab One, width: 34 mm, place: {on: plate, at: top, margin: 7.4 mm}}',
    ];
    const free = await madeWithHanger(shapes, 'engrave: [name], ', '{hole: top}');
    assert.deepEqual(free.codes, []);
    assert.ok(free.up.y > 35 - 1.4 - 4.5, `${free.up.y}`);
    assert.ok(free.gapTo(free.tag.pieces[0]!.marks[0]!.region) >= 1);
    const asked = await madeWithHanger(shapes, 'engrave: [name], ', '{hole: {at: top, inset: 4.5 mm}}');
    assert.ok(Math.abs(asked.up.y - (35 - 1.4 - 4.5)) < 1e-3, 'an inset is kept as it is written');
  });

  it('goes within a line that is scored along the edge', async () => {
    const { codes, up } = await madeWithHanger([tall], 'score: [{from: plate, grow: -5 mm}], ', '{hole: top}');
    assert.deepEqual(codes, []);
    // The line is 30 mm above the middle, and the hole and 1 mm below it.
    assert.ok(up.y < 30 - 1.4 - 1 + 1e-6 && up.y > 26.5, `${up.y}`);
  });

  it('keeps as much material to a cut as anywhere', async () => {
    const { tag, codes, gapTo, up } = await madeWithHanger(
      [tall, 'star: {polygon: {sides: 5, across: 7 mm}, place: {on: plate, at: top, margin: 4 mm}}'],
      'cut: [star], ',
      '{hole: top}',
    );
    assert.deepEqual(codes, []);
    const star = tag.pieces[0]!.sources.find(({ use }) => use === 'cut')!.region;
    assert.ok(gapTo(star) >= tag.stock.minWeb - 1e-3);
    assert.ok(up.y > 0.6 * (35 - 1.4 - 4.5), 'well above the middle');
  });

  it('stays where it is, and is reported, rather than behind lettering that its tie would lie over', async () => {
    const { codes, up } = await madeWithHanger(
      [tall, 'name: {text: Borage, font: Nunito, width: 34 mm, place: {on: plate, at: top, margin: 3 mm}}'],
      'engrave: [name], ',
      '{hole: top}',
    );
    assert.deepEqual(codes, ['hole-blocked']);
    assert.ok(Math.abs(up.y - (35 - 1.4 - 4.5)) < 1e-3);
  });

  it('takes the other end of a wide tag where no side is named, and hangs straight from there', async () => {
    const shapes = [
      wide,
      'name: {text: Chervil, font: Pacifico, width: 74 mm, place: {on: plate, at: left, margin: 3 mm}}',
    ];
    const auto = await madeWithHanger(shapes, 'engrave: [name], ', '{hole: {at: auto}}');
    assert.deepEqual(auto.codes, []);
    assert.ok(auto.up.x > 35 && Math.abs(auto.up.y) < 0.01, JSON.stringify(auto.up));
    const left = await madeWithHanger(shapes, 'engrave: [name], ', '{hole: left}');
    assert.deepEqual(left.codes, ['hole-blocked'], 'a side that is named is kept');
  });

  it('keeps the thickness of the tie to what is glued on', async () => {
    const shapes = [tall, 'disc: {circle: 30 mm, place: {on: plate, at: top, margin: 9.5 mm}}'];
    const { tag, codes, gapTo } = await madeWithHanger(
      shapes,
      '',
      '{hole: top}',
      '  top: {body: [disc], glue_to: tag}\n',
    );
    assert.deepEqual(codes, []);
    assert.ok(gapTo(tag.pieces[1]!.region) >= 1.5 - 1e-3);
  });

  it('may lie in an engraved field', async () => {
    const { up } = await madeWithHanger(
      [tall, 'band: {rectangle: [36 mm, 20 mm], place: {on: plate, at: top, margin: 1 mm}}'],
      'engrave: [band], ',
      '{hole: top}',
    );
    assert.ok(Math.abs(up.y - (35 - 1.4 - 4.5)) < 1e-3);
  });

  it('has the first choice over a shape that is fitted', async () => {
    const { up, codes } = await madeWithHanger(
      [tall, 'name: {text: Dill, font: Nunito, fit: {in: plate, margin: 2 mm}}'],
      'engrave: [name], ',
      '{hole: top}',
    );
    assert.deepEqual(codes, []);
    assert.ok(Math.abs(up.y - (35 - 1.4 - 4.5)) < 1e-3);
  });
});
