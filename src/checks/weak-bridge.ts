/** Places where a piece is too narrow to hold: short necks, walls round holes, and whole thin strokes. */

import { findNecks } from '../geometry/necks.ts';
import type { Neck } from '../geometry/necks.ts';
import type { Region } from '../geometry/types.ts';
import type { Finding, YamlPath } from '../issue.ts';
import type { Piece } from '../tag/tag.ts';
import { blame } from './blame.ts';
import type { Check } from './check.ts';
import { mm } from './check.ts';

export const weakBridges: Check = ({ pieces, stock }) => pieces.flatMap((piece) => weakPlacesOf(piece, stock.minWeb));

function weakPlacesOf(piece: Piece, minWeb: number): Finding[] {
  const wanted = `at least ${mm(minWeb)} is wanted`;
  const findings: Finding[] = [];
  const strokes = new Map<string, { path: YamlPath; necks: Neck[] }>();
  for (const neck of necksOf(piece.region, minWeb)) {
    const [a, b] = neck.ends;
    const path = blame(piece, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
    if (neck.kind === 'stroke') {
      const key = path.join('/');
      const group = strokes.get(key) ?? { path, necks: [] };
      group.necks.push(neck);
      strokes.set(key, group);
      continue;
    }
    const [larger, smaller] = neck.areas.map((area) => area.toFixed(0));
    const message =
      neck.kind === 'bridge'
        ? `Weak bridge: only ${mm(neck.width)} of material joins parts of ${larger} and ${smaller} mm²; ${wanted}.`
        : `Weak wall: only ${mm(neck.width)} of material between two edges; ${wanted}.`;
    findings.push(finding('weak-bridge', piece, path, neck, message));
  }
  for (const { path, necks } of strokes.values())
    findings.push(finding('thin-stroke', piece, path, narrowest(necks), strokeMessage(necks, wanted)));
  return findings;
}

/** Finding necks is the dearest check by far, and an edit elsewhere leaves a piece's region the very same object. */
const known = new WeakMap<Region, { minWeb: number; necks: Neck[] }>();

function necksOf(region: Region, minWeb: number): Neck[] {
  const before = known.get(region);
  if (before?.minWeb === minWeb) return before.necks;
  const necks = findNecks(region, minWeb);
  known.set(region, { minWeb, necks });
  return necks;
}

/** Lettering that is thin all over is one fault with one remedy, so it is told once, at its narrowest. */
function strokeMessage(necks: readonly Neck[], wanted: string): string {
  const least = mm(narrowest(necks).width);
  const length = necks.reduce((sum, neck) => sum + neck.length, 0).toFixed(0);
  if (necks.length === 1) return `Thin stroke: ${length} mm long and ${least} at its narrowest; ${wanted}.`;
  return `Thin strokes: ${necks.length} of them, ${length} mm in all and ${least} at the narrowest; ${wanted}.`;
}

function narrowest(necks: readonly Neck[]): Neck {
  return necks.reduce((least, neck) => (neck.width < least.width ? neck : least));
}

function finding(code: Finding['code'], piece: Piece, path: YamlPath, { ends, width }: Neck, message: string): Finding {
  return { code, severity: 'warning', piece: piece.id, path, points: ends, width, message };
}
