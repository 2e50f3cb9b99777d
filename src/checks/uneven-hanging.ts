/** Names of a batch that hang from different sides, because each ring has found its own place. */

import { listed, listedQuoted } from '../core/names.ts';
import type { Finding, YamlPath } from '../core/issue.ts';
import { samePath } from '../core/values.ts';
import { centroid } from '../geometry/measure.ts';
import type { Side } from '../geometry/types.ts';
import type { Tag } from '../tag/tag.ts';
import { intendedUp } from './hangs-askew.ts';

/** The side from which a tag hangs by a ring that was left to find its place. */
export interface HangingSide {
  /** Path of the ring. */
  readonly path: YamlPath;
  readonly side: Side;
}

export function hangingSides({ pieces }: Tag): HangingSide[] {
  return pieces.flatMap(({ hangers: [ring, ...others], body }): HangingSide[] => {
    const balance = centroid(body);
    if (!ring || others.length > 0 || ring.at.kind !== 'auto' || !balance) return [];
    const up = intendedUp(ring.at, { x: ring.centre.x - balance.x, y: ring.centre.y - balance.y });
    return up ? [{ path: ring.path, side: sideOf(up) }] : [];
  });
}

function sideOf({ x, y }: { readonly x: number; readonly y: number }): Side {
  if (y !== 0) return y > 0 ? 'top' : 'bottom';
  return x > 0 ? 'right' : 'left';
}

/** A tag of a batch, and how it hangs. */
export interface HungRow {
  readonly row: number;
  readonly label: string;
  readonly hung: readonly HangingSide[];
}

/** Of all names, from which share on they look like two lots: one among many is excused (our own judgement). */
const leastShare = 0.2;

/** Names are listed up to so many. */
const mostNames = 5;

/** One finding for each ring, on the first tag that hangs otherwise than most. */
export function unevenHanging(rows: readonly HungRow[]): Finding[] {
  const all = rows.flatMap(({ row, label, hung }) => hung.map((each) => ({ ...each, row, label })));
  const rings = all.filter(({ path }, index) => all.findIndex((other) => samePath(other.path, path)) === index);
  return rings.flatMap(({ path }): Finding[] => {
    const here = all.filter((other) => samePath(other.path, path));
    const sides = [...new Set(here.map(({ side }) => side))]
      .map((side) => ({ side, tags: here.filter((each) => each.side === side) }))
      .sort((a, b) => b.tags.length - a.tags.length);
    const [most, ...others] = sides;
    const [first] = others;
    if (!most || !first || here.length - most.tags.length < leastShare * here.length) return [];
    const said = others.map(({ side, tags }, index) => {
      const names = listedQuoted(
        tags.map(({ label }) => label),
        mostNames,
      );
      const verb = tags.length === 1 ? ' hangs' : ' hang';
      return `${names}${index === 0 ? verb : ''} from the ${side}`;
    });
    const rest = most.tags.length === 1 ? 'the other' : `the other ${most.tags.length}`;
    const message = `${listed(said)}, ${rest} from the ${most.side}, as each ring is where it holds best: beside each other they look like two lots.`;
    return [{ code: 'uneven-hanging', severity: 'info', path, row: first.tags[0]!.row, message }];
  });
}
