import assert from 'node:assert/strict';
import fc from 'fast-check';
import { escapeMarkdown } from '../../../../src/language/hover/escape-markdown.ts';
import { editsBetween } from '../../../../src/vscode/common/text-edits.ts';
import { withEdits } from '../../../../src/fixes/find-fixes.ts';

describe('Edits from one text to another', () => {
  it('lead from the one to the other, whatever they are, and do not touch each other', () => {
    const text = fc
      .array(fc.constantFrom('a: 1', '\n', '\r\n', '  b: {c: 2}', '# why', 'ö', '🌱', ' '))
      .map((parts) => parts.join(''));
    fc.assert(
      fc.property(text, text, (before, after) => {
        const edits = editsBetween(before, after);
        assert.equal(withEdits(before, edits), after);
        edits.slice(1).forEach(({ range }, index) => {
          assert.ok(range.start > edits[index]!.range.end, 'they are apart');
        });
      }),
      { seed: 3 },
    );
  });

  it('leave alone what did not change', () => {
    const before = 'shapes:\n  a: {width: 80 mm}  # keep\npieces:\n  t: {body: [a]}\n';
    const after = before.replace('80 mm', '80 mm, grow: 0.5 mm').replace('[a]', '[a], parts: many');
    const changed = editsBetween(before, after).map(({ range }) => before.slice(range.start, range.end));
    assert.ok(changed.join('').length <= 4, JSON.stringify(changed));
    assert.deepEqual(editsBetween(before, before), []);
  });
});

describe('Text in a hover', () => {
  it('is never markup', () => {
    const marks = '<img src=x onerror=1> [a](b) **c** `d` _e_ $(icon) # f & g | h ~i~ !j http://k';
    const shown = escapeMarkdown(marks);
    for (const open of ['<img', '[a](b)', '**c', '`d', '_e', '$(', '# f', '& g', '| h', '~i']) {
      assert.ok(
        !new RegExp(`(^|[^\\\\])${open.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&')}`).test(shown),
        `${open} in ${shown}`,
      );
    }
    // Character references as in the HTML standard; Markdown leaves them as they are.
    assert.equal(escapeMarkdown('a & <b>'), 'a &#38; &#60;b&#62;');
    assert.equal(escapeMarkdown('Bears a pull\n  of 14 N'), 'Bears a pull of 14 N');
  });
});
