/** Shapes set one after the other on an axis, each lapped over the one before. */

import { transform, translation } from '../../geometry/affine.ts';
import { difference, intersection, union } from '../../geometry/clipper.ts';
import { area, boundsOf, boxCentre, boxRing } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Affine, Bounds, Region } from '../../geometry/types.ts';
import type { Shoulder, MadeShape } from '../made-shape.ts';
import { abuttedRegion, depthOf, endOf, isVertical, opposite, sharpEndMm } from './stack-ends.ts';
import type { StackDirection } from './stack-ends.ts';
import { leastNickedLap, nicksBetween, seenNickMm2 } from './stack-nicks.ts';
import { endSeen, isPointed, isStepped, jointLap } from './stack-joint.ts';
import type { End } from './stack-joint.ts';

export interface Member {
  readonly name: string;
  readonly shape: MadeShape;
}

/**
 * Steps of the search for a lap that hides the shoulders: 2⁻²⁰ of a member is far below a hundredth of a millimetre.
 */
const lapSteps = 20;

/** Less than this sticking out is rounding, not a shoulder. */
const shownAreaMm2 = 1e-4;

/** A member whose end takes up more than this share of its length has no corners: a disc, a triangle. */
const mostEndShare = 0.45;

/**
 * Members in order along `towards`, their box centres on one axis. `lap` is how far each goes into the one before; by
 * default, the least at which the end of the narrower one lies wholly inside the wider, so that no shoulder sticks out.
 * Centred on the origin by its box. Anything that still sticks out is in `shoulders`.
 */
export function makeStack(members: readonly Member[], towards: StackDirection, lap: number | undefined): MadeShape {
  const placed: { name: string; region: Region }[] = [];
  const shoulders: Shoulder[] = [];
  // Members of members move with them.
  const parts = new Map<string, Region>();
  const put = (name: string, made: MadeShape, region: Region): void => {
    placed.push({ name, region });
    const move = shiftBetween(made.region, region);
    for (const [inner, part] of made.parts ?? []) parts.set(inner, transform(part, move));
    parts.set(name, region);
  };
  for (const { name, shape } of members) {
    const { region } = shape;
    const previous = placed.at(-1);
    if (!boundsOf(region)) continue;
    if (!previous) {
      put(name, shape, abuttedRegion(region, undefined, towards, 0));
      continue;
    }
    const end = endToHide(previous.region, region, towards);
    const poking = shoulderOf(previous.region, region, towards, end);
    const hiding =
      lap === undefined || isVisible(poking(lap)) ? hidingLap(previous.region, region, towards, poking) : lap;
    const isJoined = lap === undefined && (isStepped(end) || (isPointed(end) && isVisible(poking(hiding))));
    const usual = isJoined
      ? jointLap(previous.region, region, towards)
      : meetingLap(previous.region, region, towards, hiding, end);
    const overlap = lap ?? (isJoined ? usual : leastNickedLap(previous.region, region, towards, usual).lap);
    const lapped = abuttedRegion(region, boundsOf(previous.region), towards, overlap);
    if (isJoined) {
      if (isStepped(end) && overlap > end.depth)
        shoulders.push({ name, region: intersection(previous.region, lapped), losesEnds: true });
    } else if (isVisible(poking(overlap)) && hasCorners(previous.region, region, towards, end)) {
      const notches = notchesBeside(poking(overlap), previous.region, lapped, towards, hiding - overlap);
      const best = leastNickedLap(previous.region, region, towards, hiding);
      const isHiding = !isVisible(poking(hiding)) && best.nick < seenNickMm2;
      shoulders.push({ name, region: notches, ...(isHiding ? { hidingLap: best.lap } : {}) });
    } else {
      const nicks = nicksBetween(previous.region, lapped, towards);
      if (isVisible(nicks)) shoulders.push({ name, region: nicks });
    }
    put(name, shape, lapped);
  }
  const whole = union(placed.map(({ region }) => region));
  const bounds = boundsOf(whole);
  if (!bounds) return { region: [] };
  const centre = boxCentre(bounds);
  const shift = translation(-centre.x, -centre.y);
  return {
    region: transform(whole, shift),
    parts: new Map([...parts].map(([name, region]) => [name, transform(region, shift)])),
    ...(shoulders.length > 0
      ? { shoulders: shoulders.map((each) => ({ ...each, region: transform(each.region, shift) })) }
      : {}),
  };
}

