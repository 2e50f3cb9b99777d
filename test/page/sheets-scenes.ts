/** Sheets as tests of their page make them: plain rectangles, so that every figure is known beforehand. */

import type { PieceOnSheet, SheetOnPage, SheetShape, ToSheetsPage } from '../../src/protocol/sheets.ts';

/** 40 × 20 mm, its lower left corner at the origin of its own coordinates. */
export const plate: SheetShape = {
  id: '1',
  solid: 'M0 0h40v-20h-40z',
  engraved: 'M10-5h4v-4h-4z',
  scored: '',
  wood: '#e8d0a0',
  burn: '#5a3a1e',
  rim: '#6b4a2a',
};

/** Its box begins so far from the left and the bottom of a sheet 100 mm tall. */
export function pieceAt(number: number, left: number, bottom: number, more: Partial<PieceOnSheet> = {}): PieceOnSheet {
  return {
    id: `piece ${number}`,
    shape: plate.id,
    number,
    sign: { text: `${number}${more.rush ? '»' : ''}`, box: [left + 25, 87 - bottom, left + 35, 93 - bottom], size: 5 },
    name: `Name ${number}`,
    order: `10${number}`,
    rush: false,
    faulty: false,
    fixed: false,
    turned: 0,
    beyond: 0.1,
    matrix: [1, 0, 0, 1, left, 100 - bottom],
    box: [left, 80 - bottom, left + 40, 100 - bottom],
    ...more,
  };
}

export function sheetOf(name: string, pieces: readonly PieceOnSheet[]): SheetOnPage {
  return {
    id: name,
    name,
    stock: 'ply3',
    width: 200,
    height: 100,
    margin: 5,
    outline: 'M0 0h200v100h-200z',
    filled: (pieces.length * 800) / 20_000,
    pieces,
  };
}

export const twoSheets: readonly SheetOnPage[] = [
  sheetOf('ply3 sheet 1', [pieceAt(1, 5, 5), pieceAt(2, 60, 5), pieceAt(3, 110, 50, { rush: true })]),
  sheetOf('ply3 sheet 2', [pieceAt(4, 5, 60, { fixed: true })]),
];

export function sheetsMessage(sheets = twoSheets, more: object = {}): Extract<ToSheetsPage, { type: 'sheets' }> {
  return {
    type: 'sheets',
    state: 'done',
    shapes: [plate],
    scene: {
      title: 'Plant swap',
      units: 'mm',
      pins: true,
      effort: 1,
      gaps: [{ stock: 'ply3', gap: 2, most: 10 }],
      sheets,
      facts: [{ name: 'Pieces', value: '4' }],
      figures: [
        { name: 'Sheets', value: sheets.length, unit: '', digits: 0 },
        { name: 'Filled', value: 8, unit: '%', digits: 1 },
      ],
      problems: [],
      warning: 'Not in the cut files',
      ...more,
    },
  };
}
