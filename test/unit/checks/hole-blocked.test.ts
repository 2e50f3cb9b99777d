import assert from 'node:assert/strict';
import { assertNear, make, placeOf, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertSilent, only } from './found.ts';

/** A plate with a hole of 4 mm whose centre is 10 above the middle, and what is glued on it. */
function glued(front: string, tie = 'tie: {twine: 2}', hanger = 'hole: {diameter: 4, at: {up: 10}}'): Promise<Made> {
  return make(`tagwright: 1
${tie}
shapes:
  plate: {rectangle: [60, 40]}
  front: ${front}
pieces:
  back: {body: [plate], hanger: {${hanger}}}
  front: {title: Leaf, body: [front], glue_to: back, parts: many}
`);
}

describe('A tie beside a glued piece', () => {
  // The hole reaches from 8 to 12.
  const above = (gap: number) => `{rectangle: [10, 4], nudge: {up: ${14 + gap}}}`;
  const below = (gap: number) => `{rectangle: [10, 8], nudge: {up: ${4 - gap}}}`;

  it('needs its own thickness on the way to the edge that is up', async () => {
    const made = await glued(above(0.6));
    const issue = only(made, 'hole-blocked');
    assert.equal(issue.severity, 'warning');
    assert.equal(placeOf(made.report, issue).line, 7);
    assertNear(issue.width!, 0.6, 0.01);
    assert.equal(issue.minimum, 2);
    assert.match(
      issue.message,
      /^Only 0\.\d\d mm between the hole and “Leaf”, glued on; minimum 2\.00 mm for 2\.00 mm twine\.$/,
    );
    const [on, at] = issue.points!;
    assertNear(on!.y, 12, 0.01);
    assertNear(at!.y, 12.6, 0.01);
    only(await glued(above(1.97)), 'hole-blocked');
    assertSilent(await glued(above(2.01)), 'hole-blocked');
  });

  it('needs half of that elsewhere', async () => {
    assertNear(only(await glued(below(0.6)), 'hole-blocked').width!, 0.6, 0.01);
    only(await glued(below(0.97)), 'hole-blocked');
    assertSilent(await glued(below(1.01)), 'hole-blocked');
    const beside = (gap: number) => `{rectangle: [8, 2], nudge: {up: 10, right: ${6 + gap}}}`;
    only(await glued(beside(0.97)), 'hole-blocked');
    assertSilent(await glued(beside(1.01)), 'hole-blocked');
  });

  it('goes out within 60° of straight up', async () => {
    // Small discs, their rim 1.5 mm from that of the hole: too near on the way only.
    const disc = (degrees: number) => {
      const angle = (degrees * Math.PI) / 180;
      const [right, up] = [3.75 * Math.sin(angle), 10 + 3.75 * Math.cos(angle)];
      return `{ellipse: 0.5, nudge: {right: ${right.toFixed(4)}, up: ${up.toFixed(4)}}}`;
    };
    for (const side of [1, -1]) {
      only(await glued(disc(side * 58)), 'hole-blocked');
      assertSilent(await glued(disc(side * 65)), 'hole-blocked');
    }
  });

  it('is as thick as it is said, or as twine usually is', async () => {
    for (const [tie, hanger, needed] of [
      ['tie: {twine: 3}', 'hole: {diameter: 4, at: {up: 10}}', 3],
      ['units: mm', 'hole: {diameter: 4, at: {up: 10}}', 1.5],
      // Gathered: a fifth of its width. Flat in a slot: 1 mm.
      ['tie: {ribbon: 6}', 'hole: {diameter: 4, at: {up: 10}}', 1.2],
      ['tie: {ribbon: 6}', 'slot: {width: 4, length: 8, at: {up: 10}}', 1],
    ] as const) {
      only(await glued(above(needed - 0.03), tie, hanger), 'hole-blocked');
      assertSilent(await glued(above(needed + 0.01), tie, hanger), 'hole-blocked', tie);
    }
  });

  it('passes a glued piece that has a hole of its own for it', async () => {
    const holed = (size: number) =>
      `{difference: [{rectangle: [30, 12], nudge: {up: 10}}, {ellipse: ${size}, nudge: {up: 10}}]}`;
    for (const size of [4, 5, 7.9]) assertSilent(await glued(holed(size)), 'hole-blocked', `${size}`);
    // A frame is none, where the hole lies near one side of it.
    const frame = '{difference: [{rectangle: [60, 40]}, {rectangle: [50, 25.2]}]}';
    assertNear(only(await glued(frame), 'hole-blocked').width!, 0.6, 0.01);
    assertSilent(await glued('{difference: [{rectangle: [60, 40]}, {rectangle: [50, 28.1]}]}'), 'hole-blocked');
  });

  it('counts what is glued on a glued piece', async () => {
    const text = `tagwright: 1
tie: {twine: 2}
shapes:
  plate: {rectangle: [60, 40]}
  low: {rectangle: [40, 10], nudge: {down: 12}}
  high: {rectangle: [10, 24], nudge: {down: 4.6}}
pieces:
  back: {body: [plate], hanger: {hole: {diameter: 4, at: {up: 10}}}}
  middle: {body: [low], glue_to: back}
  top: {body: [high], glue_to: middle}
`;
    assert.match(only(await make(text), 'hole-blocked').message, /“top”, glued on/);
  });
});

