import assert from 'node:assert/strict';
import { contourLength } from '../../../src/geometry/contour.ts';
import type { Contour } from '../../../src/geometry/contour.ts';
import { area } from '../../../src/geometry/measure.ts';
import type { Point } from '../../../src/geometry/types.ts';
import { engravingSeconds } from '../../../src/toolpath/hatching.ts';
import { secondsAcross, secondsAlong } from '../../../src/toolpath/motion.ts';
import type { Motion } from '../../../src/toolpath/motion.ts';
import { estimateJob } from '../../../src/toolpath/estimate.ts';
import type { JobEstimate } from '../../../src/toolpath/estimate.ts';
import { planCuts } from '../../../src/toolpath/cut-plan.ts';
import { estimateOfPiece, estimateOfTag } from '../../../src/export/job/known-estimates.ts';
import { estimateFacts, estimateLine } from '../../../src/export/words/estimate-facts.ts';
import { stepped } from '../support/contours.ts';
import { assertNear, make, specOf } from '../support/engine.ts';
import { samples } from '../support/samples.ts';
import { box, disc } from '../support/shapes.ts';

async function taken(text: string): Promise<JobEstimate> {
  const { tag } = (await make(text)).report;
  return estimateJob(tag!, planCuts(tag!)!);
}

/**
 * The time along a path by taking it in steps of a few micrometres: at each, the head goes as fast as it may and can still
 * brake for all that lies ahead. Bends and corners are measured on the steps. Nothing here knows of segments or trapezoids.
 */
function simulated(contour: Contour, { speed, acceleration, cornerJump }: Motion): number {
  const points = stepped(contour, 0.005);
  const steps = points.slice(1).map((point, i) => Math.hypot(point.x - points[i]!.x, point.y - points[i]!.y));
  const turns = points.map((_, i) => turnAt(points, i));
  const limits = points.map((_, i) => {
    if (i === 0 || i === points.length - 1) return 0;
    const beside = (turns[i - 1]! + turns[i + 1]!) / 2;
    // A turn well beyond those beside it is a corner; else it is the step of a bend.
    if (turns[i]! - beside > 0.004) return Math.min(speed, cornerJump / (2 * Math.sin(turns[i]! / 2)));
    const bend = Math.min(turns[i]!, Math.max(turns[i - 1]!, turns[i + 1]!));
    const length = (steps[i - 1]! + steps[i]!) / 2;
    return Math.min(speed, bend > 0 ? Math.sqrt((acceleration * length) / bend) : speed);
  });
  for (let i = limits.length - 2; i >= 0; i--)
    limits[i] = Math.min(limits[i]!, Math.sqrt(limits[i + 1]! ** 2 + 2 * acceleration * steps[i]!));
  let seconds = 0;
  let now = 0;
  for (let i = 1; i < limits.length; i++) {
    const next = Math.min(limits[i]!, Math.sqrt(now * now + 2 * acceleration * steps[i - 1]!));
    seconds += (2 * steps[i - 1]!) / (now + next);
    now = next;
  }
  return seconds;
}

function turnAt(points: readonly Point[], i: number): number {
  const [a, b, c] = [points[i - 1], points[i]!, points[i + 1]];
  if (!a || !c) return 0;
  const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y];
  return Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
}

const line = (length: number): Contour => ({
  start: { x: 0, y: 0 },
  segments: [{ type: 'line', to: { x: length, y: 0 } }],
  closed: false,
});

