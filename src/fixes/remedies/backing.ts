/** Lettering that does not hold by itself, put on a backing that follows it. */

import type { TextEdit } from '../../issue.ts';
import type { Case, Remedy } from '../candidate.ts';
import { replacing, shapeAt, valueAt, written } from '../candidate.ts';

/** How far a backing reaches beyond its lettering (common practice, no source: 6 to 7 mm). */
const backingMm = 6;

/** The word is engraved, the backing is cut: five places of the spec change together. */
export function onBacking(at: Case): Remedy[] {
  const { report, model, issue, tag } = at;
  const { source } = report;
  const shape = shapeAt(at, issue.path);
  const piece = model.pieces.find(({ id }) => id === issue.piece);
  if (shape?.name === undefined || shape.generator.kind !== 'text' || !piece || piece.glueTo !== undefined) return [];
  const body = valueAt(at, [...piece.path, 'body']);
  const onlyName = Array.isArray(body) && body.length === 1 && body[0] === shape.name;
  if (!onlyName || piece.engrave.length > 0) return [];
  const name = freeName('backing', model.shapes);
  const by = written(backingMm, tag.units);
  const edits: (TextEdit | undefined)[] = [
    source.setKey(['shapes'], name, `{around: ${shape.name}, by: ${by}}`),
    replacing(at, [...piece.path, 'body', 0], name),
    source.setKey(piece.path, 'engrave', `[${shape.name}]`),
  ];
  for (const hanger of piece.hangers) {
    if (valueAt(at, [...hanger.path, 'on']) === shape.name) edits.push(replacing(at, [...hanger.path, 'on'], name));
  }
  const all = edits.filter((edit) => edit !== undefined);
  if (all.length < edits.length) return [];
  return [{ words: `Engrave “${shape.name}” on a backing`, candidates: [{ told: `by ${by}`, edits: all }] }];
}

function freeName(wanted: string, taken: ReadonlyMap<string, unknown>): string {
  for (let number = 1; ; number++) {
    const name = number === 1 ? wanted : `${wanted}-${number}`;
    if (!taken.has(name)) return name;
  }
}
