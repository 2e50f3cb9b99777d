import assert from 'node:assert/strict';
import { captionOf, nearShare } from '../../../webview/sheets/captions.ts';
import { arranged } from '../../../webview/sheets/arrange.ts';
import { pieceAt, sheetOf } from '../../page/sheets-scenes.ts';

const rush = pieceAt(1, 5, 5, { rush: true });
const named = (name: string, stock = 'ply3', pieces = [rush]) => ({ ...sheetOf(name, pieces), stock });
/** Letters as shares of the widest sheet, 200 mm. */
const told = (sheets: Parameters<typeof captionOf>[0], index: number, share: number) =>
  captionOf(sheets, index, { letters: { facts: share * 200, name: share * 200 }, width: 200, units: 'mm' });

describe('What is told above a sheet', () => {
  const sheets = [
    named('ply3 offcut 7'),
    named('ply3 sheet 1'),
    named('ply3 sheet 2', 'ply3', []),
    named('cherry2 sheet 1', 'cherry2'),
  ];

  it('is all of it while its letters have room', () => {
    assert.deepEqual(told(sheets, 1, 0.02), {
      name: 'ply3 sheet 1',
      facts: ['200 × 100 mm · 4 % filled · 1 piece · 1 rush (»)'],
    });
    assert.equal(told(sheets, 1, nearShare).name, 'ply3 sheet 1');
  });

  it('is its number, how full it is and what is a rush from afar, and its stock where that begins', () => {
    const names = sheets.map((_, index) => told(sheets, index, nearShare + 0.01).name);
    assert.deepEqual(names, ['offcut 7', '1', '2', 'cherry2 1']);
    assert.deepEqual(told(sheets, 1, 0.18).facts, ['4 % · 1»']);
    assert.deepEqual(told(sheets, 2, 0.18).facts, ['0 %']);
    assert.equal(told(sheets, 3, 0.2).name, '1', 'where its stock has no room');
  });

  it('is the number of the sheets of a spec too', () => {
    const own = [named('Sheet 1: ply3'), named('Sheet 2: ply3'), named('Sheet 3', '')];
    assert.deepEqual(
      own.map((_, index) => told(own, index, 0.15).name),
      ['ply3 1', '2', '3'],
    );
  });

  it('has the room that is kept for it, at any number of sheets', () => {
    for (const count of [1, 2, 7, 13, 40, 100, 200]) {
      const many = Array.from({ length: count }, (_, index) => named(`ply3 sheet ${index + 1}`));
      const { places, letters, widest } = arranged(many, 'mm');
      for (const shrunk of [1, 0.7, 0.3]) {
        const own = { facts: letters.facts * shrunk, name: letters.name * shrunk };
        for (const [index, { x, y, above }] of places.entries()) {
          const { facts } = captionOf(many, index, { letters: own, width: widest, room: above, units: 'mm' });
          const high = 1.25 * (own.facts * facts.length + own.name) + 0.4 * own.facts;
          const over = places.filter((other) => other.x === x && other.y < y).map((other) => other.y + 100);
          const room = over.length === 0 ? y + own.name : y - Math.max(...over);
          assert.ok(high <= room + 1e-9, `${count} sheets, ${shrunk}: ${high} in ${room}`);
        }
      }
    }
  });
});
