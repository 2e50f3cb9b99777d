/** What of a tag can be taken hold of and moved, and where in the text that is written. Pure. */

import { nudgeAt, nudgedCopy, nudgeEdits } from '../edits/nudge.ts';
import { sizeAxes, sizeEdit } from '../edits/size.ts';
import type { TextEdit, YamlPath } from '../issue.ts';
import type { PieceModel, Shape, TagModel } from '../spec/model.ts';
import type { SpecSource } from '../spec/source.ts';
import { entriesOf, type EntryIds } from './entries.ts';
import type { HandChange, SceneGrip } from './protocol.ts';
import { ids } from './scene-ids.ts';

export interface Grip extends SceneGrip {
  /** Where its nudge is written. */
  readonly path: YamlPath;
  /** `copy`: a name stands there, and gives way to a copy of what it names. */
  readonly as: 'itself' | 'copy';
  /** Absent for a hanger. */
  readonly shape?: Shape;
}

/**
 * One for each place in the text, with all that moves with it: a named shape moves wherever it is used. A mark or an opening
 * whose piece is made round it would only move the whole piece; there it is the one use that moves.
 */
export function gripsOf(model: TagModel, source: SpecSource): Grip[] {
  const grips = new Map<string, Grip>();
  const add = (grip: Omit<Grip, 'id' | 'nudge'>): void => {
    const id = JSON.stringify(grip.path);
    const known = grips.get(id);
    const { x, y } = grip.as === 'copy' ? { x: 0, y: 0 } : nudgeAt(source, grip.path, model.units);
    const merged = known && { parts: [...known.parts, ...grip.parts], free: known.free && grip.free };
    grips.set(id, { ...grip, ...merged, id, nudge: [x, y] });
  };
  for (const piece of model.pieces) {
    for (const entry of entriesOf(piece)) add(ofEntry(entry, piece, source));
    piece.hangers.forEach((hanger, nth) => {
      const label = `${hanger.kind} of ${piece.title}`;
      const parts = [ids.hanger(piece.id, nth), ids.hangerHole(piece.id, nth)];
      add({ path: hanger.path, as: 'itself', label, parts, free: true, axes: [] });
    });
  }
  return [...grips.values()];
}

/** What the page is told of them. */
export function sceneGrips(grips: readonly Grip[]): SceneGrip[] {
  return grips.map(({ id, label, parts, free, axes, nudge }) => ({ id, label, parts, free, axes, nudge }));
}

/** The edits that a change by hand comes to; `undefined` where the text has no place for them. */
export function editsOf(
  grip: Grip,
  change: HandChange,
  source: SpecSource,
  units: TagModel['units'],
): readonly TextEdit[] | undefined {
  if (change.kind === 'size') {
    const edit = grip.shape && sizeEdit(source, grip.shape, change.axis, change.by, units);
    return edit && [edit];
  }
  const by = { x: change.right, y: change.up };
  if (grip.as === 'itself') return nudgeEdits(source, grip.path, by, units);
  if (by.x === 0 && by.y === 0) return [];
  const edit = nudgedCopy(source, grip.path, by, units);
  return edit && [edit];
}

function ofEntry(entry: EntryIds, piece: PieceModel, source: SpecSource): Omit<Grip, 'id' | 'nudge'> {
  const { shape, list, path } = entry;
  const isBody = list === 'body';
  const asCopy = !isBody && shape.name !== undefined && piece.body.every((body) => hangsOn(body.shape, shape));
  const common = { shape, label: shape.name ?? `shape of ${piece.title}`, parts: entry.ids };
  return {
    ...common,
    axes: sizeAxes(source, shape),
    // The only shape of a body is what one takes hold of to look elsewhere; it must be chosen first.
    free: !isBody || piece.body.length > 1,
    ...(asCopy ? { path, as: 'copy' } : { path: shape.path, as: 'itself' }),
  };
}

/** Whether moving the one moves the other. */
function hangsOn(shape: Shape, other: Shape): boolean {
  if (shape === other) return true;
  const { generator, modifiers } = shape;
  const sources = [
    ...('shapes' in generator ? generator.shapes : []),
    ...('shape' in generator ? [generator.shape] : []),
    ...(modifiers.place ? [modifiers.place.shape] : []),
    ...(modifiers.fit ? [modifiers.fit.shape] : []),
  ];
  return sources.some((each) => hangsOn(each, other));
}