describe('The time along a path', () => {
  it('is that of a trapezoid, and of a triangle where the way is too short for full speed', () => {
    // Exact: 100 mm at 20 mm/s and 200 mm/s²: 0.1 s up, 98 mm at speed, 0.1 s down. 1 mm: √(1·200) at the middle.
    const motion = { speed: 20, acceleration: 200, cornerJump: 5 };
    assertNear(secondsAlong(line(100), motion), 0.2 + 98 / 20, 1e-12);
    assertNear(secondsAlong(line(1), motion), 2 * Math.sqrt(1 / 200), 1e-12);
    assertNear(secondsAcross(100, motion), 5.1, 1e-12);
    assert.equal(secondsAcross(0, motion), 0);
  });

  it('is that of the whole for a line in pieces, wherever it is divided: it gains and brakes over more than one', () => {
    // Exact: 2·√(s/a), the whole too short for full speed.
    const motion = { speed: 1000, acceleration: 200, cornerJump: 5 };
    for (const at of [1, 7, 20, 33, 39]) {
      const pieces = [at, 40].map((x) => ({ type: 'line' as const, to: { x, y: 0 } }));
      assertNear(
        secondsAlong({ ...line(40), segments: pieces }, motion),
        2 * Math.sqrt(40 / 200),
        1e-12,
        `at ${at} mm`,
      );
    }
  });

  it('is that of the whole also where full speed is reached, and gained or lost over more than one piece', () => {
    // Exact: 1 mm and 0.1 s each from rest to 20 mm/s and back at 200 mm/s², and 38 mm between them.
    const motion = { speed: 20, acceleration: 200, cornerJump: 5 };
    for (const stops of [[0.5], [0.25, 0.5, 0.9], [39.5], [39.1, 39.5, 39.75], [0.3, 39.7]]) {
      const segments = [...stops, 40].map((x) => ({ type: 'line' as const, to: { x, y: 0 } }));
      assertNear(secondsAlong({ ...line(40), segments }, motion), 0.2 + 38 / 20, 1e-12, stops.join(', '));
    }
  });

  it('has the head slow for a corner until it turns no harder than it may', () => {
    // Exact: at a right angle 2·v·sin 45° = Δv, so v = 5/√2; a square that begins in a corner, at rest, passes three.
    const v = 5 / Math.SQRT2;
    const side = (a: number, b: number) => (20 - a) / 200 + (20 - b) / 200 + (50 - (800 - a * a - b * b) / 400) / 20;
    const square: Contour = {
      start: { x: 0, y: 0 },
      segments: [
        [50, 0],
        [50, 50],
        [0, 50],
        [0, 0],
      ].map(([x, y]) => ({ type: 'line', to: { x: x!, y: y! } })),
      closed: true,
    };
    const seconds = secondsAlong(square, { speed: 20, acceleration: 200, cornerJump: 5 });
    assertNear(seconds, 2 * side(0, v) + 2 * side(v, v), 1e-9);
  });

  it('has the head slow for a bend until it stays within its acceleration', () => {
    // Exact: on a radius of 2 mm at 200 mm/s² no faster than √400 = 20 mm/s.
    const circle: Contour = {
      start: { x: 2, y: 0 },
      segments: [
        { type: 'arc', to: { x: -2, y: 0 }, centre: { x: 0, y: 0 }, sweep: Math.PI },
        { type: 'arc', to: { x: 2, y: 0 }, centre: { x: 0, y: 0 }, sweep: Math.PI },
      ],
      closed: true,
    };
    const length = 4 * Math.PI;
    const seconds = secondsAlong(circle, { speed: 100, acceleration: 200, cornerJump: 5 });
    assertNear(seconds, 0.2 + (length - 2) / 20, 1e-9);
  });

  it('is within 1 % of a step-by-step simulation, for every cut of the samples and three machines', async () => {
    const machines: Motion[] = [
      { speed: 8, acceleration: 300, cornerJump: 2 },
      { speed: 25, acceleration: 1000, cornerJump: 5 },
      { speed: 120, acceleration: 3000, cornerJump: 12 },
    ];
    for (const name of ['1-', '3-', '5-', '6-']) {
      const { report } = await make(samples.find((sample) => sample.name.startsWith(name))!.text);
      const cuts = planCuts(report.tag!)!
        .steps.filter(({ operation }) => operation.startsWith('cut'))
        .flatMap(({ paths }) => paths.flatMap(({ contours }) => contours));
      for (const machine of machines) {
        const [ours, theirs] = [secondsAlong, simulated].map((time) =>
          cuts.reduce((sum, contour) => sum + time(contour, machine), 0),
        ) as [number, number];
        assertNear(ours, theirs, 0.01 * theirs, `${name} at ${machine.speed} mm/s`);
      }
    }
  }).timeout(180_000);
});

describe('The time of an engraved area', () => {
  const machine = { speed: 200, acceleration: 2000, hatch: 0.1 };

  it('is exact for a rectangle: each line its width and a turn', () => {
    // Exact: 300 lines of 40 mm, 0.2 s each, and 0.1 s to rest and 0.1 s to speed beside each.
    assertNear(engravingSeconds([box(0, 0, 40, 30)], machine), 300 * (0.2 + 0.2), 1e-9);
  });

  it('is nothing for nothing, and for the lines between two areas', () => {
    assert.equal(engravingSeconds([], machine), 0);
    // Exact: two times 10 lines of 10 mm, and none in the 1 mm between them.
    const apart = [box(0, 0, 10, 1), box(0, 2, 10, 3)];
    assertNear(engravingSeconds(apart, machine), 20 * (10 / 200 + 0.2), 1e-9);
  });

  it('has the head move on to where the next line begins, to and fro', () => {
    // Exact: a line of 10 mm to the right, 10 mm more, and one of 20 mm back.
    const step = [box(0, 0, 10, 0.1), box(0, 0.1, 20, 0.2)];
    assertNear(engravingSeconds(step, machine), (10 + 10 + 20) / 200 + 2 * 0.2, 1e-9);
  });

  it('runs over gaps within a line, and only over each line’s own width', () => {
    const lines = 200;
    // Exact: the mean chord of a disc of radius 10 is 5π; the turns take 0.2 s a line; the head also moves from line to line.
    const seconds = engravingSeconds([disc(0, 0, 10, 1e-4)], machine);
    assertNear(seconds, lines * ((5 * Math.PI) / 200 + 0.2) + 20 / 200, 0.01 * seconds);
    const two = engravingSeconds([box(0, 0, 5, 1), box(15, 0, 20, 1)], machine);
    assertNear(two, engravingSeconds([box(0, 0, 20, 1)], machine), 1e-9);
  });
});

