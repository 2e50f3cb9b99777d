/** Source of each piece on a spec's sheets: the row of its batch, in the spec or in a table, and the piece. */

import * as vscode from 'vscode';
import type { Report } from '../../engine/engine.ts';
import type { SheetOnPage } from '../../protocol/sheets.ts';
import type { SpecPieceId } from '../../scene/spec-on-page.ts';
import { SpecSource } from '../../spec/yaml/source.ts';
import { batchTable, tagAt } from '../common/batch-table.ts';
import { offsetOf, rowStart } from './offsets.ts';
import type { PiecePlaces, TextPlace } from './piece-places.ts';

export class SpecPiecePlaces implements PiecePlaces {
  readonly #uri: vscode.Uri;
  readonly #report: Report;
  readonly #ids: readonly string[];

  constructor(uri: vscode.Uri, report: Report, sheets: readonly SheetOnPage[]) {
    this.#uri = uri;
    this.#report = report;
    this.#ids = sheets.flatMap(({ pieces }) => pieces.map(({ id }) => id));
  }

  of(id: string): TextPlace[] {
    const [row, , piece] = JSON.parse(id) as SpecPieceId;
    const { path, line } = this.#report.batch?.rows[row] ?? {};
    const table = batchTable(this.#uri, this.#report);
    const ofPiece: TextPlace = { uri: this.#uri, offsetIn: (text) => offsetOf(text, ['pieces', piece]) };
    if (table && line !== undefined) return [{ uri: table, offsetIn: (text) => rowStart(text, line) }, ofPiece];
    return path ? [{ uri: this.#uri, offsetIn: (text) => offsetOf(text, path) }] : [ofPiece];
  }

  at(uri: vscode.Uri, text: string, offset: number): string[] {
    const key = uri.toString();
    if (key === batchTable(this.#uri, this.#report)?.toString()) {
      const row = tagAt(this.#report, text, offset);
      return this.#idsOf(([ofRow]) => ofRow === row);
    }
    if (key !== this.#uri.toString()) return [];
    const [section, name] = new SpecSource(text).pathAt(offset);
    if (section === 'batch') return this.#idsOf(([row]) => this.#report.batch?.rows[row]?.path[1] === name);
    return section === 'pieces' ? this.#idsOf(([, , piece]) => piece === name) : [];
  }

  #idsOf(is: (id: SpecPieceId) => boolean): string[] {
    return this.#ids.filter((id) => is(JSON.parse(id) as SpecPieceId));
  }
}
