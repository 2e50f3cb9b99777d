/** Problems and accepted findings, each at its place on the drawing. */

import { severityRank, type FaultPlace, type Issue } from '../core/issue.ts';
import type { AcceptedIssue } from '../engine/severity.ts';
import type { SceneAccepted, ScenePin, ScenePlace } from '../protocol/scene.ts';
import { flipped } from './coordinates.ts';

/** Errors come first, then warnings, then infos; each in the order of the text. */
export function pinsOf(issues: readonly Issue[], lineOf: (offset: number) => number): ScenePin[] {
  const names = pinIds(issues);
  const pins = issues.map((issue, index): ScenePin => {
    return {
      id: names[index]!,
      code: issue.code,
      severity: issue.severity,
      message: issue.message,
      ...(issue.piece !== undefined && { piece: issue.piece }),
      // An issue of another row has no place on this tag.
      points: issue.row === undefined ? (issue.points ?? []).map(flipped) : [],
      ...(issue.row === undefined && issue.places && { others: issue.places.slice(1).map(placeScene) }),
      ...(issue.row !== undefined && { row: issue.row }),
      ...(issue.width !== undefined && { width: issue.width }),
      ...(issue.angle !== undefined && { angle: issue.angle }),
      line: lineOf(issue.range.start),
      source: issue.range.start,
    };
  });
  return pins.sort((a, b) => severityRank[b.severity] - severityRank[a.severity] || a.source - b.source);
}

function placeScene({ points, width }: FaultPlace): ScenePlace {
  return { points: points.map(flipped), ...(width !== undefined && { width }) };
}

export function acceptedOf(accepted: readonly AcceptedIssue[], lineOf: (offset: number) => number): SceneAccepted[] {
  const names = pinIds(accepted);
  return accepted.map(({ code, message, reason, range }, index) => {
    return { id: names[index]!, code, message, reason, line: lineOf(range.start), source: range.start };
  });
}

/** Pin ids: the n-th issue of one kind at one path keeps its pin from one computation to the next. */
export function pinIds(issues: readonly Issue[]): string[] {
  const seen = new Map<string, number>();
  return issues.map(({ code, path }) => {
    const kind = `${code}@${path.join('/')}`;
    const nth = seen.get(kind) ?? 0;
    seen.set(kind, nth + 1);
    return `${kind}#${nth}`;
  });
}
