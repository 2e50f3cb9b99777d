/** Source of each piece of a job: the row of its order, the entry in the job, the spec. */

import * as vscode from 'vscode';
import type { CheckedJob } from '../../jobs/job.ts';
import type { DraftSheet } from '../../jobs/layout/layout.ts';
import { pieceId } from '../../jobs/orders/job-piece.ts';
import type { JobPiece } from '../../jobs/orders/job-piece.ts';
import { SpecSource } from '../../spec/yaml/source.ts';
import { locateBeside } from '../service/font-files.ts';
import { offsetOf, rowAt, rowStart } from '../sheets/offsets.ts';
import type { PiecePlaces, TextPlace } from '../sheets/piece-places.ts';

export class JobPiecePlaces implements PiecePlaces {
  readonly #job: vscode.Uri;
  readonly #checked: CheckedJob;
  readonly #pieces: ReadonlyMap<string, JobPiece>;
  /** Index of the entry that pins each piece. */
  readonly #fixed: ReadonlyMap<JobPiece, string | number | undefined>;
  readonly #locate: (name: string) => string | undefined;

  constructor(job: vscode.Uri, checked: CheckedJob, sheets: readonly DraftSheet[]) {
    this.#job = job;
    this.#checked = checked;
    this.#locate = locateBeside(job);
    this.#fixed = new Map(
      sheets.flatMap(({ pieces }) => pieces.flatMap(({ of, fixed }) => (fixed ? [[of, fixed.path[1]] as const] : []))),
    );
    const all = sheets.flatMap(({ pieces }) => pieces.map(({ of }) => of));
    this.#pieces = new Map(all.map((of) => [pieceId(of), of]));
  }

  of(id: string): TextPlace[] {
    const piece = this.#pieces.get(id);
    if (!piece) return [];
    const { line, path, spec } = piece.of;
    const table = line && this.#fileOf(line.table);
    const own = this.#fileOf(spec);
    return [
      ...(line && table ? [{ uri: table, offsetIn: (text: string) => rowStart(text, line.number) }] : []),
      { uri: this.#job, offsetIn: (text) => offsetOf(text, path) },
      ...(own ? [{ uri: own, offsetIn: (text: string) => offsetOf(text, piece.piece.path) }] : []),
    ];
  }

  at(uri: vscode.Uri, text: string, offset: number): string[] {
    const key = uri.toString();
    if (key === this.#job.toString()) return this.#ofEntry(text, offset);
    const ofTable = this.#idsOf(({ of: { line } }) => line !== undefined && this.#isFile(line.table, key));
    if (ofTable.length > 0) return this.#ofRow(key, text, offset);
    const ofSpec = ({ of }: JobPiece) => this.#isFile(of.spec, key);
    const [section, name] = this.#idsOf(ofSpec).length > 0 ? new SpecSource(text).pathAt(offset) : [];
    return section === 'pieces' ? this.#idsOf((each) => ofSpec(each) && each.piece.id === name) : [];
  }

  #ofEntry(text: string, offset: number): string[] {
    // Entries are those of the text that was laid out.
    if (text !== this.#checked.source.text) return [];
    const [section, entry] = this.#checked.source.pathAt(offset);
    if (section === 'fixed') return this.#idsOf((piece) => this.#fixed.get(piece) === entry);
    return section === 'tags' ? this.#idsOf(({ of: { path } }) => path[1] === entry) : [];
  }

  #ofRow(table: string, text: string, offset: number): string[] {
    const row = rowAt(text, offset);
    return this.#idsOf(({ of: { line } }) => line?.number === row && this.#isFile(line?.table ?? '', table));
  }

  #idsOf(is: (piece: JobPiece) => boolean): string[] {
    return [...this.#pieces].filter(([, piece]) => is(piece)).map(([id]) => id);
  }

  #isFile(name: string, uri: string): boolean {
    return this.#fileOf(name)?.toString() === uri;
  }

  #fileOf(name: string): vscode.Uri | undefined {
    const file = this.#locate(name);
    return file === undefined ? undefined : vscode.Uri.parse(file);
  }
}
