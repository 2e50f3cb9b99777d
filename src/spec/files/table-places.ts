/** The places of cells in the text of a table. */

import { LineCounter } from 'yaml';
import type { TextRange } from '../../core/issue.ts';

export class TablePlaces {
  readonly #records: readonly (readonly TextRange[])[];
  readonly #lines = new LineCounter();

  constructor(text: string, delimiter: string) {
    this.#lines.addNewLine(0);
    for (const { index } of text.matchAll(/\n/g)) this.#lines.addNewLine(index + 1);
    this.#records = recordsOf(text, delimiter);
  }

  /** Range of a cell; a missing one is at the end of its row. `line` is the line the row begins on, counting from 1. */
  cell(line: number, column: number): TextRange {
    const record = this.#records.find(([first]) => this.position(first!.start).line === line);
    const last = record?.at(-1)?.end ?? 0;
    return record?.[column] ?? { start: last, end: last };
  }

  /** 1-based line and column of an offset. */
  position(offset: number): { line: number; column: number } {
    const { line, col } = this.#lines.linePos(offset);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  }
}

/** RFC 4180: a cell in quotation marks may contain anything, and two quotation marks stand for one. */
function recordsOf(text: string, delimiter: string): TextRange[][] {
  const records: TextRange[][] = [];
  let record: TextRange[] = [];
  let start = 0;
  let quoted = false;
  const endCell = (end: number): void => {
    record.push({ start, end });
  };
  for (let at = 0; at < text.length; at++) {
    const sign = text[at]!;
    if (sign === '"' && (quoted || text.slice(start, at).trim() === '')) quoted = !quoted;
    if (quoted) continue;
    if (sign === delimiter) {
      endCell(at);
      start = at + 1;
    } else if (sign === '\n' || sign === '\r') {
      endCell(at);
      if (sign === '\r' && text[at + 1] === '\n') at++;
      records.push(record);
      record = [];
      start = at + 1;
    }
  }
  endCell(text.length);
  return [...records, record];
}
