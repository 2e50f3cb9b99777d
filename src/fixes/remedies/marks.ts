/** Remedies for engraving and scoring. */

import { isGroup, samePath } from '../../core/values.ts';
import { removeKey } from '../../edits/remove-key.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Bounds } from '../../geometry/types.ts';
import type { ShapeEntry } from '../../spec/model/model.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import type { Case, Candidate, Remedy } from '../candidate.ts';
import { growthOf, replacing, setting, settingLengths, shapeTitle, sizeOf, specLength, valueAt } from '../candidate.ts';
import { madeSmallerFor, movedInto, smallerArc } from './moving.ts';

/** Inset of a placement line inside the glued piece, in mm (rule of thumb, no source: 0.5 mm). */
const hiddenMm = 0.5;

function entryAt({ model, issue }: Case): ShapeEntry | undefined {
  return model.pieces
    .flatMap(({ cut, score, engrave }) => [...cut, ...score, ...engrave])
    .find(({ path }) => samePath(path, issue.path));
}

/** Nobody asks for lettering so many times as large as what it goes on (our own judgement). */
const slipTimes = 3;

/** A placement line that shows beside the glued piece. */
export function hiddenLine(at: Case): Remedy[] {
  const entry = entryAt(at);
  if (!entry) return [];
  const steps = [hiddenMm, 2 * hiddenMm].map((step) => -(step + (at.issue.width ?? 0)));
  return [{ words: 'Draw the line inside the piece that hides it', candidates: grownEntry(at, entry, steps) }];
}

/** Detail finer than the beam can draw. */
export function coarserDetail(at: Case): Remedy[] {
  const entry = entryAt(at);
  if (!entry) return [];
  const least = Math.max(at.tag.stock.kerf, 0.2);
  const missing = least - (at.issue.width ?? 0);
  const steps = [0.5, 0.75, 1, 1.5].map((share) => share * missing + 0.01);
  return [{ words: 'Thicken the mark', candidates: grownEntry(at, entry, steps) }];
}

/** A mark beyond the edge: moved onto the body, centred, or made smaller. */
export function onBody(at: Case): Remedy[] {
  const entry = entryAt(at);
  const mark = at.piece?.marks.find(({ path }) => entry && samePath(path, entry.path));
  const [box, room] = [mark && boundsOf(mark.region), at.piece && boundsOf(at.piece.body)];
  if (!entry || !box || !room) return [];
  return [
    ...tenTimesTooLarge(at, entry.shape, box, room),
    { words: `Run ${shapeTitle(entry.shape)} further in`, candidates: smallerArc(at, entry.shape) },
    { words: `Move ${shapeTitle(entry.shape)}`, candidates: movedInto(at, entry.shape, box, room) },
    ...centredOrSmaller(at, box, room),
  ];
}

/** `450 mm` for 45: so much larger than the body on one side that a figure too many was typed. */
function tenTimesTooLarge(at: Case, shape: Shape, box: Bounds, room: Bounds): Remedy[] {
  const size = sizeOf(shape);
  const times = Math.max(
    (box.maxX - box.minX) / (room.maxX - room.minX),
    (box.maxY - box.minY) / (room.maxY - room.minY),
  );
  if (!size || times < slipTimes || times > 10) return [];
  const candidates = settingLengths(at, shape.path, size.key, [size.mm / 10]);
  return [{ words: `Move the point of the ${size.key.replace('_', '-')} of ${shapeTitle(shape)}`, candidates }];
}

/** Centres the mark on the body, or makes it smaller. */
export function centredOrSmaller(at: Case, box: Bounds, room: Bounds): Remedy[] {
  const entry = entryAt(at);
  const { piece, model } = at;
  if (!entry || !piece) return [];
  const { shape } = entry;
  const { place, fit } = shape.modifiers;
  const body = model.pieces.find(({ id }) => id === piece.id)?.body[0]?.shape.name;
  return [
    {
      words: `Put ${shapeTitle(shape)} in the middle of “${body ?? ''}”`,
      candidates: body === undefined || place || fit ? [] : setting(at, shape.path, 'place', `{on: ${body}}`),
    },
    { words: `Make ${shapeTitle(shape)} smaller`, candidates: madeSmallerFor(at, shape, box, room) },
    { words: `Make ${shapeTitle(shape)} as large as fits`, candidates: fittedInto(at, shape, body) },
  ];
}

/** Margin of lettering on its plate, in mm: as on the samples. */
const marginMm = 3;

/** `fit` in the place of the one size of a text, and of its place: it keeps clear of holes as well. */
function fittedInto(at: Case, shape: Shape, body: string | undefined): Candidate[] {
  const { path, generator, modifiers } = shape;
  const written = valueAt(at, path);
  const size = sizeOf(shape);
  if (body === undefined || generator.kind !== 'text' || !size || !isGroup(written)) return [];
  // Two sizes stretch it, which “fit” does not.
  if (modifiers.width !== undefined && modifiers.height !== undefined) return [];
  const { source } = at.report;
  const room = `{in: ${body}, margin: ${specLength(marginMm, at.tag.units)}}`;
  const place = 'place' in written ? removeKey(source, [...path, 'place'], Object.keys(written).length - 1) : undefined;
  if ('place' in written && !place) return [];
  const { start } = source.keyRange([...path, size.key]);
  const { end } = source.range([...path, size.key]);
  const edits = [{ range: { start, end }, text: `fit: ${room}` }, ...(place ? [place] : [])];
  return [{ description: `fit ${room}`, edits }];
}

/** Grows the mark alone, not its shape, which a piece may use as well. */
function grownEntry(at: Case, { shape, path }: ShapeEntry, steps: readonly number[]): Candidate[] {
  const name = valueAt(at, path);
  if (typeof name !== 'string') {
    const before = growthOf(at, shape);
    return settingLengths(
      at,
      path,
      'grow',
      steps.map((step) => before + step),
      before,
    );
  }
  return steps.map((step) => {
    const grow = specLength(step, at.tag.units);
    return { description: `grow ${grow}`, edits: [replacing(at, path, `{from: ${name}, grow: ${grow}}`)] };
  });
}
