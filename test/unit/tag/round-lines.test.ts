import assert from 'node:assert/strict';
import { boundsOf, boxCentre, centroid } from '../../../src/geometry/measure.ts';
import { intersection } from '../../../src/geometry/clipper.ts';
import type { Letter } from '../../../src/tag/lettering/letters.ts';
import { assertNear, make, report, specOf } from '../support/engine.ts';
import { differenceAreaByJts, distanceByJts } from '../support/reference.ts';

const pair = (top: string, bottom: string) => `lines: [{text: ${top}, arc: top}, {text: ${bottom}, arc: bottom}]`;

async function onPlate(plate: string, words: string, piece = 'body: [plate], engrave: [words]') {
  const made = await make(specOf([`plate: ${plate}`, `words: {${words}}`], piece));
  const [mark] = made.pieces[0]!.marks;
  return { ...made, region: mark?.region ?? [], lettering: mark?.lettering ?? [], body: made.pieces[0]!.body };
}

/** The ink of each line, from the lowest to the highest; the middle one last. */
function byHeight(lettering: readonly { readonly letters: readonly Letter[] }[]) {
  const ink = lettering
    .map(({ letters }) => letters.flatMap(({ region }) => region))
    .sort((a, b) => boxCentre(boundsOf(a)!).y - boxCentre(boundsOf(b)!).y);
  return [ink[0], ink[2], ink[1]];
}

const middleOf = ({ region }: Letter) => centroid(region)!;

