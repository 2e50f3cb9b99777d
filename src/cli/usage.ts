/** Usage text of the command line. */

import { currentCode, isIssueCode } from '../core/issue-kinds.ts';
import type { Severities } from '../engine/severity.ts';
import { formats, sheetFormats } from '../export/formats.ts';
import { testPieceNames } from '../test-pieces/all.ts';

export const usage = `Usage:
  tagwright check FILE… [--json [--no-fixes]] [--strict]
  tagwright fix FILE… [--dry-run] [--only CODE]
  tagwright export FILE… --to ${Object.keys(formats).join(',')} --out DIR [--width PIXELS] [--force] [--overwrite] [--progress]
  tagwright sheets FILE… --to ${sheetFormats.join(',')} --out DIR [--force] [--overwrite] [--progress]
  tagwright pack FILE… --out DIR|FILE.zip [--force] [--overwrite] [--progress]
  tagwright job FILE… --out DIR [--json] [--overwrite] [--progress]
  tagwright approve FILE… [--on DATE] [--note TEXT] [--overwrite]
  tagwright test-piece FILE --out DIR [--only ${testPieceNames.join(',')}] [--stock NAME] [--font FAMILY] [--powers 10,20,…] [--speeds 100,200,…] [--to svg,dxf] [--overwrite]

  approve        records beside each spec what its customer approved; check reports what has changed since
  --to cover     the tag alone on white, as a PNG for a listing
  --to proof     the proof alone, as a PDF for the customer; one for a whole batch
  --to job       the job sheet, as a PDF for the bench
  --to assembly  how glued layers go together, as a PDF for the bench; tags of one layer have none
  --severity CODE=error|warning|info|off   changes how serious a kind of problem is; may be repeated
  --force        exports tags with errors too; their files say so
  --overwrite    replaces files that already exist
  --progress     export, sheets, pack and job say on stderr how far they are, line by line; on a terminal they do anyway

Exit code: 0 clean or warnings only (with --strict, warnings fail too), 1 errors, 2 wrong usage, 130 stopped.`;

/** A program that Ctrl+C has ended has 128 and the number of the signal. */
export const exitCodes = { clean: 0, errors: 1, usage: 2, stopped: 130 } as const;

export class UsageError extends Error {
  /** Whether the message says what to do instead, and the usage would only bury it. */
  readonly isEnough: boolean;

  constructor(message: string, { isEnough = false } = {}) {
    super(message);
    this.isEnough = isEnough;
  }
}

const levels = ['error', 'warning', 'info', 'off'] as const;

/** Parses the values of `--severity`. */
export function severitiesOf(given: readonly string[]): Severities {
  return Object.fromEntries(
    given.map((each) => {
      const [written = '', level] = each.split('=');
      const code = currentCode(written);
      if (!isIssueCode(code)) throw new UsageError(`There is no problem called “${code}”.`);
      const known = levels.find((candidate) => candidate === level);
      if (!known) throw new UsageError(`--severity ${code}= needs one of ${levels.join(', ')}.`);
      return [code, known];
    }),
  );
}
