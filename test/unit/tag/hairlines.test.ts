import assert from 'node:assert/strict';
import { fitContours } from '../../../src/geometry/fit-contours.ts';
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
});
