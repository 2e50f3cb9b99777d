import assert from 'node:assert/strict';
import type { Issue, YamlPath } from '../../../src/core/issue.ts';
import type { Judged } from '../../../src/engine/engine.ts';
import { findFixes, withEdits } from '../../../src/fixes/find-fixes.ts';
import { isNoWorse, solves } from '../../../src/fixes/no-worse.ts';
import { newEngine } from '../support/engine.ts';

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

describe('What a change does to letters that are lost, and to engraving across a hole', () => {
  const lost = (amount: number, severity: Issue['severity'] = 'error'): Issue => ({
    ...hardToRead(word),
    code: 'mark-off-body',
    severity,
    amount,
  });
  const engine = newEngine();
  const options = { locate: () => undefined };
  const plates = (plate: string, name: string, hanger: string) =>
    `tagwright: 1\nstock: {thickness: 3 mm, kerf: 0.16 mm}\ntie: {twine: 2 mm}\nshapes:\n  plate: {${plate}}\n` +
    `  name: {text: Beehives, font: Pacifico, ${name}}\npieces:\n  tag: {body: plate, engrave: name, hanger: {${hanger}}}\n`;
  const specs = [
    plates('rectangle: [60 mm, 26 mm]', 'width: 62 mm, place: plate', 'hole: {at: top}'),
    plates('rectangle: [60 mm, 26 mm]', 'width: 66 mm, place: plate, nudge: {up: 3 mm}', 'hole: {at: left}'),
    plates(
      'arrow: {length: 90 mm, width: 34 mm, shaft: 20 mm, tail: notched}',
      'width: 84 mm, place: plate',
      'hole: {at: left}',
    ),
    plates(
      'arrow: {length: 100 mm, width: 36 mm, shaft: 20 mm, tail: forked}',
      'width: 92 mm, place: plate',
      'hole: {at: top, count: 2, spacing: 70 mm}',
    ),
  ];

  it('is worse where more is lost, unless it is as good as the same', () => {
    assert.equal(isNoWorse(judged(lost(0.2)), judged(lost(0.42))), false);
    assert.equal(isNoWorse(judged(lost(0.2)), judged(lost(0.2005))), true);
    assert.equal(isNoWorse(judged(lost(0.2)), judged(lost(0.1, 'warning'))), true);
    assert.equal(isNoWorse(judged(lost(1, 'warning')), judged(lost(3, 'info'))), true, 'amounts of unlike findings');
  });

  it('is never offered where the figures of any message grow', async () => {
    // Read from the messages, not from what the fixes compare.
    const figures = ({ issues }: Judged): Map<string, number> =>
      new Map(
        issues.flatMap(({ code, path, message }) => {
          const [, figure] = /([\d.]+) %|\(([\d.]+) mm²/.exec(message)?.filter(Boolean) ?? [];
          return figure === undefined || message.includes('largest')
            ? []
            : [[`${code} ${path.join()}`, Number(figure)] as const];
        }),
      );
    let [compared, offeredFixes] = [0, 0];
    for (const text of specs) {
      const before = await engine.compute(text, options);
      for (const issue of before.issues) {
        for (const { title, edits } of await findFixes(engine, before, issue, options)) {
          offeredFixes++;
          const after = figures(await engine.compute(withEdits(text, edits), options));
          for (const [key, was] of figures(before)) {
            const is = after.get(key);
            if (is === undefined) continue;
            compared++;
            assert.ok(is <= was * 1.06 + 0.1, `${title}: ${key} ${was} → ${is}`);
          }
        }
      }
    }
    assert.ok(offeredFixes > 3, `${offeredFixes}`);
    assert.ok(compared > 0, `${compared}`);
  }).timeout(60_000);
});
