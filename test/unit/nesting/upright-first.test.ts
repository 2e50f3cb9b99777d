import assert from 'node:assert/strict';
import type { Layout, PartToNest, SheetRoom } from '../../../src/nesting/layout.ts';
import { uprightFirst } from '../../../src/nesting/upright-first.ts';
import { assertKept, nestSoon, never } from '../support/sheets.ts';
import { box, polygon } from '../support/shapes.ts';

const triangle: PartToNest = { region: [polygon([0, 0], [40, 0], [0, 30])], turns: 'half' };

async function laid(parts: readonly PartToNest[], room: SheetRoom): Promise<Layout> {
  const layout = await uprightFirst(nestSoon)(parts, room, never);
  assertKept(parts, room, layout);
  return layout;
}

const turnedOn = ({ placements }: Layout, on = (_sheet: number) => true): number =>
  placements.filter(({ sheet, transform: { a } }) => on(sheet) && Math.abs(a - 1) > 1e-9).length;

const triangles = (count: number): PartToNest[] => Array.from({ length: count }, () => triangle);

// Of two triangles as drawn one lies beside or above the other; with one upside down they make a box, the gap between them.
describe('Parts laid out upright first', () => {
  it('lie as they were drawn on a sheet with room for all', async () => {
    const layout = await laid(triangles(4), { width: 300, height: 200, margin: 5, gap: 2 });
    assert.equal(layout.sheets, 1);
    assert.equal(turnedOn(layout), 0);
  });

  it('are turned where that saves a sheet', async () => {
    const layout = await laid(triangles(2), { width: 46, height: 40, margin: 1, gap: 2 });
    assert.equal(layout.sheets, 1);
    assert.equal(turnedOn(layout), 1);
  });

  it('are turned where that saves a tenth of a sheet, and not for less', async () => {
    // Two of these are 62 mm high as drawn, in rows, and 30 mm high as a box: 32 mm of the sheet.
    const strip = (height: number): SheetRoom => ({ width: 46, height, margin: 1, gap: 2 });
    assert.equal(turnedOn(await laid(triangles(2), strip(240))), 1);
    assert.equal(turnedOn(await laid(triangles(2), strip(340))), 0);
  });

  it('are turned one by one where they go on the sheet in no other way', async () => {
    const long: PartToNest = { region: [box(0, 0, 20, 120)], turns: 'quarter' };
    const parts = [long, ...triangles(2).map((each): PartToNest => ({ ...each, turns: 'quarter' }))];
    const layout = await laid(parts, { width: 150, height: 110, margin: 5, gap: 2 });
    assert.deepEqual(layout.unplaced, []);
    assert.equal(turnedOn(layout), 1);
  });

  it('lie as they were drawn on the last sheet, where only the others had to be turned', async () => {
    const layout = await laid(triangles(5), { width: 46, height: 40, margin: 1, gap: 2 });
    assert.equal(layout.sheets, 3);
    assert.equal(
      turnedOn(layout, (sheet) => sheet === 2),
      0,
    );
    assert.equal(
      turnedOn(layout, (sheet) => sheet < 2),
      2,
    );
  });

  it('are made when the layout asks for them, and not held meanwhile', async () => {
    let made = 0;
    const parts = triangles(3).map(({ region, turns }): PartToNest => ({
      get region() {
        made += 1;
        return [...region];
      },
      turns,
    }));
    const held: boolean[] = [];
    await uprightFirst((asked, ...rest) => {
      const before = made;
      held.push(asked.some((part) => part.region === part.region) || made === before);
      return nestSoon(asked, ...rest);
    })(parts, { width: 46, height: 40, margin: 1, gap: 2 }, never);
    assert.deepEqual([...new Set(held)], [false]);
  });
});
