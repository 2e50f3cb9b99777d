/** Completion at every offset there is. What is accepted is judged by the reader of specs, which knows nothing of completion. */

import assert from 'node:assert/strict';
import { completionsAt } from '../../../src/language/completion/complete.ts';
import type { Completion } from '../../../src/language/completion/suggestion.ts';
import { placesAt } from '../../../src/language/completion/cursor-context.ts';
import { parseSpec } from '../../../src/spec/parse.ts';
import { isWhole, oneIn } from '../support/sweep.ts';
import { accept, around, samples } from './marked.ts';

/**
 * Those with a number; the other one has the same few lines over and over. Comments, where nothing is offered, are looked
 * into once.
 */
const numbered = samples
  .filter(({ title }) => /^\d/.test(title))
  .map(({ title, text }) => ({ title, text: title.startsWith('1-') ? text : text.replaceAll(/(^|\s)#.*/gm, '') }));

/** A name, a plate with layers and a batch are among them. */
const swept = oneIn(2, numbered);

describe('Whatever completion offers', () => {
  it('is tried in five samples at least', () => {
    assert.ok(swept.length >= 5);
  });

  for (const { title, text } of swept) {
    it(`leaves ${title} without a problem of its text, at every offset`, () => {
      assert.deepEqual(parseSpec(text).issues, []);
      const seen = new Set<string>();
      let places = 0;
      let place: ReturnType<typeof placesAt> | undefined;
      let offered: readonly Completion[] = [];
      for (let offset = 0; offset <= text.length; offset++) {
        // All offsets within one word are one place.
        const at = placesAt(text, offset);
        if (at !== place) offered = completionsAt(text, offset, around);
        place = at;
        if (offered.length > 0) places++;
        for (const completion of offered) {
          const changed = accept(text, completion);
          if (seen.has(changed)) continue;
          seen.add(changed);
          assert.deepEqual(
            parseSpec(changed).issues.map(({ message }) => message),
            [],
            `${completion.label} at ${offset}:\n${changed}`,
          );
        }
      }
      // About half of a spec is values that only its writer knows, comments and spaces.
      assert.ok(places > text.length / 5, `${places} of ${text.length}`);
      assert.ok(seen.size > 100, String(seen.size));
    });
  }

  it('brings no problem to a half-typed spec but that more is needed', () => {
    const { text } = numbered.find(({ title }) => title.startsWith('5'))!;
    const problems = (half: string) =>
      parseSpec(half)
        .issues.filter(({ code }) => code !== 'missing-key' && code !== 'not-a-spec')
        .map(({ message }) => message);
    let accepted = 0;
    for (let length = 0; length <= text.length; length += isWhole ? 11 : 29) {
      const half = text.slice(0, length);
      const before = problems(half).length;
      for (const completion of completionsAt(half, length, around)) {
        const after = problems(accept(half, completion));
        assert.ok(after.length <= before, `${completion.label} after ${half.slice(-60)}: ${after.join(' ')}`);
        accepted++;
      }
    }
    assert.ok(accepted > 100, String(accepted));
  });

  it('comes without an exception in texts that are no specs', () => {
    const wild = [
      '',
      '\n',
      '- a\n- b',
      '{',
      '[',
      '"',
      "'",
      '? a : b',
      '&a *a',
      '{[{[',
      'a: &x [*x]',
      '\t',
      ': :',
      '%YAML',
      '---\n...',
      '|\n a',
    ];
    for (const text of wild)
      for (let offset = 0; offset <= text.length; offset++)
        assert.ok(Array.isArray(completionsAt(text, offset, around)));
  });
});
