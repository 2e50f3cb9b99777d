import assert from 'node:assert/strict';
import { boundsOf, boxCentre } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { distance } from '../support/distance.ts';
import { assertNear, makeShape } from '../support/engine.ts';

const xHeightMm = 10;

/** The ink of each line, from the top: the widest steps between the middles of letters are those between lines. */
async function linesOf(text: string, font: string, more = '', count = text.split('\\n').length): Promise<Region[]> {
  const { region } = await makeShape(`{text: "${text}", font: ${font}, x_height: ${xHeightMm}${more}}`);
  const parts = partsOf(region).map((part) => ({ part, y: boxCentre(boundsOf(part)!).y }));
  parts.sort((a, b) => b.y - a.y);
  const gaps = parts.slice(1).map(({ y }, index) => ({ index: index + 1, gap: parts[index]!.y - y }));
  const cuts = gaps
    .sort((a, b) => b.gap - a.gap)
    .slice(0, count - 1)
    .map(({ index }) => index)
    .sort((a, b) => a - b);
  return [0, ...cuts].map((from, i) => parts.slice(from, cuts[i]).flatMap(({ part }) => [...part]));
}

describe('Several lines of one text', () => {
  for (const font of ['Nunito', 'Pacifico', 'Alfa Slab One'])
    it(`stand 0.8 of the x-height apart, less what letters overshoot, where nothing rises or hangs between them: ${font}`, async () => {
      // No letter hangs down or stands up where the lines meet, so the distance is theirs all along.
      const [first, second] = await linesOf('sea\\nsun', font);
      const apart = distance(first!, second!);
      assert.ok(apart > 0.7 * xHeightMm && apart < 0.81 * xHeightMm, `${apart}`);
    });

  it('come no nearer where one hangs down over what stands up, and nearer where it does not', async () => {
    const [tail, stem] = await linesOf('ppp\\nbbb', 'Nunito');
    const least = distance(tail!, stem!);
    assert.ok(least > 0.44 * xHeightMm && least < 0.7 * xHeightMm, `${least}`);
    // From baseline to baseline: small letters stand on one and end a known height above the other.
    const pitch = async (text: string): Promise<number> => {
      const [first, second] = (await linesOf(text, 'Nunito')).map((line) => boundsOf(line)!);
      return first!.maxY - second!.minY - xHeightMm;
    };
    assert.ok((await pitch('ppp\\nbbb')) > 1.15 * (await pitch('sea\\nsun')));
  });

  it('are equally far apart, as far as the two that need most', async () => {
    const boxes = (await linesOf('sea\\nsun\\ndid', 'Nunito')).map((line) => boundsOf(line)!);
    assertNear(boxes[0]!.minY - boxes[1]!.minY, boxes[1]!.minY - boxes[2]!.minY, 0.01);
  });

  it('have the distance that is asked for', async () => {
    const pitch = async (ems: number): Promise<number> => {
      const [first, second] = await linesOf('sea\\nsun', 'Nunito', `, line_height: ${ems}`);
      return boundsOf(first!)!.minY - boundsOf(second!)!.minY;
    };
    assertNear(await pitch(4), 2 * (await pitch(2)), 0.01);
  });

  it('are as far apart whatever the words of a list, where these stand on one baseline', async () => {
    const pitch = async (text: string, align: string): Promise<number> => {
      const [first, second] = await linesOf(text, 'Nunito', `, align: ${align}`);
      return boundsOf(first!)!.minY - boundsOf(second!)!.minY;
    };
    const [low, tall] = [await pitch('sea\\nsun', 'baseline'), await pitch('pea\\nsud', 'baseline')];
    const [first] = await linesOf('sea\\nsun', 'Nunito');
    assert.ok(low > 1.2 * (await pitch('sea\\nsun', 'center')), `${low}`);
    // What hangs down moves the lower edge of the ink, not the baseline.
    const tail = boundsOf((await linesOf('pea\\nsun', 'Nunito'))[0]!)!;
    assertNear(low, tall + (tail.maxY - tail.minY) - (boundsOf(first!)!.maxY - boundsOf(first!)!.minY), 0.05);
  });
});
