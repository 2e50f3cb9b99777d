/**
 * Grips: the shapes and hangers of a tag that can be dragged or resized, and where in the text the change is written.
 * Pure.
 */

import { nudgeAt, nudgedCopy, nudgeEdits } from '../edits/nudge.ts';
import { setInText, sizeAxes, sizeEdit, whatSetsSize } from '../edits/size.ts';
import { valueAt } from '../core/values.ts';
import type { TextEdit, YamlPath } from '../core/issue.ts';
import type { PieceModel, TagModel } from '../spec/model/model.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import { shortKeyOf } from '../spec/yaml/short-forms.ts';
import type { SpecSource } from '../spec/yaml/source.ts';
import { targetOf } from './areas.ts';
import { entriesOf, type EntryIds } from './entries.ts';
import { dependsOn, movesWhole } from './moves-with.ts';
import type { HandChange, SceneGrip } from '../protocol/scene.ts';
import { ids } from './scene-ids.ts';

export interface Grip extends SceneGrip {
  /** The value whose nudge is edited. */
  readonly path: YamlPath;
  /** `copy`: the text has a name there, which is replaced by a nudged copy of the shape. */
  readonly as: 'itself' | 'copy';
  /** Absent for a hanger. */
  readonly shape?: Shape;
  /** Drawn mm per mm of the text. */
  readonly scale: number;
}

/** Scale of a piece's shapes, drawn to written: not 1 if the whole piece is given a size. */
export type ScaleOf = (piece: string) => number;

/**
 * One grip for each place in the text, with everything that moves with it: a named shape moves wherever it is used. Two
 * cases move a single use instead: a mark or opening whose piece is built around it, where moving the shape would only
 * move the whole piece, and a shape that is defined in another file. A hanger that is defined in another file has no
 * grip.
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
      add({
        path: hanger.path,
        as: 'itself',
        label,
        parts,
        free: true,
        moves: true,
        axes: [],
        sizedBy: setInText,
        scale: 1,
      });
    });
  }
  return [...grips.values()];
}

/** The grips as sent to the page. What can be neither moved nor resized is among them, to say why. */
export function sceneGrips(grips: readonly Grip[]): SceneGrip[] {
  return grips.map(({ id, label, parts, free, moves, axes, sizedBy, nudge }) => ({
    id,
    label,
    parts,
    free,
    moves,
    axes,
    sizedBy,
    nudge,
  }));
}

/** The text edits for a change by hand; `undefined` if the text has no place for them. */
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
    sizedBy: whatSetsSize(source, shape),
    // Dragging the only shape of a body pans the view, so that shape must be selected first.
    free: moves && (!isBody || piece.body.length > 1),
    moves,
    ...(asCopy ? { path, as: 'copy' } : { path: shape.path, as: 'itself' }),
  };
}

/**
 * Grips for the shapes that others of the piece are fitted into or placed on, if they are on no piece themselves; their
 * outline is the handle.
 */
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
      sizedBy: whatSetsSize(source, target),
    };
  });
}

/** Whether the value is written in this file rather than taken from another, in its short form or in full. */
function isWritten(source: SpecSource, path: YamlPath): boolean {
  const value = valueAt(source.value, path);
  return (typeof value === 'object' && value !== null) || (value !== undefined && shortKeyOf(path) !== undefined);
}