/** The shift between two places of the same region. */
function shiftBetween(from: Region, to: Region): Affine {
  const before = boundsOf(from)!;
  const after = boundsOf(to)!;
  return translation(after.minX - before.minX, after.minY - before.minY);
}

/**
 * The least lap at which the rounded or cut end of the narrower member lies wholly inside the wider one, so that its
 * sides run into the wider one at full width. At most half of either, for an end as round as a disc.
 */
function hidingLap(previous: Region, next: Region, towards: StackDirection, poking: (lap: number) => Region): number {
  let low = 0;
  let high = Math.min(depthOf(boundsOf(previous)!, towards), depthOf(boundsOf(next)!, towards)) / 2;
  for (let step = 0; step < lapSteps; step++) {
    const middle = (low + high) / 2;
    if (isVisible(poking(middle))) low = middle;
    else high = middle;
  }
  return high;
}

/** The lap, and a hair more where a sharp end stops just short of what stands back behind the end of the other, as the shaft of an arrow does. */
function meetingLap(previous: Region, next: Region, towards: StackDirection, lap: number, { depth }: End): number {
  if (lap <= 0 || depth >= 2 * sharpEndMm) return lap;
  const placed = abuttedRegion(next, boundsOf(previous), towards, lap);
  const isApart = partsOf(union([previous, placed])).length > Math.max(partsOf(previous).length, partsOf(next).length);
  return isApart ? lap + sharpEndMm : lap;
}

/** The part of the narrower member's end that is outside the wider one, by lap. */
function shoulderOf(previous: Region, next: Region, towards: StackDirection, { depth }: End): (lap: number) => Region {
  const before = boundsOf(previous)!;
  const isNarrower = nextIsNarrower(previous, next, towards);
  const isSharp = depth < 2 * sharpEndMm;
  return (lap) => {
    // What abuts a straight edge along its whole end is hidden by that.
    const placed = abuttedRegion(next, before, towards, isSharp ? lap + sharpEndMm : lap);
    const [end, wide] = isNarrower ? [endOf(placed, opposite[towards]), previous] : [endOf(previous, towards), placed];
    return difference(end, [wide]);
  };
}

function nextIsNarrower(previous: Region, next: Region, towards: StackDirection): boolean {
  const span = ({ minX, maxX, minY, maxY }: Bounds) => (isVertical(towards) ? maxX - minX : maxY - minY);
  return span(boundsOf(next)!) <= span(boundsOf(previous)!);
}

/** The end of the narrower member, which is to be hidden in the wider one. */
function endToHide(previous: Region, next: Region, towards: StackDirection): End {
  const isNarrower = nextIsNarrower(previous, next, towards);
  return isNarrower ? endSeen(next, opposite[towards]) : endSeen(previous, towards);
}

/** Whether the narrower member has straight sides that end in corners, so that they can run into the wider one. */
function hasCorners(previous: Region, next: Region, towards: StackDirection, { depth }: End): boolean {
  const narrower = nextIsNarrower(previous, next, towards) ? next : previous;
  return depth < mostEndShare * depthOf(boundsOf(narrower)!, towards);
}

/**
 * The visible gaps beside the exposed end of the narrower member, where its corners round away or, where they are sharp,
 * between it and the wider one: `missing` is how much further it would have to lap to hide them.
 */
function notchesBeside(
  shown: Region,
  previous: Region,
  next: Region,
  towards: StackDirection,
  missing: number,
): Region {
  const along = boundsOf(shown)!;
  const isNarrower = nextIsNarrower(previous, next, towards);
  const gap = depthOf(along, towards) < 2 * sharpEndMm ? Math.max(0, missing) : 0;
  const { minX, maxX, minY, maxY } = along;
  const beyond = {
    up: { minY, maxY: maxY + gap },
    down: { minY: minY - gap, maxY },
    right: { minX, maxX: maxX + gap },
    left: { minX: minX - gap, maxX },
  }[isNarrower ? opposite[towards] : towards];
  const across = boundsOf(isNarrower ? next : previous)!;
  return difference([boxRing({ ...across, ...beyond })], [previous, next]);
}

function isVisible(shoulder: Region): boolean {
  return area(shoulder) > shownAreaMm2;
}
