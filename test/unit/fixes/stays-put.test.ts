import assert from 'node:assert/strict';
import { fixAll } from '../../../src/fixes/fix-all.ts';
import { findFixes, withEdits } from '../../../src/fixes/find-fixes.ts';
import { boundsOf, boxCentre } from '../../../src/geometry/measure.ts';
import { newEngine, specOf } from '../support/engine.ts';

const engine = newEngine();
const options = { locate: () => undefined };

const middleOf = async (text: string): Promise<number> => {
  const { tag } = await engine.compute(text, options);
  const [ab] = tag!.pieces[0]!.sources.filter(({ use }) => use === 'cut');
  return boxCentre(boundsOf(ab!.region)!).x;
};

/** How far each fix for the tilt of a heart on a keyhole moves the letters cut out of it sideways, by title. */
async function shifts(fit: string) {
  const text = specOf(
    ['plate: {heart: 40}', `ab: {text: AB, font: Alfa Slab One, ${fit}, bridges: auto}`],
    'body: [plate], cut: [ab], hanger: {keyhole: top}',
    ['stock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}'],
  );
  const report = await engine.compute(text, options);
  const issue = report.issues.find(({ code }) => code === 'hangs-askew');
  assert.ok(issue, 'it hangs askew');
  const before = await middleOf(text);
  const fixes = await findFixes(engine, report, issue, options);
  return Promise.all(
    fixes.map(async ({ title, edits }) => ({ title, by: (await middleOf(withEdits(text, edits))) - before })),
  );
}

describe('A fix that moves a hanger', () => {
  it('is not offered where fitted letters would jump to the other side', async () => {
    for (const { title, by } of await shifts('fit: {in: plate, margin: 4}'))
      assert.ok(Math.abs(by) < 5, `${title}: ${by} mm aside`);
  });

  it('is offered where they stay', async () => {
    const found = await shifts('width: 9, place: {on: plate}, nudge: {left: 11, up: 3}');
    assert.ok(found.some(({ title, by }) => title.startsWith('Move the keyhole over') && Math.abs(by) < 0.01));
  });
});

describe('A fix for words that stand beside others, as those fill the plate', () => {
  const plateOf = (plate: string, name: string) =>
    specOf(
      [
        `plate: ${plate}`,
        `name: {text: ${name}, font: Pacifico, fit: {in: plate, margin: 3, clear: 2}}`,
        'day: {text: sown in May, font: Nunito, weight: 700, fit: {in: plate, margin: 3, clear: 2}}',
      ],
      'body: [plate], engrave: [name, day], hanger: {hole: {at: left}}',
      ['stock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}'],
    );

  async function fixesFor(text: string) {
    const report = await engine.compute(text, options);
    const issue = report.issues.find(({ code }) => code === 'squeezed');
    assert.ok(issue, 'the day stands beside the name');
    return findFixes(engine, report, issue, options);
  }

  it('makes the others smaller until there is a line below them, under their middle', async () => {
    for (const [plate, title] of [
      ['{rectangle: [70, 40], radius: 4}', 'Peggy'],
      ['{label: [100, 50]}', 'Lucy'],
      ['{label: [90, 40]}', 'Ida'],
    ] as const) {
      const text = plateOf(plate, title);
      const [fix] = await fixesFor(text);
      assert.match(fix!.title, /^Leave a line below “name”: letters at most/);
      const after = await engine.compute(withEdits(text, fix!.edits), options);
      const [name, day] = after.tag!.pieces[0]!.marks.map(({ region }) => boundsOf(region)!);
      assert.ok(day!.maxY < name!.minY);
      const off = Math.abs(boxCentre(day!).x - boxCentre(name!).x);
      assert.ok(off < 0.1 * (day!.maxX - day!.minX), `${title}: ${off} mm aside`);
      assert.deepEqual(after.issues, []);
    }
  });

  it('is not there where the name would fill half of the plate for a day that is hardly seen', async () => {
    assert.deepEqual(await fixesFor(plateOf('{label: [90, 40]}', 'Lucy')), []);
  });

  it('is for the writer to choose, whatever it changes', async () => {
    const text = plateOf('{label: [100, 50]}', 'Lucy');
    const [fix] = await fixesFor(text);
    assert.ok(fix!.isChoice);
    const fixed = await fixAll(engine, text, options);
    assert.equal(fixed.text, text);
  });
});
