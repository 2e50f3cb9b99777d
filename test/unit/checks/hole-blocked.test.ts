import assert from 'node:assert/strict';
import { assertNear, make, placeOf, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertSilent, only } from './found.ts';

/** A plate with a hole of 4 mm whose centre is 10 above the middle, and what is glued on it. */
function glued(front: string, tie = 'tie: {twine: 2}', hanger = 'hole: {opening: 4, at: {up: 10}}'): Promise<Made> {
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
      /^Only 0\.\d\d mm between the hole and “Leaf”, glued on; minimum 2\.00 mm for twine of 2\.00 mm\.$/,
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
      ['tie: {twine: 3}', 'hole: {opening: 4, at: {up: 10}}', 3],
      ['units: mm', 'hole: {opening: 4, at: {up: 10}}', 1.5],
      // Gathered: a fifth of its width. Flat in a slot: 1 mm.
      ['tie: {ribbon: 6}', 'hole: {opening: 4, at: {up: 10}}', 1.2],
      ['tie: {ribbon: 6}', 'slot: {opening: 4, length: 8, at: {up: 10}}', 1],
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
  back: {body: [plate], hanger: {hole: {opening: 4, at: {up: 10}}}}
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
        `body: [body], ${rest}, hanger: {hole: {opening: 4, at: {up: 10}}}`,
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
      only(await marked(`{ellipse: 2, nudge: {up: ${10 - near}}}`, `${use}: [mark]`), 'hole-blocked');
      assertSilent(await marked(`{ellipse: 2, nudge: {up: ${10 - far}}}`, `${use}: [mark]`), 'hole-blocked');
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
      make(specOf(['body: {rectangle: [60, 40]}'], `body: [body], hanger: {ring: {${ring}, opening: 4}}`));
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