describe('Lines over the top and along the bottom', () => {
  for (const [what, plate] of [
    ['a circle', '{circle: 60}'],
    ['an ellipse', '{ellipse: [90, 50]}'],
    ['an oval', '{oval: {size: [90, 50], exponent: 3}}'],
    ['a scalloped disc', '{scallops: {across: 60, lobes: 20}}'],
    ['a rounded rectangle', '{rectangle: [80, 50], radius: 8}'],
  ] as const) {
    it(`stand in ${what} with the margin asked for, and do not meet`, async () => {
      const { region, body, issues, lettering } = await onPlate(
        plate,
        `${pair('SEED LIBRARY', 'plant swap')}, font: Nunito, weight: 800, fit: {in: plate, margin: 4}`,
      );
      assert.deepEqual(issues, []);
      // By jts: nothing sticks out of the plate, and its nearest place is the margin, to 5 % of that (the ellipse is inscribed).
      assert.equal(differenceAreaByJts(region, body).toFixed(3), '0.000');
      const hollow = body.map((ring) => [...ring].reverse());
      const frame = [...sheet, ...hollow];
      assertNear(distanceByJts(frame, region), 4, 0.2, 'margin');
      const [top, bottom] = lettering.map(({ letters }) => letters.flatMap((letter) => letter.region));
      assert.ok(distanceByJts(top!, bottom!) > lettering[0]!.xHeight, 'they keep apart');
    });
  }

  it('both read from left to right, heads up', async () => {
    const { lettering } = await onPlate('{circle: 60}', `${pair('ABCDE', 'ABCDE')}, fit: {in: plate, margin: 3}`);
    for (const { letters } of lettering) {
      const middles = letters.map(middleOf);
      for (let i = 1; i < middles.length; i++) assert.ok(middles[i]!.x > middles[i - 1]!.x);
      // The middle letter is upright: as wide as it is in a straight line of the same height.
      const box = boundsOf(letters[2]!.region)!;
      assertNear((box.minX + box.maxX) / 2, 0, 1);
      assert.ok(box.maxY - box.minY > box.maxX - box.minX);
    }
    const [top, bottom] = lettering.map(({ letters }) => middleOf(letters[2]!).y);
    assert.ok(top! > 15 && bottom! < -15);
  });

  it('stand on the circle that the letters touch: every capital H has its feet as far from the middle', async () => {
    const { lettering } = await onPlate('{circle: 60}', `${pair('HHHHHHH', 'HHHHH')}, fit: {in: plate, margin: 3}`);
    for (const [index, { letters }] of lettering.entries()) {
      const reach = letters.map(({ region }) => {
        const away = region.flat().map(({ x, y }) => Math.hypot(x, y));
        return index === 0 ? Math.max(...away) : Math.min(...away);
      });
      for (const each of reach) assertNear(each, reach[0]!, 0.02);
      // At the top the corners of the capitals are on the circle, less half a letter's sagitta.
      if (index === 0) assertNear(reach[0]!, 27, 0.06);
    }
  });

  it('are no larger than asked for, and stay at the edge', async () => {
    const { lettering, region } = await onPlate(
      '{circle: 60}',
      `${pair('HOH', 'xox')}, fit: {in: plate, margin: 3, at_most: {x_height: 3}}`,
    );
    for (const { xHeight } of lettering) assertNear(xHeight, 3, 1e-6);
    assertNear(boundsOf(region)!.maxY, 27, 0.1);
  });

  it('have each its own size by its share', async () => {
    const { lettering } = await onPlate(
      '{circle: 60}',
      'lines: [{text: SEEDS, arc: top, share: 2}, {text: swap, arc: bottom}], fit: {in: plate, margin: 3}',
    );
    assertNear(lettering[0]!.xHeight / lettering[1]!.xHeight, 2, 1e-6);
  });

  it('leave room for lines in the middle', async () => {
    const { lettering, issues } = await onPlate(
      '{ellipse: [100, 60]}',
      'lines: [{text: NEIGHBOURHOOD, arc: top}, {text: Borage, share: 2}, {text: sown in March}, {text: seed library, arc: bottom}], fit: {in: plate, margin: 4}',
    );
    assert.deepEqual(issues, []);
    const regions = lettering.map(({ letters }) => letters.flatMap((letter) => letter.region));
    assert.equal(regions.length, 4);
    for (const [index, one] of regions.entries())
      for (const other of regions.slice(index + 1)) assert.deepEqual(intersection(one, other), []);
  });

  it('are as large as a short word in the middle, much larger than they are, lets them be', async () => {
    const { lettering, region, issues } = await onPlate(
      '{circle: 70}',
      'lines: [{text: Gasthaus, arc: top}, {text: "9", share: 3}, {text: Gartenlaube, arc: bottom}], font: Nunito, weight: 800, fit: {in: plate, margin: 4}',
    );
    assert.deepEqual(issues, []);
    const [bottom, top, nine] = byHeight(lettering);
    assertNear(Math.max(...region.flat().map(({ x, y }) => Math.hypot(x, y))), 35 - 4, 0.05);
    // By jts: the digit is seven tenths of their small letters from both, to a tenth of a millimetre or so; nothing larger goes in.
    const gap = 0.7 * lettering.find(({ letters }) => letters.length > 1)!.xHeight;
    const clear = [top, bottom].map((line) => distanceByJts(line!, nine!));
    assert.ok(Math.min(...clear) > 0.98 * gap, `${clear.join(' and ')}, not ${gap}`);
    assert.ok(Math.max(...clear) < 1.25 * gap, `${clear.join(' and ')}, not ${gap}`);
  });

  for (const [what, plate, hub, radius] of [
    ['a half disc', '{path: "M0 40 A40 40 0 0 1 80 40 Z"}', 0, 40],
    ['the arched top of a stone', '{path: "M0 80 V30 A30 30 0 0 1 60 30 V80 Z"}', 50, 30],
    ['the flat arch of a bridge', '{path: "M0 30 A60 60 0 0 1 90 30 V50 H0 Z"}', 20 - Math.sqrt(60 ** 2 - 45 ** 2), 60],
  ] as const) {
    it(`follow ${what}, with the other words in what is left below`, async () => {
      const { lettering, region, body, issues } = await onPlate(
        plate,
        'lines: [{text: HHIHHIHH, arc: top}, {text: farm eggs}], font: Nunito, weight: 800, fit: {in: plate, margin: 4}',
      );
      assert.deepEqual(issues, []);
      assert.equal(differenceAreaByJts(region, body).toFixed(3), '0.000');
      const { minY, minX, maxX } = boundsOf(body)!;
      // The feet of the bows are on one circle about the middle of the plate's own, the margin less.
      const centre = { x: (minX + maxX) / 2, y: minY + hub };
      const reach = lettering[0]!.letters.map(({ region: ink }) =>
        Math.max(...ink.flat().map(({ x, y }) => Math.hypot(x - centre.x, y - centre.y))),
      );
      for (const each of reach) assertNear(each, radius - 4, 0.02 * radius);
      const [top, below] = lettering.map(({ letters }) => letters.flatMap((letter) => letter.region));
      const clear = distanceByJts(top!, below!);
      assert.ok(clear > 0.68 * lettering[0]!.xHeight, `${clear}`);
      assert.ok(boundsOf(below!)!.minY > minY + 3.95);
    });
  }

  it('are larger in a half disc than on any ellipse within it', async () => {
    const { lettering } = await onPlate(
      '{path: "M0 40 A40 40 0 0 1 80 40 Z"}',
      'lines: [{text: SUNRISE, arc: top}, {text: farm eggs}], font: Nunito, weight: 800, fit: {in: plate, margin: 4}',
    );
    // By calculus, the largest ellipse in a half disc of radius r is r √(2/3) wide and r √2/3 high to each side of its middle; words on it
    // are no higher than a third of the latter.
    const onEllipse = ((36 * Math.SQRT2) / 3) * 0.34;
    const capitals = boundsOf(lettering[0]!.letters[3]!.region)!;
    assert.ok(capitals.maxY - capitals.minY > 1.3 * onEllipse, `${capitals.maxY - capitals.minY}`);
  });

  it('run round the upper part of a heart, where it is widest', async () => {
    const { region, body } = await onPlate(
      '{heart: 70}',
      `${pair('SEED LIBRARY', 'plant swap')}, fit: {in: plate, margin: 4}`,
    );
    assert.equal(differenceAreaByJts(region, body).toFixed(3), '0.000');
    assert.ok(boxCentre(boundsOf(region)!).y > boxCentre(boundsOf(body)!).y + 2);
  });

  it('go below a hole in their way', async () => {
    const { region, pieces, issues } = await onPlate(
      '{circle: 70}',
      `${pair('THE SEED LOVERS', 'plant swap')}, fit: {in: plate, margin: 3, clear: 2}`,
      'body: [plate], engrave: [words], hanger: {hole: top}',
    );
    assert.deepEqual(issues, []);
    const clear = distanceByJts(pieces[0]!.hangers[0]!.opening, region);
    assert.ok(clear > 2 - 0.01, `${clear}`);
    const [top, bottom] = pieces[0]!.marks[0]!.lettering!.map(({ letters }) => letters.map((each) => each.region));
    const furthest = (letters: readonly (typeof region)[]): number =>
      Math.max(...letters.flat(2).map(({ x, y }) => Math.hypot(x, y)));
    const [middle, ends] = [top!.slice(5, 7), [top![0]!, top!.at(-1)!]];
    assert.ok(furthest(middle) < 35 - 3 - 2);
    // The lower line stays at the edge, and the ends of the upper one come nearer to it.
    assertNear(furthest(bottom!), 35 - 3, 0.1);
    assert.ok(furthest(ends) > furthest(middle) + 1, `${furthest(ends)}, ${furthest(middle)}`);
  });

  it('leave the middle of what is free to a word in the middle, where one of them goes below a hole', async () => {
    const nineOf = async (hanger: string) => {
      const words = `lines: [{text: HOUSE, arc: top}, {text: "9", share: 3}, {text: HOUSE, arc: bottom}], font: Nunito, weight: 800, fit: {in: plate, margin: 4, at_most: {x_height: 6}}`;
      const { lettering } = await onPlate(
        '{circle: 70}',
        words,
        `body: [plate], engrave: [words], hanger: {${hanger}}`,
      );
      const [bottom, top, nine] = byHeight(lettering);
      return {
        y: boxCentre(boundsOf(nine!)!).y,
        above: distanceByJts(nine!, top!),
        below: distanceByJts(nine!, bottom!),
      };
    };
    assertNear((await nineOf('ring: top')).y, 0, 0.01);
    const { y, above, below } = await nineOf('hole: top');
    assert.ok(y < -1, `${y}`);
    assertNear(above / below, 1, 0.25);
  });

  it('do not wind round the end of a flat ellipse', async () => {
    const { pieces } = await onPlate(
      '{ellipse: [90, 44]}',
      `${pair('THE NEIGHBOURHOOD SEED LIBRARY', 'free')}, fit: {in: plate, margin: 3}`,
      'body: [plate], engrave: [words], hanger: {hole: top}',
    );
    const letters = pieces[0]!.marks[0]!.lettering![0]!.letters.map(({ region }) => boxCentre(boundsOf(region)!));
    // From left to right, and no letter below the middle of the plate.
    for (const [index, { x, y }] of letters.entries()) {
      assert.ok(index === 0 || x > letters[index - 1]!.x, `letter ${index}`);
      assert.ok(y > 0, `letter ${index}: ${y}`);
    }
  });

  it('stay at the edge where going deeper would make them much smaller', async () => {
    const { region, pieces } = await onPlate(
      '{circle: 44}',
      `${pair('SEEDS', 'grown by the Brambleside neighbours')}, fit: {in: plate, margin: 3, clear: 2}`,
      'body: [plate], engrave: [words], hanger: {hole: top}',
    );
    const [top, bottom] = pieces[0]!.marks[0]!.lettering!.map(({ letters }) => letters.flatMap((each) => each.region));
    const furthest = (ink: typeof region): number => Math.max(...ink.flat().map(({ x, y }) => Math.hypot(x, y)));
    assertNear(furthest(bottom!), 22 - 3, 0.1);
    assert.ok(furthest(top!) < 22 - 3 - 2);
  });

  it('say what keeps them small, where it does by more than a quarter', async () => {
    const words = (clear: number) =>
      specOf(
        [
          'plate: {oval: [90, 60]}',
          `words: {lines: [{text: SEED LIBRARY, arc: top}, {text: since the spring, arc: bottom}], fit: {in: plate, margin: 3, clear: ${clear}}}`,
          'leaf: {ellipse: [30, 20], place: plate}',
        ],
        'body: [plate], engrave: [words, leaf], hanger: {hole: top}',
      );
    const told = async (clear: number) => {
      const { pieces, issues } = await make(words(clear));
      return {
        size: pieces[0]!.marks[0]!.lettering![0]!.xHeight,
        issues: issues.filter(({ code }) => code === 'squeezed'),
      };
    };
    const [free, kept] = [await told(2), await told(5)];
    assert.deepEqual(free.issues, []);
    assert.equal(kept.issues.length, 1);
    const { message, severity, path } = kept.issues[0]!;
    assert.deepEqual([severity, path], ['info', ['shapes', 'words', 'fit']]);
    const percent = Number(/have (\d+) % of the size/.exec(message)![1]);
    // Without the hole and the leaf, nothing is in the way.
    const alone = await make(words(5).replace(', leaf]', ']').replace(', hanger: {hole: top}', ''));
    assertNear(percent / 100, kept.size / alone.pieces[0]!.marks[0]!.lettering![0]!.xHeight, 0.006);
    assert.match(
      message,
      /^To pass 5\.00 mm clear of the hole at the top and “leaf”, .* use a ring instead of the hole at the top, make “leaf” smaller or give a smaller “clear”\.$/,
    );
  });

  it('have the width asked for without a fit, round a circle as small as they allow', async () => {
    const { region } = await onPlate('{circle: 80}', `${pair('SEED LIBRARY', 'plant swap')}, width: 60`);
    const box = boundsOf(region)!;
    assertNear(box.maxX - box.minX, 60, 0.05);
  });

  it('keep one size in a batch where that is asked for', async () => {
    const spec = (name: string) =>
      specOf(
        [
          'plate: {circle: 60}',
          `words: {lines: [{text: "{name}", arc: top}, {text: swap, arc: bottom}], fit: {in: plate, margin: 3, same_size: true}}`,
        ],
        'body: [plate], engrave: [words]',
        [`batch: [${name}, Sea Kale, Neighbourhood]`],
      );
    const short = await make(spec('Ty'));
    const long = await make(spec('Neighbourhoods'));
    assert.ok(short.pieces[0]!.marks[0]!.lettering![0]!.xHeight > 1);
    assert.ok(
      long.pieces[0]!.marks[0]!.lettering![0]!.xHeight < short.pieces[0]!.marks[0]!.lettering![0]!.xHeight * 1.001,
    );
  });

  it('say what does not go with them', async () => {
    const messages = async (words: string) =>
      (
        await report(specOf(['plate: {circle: 60}', `words: {${words}}`], 'body: [plate], engrave: [words]'))
      ).issues.map(({ message }) => message);
    const fit = 'fit: {in: plate, margin: 3}';
    assert.deepEqual(await messages(`lines: [{text: a, arc: top}, {text: b, arc: top}], ${fit}`), [
      'Another line has the top already.',
    ]);
    assert.deepEqual(await messages(`lines: [{text: a, arc: top, align: left}], ${fit}`), [
      'A line on an arc has its middle at the top or at the bottom; leave out “align”.',
    ]);
    assert.deepEqual(await messages(`lines: [{text: a, arc: top}], ${fit}, place: {on: plate, at: top}`), [
      'Lines on arcs run along the edge of what they are fitted into; leave out “place”.',
    ]);
    const window = 'window: {circle: 52}';
    const words = `words: {${pair('SEED LIBRARY', 'swap')}, fit: {in: plate, margin: 3, clear: 0}}`;
    const full = await report(
      specOf(['plate: {circle: 60}', window, words], 'body: [plate], cut: [window], engrave: [words]'),
    );
    assert.match(
      full.issues[0]!.message,
      /^“window” leaves no room for these lines to run round inside “plate”: make “window” smaller or use shorter words\.$/,
    );
    const holed = await report(
      specOf(
        ['plate: {circle: 60}', 'dot: {circle: 34, place: {on: plate}}', `words: {${pair('SEEDS', 'swap')}, ${fit}}`],
        'body: [plate], engrave: [dot, words], hanger: {hole: {at: top}}',
      ),
    );
    assert.match(
      holed.issues.map(({ message }) => message).join('\n'),
      /The hole at the top and “dot” leave no room for these lines to run round inside “plate”: use a ring instead of the hole at the top, make “dot” smaller or use/,
    );
  });
});

const sheet = [
  [
    { x: -90, y: -90 },
    { x: 90, y: -90 },
    { x: 90, y: 90 },
    { x: -90, y: 90 },
  ],
];
