/** What of a tag can be taken hold of and moved, and where in the text that is written. Pure. */

import { nudgeAt, nudgedCopy, nudgeEdits } from '../edits/nudge.ts';
import { sizeAxes, sizeEdit } from '../edits/size.ts';
import { valueAt } from '../core/values.ts';
import type { TextEdit, YamlPath } from '../core/issue.ts';
import type { PieceModel, Shape, TagModel } from '../spec/model.ts';
import type { SpecSource } from '../spec/source.ts';
import { targetOf } from './areas.ts';
import { entriesOf, type EntryIds } from './entries.ts';
import { dependsOn, movesWhole } from './moves-with.ts';
import type { HandChange, SceneGrip } from '../protocol/preview.ts';
import { ids } from './scene-ids.ts';

export interface Grip extends SceneGrip {
  /** Where its nudge is written. */
  readonly path: YamlPath;
  /** `copy`: a name stands there, and gives way to a copy of what it names. */
  readonly as: 'itself' | 'copy';
  /** Absent for a hanger. */
  readonly shape?: Shape;
  /** What is drawn for a millimetre of the text. */
  readonly scale: number;
}

/** By how much the shapes of a piece are larger than they are written, so that the whole of it has the size asked for. */
export type ScaleOf = (piece: string) => number;

/**
 * One for each place in the text, with all that moves with it: a named shape moves wherever it is used. A mark or an opening
 * whose piece is made round it would only move the whole piece, and the definition of a shape may be in another file; there it
 * is the one use that moves. A hanger that is defined in another file stays where it is.
 */
export function gripsOf(model: TagModel, source: SpecSource, scaleOf: ScaleOf = () => 1): Grip[] {
  const grips = new Map<string, Grip>();
  const add = (grip: Omit<Grip, 'id' | 'nudge'>): void => {
    const id = JSON.stringify(grip.path);
    const known = grips.get(id);
    const { x, y } = grip.as === 'copy' ? { x: 0, y: 0 } : nudgeAt(source, grip.path, model.units);
    const merged = known && { parts: [...known.parts, ...grip.parts], free: known.free && grip.free };
    grips.set(id, { ...grip, ...merged, id, nudge: [x * grip.scale, y * grip.scale] });
  };
  for (const piece of model.pieces) {
    for (const entry of entriesOf(piece)) add({ ...ofEntry(entry, piece, model, source), scale: scaleOf(piece.id) });
    for (const grip of areaGrips(piece, model, source)) add({ ...grip, scale: scaleOf(piece.id) });
    piece.hangers.forEach((hanger, nth) => {
      if (!isWritten(source, hanger.path)) return;
      const label = `${hanger.kind} of ${piece.title}`;
      const parts = [ids.hanger(piece.id, nth), ids.hangerHole(piece.id, nth)];
      add({ path: hanger.path, as: 'itself', label, parts, free: true, moves: true, axes: [], scale: 1 });
    });
  }
  return [...grips.values()];
}

/** What the page is told of them: those that something can be done with. */
export function sceneGrips(grips: readonly Grip[]): SceneGrip[] {
  const useful = grips.filter(({ moves, axes }) => moves || axes.length > 0);
  return useful.map(({ id, label, parts, free, moves, axes, nudge }) => ({
    id,
    label,
    parts,
    free,
    moves,
    axes,
    nudge,
  }));
}

/** The edits that a change by hand comes to; `undefined` where the text has no place for them. */
export function editsOf(
  grip: Grip,
  change: HandChange,
  source: SpecSource,
  units: TagModel['units'],
): readonly TextEdit[] | undefined {
  if (change.kind === 'size') {
    const edit = grip.shape && sizeEdit(source, grip.shape, change.axis, change.by / grip.scale, units);
    return edit && [edit];
  }
  const by = { x: change.right / grip.scale, y: change.up / grip.scale };
  if (grip.as === 'itself') return nudgeEdits(source, grip.path, by, units);
  if (by.x === 0 && by.y === 0) return [];
  const edit = nudgedCopy(source, grip.path, by, units);
  return edit && [edit];
}

function ofEntry(
  entry: EntryIds,
  piece: PieceModel,
  { pieces }: TagModel,
  source: SpecSource,
): Omit<Grip, 'id' | 'nudge' | 'scale'> {
  const { shape, list, path } = entry;
  const isBody = list === 'body';
  const isFollowed = !isBody && shape.name !== undefined && piece.body.every((body) => dependsOn(body.shape, shape));
  const asCopy = isFollowed || !isWritten(source, shape.path);
  const common = { shape, label: shape.name ?? `shape of ${piece.title}`, parts: entry.ids };
  // A copy moves alone.
  const moves = !movesWhole(pieces, (each) => (asCopy ? each.path === path : dependsOn(each.shape, shape)));
  return {
    ...common,
    axes: sizeAxes(source, shape),
    // The only shape of a body is what one takes hold of to look elsewhere; it must be chosen first.
    free: moves && (!isBody || piece.body.length > 1),
    moves,
    ...(asCopy ? { path, as: 'copy' } : { path: shape.path, as: 'itself' }),
  };
}

/** What a shape of the piece is fitted into or placed on without being on any piece itself: it can be taken hold of by its outline. */
function areaGrips(
  piece: PieceModel,
  { pieces }: TagModel,
  source: SpecSource,
): Omit<Grip, 'id' | 'nudge' | 'scale'>[] {
  return entriesOf(piece).flatMap(({ shape, ids: [holds] }) => {
    const target = targetOf(shape);
    if (!target || !isWritten(source, target.path) || pieces.flatMap(entriesOf).some((each) => each.shape === target))
      return [];
    const moves = !movesWhole(pieces, (each) => dependsOn(each.shape, target));
    const label = target.name ?? `shape of ${piece.title}`;
    const parts = [ids.area(holds!)];
    return {
      path: target.path,
      as: 'itself' as const,
      shape: target,
      label,
      parts,
      free: false,
      moves,
      axes: sizeAxes(source, target),
    };
  });
}

/** What comes from another file is not. */
function isWritten(source: SpecSource, path: YamlPath): boolean {
  const value = valueAt(source.value, path);
  return typeof value === 'object' && value !== null;
}