describe('What a tag takes', () => {
  const machine =
    'machine: {cut: 10 mm/s, engrave: 200 mm/s, score: 50 mm/s, travel: 300 mm/s, acceleration: 1000 mm/s2}';
  const shapes = [
    'plate: {rectangle: [60, 20]}',
    'panel: {rectangle: [40, 10]}',
    'window: {ellipse: 6, nudge: {right: 25}}',
  ];
  const piece = 'body: [plate], engrave: [panel], score: [panel], cut: [window]';
  const spec = (...head: string[]) => specOf(shapes, piece, head);

  it('is lengths and areas by exact geometry', async () => {
    const estimate = await taken(spec('stock: {thickness: 3, density: 700}'));
    // Exact: the outline of 60 × 20 and a circle of 6; the panel of 40 × 10.
    assertNear(estimate.cutLength, 160 + 6 * Math.PI, 0.02);
    assertNear(estimate.scoreLength, 100, 1e-6);
    assertNear(estimate.engravedArea, 400, 1e-6);
    assertNear(estimate.sheetArea, 1200, 1e-6);
    // Exact: (1200 − 9π) mm² · 3 mm · 700 kg/m³.
    assertNear(estimate.weight!, (1200 - 9 * Math.PI) * 3 * 700e-6, 1e-3);
    assert.ok(estimate.travelLength > 0 && estimate.travelLength < 160);
  });

  it('is a time only where the machine is known, and says what is missing', async () => {
    assert.deepEqual((await taken(spec())).time, { missing: ['machine'] });
    assert.deepEqual((await taken(spec('machine: {cut: 10 mm/s}'))).time, { missing: ['score', 'engrave'] });
    const { time } = await taken(spec(machine));
    assert.ok('seconds' in time);
    assertNear(time.seconds, time.cut + time.score + time.engrave + time.travel, 1e-9);
    // About length by speed, and a little more for corners.
    assert.ok(time.cut > 17.8 && time.cut < 18.5, String(time.cut));
    // Exact: 100 lines of 40 mm at 200 mm/s, and 0.4 s of turning each.
    assertNear(time.engrave, 100 * (0.2 + 0.4), 1e-6);
  });

  it('is multiplied by passes', async () => {
    const once = (await taken(spec(machine))).time;
    const twice = (await taken(spec(machine.replace('}', ', passes: {cut: 2, engrave: 3}}')))).time;
    assert.ok('seconds' in once && 'seconds' in twice);
    assertNear(twice.cut, 2 * once.cut, 1e-9);
    assertNear(twice.engrave, 3 * once.engrave, 1e-9);
    assertNear(twice.score, once.score, 1e-9);
  });

  it('reads speeds in any unit', async () => {
    const mm = (await taken(spec(machine))).time;
    const minutes = (await taken(spec(machine.replace('10 mm/s', '600 mm/min')))).time;
    assert.deepEqual(minutes, mm);
    const inches = (await taken(spec(machine.replace('10 mm/s', '0.3937007874 in/s')))).time;
    assert.ok('cut' in mm && 'cut' in inches);
    assertNear(inches.cut, mm.cut, 1e-6);
    for (const wrong of ['fast', '10', '10 mm', '10 mm/s2', '-3 mm/s', '0 mm/s']) {
      const { issues } = (await import('../../../src/spec/parse.ts')).parseSpec(spec(`machine: {cut: "${wrong}"}`));
      assert.deepEqual(
        issues.map(({ code, path }) => [code, path.join('.')]),
        [['bad-value', 'machine.cut']],
        wrong,
      );
    }
  });

  it('is money by the sheet, the square metre or the square foot', async () => {
    // Exact: 1200 mm² of 600 × 400, of a million, and of 304.8².
    const sheet = await taken(
      spec('sheet: {size: [600, 400]}', 'stock: {price: {amount: 12, per: sheet, currency: EUR}}'),
    );
    assertNear(sheet.cost!.amount, 12 / 200, 1e-9);
    assert.equal(sheet.cost!.currency, 'EUR');
    assertNear((await taken(spec('stock: {price: {amount: 30, per: m2}}'))).cost!.amount, 0.036, 1e-9);
    assertNear((await taken(spec('stock: {price: {amount: 3, per: ft2}}'))).cost!.amount, 3600 / 92903.04, 1e-9);
    assert.equal((await taken(spec())).cost, undefined);
  });

  it('weighs nothing unknown: the published density of a material, and none where there is none', async () => {
    const { weight } = await taken(spec('stock: {thickness: 3, material: walnut}'));
    // Wood Handbook FPL-GTR-190, table 5-3a: black walnut, specific gravity 0.55, so 616 kg/m³ at 12 % moisture.
    assertNear(weight!, (1200 - 9 * Math.PI) * 3 * 616e-6, 1e-3);
    assert.equal((await taken(spec('stock: {thickness: 3, material: moon cheese}'))).weight, undefined);
    assert.equal((await taken(spec('stock: {material: walnut}'))).weight, undefined);
  });

  it('adds up over the plan: cut length is that of its paths', async () => {
    const { tag } = (await make(samples.find(({ name }) => name.startsWith('4-'))!.text)).report;
    const plan = planCuts(tag!)!;
    const estimate = estimateJob(tag!, plan);
    const expected = plan.steps
      .filter(({ operation }) => operation.startsWith('cut'))
      .flatMap(({ paths }) => paths.flatMap(({ contours }) => contours.map(contourLength)))
      .reduce((sum, length) => sum + length, 0);
    assertNear(estimate.cutLength, expected, 1e-9);
    assert.ok(estimate.weight! > 0);
    assertNear(estimate.weight!, tag!.pieces.reduce((sum, { region }) => sum + area(region), 0) * 3 * 414e-6, 1e-6);
  });

  it('is told in words: all that is known, and of a piece by itself as of a tag of it alone', async () => {
    const machine =
      'machine: {cut: 10 mm/s, score: 50 mm/s, engrave: 200 mm/s, travel: 100 mm/s, acceleration: 1000 mm/s2}';
    const stock =
      'stock: {thickness: 3 mm, material: walnut, kerf: 0.2 mm, price: {amount: 30, per: m2, currency: EUR}}';
    const text = (pieces: string) => `tagwright: 1
${stock}
${machine}
shapes: {plate: {rectangle: [60 mm, 20 mm]}, line: {rectangle: [30 mm, 5 mm]}}
pieces: {${pieces}}
`;
    const scored = 'a: {body: [plate], score: [line]}';
    const two = (await make(text(`${scored}, b: {body: [plate], engrave: [line]}`))).report.tag!;
    const [one, other] = two.pieces.map((piece) => estimateOfPiece(two, piece)!);
    const alone = (await make(text(scored))).report.tag!;
    assert.deepEqual(one, estimateOfTag(alone));
    assert.equal(estimateOfPiece(two, two.pieces[0]!), one, 'planned once');
    assertNear(estimateOfTag(two)!.cutLength, one!.cutLength + other!.cutLength, 0.01);

    // A rectangle grown by half a kerf with round corners: 2·(60 + 20) + 0.2·π mm.
    const facts = new Map(estimateFacts(one!, 'mm').map(({ name, value }) => [name, value]));
    assert.deepEqual([...facts.keys()], ['Cut', 'Score', 'Travel', 'Sheet', 'Machine', 'Weight', 'Material cost']);
    assert.equal(facts.get('Cut'), `${(160 + 0.2 * Math.PI).toFixed(1)} mm`);
    assert.equal(facts.get('Score'), '70 mm');
    assert.equal(facts.get('Material cost'), `${((60.2 * 20.2 * 30) / 1e6).toFixed(2)} EUR`);
    assert.match(facts.get('Machine')!, /^about \d+ s$/);
    assert.equal(
      estimateLine(one!, 'mm'),
      `cut ${facts.get('Cut')!} · ${facts.get('Machine')!} · ${facts.get('Weight')!}`,
    );
    // Long ways as metres, or as feet of 304.8 mm (exact, international foot).
    const cutOf = (cutLength: number, units: 'mm' | 'in') => estimateFacts({ ...one!, cutLength }, units)[0]!.value;
    assert.deepEqual(
      [999.4, 1000, 3486.7, 16590.9].map((mm) => cutOf(mm, 'mm')),
      ['999.4 mm', '1 m', '3.49 m', '16.6 m'],
    );
    assert.deepEqual(
      [35 * 25.4, 36 * 25.4, 16590.9].map((mm) => cutOf(mm, 'in')),
      ['35 in', '3 ft', '54.4 ft'],
    );
    const inches = new Map(estimateFacts(other!, 'in').map(({ name, value }) => [name, value]));
    assert.equal(inches.get('Engraved'), `${(150 / 645.16).toFixed(2)} in², lines 0.0039 in apart`);
    assert.equal(inches.has('Score'), false);
  });
});
