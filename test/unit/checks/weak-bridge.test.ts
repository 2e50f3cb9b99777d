import assert from 'node:assert/strict';
import { assertNear, make, placeOf, specOf } from '../support/engine.ts';
import { assertSilent, only, placesIn } from './found.ts';

describe('Weak bridges of one shape', () => {
  it('are one finding with a count, the narrowest and every place', async () => {
    // A comb of plates joined by bars 1.4, 1.2 and 1.0 mm wide, as one drawn outline.
    const paths = [
      'M0 0H8V4.3H12V0H20V4.4H24V0H32V4.5H36V0H44V10H36V5.5H32V10H24V5.6H20V10H12V5.7H8V10H0Z',
      'M50 0H60V10H50Z M50.7 4V6H53V4Z',
    ];
    const text = specOf(
      [`comb: {path: "${paths[0]!}"}`, `frame: {path: "${paths[1]!}", nudge: {right: 60}}`],
      'body: [comb, frame], parts: many',
      ['stock: {min_web: 1.5 mm}'],
    );
    const made = await make(text);
    const bridges = made.issues.filter(({ code }) => code === 'weak-bridge');
    assert.deepEqual(
      bridges.map(({ message }) => message),
      [
        '3 bridges are narrower than 1.50 mm; the narrowest is 1.00 mm.',
        'Weak wall: only 0.70 mm of material between two edges; minimum 1.50 mm.',
      ],
    );
    const [comb] = bridges;
    assertNear(comb!.width!, 1, 1e-4);
    assert.equal(comb!.minimum, 1.5);
    assert.deepEqual(
      placesIn(comb!).map(({ width }) => width!.toFixed(2)),
      ['1.00', '1.20', '1.40'],
    );
    assert.deepEqual(comb!.points, placesIn(comb!)[0]!.points);
    assert.equal(placeOf(made.report, comb!).line, 4);
  });

  it('are worth a look and no more within 5 % of the limit, and nothing within 1 %', async () => {
    const joined = async (wide: number) => {
      const [low, high] = [10 - wide / 2, 10 + wide / 2];
      const plates = `plates: {path: "M0 0H20V${low}H24V0H44V20H24V${high}H20V20H0Z"}`;
      const { issues } = await make(specOf([plates], 'body: [plates]', ['stock: {min_web: 2 mm}']));
      return issues.filter(({ code }) => code === 'weak-bridge').map(({ severity }) => severity);
    };
    assert.deepEqual(await joined(1.89), ['warning']);
    assert.deepEqual(await joined(1.91), ['info']);
    assert.deepEqual(await joined(1.97), ['info']);
    assert.deepEqual(await joined(1.99), []);
  });

  it('say which letter they are at, where the text has several', async () => {
    const word = (text: string) =>
      make(
        specOf([`word: {text: ${text}, font: Pacifico, width: 60}`], 'body: [word], parts: many', [
          'stock: {min_web: 2 mm}',
        ]),
      );
    const yarrow = await word('Yarrow');
    const reported = yarrow.issues.filter(({ code }) => code === 'weak-bridge' || code === 'thin-stroke');
    assert.ok(reported.length > 0);
    for (const { message, points } of reported) {
      const [, letter] = / at “([^”]+)”/.exec(message) ?? [];
      assert.ok(letter !== undefined && 'Yarrow'.includes(letter), message);
      // Letters stand in the order of the text: of six, the first ends well left of the middle and the last begins right of it.
      if (letter === 'Y') assert.ok(points![0]!.x < 0, message);
      if (letter === 'w') assert.ok(points![0]!.x > 0, message);
      // Of several places each letter is named, with how often, and together they are as many as are counted.
      const counts = [...message.matchAll(/(\d+) (?:bridge|wall)/g)].map(([, count]) => Number(count));
      const listed = / At (.+)\.$/.exec(message)?.[1] ?? '';
      const located = [...listed.matchAll(/“.”(?: \((\d+)\))?/g)].map(([, count]) => Number(count ?? 1));
      const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
      if (located.length > 0) assert.ok(sum(located) <= sum(counts) && located.length > 1, message);
    }
    const plates = 'M0 0H10V4.5H12V0H22V10H12V5.5H10V10H0Z';
    const made = await make(specOf([`plates: {path: "${plates}"}`], 'body: [plates]', ['stock: {min_web: 1.5 mm}']));
    assert.doesNotMatch(only(made, 'weak-bridge').message, /“/);
  });

  it('are none just above the limit and one just below it', async () => {
    const bar = (width: number) => `M0 0H10V${5 - width / 2}H14V0H24V10H14V${5 + width / 2}H10V10H0Z`;
    const plates = (width: number) =>
      make(specOf([`plates: {path: "${bar(width)}"}`], 'body: [plates]', ['stock: {min_web: 1.5 mm}']));
    assertSilent(await plates(1.5), 'weak-bridge');
    // Within 1 % a width counts as the limit: our own judgement.
    assertSilent(await plates(1.487), 'weak-bridge');
    assert.equal(only(await plates(1.483), 'weak-bridge').places, undefined);
  });
});

describe('A narrow place of a piece that is glued on', () => {
  it('is told from 5 % below the limit of 0.80 mm on', async () => {
    const glued = (width: number) =>
      make(
        specOf(
          [
            'card: {rectangle: [60, 40]}',
            `bell: {path: "M0 0H8V4H9.5V0H18V10H9.5V${4 + width}H8V10H0Z", place: {on: card}}`,
          ],
          'body: [card]}\n  top: {body: [bell], glue_to: tag',
        ),
      );
    assertSilent(await glued(0.765), 'weak-bridge');
    assert.equal(only(await glued(0.755), 'weak-bridge').minimum, 0.8);
  });
});
