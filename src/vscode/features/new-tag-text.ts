/** The spec that the answers of “New Tag…” make. */

import { withEdits } from '../../core/issue.ts';
import { fromWorkshop, tagOf, wordsToAsk } from '../../language/new-tag.ts';
import { SpecSource } from '../../spec/yaml/source.ts';
import { withoutFirstComment } from '../samples/sample-library.ts';
import { workshopKeys } from './new-tag-items.ts';
import type { Answers } from './new-tag-items.ts';

export function specTextOf({ sample, texts, names, font, width, fix, ...answers }: Answers): string {
  const made = tagOf(withoutFirstComment(sample.text), {
    texts,
    ...(names === undefined ? {} : { names }),
    ...(font === undefined ? {} : { font }),
    ...(width === undefined ? {} : { width }),
  });
  const text = workshopKeys.reduce((spec, key) => {
    const chosen = answers[key];
    return chosen ? fromWorkshop(spec, key, chosen.file, chosen.name) : spec;
  }, made);
  return fix ? withEdits(text, fix.edits) : text;
}

/** The words on it that are no names of a list. */
export function wordsOf({ sample, texts }: Answers): string[] {
  return wordsToAsk(new SpecSource(sample.text)).map(({ text }, index) => texts[index]?.trim() || text);
}
