import assert from 'node:assert/strict';
import { fitContours } from '../../../src/geometry/fit-contours.ts';
import { ringArea } from '../../../src/geometry/measure.ts';
import { make, specOf } from '../support/engine.ts';

/** How many lines, arcs and curves the outline is cut in. */
async function nodesOf(keys: string): Promise<number> {
  const { region } = await make(
    specOf([`name: {text: Marguerite, font: Great Vibes, x_height: 9, ${keys}}`], 'body: [name], parts: many'),
  );
  return fitContours(region).reduce((sum, { segments }) => sum + segments.length, 0);
}

describe('Hairlines that are thickened', () => {
  it('have edges as smooth as the strokes of the font: about as few nodes as letters that only grow', async () => {
    const [grown, thickened] = [await nodesOf('grow: 0.3'), await nodesOf('overlap: auto')];
    // Each stroke is one more outline along its hairline, with its ends in the letter.
    assert.ok(thickened < 2.5 * grown, `${thickened}, where grown letters have ${grown}`);
  });

  it('go round a small eye as wide as elsewhere, and leave it open', async () => {
    const { region, issues } = await make(
      specOf([`name: {text: Oscar, font: Great Vibes, x_height: 12, overlap: auto}`], 'body: [name]'),
    );
    assert.deepEqual(
      issues.map(({ code }) => code),
      [],
    );
    const eyes = region.map((ring) => -ringArea(ring)).filter((area) => area > 0 && area < 5);
    // The eye of the s, 2.61 mm² as the font draws it.
    assert.equal(eyes.length, 1);
    assert.ok(eyes[0]! > 2.61 / 2, `${eyes[0]} mm²`);
  });
});