describe('What crosses the opening for the tie', () => {
  const marked = (shape: string, rest: string) =>
    make(
      specOf(
        ['body: {rectangle: [60, 40]}', `mark: ${shape}`],
        `body: [body], ${rest}, hanger: {hole: {diameter: 4, at: {up: 10}}}`,
      ),
    );

  it('is in the way from 0.02 mm² on', async () => {
    // Exact: a disc of radius 1 and the hole of radius 2 share 0.02 mm² where they lie 2.9545 apart (circular segments).
    const lens = (d: number) => {
      const part = (r: number, a: number) => r * r * Math.acos(a / r) - a * Math.sqrt(r * r - a * a);
      const a = (d * d + 4 - 1) / (2 * d);
      return part(2, a) + part(1, d - a);
    };
    const [near, far] = [2.93, 2.97];
    assert.ok(lens(near) > 0.025 && lens(far) < 0.015);
    for (const use of ['engrave', 'score']) {
      const at = (up: number) => marked(`{ellipse: 2, nudge: {up: ${up}}}`, `${use}: [mark]`);
      assert.equal(only(await at(10 - near), 'hole-blocked').severity, 'warning');
      const touching = (await at(10 - far)).issues.filter(({ code }) => code === 'hole-blocked');
      assert.ok(touching.every(({ severity }) => severity === 'info'));
    }
  });

  it('is none that surrounds it: a field of which it takes 98 %, or a scored border', async () => {
    // Exact: the segment of a circle of radius 2 beyond a chord at 1.78 or 1.81 is 2.15 or 1.73 % of it.
    const field = (top: number) => `{rectangle: [50, 20], nudge: {up: ${top}}}`;
    only(await marked(field(1.78), 'engrave: [mark]'), 'hole-blocked');
    assertSilent(await marked(field(1.81), 'engrave: [mark]'), 'hole-blocked');
    for (const border of ['{ellipse: 6, nudge: {up: 10}}', '{rectangle: [50, 30]}', '{ellipse: 4, nudge: {up: 10}}'])
      assertSilent(await marked(border, 'score: [mark]'), 'hole-blocked', border);
    only(await marked('{rectangle: [50, 20]}', 'score: [mark]'), 'hole-blocked');
  });

  it('is the body where a ring is put deeper than its middle, unless “sink” asks for that', async () => {
    const hung = (ring: string) =>
      make(specOf(['body: {rectangle: [60, 40]}'], `body: [body], hanger: {ring: {${ring}, diameter: 4}}`));
    assertSilent(await hung('at: {up: 20.02}'), 'hole-blocked');
    only(await hung('at: {up: 19.98}'), 'hole-blocked');
    for (const sink of [1.98, 2.02, 4]) assertSilent(await hung(`at: top, sink: ${sink}`), 'hole-blocked');
  });

  it('is a piece glued over it, which is an error, from 0.02 mm² on', async () => {
    const over = (by: number) => glued(`{rectangle: [10, 8], nudge: {up: ${4 + by}}}`);
    // Exact: a segment 0.05 high of a circle of radius 2 has 0.030 mm², one of 0.03 high 0.014.
    assert.equal(only(await over(0.05), 'hole-blocked').severity, 'error');
    assert.equal(only(await over(0.03), 'hole-blocked').severity, 'warning');
  });
});

