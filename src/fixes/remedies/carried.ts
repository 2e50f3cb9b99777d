/** Remedies that bring a glued piece onto its backing. */

import { offset } from '../../geometry/clipper.ts';
import { floorOf } from '../../checks/measures/bearing.ts';
import { boundsOf, boxCentre } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import { largestScale } from '../../tag/fit/scale.ts';
import type { Candidate, Case, Remedy } from '../candidate.ts';
import { keptLookShare } from '../gentle.ts';
import { growthOf, setting, settingLengths, shapeAt, shapeTitle } from '../candidate.ts';
import { madeSmaller, madeSmallerFor, marginsMm, movedInto, nudging } from './moving.ts';

/** Last of all, almost no margin, where there is no room. */
const marginsOnBacking = [...marginsMm, 0.05];

/** How far aside a smaller one may stand, in mm, and the step: clear of a hole, it is not in the middle. */
const asideMm = { most: 12, step: 0.5 } as const;

/** Margins to the true edge, in mm, the nicest first. */
const nicestMm = [marginsMm[0]!, 1.5, marginsMm[1]!];

/** Made smaller by less than this, in the logarithm of its size, it is the same tag: a fix of all may do it. */
const mildShare = 0.97 * keptLookShare;

/** How much larger it must be aside than where it is, to go there (our own judgement). */
const worthAside = 1.03;

export function onItsBacking(at: Case): Remedy[] {
  const { piece, tag, model, issue } = at;
  const shape = shapeAt(at, issue.path);
  const carrier = tag.pieces.find(({ id }) => id === piece?.glueTo);
  const [box, frame] = [piece && boundsOf(piece.region), carrier && boundsOf(carrier.region)];
  if (!shape || !carrier || !box || !frame) return [];
  const below = model.pieces.find(({ id }) => id === carrier.id)?.body[0]?.shape;
  const before = below ? growthOf(at, below) : 0;
  const missing = issue.width;
  const floor = floorOf(piece!, tag);
  return [
    ...(floor
      ? [{ words: `Glue it to “${floor.title}”`, candidates: setting(at, ['pieces', piece!.id], 'glue_to', floor.id) }]
      : []),
    { words: `Move ${shapeTitle(shape)}`, candidates: movedInto(at, shape, box, frame, marginsOnBacking) },
    {
      words: `Make ${shapeTitle(shape)} smaller`,
      candidates: [
        ...mildFirst(
          nicestMm.map((margin) => smallerWithin(at, shape, piece!.region, offset(carrier.region, -margin))),
        ),
        ...madeSmallerFor(at, shape, box, frame),
      ],
    },
    ...(below ? roundAll(at, below, shape) : []),
    {
      words: `Enlarge ${below ? shapeTitle(below) : ''}`,
      candidates:
        below && missing !== undefined
          ? settingLengths(
              at,
              below.path,
              'grow',
              [marginsMm[0]!, 0.5, 1.5].map((more) => before + missing + more),
              before,
            )
          : [],
    },
  ];
}

interface Smaller {
  readonly scale: number;
  readonly candidates: readonly Candidate[];
}

/** With the nicest margin of those that leave the look as it is, or else of all. */
function mildFirst(each: readonly Smaller[]): Candidate[] {
  const isMild = ({ scale }: Smaller): boolean => Math.abs(Math.log(scale)) < mildShare;
  return [...each.filter(isMild), ...each.filter((one) => !isMild(one))].flatMap(({ candidates }) => candidates);
}

/** A backing that follows one shape follows what overhangs it too. */
function roundAll(at: Case, backing: Shape, { name }: Shape): Remedy[] {
  const { generator, path } = backing;
  if (generator.kind !== 'around' || generator.shape.name === undefined || name === undefined) return [];
  const followed = generator.shape.name;
  if (followed === name) return [];
  return [
    {
      words: `Let ${shapeTitle(backing)} go round “${name}” too`,
      candidates: setting(at, path, 'around', `{union: [${followed}, ${name}]}`),
    },
  ];
}

/**
 * As large as goes into the room, which is the backing by its true outline, less a margin round that and its openings:
 * where it is, or beside that where it may be larger.
 */
function smallerWithin(at: Case, shape: Shape, region: Region, room: Region): Smaller {
  const centre = boxCentre(boundsOf(region)!);
  const scaleAt = (aside: number) => largestScale(region, centre, room, { x: centre.x + aside, y: centre.y });
  const steps = Math.round(asideMm.most / asideMm.step);
  const places = Array.from({ length: 2 * steps + 1 }, (_, i) => (i - steps) * asideMm.step);
  const here = scaleAt(0);
  const best = places
    .map((aside) => ({ aside, scale: scaleAt(aside) }))
    .reduce((a, b) => (b.scale > a.scale + 1e-6 ? b : a));
  const isBetter = best.scale > worthAside * here;
  const before = shape.modifiers.nudge ?? { x: 0, y: 0 };
  const candidates = (isBetter ? [best, { aside: 0, scale: here }] : [{ aside: 0, scale: here }])
    .filter(({ scale }) => scale < 1)
    .flatMap(({ aside, scale }) =>
      madeSmaller(at, shape, [scale]).flatMap((smaller): Candidate[] => {
        if (aside === 0) return [smaller];
        return nudging(at, shape.path, before, { x: aside, y: 0 }).map((move) => ({
          description: `${smaller.description}, ${move.description}`,
          edits: [...smaller.edits, ...move.edits],
        }));
      }),
    );
  return { scale: isBetter ? best.scale : here, candidates };
}
