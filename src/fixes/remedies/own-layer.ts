/** Remedies for a cut name that another shape of its body swallows: it is engraved there, or cut from a layer of its own and glued on. */

import { freeName } from '../../core/names.ts';
import type { TextEdit } from '../../core/issue.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeTitle, valueAt } from '../candidate.ts';
import { madeSmaller, withoutEntry } from './moving.ts';

/** @param cover The shape that covers it. */
export function onItsCover(at: Case, lettered: Shape, cover: Shape): Remedy[] {
  const { name } = lettered;
  const piece = at.model.pieces.find(({ id }) => id === at.issue.piece);
  if (!piece || name === undefined || piece.hangers.some(({ path }) => valueAt(at, [...path, 'on']) === name))
    return [];
  const body = valueAt(at, [...piece.path, 'body']);
  const entry = Array.isArray(body) ? body.indexOf(name) : -1;
  const others = entry < 0 ? undefined : withoutEntry(at, [...piece.path, 'body', entry]);
  if (!others) return [];
  const { source } = at.report;
  const marks = [valueAt(at, [...piece.path, 'engrave']) ?? []].flat();
  const list = `[${[...marks.filter((each) => typeof each === 'string'), name].join(', ')}]`;
  const isWhole = marks.every((each) => typeof each === 'string');
  const engraved = isWhole ? source.setKey(piece.path, 'engrave', list) : undefined;
  const id = freeName('letters', (each) => at.model.pieces.some((other) => other.id === each), '-');
  const glued = source.setKey(['pieces'], id, `{body: [${name}], glue_to: ${piece.id}}`);
  const ways = [
    { words: `Engrave “${name}” on ${shapeTitle(cover)}`, edit: engraved, by: `engrave ${list}` },
    { words: `Cut “${name}” as a layer of its own and glue it on`, edit: glued, by: `glue_to ${piece.id}` },
  ];
  const smaller = [{ description: '', edits: [] }, ...madeSmaller(at, lettered)];
  return ways.flatMap(({ words, edit, by }): Remedy[] => {
    if (!edit) return [];
    const candidates = smaller.map(({ description, edits }) => ({
      description: [by, description].filter((each) => each !== '').join(', '),
      edits: [others, edit, ...edits] satisfies TextEdit[],
    }));
    return [{ words, candidates, isChoice: true }];
  });
}
