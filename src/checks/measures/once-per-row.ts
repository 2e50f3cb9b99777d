/** What is wrong with several openings of a row has one cause, and is one finding. */

import { samePath } from '../../core/values.ts';
import type { Finding } from '../../core/issue.ts';
import type { Piece, PlacedHanger } from '../../tag/tag.ts';
import { groupedBy } from '../../core/grouped.ts';

/**
 * What is found on the hangers of a piece: of each kind the worst on each row, with the places of all; its message says how many
 * openings it is true of.
 */
export function oncePerRow({ hangers }: Piece, findingsOn: (hanger: PlacedHanger) => readonly Finding[]): Finding[] {
  const keyOf = ({ code, severity, path }: Finding) => JSON.stringify([code, severity, path]);
  const groups = groupedBy(hangers.flatMap(findingsOn), keyOf);
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    const row = hangers.filter(({ path }) => samePath(path, first!.path));
    // More than one finding on a single opening are different ones.
    if (group.length === 1 || row.length < 2 || group.length > row.length) return group;
    const worst = group.reduce((a, b) => ((b.width ?? Infinity) < (a.width ?? Infinity) ? b : a));
    const places = [worst, ...group.filter((each) => each !== worst)].flatMap(
      ({ points = [], width, places: own }) => own ?? [{ points, ...(width === undefined ? {} : { width }) }],
    );
    const amount = group.reduce((sum, each) => sum + (each.amount ?? 0), 0);
    const noun = row[0]!.kind === 'ring' ? 'rings' : `${row[0]!.kind}s`;
    const which =
      group.length < row.length
        ? `${group.length} of the ${row.length} ${noun} have`
        : row.length === 2
          ? `Both ${noun} have`
          : `All ${row.length} ${noun} have`;
    return [{ ...worst, places, ...(amount > 0 && { amount }), message: `${worst.message} ${which} this problem.` }];
  });
}