describe('A hole that looks like a slip', () => {
  const tag = (shapes: readonly string[], uses: string, hanger = 'hole: {diameter: 4, at: {up: 10}}') =>
    make(specOf(['plate: {rectangle: [60, 40]}', ...shapes], `body: [plate], ${uses}, hanger: {${hanger}}`));
  // The hole reaches from 8 to 12.
  const below = (gap: number) => [`mark: {rectangle: [30, 6], nudge: {up: ${5 - gap}}}`];

  it('lies less than a millimetre from engraving', async () => {
    const issue = only(await tag(below(0.97), 'engrave: [mark]'), 'hole-blocked');
    assert.equal(issue.severity, 'info');
    assert.equal(issue.message, 'Only 0.97 mm between the hole and “mark”: it looks like a mistake; minimum 1.00 mm.');
    assertNear(issue.width!, 0.97, 0.001);
    assertSilent(await tag(below(1.01), 'engrave: [mark]'), 'hole-blocked');
    // A line that is scored beside it is a border or a fold.
    assertSilent(await tag(below(0.5), 'score: [mark]'), 'hole-blocked');
  });

  it('is none in a field that is engraved, and none in a border', async () => {
    for (const shape of [
      '{rectangle: [50, 30]}',
      '{difference: [{ellipse: 9, nudge: {up: 10}}, {ellipse: 4.6, nudge: {up: 10}}]}',
      '{difference: [{rectangle: [50, 25.6]}, {rectangle: [48, 24.6]}]}',
    ])
      assertSilent(await tag([`mark: ${shape}`], 'engrave: [mark]'), 'hole-blocked', shape);
  });

  it('is in the way of a letter, however fat its strokes', async () => {
    const fat = '{text: I, font: Alfa Slab One, height: 30, place: {on: plate, by: box}}';
    assert.equal(only(await tag([`mark: ${fat}`], 'engrave: [mark]'), 'hole-blocked').severity, 'warning');
  });

  // Exact: the outline of I in Alfa Slab One is a box as high as its capitals.
  const letter = (top: number, how = 12) => [
    `mark: {text: I, font: Alfa Slab One, cap_height: ${how}, place: {on: plate, by: box}, nudge: {up: ${top - how / 2}}}`,
  ];

  it('lies beside lettering that is engraved, scored, cut through or glued on', async () => {
    for (const use of ['engrave', 'score', 'cut']) {
      only(await tag(letter(7.05), `${use}: [mark]`, 'slot: {width: 4, length: 8, at: {up: 10}}'), 'hole-blocked');
      const far = await tag(letter(6.95), `${use}: [mark]`, 'slot: {width: 4, length: 8, at: {up: 10}}');
      assertSilent(far, 'hole-blocked', use);
    }
    const word = (top: number) => glued(letter(top)[0]!.replace('mark: ', ''), 'tie: {twine: 1}');
    assert.match(only(await word(7.05), 'hole-blocked').message, /“Leaf”: it looks like a mistake/);
  });

  it('stands over a letter like its accent, up to a fifth of the letter’s height', async () => {
    const issue = only(await tag(letter(5.65), 'engrave: [mark]'), 'hole-blocked');
    assert.match(issue.message, /^The hole stands 2\.3\d mm above a letter of “mark” and reads as its accent\.$/);
    assertSilent(await tag(letter(5.55), 'engrave: [mark]'), 'hole-blocked');
    // Beside the letter, and too large or too small for an accent: at 4 mm, letters below 8 mm and above 26.7 mm.
    assertSilent(
      await tag(letter(6), 'engrave: [mark]', 'hole: {diameter: 4, at: {up: 10, right: 9}}'),
      'hole-blocked',
    );
    assertSilent(await tag(letter(6.8, 7.9), 'engrave: [mark]'), 'hole-blocked');
    only(await tag(letter(6.8, 8.1), 'engrave: [mark]'), 'hole-blocked');
    assertSilent(await tag(letter(6, 26.9), 'engrave: [mark]'), 'hole-blocked');
    only(await tag(letter(6, 26.4), 'engrave: [mark]'), 'hole-blocked');
  });
});

describe('A ring on a plate with a piece glued on', () => {
  const ring = (front: string) => glued(front, 'tie: {twine: 3}', 'ring: {on: plate, at: top}');

  it('has its tie over the wall, away from what lies wholly on the plate', async () => {
    for (const frame of [
      '{difference: [{rectangle: [60, 40]}, {rectangle: [50, 30]}]}',
      '{rectangle: [50, 8], nudge: {up: 15.9}}',
    ])
      assertSilent(await ring(frame), 'hole-blocked', frame);
  });

  it('has not where that runs beyond the plate, beside the ring', async () => {
    only(await ring('{rectangle: [4, 12], nudge: {up: 17, right: 4.5}}'), 'hole-blocked');
  });
});
