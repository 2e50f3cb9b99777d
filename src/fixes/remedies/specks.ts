/** Remedies for holes and parts that are too small to be made. */

import { shapesBeside } from '../../checks/speck.ts';
import { listedQuoted } from '../../core/names.ts';
import { boundsArea, boundsOf, contains } from '../../geometry/measure.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import { extentOf } from '../../tag/size.ts';
import type { Source } from '../../tag/tag.ts';
import type { Candidate, Case, Remedy } from '../candidate.ts';
import { replacing, settingLengths, shapeAt, shapeTitle, specLength } from '../candidate.ts';
import { withoutEntry } from './moving.ts';

/** `tidy` drops what is smaller than it, so it is larger than the largest speck by this, in mm. */
const moreMm = 0.05;

/** Drops specks, together with everything as small as the largest of them. */
export function withoutSpecks(at: Case): Remedy[] {
  const { issue, piece } = at;
  const shape = shapeAt(at, issue.path);
  const [point] = issue.points ?? [];
  if (!shape || !piece || !point || issue.width === undefined) return [];
  const size = issue.width + moreMm;
  const [hole] = piece.region
    .filter((ring) => contains([ring], point))
    .sort((a, b) => boundsArea(boundsOf([a])!) - boundsArea(boundsOf([b])!));
  const beside = hole ? shapesBeside(hole, piece) : [];
  if (beside.length > 1) return united(at, beside, size);
  if (dropsOfLetters(at, shape, size)) return [];
  return [
    { words: `Remove the specks of ${shapeTitle(shape)}`, candidates: settingLengths(at, shape.path, 'tidy', [size]) },
  ];
}

/** What lies between shapes can only be dropped from their union. */
function united(at: Case, beside: readonly Source[], size: number): Remedy[] {
  const names = beside.flatMap(({ shape }) => shape.name ?? []);
  const isOfBody = beside.every(({ use, entry }) => use === 'body' && typeof entry.at(-1) === 'number');
  if (names.length < beside.length || !isOfBody) return [];
  if (beside.some(({ shape }) => dropsOfLetters(at, shape, size))) return [];
  return [
    {
      words: `Unite ${listedQuoted(names)} without the specks between them`,
      candidates: unionOf(at, beside, names, size),
    },
  ];
}

function unionOf(at: Case, [first, ...others]: readonly Source[], names: readonly string[], size: number): Candidate[] {
  const tidy = specLength(size, at.tag.units);
  const removed = others.map(({ entry }) => withoutEntry(at, entry));
  if (removed.some((edit) => !edit)) return [];
  const text = `{union: [${names.join(', ')}], tidy: ${tidy}}`;
  return [
    {
      description: `tidy ${tidy}`,
      edits: [replacing(at, first!.entry, text), ...removed.flatMap((edit) => edit ?? [])],
    },
  ];
}

/**
 * Whether lettering would lose the dot of an i, an accent, a full stop or a counter: `tidy` drops everything with a box
 * that small.
 */
function dropsOfLetters({ tag }: Case, shape: Shape, size: number): boolean {
  const rings = (tag.made.get(shape)?.lettering ?? []).flatMap(({ letters }) =>
    letters.flatMap(({ region }) => region),
  );
  return rings.some((ring) => extentOf(ring) <= size);
}
