import assert from 'node:assert/strict';
import type { Region } from '../../../src/geometry/types.ts';
import { estimateLoad } from '../../../src/strength/load.ts';
import { loadDuration, tenYearsSeconds, woodScatter } from '../../../src/strength/material-table.ts';
import type { Piece } from '../../../src/tag/tag.ts';
import { assertNear, make, specOf } from '../support/engine.ts';
import { box, subtract, unite } from '../support/shapes.ts';
import { assertClose, bearing, drilled, dumbbell, estimateOf, plate, sawn, sectionOf, slotted } from './pieces.ts';

describe('The formulas', () => {
  it('for load duration follow the Madison curve (Wood 1951; Forests 12(9):1148): 1 day 82.3 %, 10 years 62.0 %', () => {
    assertNear(100 * loadDuration(24 * 3600), 82.3, 0.05);
    assertNear(100 * loadDuration(tenYearsSeconds), 62.0, 0.05);
    assert.equal(loadDuration(1), 1, 'no bonus for a jerk');
  });

  it('for scatter take the 5th percentile, 1 − 1.645·CV (Wood Handbook, table 5-6, from memory: 16, 14 and 28 %)', () => {
    assertNear(woodScatter.bending, 0.7368, 1e-9);
    assertNear(woodScatter.shear, 0.7697, 1e-9);
    // Of compression across the grain: the table has no row for tension across it (its 25 % is tension along).
    assertNear(woodScatter.tensionAcross, 0.5394, 1e-9);
  });
});

describe('The load at a hole', () => {
  it('that tears out is 2(e − d/2)·t·τ: basswood, e 4, d 3, t 3 → 102 N', () => {
    const { newtons, widthMm, weaker } = sectionOf(estimateOf(plate, 'basswood', 3), 'tear-out');
    assertClose(newtons.along, 102);
    assert.equal(newtons.across, newtons.along, 'shear along the grain serves for both');
    assert.equal(weaker, undefined);
    assertClose(widthMm, 2.5);
  });

  it('is torn beside it by the stress at its rim', () => {
    // x = 3/20: Ktn 12.882 − 7.907 + 2.020 − 0.174 = 6.820 (Peterson's chart, from memory), · .15/.85 = 1.2036; the end 4/3
    // diameters off: 1 + .5·(3 − 1.333)/2 = 1.41667; loose 1.5: 2.5577 in all.
    const { newtons, widthMm, offLineMm } = sectionOf(estimateOf(plate, 'walnut', 3), 'wall');
    assertClose(widthMm, 8.5);
    assert.equal(offLineMm, 0);
    // Wood Handbook, table 5-3a: bending 101, tension across 4.8 MPa; along the grain 2.16/0.87 as much stress (NASA TP-1862).
    assertClose(newtons.across, (4.8 * 3 * 3) / 2.5577);
    assertClose(newtons.along, (101 * 3 * 3) / 2.5577 / (2.16 / 0.87));
  });

  it('bends the strip ahead of it as a clamped beam with the tie at its middle: F·L/8', () => {
    const strap = sectionOf(estimateOf(plate, 'walnut', 3), 'strap');
    // L 3, h 2.5: 6·F·3/8/(3·2.5²) = .12·F MPa.
    assertClose(strap.newtons.across, 4.8 / 0.12);
    assert.equal(strap.weaker, 'along', 'the stress runs across the pull');
  });

  it('that is not in the middle counts the thinner wall twice', () => {
    const off = drilled([box(-10, -400, 10, 0)], { x: 6, y: -4 }, 3);
    // It hangs all but straight: 6 mm in 196.
    assertClose(sectionOf(estimateOf(off, 'walnut', 3), 'wall').widthMm, 2.5, 0.01);
  });

  it('at the ends of a slot is that of its walls and that of the bent strip together', () => {
    const piece = slotted([box(-15, -60, 15, 0)], { x: 0, y: -5.5 }, 11, 3);
    const estimate = estimateOf(piece, 'walnut', 3);
    const strap = sectionOf(estimate, 'strap');
    assertClose(strap.widthMm, 4);
    // The strip: L 11, h 4, F·L/8: 6·11/8/(3·16) = .17188·F. The walls: x = 11/30, Ktn 12.882 − 19.328 + 12.068 − 2.547 = 3.075,
    // · .5789 = 1.780; ends (1 + 2·√(11/3))/3 = 1.610; loose 1.5: 4.299/(11·3) = .13027·F. Together .30215·F.
    assertClose(strap.newtons.across, 4.8 / 0.30215);
    assertClose(sectionOf(estimate, 'wall').newtons.across, 4.8 / 0.13027);
    // Plane stress by finite elements of our own, outside the project: 8.10·F/(11·3) = .2455·F.
    assert.ok(strap.newtons.across! < 4.8 / 0.2455);
  });
});

