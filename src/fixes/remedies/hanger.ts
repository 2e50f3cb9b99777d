/** Remedies that make a hanger hold and let the tie through. */

import { distance } from '../../geometry/measure.ts';
import type { Anchor } from '../../spec/model/shape-model.ts';
import type { Hanger } from '../../spec/model/model.ts';
import { usualInset } from '../../spec/read/read-hangers.ts';
import { comfortableOpening, slotEaseMm, tightestOpening } from '../../spec/model/tie.ts';
import type { Candidate, Case, Remedy } from '../candidate.ts';
import { setting, settingLengths, shapeTitle, valueAt } from '../candidate.ts';
import { hangerAt, placedAt } from './hanger-at.ts';
import { makingRoom } from './make-room.ts';
import { nudging } from './moving.ts';
import { onATab } from './on-a-tab.ts';

/** A ring whose joint or wall is too narrow. */
export function strongerRing(at: Case): Remedy[] {
  const hanger = hangerAt(at);
  if (hanger?.kind !== 'ring') return [];
  const { width = 0, minimum = at.tag.stock.minWeb } = at.issue;
  const missing = minimum - width;
  const shares = (...factors: number[]) => factors.map((factor) => factor * missing);
  const from = (before: number, steps: readonly number[]) => steps.map((step) => before + step);
  return [
    {
      words: 'Set the ring deeper',
      candidates: settingLengths(at, hanger.path, 'sink', from(hanger.sink, shares(0.5, 1, 1.5, 2))),
    },
    {
      words: 'Thicken the ring',
      candidates: settingLengths(at, hanger.path, 'wall', from(hanger.wall, shares(1, 1.5, 2))),
    },
    ...otherPlaces(at, hanger),
  ];
}

/** A hole or slot too near to an edge, or open to it. */
export function furtherIn(at: Case): Remedy[] {
  const hanger = hangerAt(at);
  if (!hanger || hanger.kind === 'ring') return [];
  const { width = 0, minimum = at.tag.stock.minWeb } = at.issue;
  const missing = minimum - width;
  const steps = [1, 1.2, 1.5, 2, 3].map((factor) => factor * missing);
  const usual = usualInset * at.tag.stock.hangerWeb;
  const { tie } = at.tag;
  const least = tie && hanger.kind === 'hole' ? tightestOpening(tie) : hanger.opening;
  return [
    {
      words: `Move the ${hanger.kind} inwards`,
      // The inset does not move a hole that is given by a point.
      candidates:
        hanger.at.kind === 'point'
          ? nudgedIn(at, hanger, steps)
          : settingLengths(
              at,
              hanger.path,
              'inset',
              // As far in as one that nobody gave an inset, or just enough.
              [usual, ...steps.map((step) => hanger.inset + step)].filter((inset) => inset >= hanger.inset + missing),
            ),
    },
    {
      words: 'Make the hole smaller',
      candidates: least < hanger.opening - 0.01 ? settingLengths(at, hanger.path, 'diameter', [least]) : [],
    },
    ...otherPlaces(at, hanger),
  ];
}

/** Something obstructs the tie. */
export function unblocked(at: Case): Remedy[] {
  const hanger = hangerAt(at);
  if (!hanger) return [];
  return [
    ...makingRoom(at),
    ...otherPlaces(at, hanger),
    ...widerBacking(at),
    ...onATab(at),
    ...ringInstead(at, hanger),
  ];
}

/** The body has no room for the opening. */
export function whereThereIsRoom(at: Case): Remedy[] {
  const hanger = hangerAt(at);
  return hanger ? [...otherPlaces(at, hanger), ...ringInstead(at, hanger)] : [];
}

/** A ring on the edge, where the hole would need room among what is glued on, or in letters. */
function ringInstead(at: Case, { kind, path, at: place }: Hanger): Remedy[] {
  const written = valueAt(at, path.slice(0, -1));
  const isAlone = typeof written === 'object' && written !== null && Object.keys(written).length === 1;
  if (kind !== 'hole' || !isAlone || path.at(-2) !== 'hanger') return [];
  const side = place.kind === 'anchor' ? place.anchor : 'top';
  return [
    {
      words: 'Hang it by a ring on the edge instead',
      candidates: [side, 'auto'].flatMap((each) => setting(at, path.slice(0, -2), 'hanger', `{ring: ${each}}`)),
    },
  ];
}

