/** Shapes that are centred by their boxes but still look off-centre, and fitted ones that lie all on one side. */

import { axesOf } from '../geometry/axes.ts';
import { boundsOf, boxCentre } from '../geometry/measure.ts';
import type { Finding } from '../core/issue.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import { centreOf } from '../tag/made-shape.ts';
import { placingMove } from '../tag/shapes/place.ts';
import type { MadeShape } from '../tag/made-shape.ts';
import { openingInWords } from '../tag/hanger/in-words.ts';
import { bottomPieceOf } from '../tag/pieces-below.ts';
import type { Piece, Tag } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { mm } from '../core/figures.ts';
import { nameForMessage } from './measures/origin.ts';

/** Visible offset: this many mm, or this share of the smaller side of the target (our own judgement). */
const seenMm = 0.5;
const seenShare = 0.02;

/** What one side may have that the other has not, as a share of the room: beyond that, something else has that side (our own judgement). */
const nearlyEven = 0.1;

/** An opening nearer to the axis than this, as a share of the width, takes the middle (our own judgement). */
const aboutShare = 0.1;

/** Distance from the axis, as a share of the width, from which nobody takes it for the middle (our own judgement). */
const asideShare = 0.05;

export const offCentre: Check = ({ made, pieces }) => [
  ...[...made].flatMap(([shape, madeShape]) => visiblyOff(shape, madeShape, made)),
  ...pieces.flatMap((piece) => fittedAside(piece, bottomPieceOf(piece, pieces))),
];

/**
 * What is fitted into a shape, left and right alike, and lies on one side of its middle, which an opening takes.
 * @param carrier The piece that hangs: the same, or the one below it that carries the others.
 */
function fittedAside(piece: Piece, { hangers, body }: Piece): Finding[] {
  const openings = hangers.filter(({ kind }) => kind !== 'ring');
  if (openings.length === 0) return [];
  const all = [...piece.marks, ...piece.sources];
  return all.flatMap(({ shape, region, area }): Finding[] => {
    const { place, nudge, fit } = shape.modifiers;
    const [box, room, whole] = [region, area?.room ?? [], area?.target ?? []].map((each) => boundsOf(each));
    if (!area?.room || !box || !room || !whole || place || nudge || !fit) return [];
    const { x } = boxCentre(room);
    const aside = boxCentre(box).x - x;
    const isAll = box.minX >= x || box.maxX <= x;
    if (!isAll && Math.abs(aside) < asideShare * (whole.maxX - whole.minX)) return [];
    const opening = openings.find(({ centre }) => Math.abs(centre.x - x) < aboutShare * (whole.maxX - whole.minX));
    if (!opening || axesOf(area.room, nearlyEven).x === undefined) return [];
    const side = aside < 0 ? 'left' : 'right';
    const into = fit.part ?? fit.shape.name;
    const shapeIn = into === undefined ? 'its shape' : `“${into}”`;
    const where = isAll
      ? `all on the ${side} of ${shapeIn}`
      : `${mm(Math.abs(aside), 0)} to the ${side} of the middle of ${shapeIn}`;
    const message = `${nameForMessage(shape) ?? 'This'} is ${where}: ${openingInWords(opening, body)} leaves too little room in the middle. A ring instead, or the ${opening.kind} elsewhere, would free it.`;
    return [
      {
        code: 'off-centre',
        severity: 'info',
        piece: piece.id,
        path: [...shape.path, 'fit'],
        points: [boxCentre(box)],
        message,
      },
    ];
  });
}

function visiblyOff({ modifiers, path }: Shape, placedShape: MadeShape, made: Tag['made']): Finding[] {
  const { place } = modifiers;
  // A shape that is nudged or placed by another rule is where its maker wants it.
  if (place?.by !== 'box' || place.at !== 'center' || modifiers.nudge) return [];
  const target = made.get(place.shape);
  const region = place.part === undefined ? target?.region : target?.parts?.get(place.part);
  const box = region && boundsOf(region);
  const seen = centreOf(placedShape, 'eye');
  if (!box || !seen) return [];
  const toEye = placingMove(placedShape, { region }, 'center', 0, 'eye', modifiers.fit !== undefined);
  const least = Math.max(seenMm, seenShare * Math.min(box.maxX - box.minX, box.maxY - box.minY));
  const [across, up] = [-toEye.e, -toEye.f];
  const off = [
    ...(Math.abs(across) < least ? [] : [`${mm(Math.abs(across))} too far ${across < 0 ? 'left' : 'right'}`]),
    ...(Math.abs(up) < least ? [] : [`${mm(Math.abs(up))} too ${up < 0 ? 'low' : 'high'}`]),
  ];
  if (off.length === 0) return [];
  return [
    {
      code: 'off-centre',
      severity: 'info',
      path: [...path, 'place'],
      points: [seen],
      message: `Centred by its box, this looks ${off.join(' and ')}; “by: eye” corrects it.`,
    },
  ];
}
