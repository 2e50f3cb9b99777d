/** Remedies that make a tag hang as its hangers say. */

import { intendedUp } from '../../checks/hangs-askew.ts';
import { isGroup, samePath } from '../../core/values.ts';
import { boundsOf, distance } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/types.ts';
import type { Hanger } from '../../spec/model/model.ts';
import type { PlacedHanger } from '../../tag/tag.ts';
import { replacing, setting, settingLengths, specLength, valueAt } from '../candidate.ts';
import type { Candidate, Case, Remedy } from '../candidate.ts';
import { hangerAt, placedAt } from './hanger-at.ts';
import { nudging } from './moving.ts';

/** Extra insets to try in mm, for an edge that slopes away beside the new place. */
const inwards = [0, 1, 2, 4];

/** Moves the hanger sideways until it is above the centre of gravity, or level with the other hanger. */
export function overBalance(at: Case): Remedy[] {
  const hanger = hangerAt(at);
  if (hanger?.row) return [levelRow(at, hanger)];
  const { issue, piece } = at;
  const placed = placedAt(at);
  const balance = issue.points?.[1];
  if (!hanger || !placed || !balance || issue.angle === undefined) return [];
  const other = piece?.hangers.find(({ path }) => !samePath(path, placed.path));
  const candidates = (from: Point, angles: readonly number[]) =>
    angles
      .flatMap((angle) => straightened(placed.centre, from, angle))
      .flatMap((move) => nudging(at, hanger.path, hanger.nudge, move));
  const what = hangerTitle(hanger);
  const eitherWay = [issue.angle, -issue.angle];
  // A ring that nobody has placed is where it holds and reads best: a little tilt is no reason to undo that unasked.
  const ownChoice =
    hanger.kind === 'ring' && hanger.at.kind === 'auto' && issue.severity === 'info'
      ? ({ isChoice: true } as const)
      : {};
  return [
    ...(other ? [{ words: `Set ${what} level with the other`, candidates: candidates(other.centre, eitherWay) }] : []),
    {
      words: `Move ${what} over the balance point`,
      candidates: candidates(balance, other ? eitherWay : turnOf(placed, balance, issue.angle)),
      ...ownChoice,
    },
    ...(other ? [] : [...byTwo(at, hanger), ...fromTheSide(at, hanger)]),
  ];
}

/** A tag that is turned by more than this, in degrees, may as well hang with its line upright (our own judgement). */
const sideways = 20;

/** For a name that has no place for a ring above its middle, or a hole in one end: it hangs from that end. */
function fromTheSide(at: Case, { kind, path, at: place }: Hanger): Remedy[] {
  if (place.kind !== 'anchor' || (at.issue.angle ?? 0) <= sideways) return [];
  const [from, balance] = at.issue.points ?? [];
  const isRight = kind !== 'ring' && from && balance && from.x > balance.x;
  const nearest = isRight ? (['right', 'left'] as const) : (['left', 'right'] as const);
  const sides = nearest.filter((side) => side !== place.anchor);
  const candidates = sides.flatMap((side) => setting(at, path, 'at', side));
  return [{ words: 'Hang it from its side', candidates, isChoice: true }];
}

/** Spacing of two hangers as a share of the piece's width along their side: the wider, the steadier (our own judgement). */
const sharesBetweenTwo = [0.6, 0.7, 0.5, 0.8, 0.4, 0.3];

/** Two of the same, where there is nothing to hang it by right above the centre of gravity, as between the stems of an M. */
function byTwo(at: Case, { kind, path, at: place }: Hanger): Remedy[] {
  const box = at.piece && boundsOf(at.piece.region);
  if (!box || place.kind !== 'anchor' || place.anchor.includes('-')) return [];
  const isUpright = place.anchor === 'left' || place.anchor === 'right';
  const along = isUpright ? box.maxY - box.minY : box.maxX - box.minX;
  const candidates = sharesBetweenTwo.map((share): Candidate => {
    const spacing = specLength(Math.round(share * along), at.tag.units);
    const edits = isGroup(valueAt(at, path))
      ? [...setting(at, path, 'count', '2'), ...setting(at, path, 'spacing', spacing)].flatMap((each) => each.edits)
      : [replacing(at, path, `{at: ${place.anchor}, count: 2, spacing: ${spacing}}`)];
    return { description: `count 2, spacing ${spacing}`, edits };
  });
  return [{ words: `Hang it by two ${kind}s`, candidates, isChoice: true }];
}

/**
 * The turn that brings the hanger nearer to where it is meant to be: the other way, it would soon be so far off that it counts as hung by a
 * corner.
 */
function turnOf({ at, centre }: PlacedHanger, balance: Point, angle: number): number[] {
  const lever = { x: centre.x - balance.x, y: centre.y - balance.y };
  const up = intendedUp(at, lever);
  return up ? [Math.sign(lever.x * up.y - lever.y * up.x) * angle] : [];
}

/** Shares of the present spacing of a row, the nearest first: on letters, each goes as far in as the letter below it. */
const spacingShares = [1.05, 0.95, 1.1, 0.9, 1.15, 0.85, 1.2, 0.8, 1.3, 0.7, 1.4, 0.6];

/** Moves a row of hangers apart or together until they are level. */
function levelRow(at: Case, { kind, path }: Hanger): Remedy {
  const [first, second] = (at.piece?.hangers ?? []).filter((placed) => samePath(placed.path, path));
  const apart = first && second ? distance(first.centre, second.centre) : 0;
  const spacings = apart > 0 ? spacingShares.map((share) => Math.round(share * apart)) : [];
  return { words: `Set the ${kind}s where they are level`, candidates: settingLengths(at, path, 'spacing', spacings) };
}

function hangerTitle({ kind }: Hanger): string {
  return `the ${kind}`;
}

/** Moves of a point that rotate its direction from another point by an angle, perpendicular to the new direction. */
function straightened(point: Point, from: Point, angleDegrees: number): Point[] {
  const [x, y] = [point.x - from.x, point.y - from.y];
  const angle = Math.atan2(y, x) + (angleDegrees * Math.PI) / 180;
  const along = { x: Math.cos(angle), y: Math.sin(angle) };
  const length = x * along.x + y * along.y;
  return inwards.map((step) => ({
    x: (length - step) * along.x - x,
    y: (length - step) * along.y - y,
  }));
}
