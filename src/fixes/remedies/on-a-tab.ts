/** A tab above the outline for a slot that has no room on the body: it makes the piece larger at that side alone. */

import { freeName } from '../../core/names.ts';
import { isGroup } from '../../core/values.ts';
import { applyTo, rotation, transform } from '../../geometry/affine.ts';
import { crossingsAt } from '../../geometry/crossings-at.ts';
import type { TextEdit } from '../../core/issue.ts';
import type { Region, Side } from '../../geometry/types.ts';
import { centreOf } from '../../tag/made-shape.ts';
import type { Candidate, Case, Remedy } from '../candidate.ts';
import { replacing, setting, specLength, valueAt } from '../candidate.ts';
import { hangerAt } from './hanger-at.ts';

/** Where the outline comes nearest, it ends this far short of the slot, in mm, the nicest first (our own judgement). */
const shortOfMm = [2, 4, 8];

/** How deep the tab goes into the body all along its foot, in mm, and how round its corners are (our own judgement). */
const footMm = 2;
const cornerMm = 3;

/** An outline that falls away by more than this, in mm, as where the word ends, leaves a corner of the foot free. */
const deepestMm = 12;

/** The key that puts a shape at a side of another, and the turn in degrees that brings the side to the right. */
const sides: Readonly<Record<Side, { readonly key: string; readonly turn: number }>> = {
  top: { key: 'above', turn: 90 },
  bottom: { key: 'below', turn: -90 },
  left: { key: 'left_of', turn: 180 },
  right: { key: 'right_of', turn: 0 },
};

/** Levels at which the outline below the tab is looked at. */
const levels = 41;

export function onATab(at: Case): Remedy[] {
  const hanger = hangerAt(at);
  const piece = at.model.pieces.find(({ id }) => id === at.issue.piece);
  if (hanger?.kind !== 'slot' || hanger.row || hanger.at.kind !== 'anchor' || !piece) return [];
  const side = sides[hanger.at.anchor as Side] as (typeof sides)[Side] | undefined;
  const target = hanger.on ? hanger.on.part === undefined && hanger.on.shape : piece.body[0]?.shape;
  const made = target && at.tag.made.get(target);
  if (!side || !target || target.name === undefined || !made) return [];
  const tab = freeName('tab', (name) => at.model.shapes.has(name), '-');
  const [shape, body] = [target.name, withTab(at, [...piece.path, 'body'], tab)];
  const on = withOn(at, hanger.path, tab);
  const centre = centreOf(made, 'eye');
  if (!body || !on || !centre) return [];
  const wide = hanger.length + 2 * hanger.inset;
  const { y } = applyTo(centre, rotation(side.turn, origin));
  const bay = depthBelow(transform(made.region, rotation(side.turn, origin)), y, wide / 2);
  const length = (mm: number): string => specLength(mm, at.tag.units);
  const candidates = shortOfMm.flatMap((short): Candidate[] => {
    const lap = Math.max(Math.min(bay, deepestMm) + footMm, hanger.inset - short);
    const deep = hanger.inset + hanger.opening + short + lap;
    const size = side.turn % 180 === 0 ? [deep, wide] : [wide, deep];
    const words = `{rectangle: [${size.map((mm) => length(mm + 0.1)).join(', ')}], radius: ${length(cornerMm)}, place: {${side.key}: ${shape}, gap: -${length(lap)}}}`;
    const added = at.report.source.setKey(['shapes'], tab, words);
    return added ? [{ description: `${length(wide)} long`, edits: [added, body, ...on] }] : [];
  });
  // The piece becomes larger than it was asked for.
  return [{ words: `Put the slot into a tab beyond “${shape}”`, candidates, isChoice: true }];
}

const origin = { x: 0, y: 0 };

/** How much less far to the right the outline reaches beside a level than where it reaches farthest. */
function depthBelow(region: Region, middle: number, half: number): number {
  const reaches = Array.from({ length: levels }, (_, k) => {
    const y = middle + half * ((2 * k) / (levels - 1) - 1);
    return Math.max(...region.flatMap((ring) => crossingsAt(ring, y)));
  }).filter(Number.isFinite);
  return reaches.length === 0 ? 0 : Math.max(...reaches) - Math.min(...reaches);
}

/** The body with the tab; `undefined` if it is not written as a name, or as a list between brackets. */
function withTab(at: Case, path: readonly (string | number)[], tab: string): TextEdit | undefined {
  const body = valueAt(at, path);
  const { source } = at.report;
  const { start, end } = source.range(path);
  const text = source.text.slice(start, end);
  if (typeof body === 'string') return replacing(at, path, `[${text}, ${tab}]`);
  return Array.isArray(body) && text.startsWith('[') && text.endsWith(']')
    ? replacing(at, path, `${text.slice(0, -1).trimEnd()}, ${tab}]`)
    : undefined;
}

/** `slot: {at: top}` or `slot: top` on the tab; `undefined` where it is neither. */
function withOn(at: Case, path: readonly (string | number)[], tab: string): readonly TextEdit[] | undefined {
  const written = valueAt(at, path);
  if (isGroup(written)) return setting(at, path, 'on', tab)[0]?.edits;
  return typeof written === 'string' ? [replacing(at, path, `{on: ${tab}, at: ${written}}`)] : undefined;
}
