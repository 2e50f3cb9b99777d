import assert from 'node:assert/strict';
import type { Issue, YamlPath } from '../../../src/core/issue.ts';
import type { Judged } from '../../../src/engine/engine.ts';
import { isNoWorse, solves } from '../../../src/fixes/no-worse.ts';

const word: YamlPath = ['shapes', 'word'];
const grown: YamlPath = [...word, 'grow'];

function hardToRead(path: YamlPath, severity: Issue['severity'] = 'info'): Issue {
  return { code: 'hard-to-read', severity, path, piece: 'tag', range: { start: 0, end: 1 }, message: 'hard to read' };
}

// What is made does not matter here, only that something is.
const judged = (...issues: Issue[]): Judged => ({ tag: {} as Judged['tag'] & {}, issues, accepted: [] });

describe('What a change does to a word that is hard to read', () => {
  it('is nothing where only its growth is blamed instead of the word', () => {
    assert.equal(isNoWorse(judged(hardToRead(word)), judged(hardToRead(grown))), true);
    assert.equal(isNoWorse(judged(hardToRead(grown)), judged(hardToRead(word))), true);
  });

  it('is worse where it becomes a warning, or was none before, or is another word', () => {
    assert.equal(isNoWorse(judged(hardToRead(word)), judged(hardToRead(grown, 'warning'))), false);
    assert.equal(isNoWorse(judged(), judged(hardToRead(grown))), false);
    assert.equal(isNoWorse(judged(hardToRead(word)), judged(hardToRead(['shapes', 'other', 'grow']))), false);
  });

  it('does not solve it by blaming something else', () => {
    assert.equal(solves(hardToRead(grown), judged(hardToRead(grown)), judged(hardToRead(word))), false);
    assert.equal(solves(hardToRead(grown), judged(hardToRead(grown)), judged()), true);
  });
});

describe('What a change does to weak places of one line, which are one problem', () => {
  const weak = (...widths: readonly number[]): Issue => {
    const places = widths.map((width) => ({ points: [{ x: 0, y: 0 }], width }));
    return { ...hardToRead(word), code: 'weak-bridge', ...places[0]!, ...(places.length > 1 ? { places } : {}) };
  };

  it('is worse where there are more of them, though the narrowest is wider', () => {
    assert.equal(isNoWorse(judged(weak(1.58, 2)), judged(weak(1.7, 2, 2.9))), false);
    assert.equal(isNoWorse(judged(weak(1.58)), judged(weak(1.7, 2.9))), false);
    assert.equal(isNoWorse(judged(weak(1.58, 2)), judged(weak(1.7, 2))), true);
    assert.equal(isNoWorse(judged(weak(1.58, 2)), judged(weak(1.7))), true);
    const loose: Issue = { ...hardToRead(word), code: 'loose-part', severity: 'error' };
    assert.equal(isNoWorse(judged(loose, weak(1.58)), judged(weak(1.7, 2.9))), true, 'what was loose did not count');
  });
});

describe('What a change does to what overhangs its backing', () => {
  const over = (width: number): Issue => ({ ...hardToRead(word), code: 'off-backing', severity: 'warning', width });

  it('is worse where it overhangs by more', () => {
    assert.equal(isNoWorse(judged(over(1.9)), judged(over(9.3))), false);
    assert.equal(isNoWorse(judged(over(1.9)), judged(over(1.9))), true);
    assert.equal(isNoWorse(judged(over(1.9)), judged(over(0.5))), true);
  });
});