describe('The load at a ring', () => {
  it('counts its wall and the chord that joins it', async () => {
    const ring = 'body: [body], hanger: {ring: {at: top, diameter: 3, wall: 2}}';
    const made = await make(specOf(['body: {rectangle: [30, 50]}'], ring, ['stock: {material: walnut, thickness: 3}']));
    const estimate = bearing(estimateLoad(made.pieces[0]!, made.report.tag!.stock)!);
    const wall = sectionOf(estimate, 'wall');
    assertClose(wall.widthMm, 2);
    assertClose(sectionOf(estimate, 'tear-out').widthMm, 2);
    // The hole, of radius 1.5, touches the edge, so the disc, of radius 3.5, meets it in a chord of 2·√(3.5² − 1.5²).
    const joint = sectionOf(estimate, 'attachment');
    assertClose(joint.totalMm, 2 * Math.sqrt(10));
    assertNear(joint.offLineMm, 0, 0.01);
    assertClose(joint.newtons.across, 4.8 * 3 * 2 * Math.sqrt(10), 0.01);
    // x = 3/7: Ktn 12.882 − 22.592 + 16.487 − 4.067 = 2.710 (Peterson's chart, from memory), · .75 = 2.0326; the end 3.5/3
    // diameters off: 1.45833; loose 1.5: 4.4463.
    assert.equal(estimate.weakest, wall);
    assertClose(estimate.shortPull, ((4.8 * 3 * 3) / 4.4463) * 0.8 * (1 - 1.645 * 0.28));
  });

  it('falls where the tag hangs askew and bends the joint', async () => {
    const on = async (right: string) => {
      const ring = `body: [body], hanger: {ring: {at: top, diameter: 3, wall: 2, nudge: {right: ${right}}}}`;
      const made = await make(specOf(['body: {rectangle: [60, 20]}'], ring));
      return sectionOf(estimateOf(made.pieces[0]!, 'walnut', 3), 'attachment');
    };
    const [straight, askew] = [await on('0'), await on('20')];
    assertClose(askew.totalMm, straight.totalMm, 0.01);
    // 1.5 mm above an edge 10 mm above the centre of mass, 20 mm aside: the joint is 1.5·sin(atan(20/11.5)) off the line.
    assertNear(askew.offLineMm, 1.5 * Math.sin(Math.atan(20 / 11.5)), 0.1);
    assert.ok(askew.effectiveMm < 0.6 * straight.effectiveMm);
  });
});

