import assert from 'node:assert/strict';
import { doubtful } from '../../../src/checks/measures/readability.ts';
import { calibrationFaces } from '../../calibration/faces.ts';
import { calibrate } from '../../calibration/legibility.ts';
import { isSame } from '../../calibration/reader.ts';
import { balancedAccuracy, confusionOf } from '../../calibration/table.ts';
import { calibrationWords } from '../../calibration/words.ts';

describe('Legibility against an independent reader (tesseract.js)', () => {
  it('is foretold for a sample of words in six fonts; the whole is in test/calibration/legibility.md', async function () {
    this.timeout(180_000);
    const faces = calibrationFaces.filter(({ heldOut }) => heldOut);
    // Of four words, which have each growth at each size between them, each font leaves out another.
    const isTaken = (word: number, face: number) => word !== face % 4;
    const judged = await calibrate(calibrationWords.slice(0, 4), faces, false, undefined, isTaken);
    const confusion = confusionOf(judged, doubtful);
    assert.ok(judged.length > 120, String(judged.length));
    assert.ok(confusion.reported > 10, JSON.stringify(confusion));
    // A sample this small strays by some hundredths from what all words give.
    assert.ok(balancedAccuracy(confusion) > 0.82, JSON.stringify(confusion));
  });

  it('is what is read but for accents, case and lookalikes, and a letter of a longer word', () => {
    for (const [word, reading] of [
      ['Zoë', 'zoe'],
      ['Lily', '1iIy'],
      ['Gwen', '‘Gwen'],
      ['Rosalind', 'Rosalnd'],
    ] as const)
      assert.ok(isSame(word, reading), reading);
    for (const [word, reading] of [
      ['Gwen', 'Gwan'],
      ['Rosalind', 'Roslnd'],
      ['Bea', ''],
    ] as const)
      assert.ok(!isSame(word, reading), reading);
  });
});
