/** Calculates the kerf from a test and writes it into a spec. */

import type { TextEdit, YamlPath } from '../core/issue.ts';
import { parseLength } from '../core/length.ts';
import { finest, shortLength } from '../core/units.ts';
import type { Units } from '../core/units.ts';
import type { SpecSource } from '../spec/yaml/source.ts';
import { valueAt } from '../core/values.ts';

/** Widest beam for cutting tags, in mm. */
const widestMm = 2;

/** If measurements of one test differ by more than this, in mm, some of them were taken badly. */
const agreeMm = 0.1;

export type KerfResult =
  | { readonly mm: number; readonly spreadMm: number; readonly doubtful: boolean }
  | { readonly problem: string };

/**
 * The kerf from the widths of slots and of the pieces that fall out of them, as the mean over all pairs. A beam of
 * width k that runs on the line leaves a slot k wider, and a piece k narrower, than drawn: their difference is 2k,
 * whatever was drawn and however exactly the machine moves.
 */
export function kerfFrom(slots: string, pieces: string, units: Units): KerfResult {
  const [widths, fallen] = [lengthsIn(slots, units), lengthsIn(pieces, units)];
  if (!widths || !fallen) return { problem: 'Write widths such as 10.16, 20.15, 30.17.' };
  if (widths.length !== fallen.length) return { problem: 'As many pieces as slots are needed, in the same order.' };
  const kerfs = widths.map((slot, i) => (slot - fallen[i]!) / 2);
  const odd = kerfs.findIndex((kerf) => kerf <= 0 || kerf > widestMm);
  if (odd >= 0) return { problem: `Slot ${odd + 1} should be a little wider than its piece.` };
  const spreadMm = Math.max(...kerfs) - Math.min(...kerfs);
  const mm = kerfs.reduce((sum, kerf) => sum + kerf / kerfs.length, 0);
  return { mm, spreadMm, doubtful: spreadMm > agreeMm };
}

/** Lengths in mm, separated by commas or semicolons; a comma between figures is not a decimal point. */
function lengthsIn(text: string, units: Units): number[] | undefined {
  const parts = text.split(/[,;\s]+(?=[\d.])/).map((part) => part.trim());
  const lengths = parts.map((part) => parseLength(/^[\d.]+$/.test(part) ? Number(part) : part, units));
  const found = lengths.flatMap((length) => ('mm' in length && length.mm > 0 ? [length.mm] : []));
  return found.length === parts.length ? found : undefined;
}

/**
 * The edits that write the kerf into the stock of the spec, or the stock called `name`; `undefined` if it is in another
 * file or is not a map.
 */
export function kerfEdits(source: SpecSource, mm: number, units: Units, name?: string): TextEdit[] | undefined {
  const text = shortLength(mm, units, finest);
  const stock = name ?? valueAt(source.value, ['stock']);
  if (stock === undefined) return asList(source.setKey([], 'stock', `{kerf: ${text}}`));
  const path: YamlPath = typeof stock === 'string' ? ['stocks', stock] : ['stock'];
  const kerf = valueAt(source.value, [...path, 'kerf']);
  if (typeof kerf !== 'object' || kerf === null) return asList(source.setKey(path, 'kerf', text));
  // If the kerf differs by operation, both values are set: the test measures slots and the pieces that fall out of them
  // together.
  const written = (['outer', 'inner'] as const).filter((key) => key === 'outer' || key in kerf);
  const edits = written.map((key) => source.setKey([...path, 'kerf'], key, text));
  return edits.every((edit) => edit !== undefined) ? edits : undefined;
}

function asList(edit: TextEdit | undefined): TextEdit[] | undefined {
  return edit && [edit];
}
