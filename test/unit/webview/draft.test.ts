/** Where the hand may have a piece, by plain arithmetic. */

import assert from 'node:assert/strict';
import fc from 'fast-check';
import type { SheetOnPage } from '../../../src/protocol/sheets.ts';
import { draftOf, movedDraft, pinnedPlace, turnedDraft } from '../../../webview/sheets/draft.ts';
import { pieceAt, sheetOf } from '../../page/sheets-scenes.ts';

const sheet = (name: string, stock = 'ply3'): SheetOnPage => ({ ...sheetOf(name, []), stock });
/** One below the other, 20 mm between them. */
const places = [sheet('one'), sheet('cherry', 'cherry2'), sheet('two')].map((each, row) => ({
  sheet: each,
  x: 0,
  y: 120 * row,
}));
const first = places[0]!;

describe('A piece in the hand', () => {
  it('goes as far as the hand, in steps, and its drawing with it', () => {
    const draft = movedDraft(draftOf(pieceAt(1, 20, 30), first), [12.34, -5.61], places, 0.1);
    assert.deepEqual(pinnedPlace(draft), { piece: 'piece 1', sheet: 'one', x: 32.3, y: 35.6, turned: 0 });
    // From the upper left corner of a sheet 100 mm tall.
    assert.deepEqual(
      draft.matrix.map((value) => Number(value.toFixed(6))),
      [1, 0, 0, 1, 32.3, 64.4],
    );
  });

  it('stays within the margin and what its cut reaches beyond it, wherever the hand goes', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -900, max: 900, noNaN: true }),
        fc.double({ min: -900, max: 900, noNaN: true }),
        (dx, dy) => {
          const {
            x,
            y,
            sheet: on,
          } = pinnedPlace(movedDraft(draftOf(pieceAt(1, 20, 30), first), [dx, dy], places, 0.1));
          assert.ok(x >= 5.1 - 1e-9 && x + 40 <= 194.9 + 1e-9, `${x}`);
          assert.ok(y >= 5.1 - 1e-9 && y + 20 <= 94.9 + 1e-9, `${y}`);
          assert.notEqual(on, 'cherry', 'no sheet of another stock');
        },
      ),
    );
  });

  it('goes to the sheet of its stock that is nearest', () => {
    const start = draftOf(pieceAt(1, 20, 30), first);
    // Its middle is 60 mm below the top of the first sheet.
    assert.equal(movedDraft(start, [0, 100], places, 0.1).place.sheet.id, 'one');
    const there = pinnedPlace(movedDraft(start, [0, 240], places, 0.1));
    assert.deepEqual(there, { piece: 'piece 1', sheet: 'two', x: 20, y: 30, turned: 0 });
  });

  it('turns about its middle, and four times round it is as it was', () => {
    let draft = draftOf(pieceAt(1, 60, 40), first);
    const start = draft;
    draft = turnedDraft(draft, 1, 0.1);
    assert.deepEqual(pinnedPlace(draft), { piece: 'piece 1', sheet: 'one', x: 70, y: 30, turned: 90 });
    // Its own lower left corner, the origin, is now at the lower right: against the clock.
    assert.deepEqual([draft.matrix[4], 100 - draft.matrix[5]], [90, 30]);
    assert.equal(turnedDraft(start, -1, 0.1).turned, 270);
    for (let i = 0; i < 3; i += 1) draft = turnedDraft(draft, 1, 0.1);
    assert.deepEqual(pinnedPlace(draft), pinnedPlace(start));
    assert.deepEqual(
      draft.matrix.map((value) => Number(value.toFixed(6)) + 0),
      start.matrix.map((value) => Number(value.toFixed(6)) + 0),
    );
  });
});
