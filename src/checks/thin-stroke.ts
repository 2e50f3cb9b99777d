/** Whole runs of a piece that are thin. Lettering that is thin all over is one fault with one remedy, so it is told once. */

import type { Neck } from '../geometry/necks.ts';
import type { Finding, YamlPath } from '../issue.ts';
import type { Piece } from '../tag/tag.ts';
import { blame } from './blame.ts';
import type { Check } from './check.ts';
import { mm } from '../spec/figures.ts';
import { thinPlaces, wanted } from './thin-places.ts';

export const thinStrokes: Check = ({ pieces, stock }) => pieces.flatMap((piece) => thinStrokesOf(piece, stock.minWeb));

/** One finding for each shape that is to blame, at its narrowest place. */
function thinStrokesOf(piece: Piece, minWeb: number): Finding[] {
  const byCause = new Map<string, { path: YamlPath; necks: Neck[] }>();
  for (const neck of thinPlaces(piece, minWeb, 'elsewhere')) {
    if (neck.kind !== 'stroke') continue;
    const path = blame(piece, ...neck.ends);
    const group = byCause.get(path.join('/'));
    if (group) group.necks.push(neck);
    else byCause.set(path.join('/'), { path, necks: [neck] });
  }
  return [...byCause.values()].map(({ path, necks }) => {
    // They come narrowest first.
    const { width, ends } = necks[0]!;
    return {
      code: 'thin-stroke',
      severity: 'warning',
      piece: piece.id,
      path,
      points: ends,
      width,
      message: messageOf(necks, minWeb),
    };
  });
}

function messageOf(necks: readonly Neck[], minWeb: number): string {
  const least = mm(necks[0]!.width);
  const length = mm(
    necks.reduce((sum, neck) => sum + neck.length, 0),
    0,
  );
  return necks.length === 1
    ? `Thin stroke: ${length} long and ${least} at its narrowest; ${wanted(minWeb)}.`
    : `Thin strokes: ${necks.length} of them, ${length} in all and ${least} at the narrowest; ${wanted(minWeb)}.`;
}
