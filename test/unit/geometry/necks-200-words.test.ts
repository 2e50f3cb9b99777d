import assert from 'node:assert/strict';
import { findNecks } from '../../../src/geometry/necks.ts';
import type { Neck } from '../../../src/geometry/necks.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import { bundledFonts } from '../../../src/text/bundled-fonts.ts';
import { bundledFace } from '../../fonts/faces.ts';
import { agreement, compareByErosion } from '../support/necks-by-erosion.ts';
import { erode, seededRandom, transformed } from '../support/shapes.ts';
import { isWhole } from '../support/sweep.ts';
import { wordIn } from '../support/words.ts';

const minWeb = 1.5;

/** What stands on the jars of a seed library. */
const words = [
  ...['Angelica', 'Asparagus', 'Beetroot', 'Borage', 'Chives', 'Coriander', 'Dandelion', 'Dill', 'Echinacea', 'Endive'],
  ...['Fennel', 'Feverfew', 'Garlic', 'Goosefoot', 'Horseradish', 'Hyssop', 'Icicle radish', 'Jostaberry', 'Kale'],
  ...[
    'Kohlrabi',
    'Lemon balm',
    'Lovage',
    'Mangold',
    'Marjoram',
    'Nasturtium',
    'Okra',
    'Orache',
    'Parsley',
    'Peppermint',
  ],
  ...[
    'Quinoa',
    'Rosemary',
    'Sage',
    'Summer savory',
    'Tarragon',
    'Thyme',
    'Ulluco',
    'Valerian',
    'Wild garlic',
    'Yarrow',
  ],
  'Zucchini',
];

/** Other words in every other font. */
const isTaken = (word: number, font: number): boolean => isWhole || word % 2 === font % 2;

const cuts = bundledFonts.flatMap(({ family, faces }) => faces.map(({ weight }) => ({ family, weight })));

describe('The necks of words in each of the bundled fonts', () => {
  const compared: Record<Neck['kind'], number> = { bridge: 0, loop: 0, stroke: 0 };
  let barred = 0;
  let count = 0;

  for (const [index, { family, weight }] of cuts.entries()) {
    it(`are those at which Clipper2's erosion falls apart, to ${agreement} mm: ${family} ${weight}`, async function () {
      this.timeout(180_000);
      const face = await bundledFace(family, weight);
      const random = seededRandom(index);
      const disagreements: string[] = [];
      for (const [word, text] of words.entries()) {
        const width = 45 + 55 * random();
        const grow = random() < 0.5 ? 0 : 0.2 + 0.3 * random();
        if (!isTaken(word, index)) continue;
        // On end, since Clipper sweeps upwards, and is several times as fast where it has few outlines side by side.
        const region = transformed(erode(wordIn(face, text, width, 0.01), -grow), Math.PI / 2);
        for (const part of partsOf(region)) {
          const necks = findNecks(part, minWeb);
          for (const { kind } of necks) compared[kind] += 1;
          const comparison = compareByErosion(part, necks, minWeb);
          barred += comparison.barred;
          disagreements.push(...comparison.disagreements.map((each) => `${text}, ${width} + ${grow} mm: ${each}`));
        }
        count += 1;
      }
      assert.deepEqual(disagreements, []);
    });
  }

  it('are hundreds, of every kind', () => {
    const summary = JSON.stringify({ count, compared, barred });
    assert.ok(count >= (cuts.length * words.length) / 2, summary);
    assert.ok(compared.bridge >= 100 && compared.loop >= 100 && compared.stroke >= 75 && barred >= 200, summary);
  });
});
