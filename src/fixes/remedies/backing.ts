/**
 * Remedies that put lettering which does not hold by itself on a backing that follows it: engraved on it, or cut out
 * and glued on it.
 */

import { freeName } from '../../core/names.ts';
import { isGroup } from '../../core/values.ts';
import { removeKey } from '../../edits/remove-key.ts';
import type { TextEdit } from '../../core/issue.ts';
import type { PieceModel } from '../../spec/model/model.ts';
import type { Case, Remedy } from '../candidate.ts';
import { replacing, shapeAt, valueAt, specLength } from '../candidate.ts';

/** Margin of a backing around its lettering, in mm (rule of thumb, no source: 6 to 7 mm). */
const backingMm = 6;

/** The text is engraved and the backing is cut: five places of the spec change together. */
export function onBacking(at: Case): Remedy[] {
  const lettering = onlyLettering(at);
  if (!lettering || lettering.piece.engrave.length > 0) return [];
  const { name, piece } = lettering;
  const engraving = at.report.source.setKey(piece.path, 'engrave', `[${name}]`);
  return backed(at, lettering, `Engrave “${name}” on a backing`, [engraving, ...withoutJoints(at, name)]);
}

/** What held the letters together: on a backing, links and posts would be engraved for nothing. */
function withoutJoints(at: Case, name: string): (TextEdit | undefined)[] {
  const path = ['shapes', name];
  const written = valueAt(at, path);
  if (!isGroup(written)) return [];
  const siblings = Object.keys(written).length - 1;
  return ['overlap', 'straps'].flatMap((key) =>
    key in written ? [removeKey(at.report.source, [...path, key], siblings)] : [],
  );
}

/** The text is cut out and glued on the backing, letter by letter if they do not join. */
export function gluedOnBacking(at: Case): Remedy[] {
  const lettering = onlyLettering(at);
  if (!lettering) return [];
  const { name, piece } = lettering;
  const id = freeName('letters', (name) => at.model.pieces.some(({ id }) => id === name), '-');
  const glued = at.report.source.setKey(['pieces'], id, `{body: [${name}], parts: many, glue_to: ${piece.id}}`);
  return backed(at, lettering, `Glue the letters of “${name}” on a backing`, [glued]);
}

interface OnlyLettering {
  readonly name: string;
  readonly piece: PieceModel;
}

/** The named text that is the whole body of its piece. */
function onlyLettering(at: Case): OnlyLettering | undefined {
  const { model, issue } = at;
  const shape = shapeAt(at, issue.path);
  const piece = model.pieces.find(({ id }) => id === issue.piece);
  if (shape?.name === undefined || shape.generator.kind !== 'text' || !piece || piece.glueTo !== undefined)
    return undefined;
  const body = valueAt(at, [...piece.path, 'body']);
  return Array.isArray(body) && body.length === 1 && body[0] === shape.name ? { name: shape.name, piece } : undefined;
}

/** Turns the piece into a backing around its lettering, which `more` puts on it. */
function backed(
  at: Case,
  { name, piece }: OnlyLettering,
  words: string,
  more: readonly (TextEdit | undefined)[],
): Remedy[] {
  const { report, model, tag } = at;
  const backing = freeName('backing', (name) => model.shapes.has(name), '-');
  const by = specLength(backingMm, tag.units);
  const edits: (TextEdit | undefined)[] = [
    report.source.setKey(['shapes'], backing, `{around: ${name}, by: ${by}}`),
    replacing(at, [...piece.path, 'body', 0], backing),
    ...more,
  ];
  for (const hanger of piece.hangers) {
    if (valueAt(at, [...hanger.path, 'on']) === name) edits.push(replacing(at, [...hanger.path, 'on'], backing));
  }
  const all = edits.filter((edit) => edit !== undefined);
  if (all.length < edits.length) return [];
  return [{ words, candidates: [{ description: `by ${by}`, edits: all }] }];
}