/** Widening of a backing, in mm. */
const wideningMm = [1, 2, 3, 4, 6, 8];

/** Makes room for the opening by a wider margin round what lies on the backing. */
function widerBacking(at: Case): Remedy[] {
  return (at.piece?.sources ?? []).flatMap(({ use, shape }) => {
    const { generator, path } = shape;
    if (use !== 'body' || generator.kind !== 'around') return [];
    const wider = wideningMm.map((step) => generator.by + step);
    return [{ words: `Make ${shapeTitle(shape)} wider all round`, candidates: settingLengths(at, path, 'by', wider) }];
  });
}

/** An opening too small for the tie: it goes through easily, or else only just. */
export function wideEnough(at: Case): Remedy[] {
  const hanger = hangerAt(at);
  const { tie } = at.tag;
  if (!hanger || !tie) return [];
  const slot = hanger.kind === 'slot' && tie.kind === 'ribbon';
  const key = slot ? 'length' : hanger.kind === 'slot' ? 'width' : 'diameter';
  const [size, least] = slot ? [tie.size + slotEaseMm, tie.size] : [comfortableOpening(tie), tightestOpening(tie)];
  const words = `Make the ${slot ? 'slot' : 'hole'} larger`;
  const candidates = settingLengths(at, hanger.path, key, [size, (size + least) / 2, least]);
  const larger = size - (hanger.kind === 'slot' && slot ? hanger.length : hanger.opening);
  // Beside lettering there may be room only if the lettering moves.
  const withRoom = candidates.slice(0, 1).flatMap((along) => makingRoom(at, larger, along));
  return [
    { words, candidates },
    ...withRoom.map((remedy) => ({
      words: `${words} and ${remedy.words[0]!.toLowerCase()}${remedy.words.slice(1)}`,
      candidates: remedy.candidates,
    })),
    ...(hanger.kind === 'ring' ? [largerElsewhere(at, hanger, candidates)] : []),
  ];
}

/** A larger ring may cover letters, or be read as one, unless it stands elsewhere. */
function largerElsewhere(at: Case, hanger: Hanger, sizes: readonly Candidate[]): Remedy {
  const places = otherPlaces(at, hanger).flatMap(({ candidates }) => candidates);
  const candidates = sizes.flatMap((size) =>
    places.map(({ description, edits }) => ({
      description: `${size.description}, ${description}`,
      edits: [...size.edits, ...edits],
    })),
  );
  return { words: 'Make the hole larger and move the ring', candidates, isChoice: true };
}

/** Without the bottom, where a tag would hang upside down. */
const sides: readonly (Anchor | 'auto')[] = ['top', 'left', 'right', 'top-left', 'top-right'];

/**
 * Other places for the hanger, each offered separately: only the maker knows which suits the tag. A ring that is only
 * read as a letter is not moved unasked, as the tag would hang otherwise.
 */
function otherPlaces(at: Case, { kind, path, at: place }: Hanger): Remedy[] {
  // Of a pair, one alone at another side would hang the tag by nothing that was meant.
  const hangers = at.model.pieces.find(({ id }) => id === at.piece?.id)?.hangers ?? [];
  if (hangers.length > 1) return [];
  const choice = kind === 'ring' && at.issue.severity === 'info' ? ({ isChoice: true } as const) : {};
  const here = place.kind === 'anchor' ? place.anchor : place.kind;
  const places = kind === 'ring' ? (['auto', ...sides] as const) : sides;
  return places
    .filter((side) => side !== here)
    .map((side) => ({
      words: side === 'auto' ? `Place the ${kind} automatically` : `Move the ${kind} elsewhere`,
      candidates: setting(at, path, 'at', side),
      ...choice,
    }));
}

/** Moves from the edge towards the opening, along the line between the two points that are too close together. */
function nudgedIn(at: Case, hanger: Hanger, steps: readonly number[]) {
  const { issue } = at;
  const [a, b] = issue.points ?? [];
  const centre = placedAt(at)?.centre;
  if (!a || !b || !centre) return [];
  const gap = (point: typeof a) => distance(point, centre);
  const [edge, opening] = gap(a) > gap(b) ? [a, b] : [b, a];
  const length = distance(opening, edge);
  if (length === 0) return [];
  const x = (opening.x - edge.x) / length;
  const y = (opening.y - edge.y) / length;
  return steps.flatMap((step) => nudging(at, hanger.path, hanger.nudge, { x: step * x, y: step * y }));
}