describe('The load at a neck', () => {
  it('in line with the pull is its section times the strength', () => {
    const estimate = bearing(estimateOf(dumbbell(1.02), 'walnut', 3));
    const neck = sectionOf(estimate, 'neck');
    assert.equal(estimate.weakest, neck);
    assertNear(neck.widthMm, 1.02, 0.01);
    assertNear(neck.offLineMm, 0, 0.01);
    assertClose(neck.newtons.across, 4.8 * 3 * 1.02, 0.02);
    assertClose(neck.newtons.along, 101 * 3 * 1.02, 0.02);
    assert.equal(neck.weaker, 'across');
    assertClose(estimate.hanging! / estimate.shortPull, 0.62, 1e-3);
    for (const { y } of neck.ends) assert.ok(y < -7.9 && y > -18.2, 'it is between the discs');
  });

  it('off the pull falls by the bending: b 3, t 3, e 2 bears 4.8 MPa at 8.64 N', () => {
    // F/bt + 6Fe/tb² (straight beam) of 10 N is 5.556 MPa, so 4.8 MPa come with 8.64 N.
    const neck = sectionOf(estimateOf(sawn(0.5, 3.5), 'walnut', 3), 'neck');
    assertNear(neck.widthMm, 3, 0.01);
    assertNear(neck.offLineMm, 2, 0.02);
    assertClose(neck.newtons.across, 8.64, 0.02);
  });

  it('is told where it is wider than others but further off the pull', () => {
    // Sawn twice: 3 mm in line (effective 3) above, 4 mm 6 mm off (effective 1/(1/4 + 36/16) = 0.4) below.
    const cuts = [
      box(-11, -15.02, -1.5, -15),
      box(1.5, -15.02, 11, -15),
      box(-11, -25.02, 4, -25),
      box(8, -25.02, 11, -25),
    ];
    const piece = drilled(subtract([box(-10, -80, 10, 0)], cuts), { x: 0, y: -4 }, 3);
    const neck = sectionOf(estimateOf(piece, 'walnut', 3), 'neck');
    assertNear(neck.widthMm, 4, 0.01);
    assertNear(neck.ends[0].y, -25, 0.1);
    assertClose(neck.effectiveMm, 0.4, 0.02);
  });

  it('is none where it does not part the hanger from the bulk', () => {
    // A thin tail below the plate, and a thin tab beside it, bear nothing of the pull.
    const body = unite(box(-10, -40, 10, 0), box(-0.5, -60, 0.5, -39), box(9, -2, 20, -1), box(-3, -66, 3, -60));
    const estimate = estimateOf(drilled(body, { x: 0, y: -4 }, 3), 'walnut', 3);
    for (const { widthMm, what } of estimate.sections) assert.ok(widthMm > 2, `${what} ${widthMm}`);
  });

  it('adds up strokes side by side, which part the piece only together', () => {
    const frame = subtract([box(-10, -60, 10, 0)], [box(-8, -40, 8, -12)]);
    const estimate = estimateOf(drilled(frame, { x: 0, y: -5 }, 3), 'walnut', 3);
    const strokes = sectionOf(estimate, 'strokes');
    assert.equal(strokes.count, 2);
    assertClose(strokes.totalMm, 4);
    assertClose(strokes.newtons.across, 4.8 * 3 * 4);
    assert.ok(strokes.ends.every(({ y }) => y < -12 && y > -40));
  });

  // An independent library (Clipper2) cuts the piece there: it must fall apart, the bulk away from the hanger.
  for (const [text, font, at] of [
    ['Angelica', 'Pacifico', 'left'],
    ['Chamomile', 'Pacifico', 'left'],
    ['Sorrel', 'Pacifico', 'right'],
    ['S', 'Nunito', 'top'],
  ] as const) {
    it(`of “${text}” in ${font}, cut through, drops most of the piece`, async () => {
      const ring = `body: [body], hanger: {ring: {at: ${at}}}`;
      const made = await make(specOf([`body: {text: ${text}, font: ${font}, width: 60, grow: 0.5}`], ring));
      const [piece] = made.pieces as [Piece];
      const { ends, widthMm } = sectionOf(estimateOf(piece, 'walnut', 3), 'neck');
      const [a, b] = ends;
      assertNear(Math.hypot(b.x - a.x, b.y - a.y), widthMm, 1e-9);
      const [ux, uy] = [(b.x - a.x) / widthMm, (b.y - a.y) / widthMm];
      // 0.02 mm beyond both edges, 0.02 mm wide.
      const corner = (p: typeof a, along: number, aside: number) => ({
        x: p.x + along * ux - aside * uy,
        y: p.y + along * uy + aside * ux,
      });
      const saw = [corner(a, -0.02, -0.01), corner(b, 0.02, -0.01), corner(b, 0.02, 0.01), corner(a, -0.02, 0.01)];
      const bulk = largestOf(subtract(piece.region, [saw]));
      // Of the part that hangs, not of letters that stand apart.
      const whole = largestOf(piece.region).area;
      assert.ok(bulk.area < 0.995 * whole && bulk.area > whole / 2, `${bulk.area} of ${whole}`);
      const { centre, openingSize } = piece.hangers[0]!;
      const away = Math.min(...bulk.ring.map(({ x, y }) => Math.hypot(x - centre.x, y - centre.y)));
      assert.ok(away > openingSize / 2 + 0.5, 'the hanger is not part of it');
    });
  }
});

/** The largest outer ring; its area less that of holes in it is near enough here, as letters' counters are small. */
function largestOf(region: Region) {
  const area = (ring: Region[number]) =>
    ring.reduce((sum, p, i) => sum + p.x * ring[(i + 1) % ring.length]!.y - ring[(i + 1) % ring.length]!.x * p.y, 0) /
    2;
  const ring = region.reduce((best, other) => (area(other) > area(best) ? other : best));
  return { ring, area: area(ring) };
}
