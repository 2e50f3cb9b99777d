/** Words that ask for a column in a spec without a batch: they would be on the tag, braces and all. */

import { isWithin } from '../core/values.ts';
import type { Finding, YamlPath } from '../core/issue.ts';
import { isError } from '../core/issue.ts';
import { clip } from '../core/length.ts';
import { listed } from '../core/names.ts';
import type { Unfilled } from '../spec/model/model.ts';
import type { Tag } from '../tag/tag.ts';
import type { Check } from './check.ts';

export const notFilled: Check = (tag) =>
  unfilledOn(tag).map(({ columns, path }) => ({
    code: 'not-filled',
    severity: 'warning',
    path,
    message: unfilledMessage(columns, path),
  }));

/** Unfilled words in the title or on a piece: a shape that no piece uses may be waiting for its batch. */
function unfilledOn({ unfilled = [], ghosts = [] }: Tag): readonly Unfilled[] {
  const unused = ghosts.filter(({ why }) => why === 'unused');
  return unfilled.filter(({ path }) => !unused.some((ghost) => isWithin(path, ghost.path)));
}

function unfilledMessage(columns: readonly string[], path: YamlPath): string {
  const marks = listed(columns.map((column) => `“{${clip(column)}}”`));
  const verb = columns.length === 1 ? 'stays' : 'stay';
  const where = path.at(-1) === 'title' ? 'in the title' : 'on the tag';
  return `${marks} ${verb} ${where} as written: this spec has no batch to fill ${columns.length === 1 ? 'it' : 'them'} in.`;
}

/**
 * The findings without those about the letters of a placeholder, which nobody will cut: the words that take its place
 * are judged once they are there. Errors stay, as the files could still be made.
 */
export function withoutPlaceholders(found: readonly Finding[], tag: Tag): readonly Finding[] {
  if (!tag.unfilled) return found;
  const written = tag.unfilled.map(({ path }) => path);
  const shapes = [...tag.made.keys()]
    .map(({ path }) => path)
    .filter((shape) => written.some((each) => isWithin(each, shape)));
  // A finding is at the line of the shape that was made from the words if that has its own, such as an outline round
  // them.
  const made = tag.pieces.flatMap(({ sources, marks }) =>
    [...sources, ...marks].flatMap(({ shape, path, lettering = [] }) =>
      lettering.some((each) => shapes.some((own) => isWithin(each.path, own))) ? [shape.path, path] : [],
    ),
  );
  const places = [...shapes, ...made];
  return found.filter(
    (each) => each.code === 'not-filled' || isError(each) || !places.some((place) => isWithin(each.path, place)),
  );
}
