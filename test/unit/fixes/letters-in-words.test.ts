import assert from 'node:assert/strict';
import { lettersInWords } from '../../../src/fixes/letters-in-words.ts';
import type { LettersChange } from '../../../src/fixes/letters-in-words.ts';

const said = (change: Partial<LettersChange>) =>
  lettersInWords({ of: 6, redrawn: [], marked: [], larger: 0, heavier: 0, ...change });

describe('What has become of letters, in words', () => {
  it('is nothing where nobody would notice', () => {
    assert.deepEqual(said({}), []);
    assert.deepEqual(said({ larger: 0.019, heavier: -0.019 }), []);
    assert.deepEqual(said({ larger: 0.021 }), ['letters 2 % larger']);
  });

  it('says “letters” once, whatever they have become', () => {
    const all = said({ larger: 0.05, heavier: -0.12, spaced: 'further apart' });
    assert.deepEqual(all, ['letters 5 % larger, 12 % lighter and further apart']);
  });

  it('names letters of another shape, up to three, or says it of all', () => {
    assert.deepEqual(said({ redrawn: ['a', 'e', 'a'] }), ['“a” and “e” of another shape']);
    assert.deepEqual(said({ of: 9, redrawn: ['a', 'e', 'o', 'n'] }), ['some letters of another shape']);
    assert.deepEqual(said({ redrawn: ['a', 'e', 'o', 'n'], spaced: 'closer together' }), ['letters of another shape']);
  });

  it('tells dots and accents that have moved from letters', () => {
    assert.deepEqual(said({ marked: ['i'] }), ['dot of “i” moved']);
    assert.deepEqual(said({ marked: ['i', 'j'] }), ['dots moved']);
    assert.deepEqual(said({ marked: ['í', 'é'] }), ['accents moved']);
    assert.deepEqual(said({ marked: ['i', 'é'] }), ['dots and accents moved']);
  });
});
