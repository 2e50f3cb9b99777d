import assert from 'node:assert/strict';
import { assertNear, make, placeOf, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertSilent, found, only, placesIn } from './found.ts';

function tag(shapes: readonly string[], hanger: string, minWeb = 1.5, rest = ''): Promise<Made> {
  return make(specOf(shapes, `body: [body]${rest}, hanger: {${hanger}}`, [`stock: {min_web: ${minWeb} mm}`]));
}

describe('A hole near an edge', () => {
  // Exact: in a disc of radius R, a round hole of radius r that is e off its centre leaves R − r − e. R 6, r 2, e 3.2: 0.8 mm.
  const disc = ['body: {ellipse: 12}'];
  const diagonal = (3.2 * Math.SQRT1_2).toFixed(5);
  for (const [name, at] of [
    ['top', 'up: 3.2'],
    ['bottom', 'down: 3.2'],
    ['left', 'left: 3.2'],
    ['right', 'right: 3.2'],
    ['top right', `up: ${diagonal}, right: ${diagonal}`],
    ['bottom left', `down: ${diagonal}, left: ${diagonal}`],
  ] as const) {
    it(`is told what is left, at the ${name}`, async () => {
      const made = await tag(disc, `hole: {diameter: 4, at: {${at}}}`, 0.83);
      const issue = only(made, 'hole-near-edge');
      assert.equal(issue.severity, 'warning');
      assert.equal(issue.piece, 'tag');
      assertNear(issue.width!, 0.8, 0.01);
      const { x: cx, y: cy } = made.pieces[0]!.hangers[0]!.centre;
      const fromHole = issue.points!.map(({ x, y }) => Math.hypot(x - cx, y - cy));
      const fromMiddle = issue.points!.map(({ x, y }) => Math.hypot(x, y));
      assertNear(Math.min(...fromHole), 2, 0.01);
      assertNear(Math.max(...fromMiddle), 6, 0.01);
      assert.equal(placeOf(made.report, issue).line, 6);
      assert.match(issue.message, /0\.(79|80) mm of material is left between the hole and an edge; minimum 0\.83 mm/);
      for (const code of ['weak-bridge', 'thin-stroke'] as const) assertSilent(made, code, 'the same place once');
    });
  }

  it('is silent where enough is left', async () => {
    assertSilent(await tag(disc, 'hole: {diameter: 4, at: {up: 3.2}}', 0.78), 'hole-near-edge');
  });

  it('is told on both sides of a strip', async () => {
    // Exact: (5 − 4) / 2.
    const made = await tag(['body: {rectangle: [40, 5]}'], 'hole: {diameter: 4, at: {left: 15}}');
    const reported = placesIn(only(made, 'hole-near-edge'));
    assert.deepEqual(
      reported.map(({ points }) => Math.sign(points[0]!.y)).sort((a, b) => a - b),
      [-1, 1],
    );
    for (const { width } of reported) assertNear(width!, 0.5, 0.01);
  });

  it('is told in an arrow’s tip: beside each edge, or once where all round the point is thin', async () => {
    // Exact: 4 mm behind a tip of 90°, each edge is 4·sin 45° away; 6 mm behind it, 6·sin 45°.
    const arrow = ['body: {arrow: {length: 60, width: 20, shaft: 10, tip: 90}}'];
    const made = await tag(arrow, 'hole: {diameter: 4, at: {right: 26}}');
    assertNear(only(made, 'hole-near-edge').width!, 4 * Math.SQRT1_2 - 2, 0.01);
    const back = 'hole: {diameter: 4, at: {right: 24}}';
    const finding = only(await tag(arrow, back, 2.3), 'hole-near-edge');
    assert.match(finding.message, /too close to an edge in 2 places: only 2\.24 mm of material/);
    const both = placesIn(finding);
    assert.equal(both.length, 2);
    for (const { width } of both) assertNear(width!, 6 * Math.SQRT1_2 - 2, 0.01);
    assertSilent(await tag(arrow, back, 2.2), 'hole-near-edge');
  });

  it('is told near another opening, and near a counter', async () => {
    // Exact: 6 − 2 − 3 = 1 mm from the window of radius 3.
    const window = ['body: {rectangle: [40, 20]}', 'window: {ellipse: 6}'];
    const cut = await tag(window, 'hole: {diameter: 4, at: {up: 6}}', 1.2, ', cut: [window]');
    assertNear(only(cut, 'hole-near-edge').width!, 1, 0.01);
    const counter = ['outer: {rectangle: [40, 20]}', 'inner: {ellipse: 6}', 'body: {difference: [outer, inner]}'];
    assertNear(only(await tag(counter, 'hole: {diameter: 4, at: {up: 6}}', 1.2), 'hole-near-edge').width!, 1, 0.01);
  });

  it('is silent where it is left to itself', async () => {
    for (const body of [
      '{rectangle: [60, 25], radius: 6}',
      '{ellipse: [50, 30]}',
      '{polygon: {sides: 6, across: 40}}',
    ]) {
      for (const at of ['top', 'left', '120']) {
        assertSilent(await tag([`body: ${body}`], `hole: {at: ${at}}`), 'hole-near-edge', `${body} at ${at}`);
      }
    }
  });
});

describe('A slot near an edge', () => {
  it('is told along its side, and at its end', async () => {
    const side = await tag(['body: {rectangle: [40, 20]}'], 'slot: {inset: 1}');
    const issue = only(side, 'hole-near-edge');
    assertNear(issue.width!, 1, 0.01);
    assert.match(issue.message, /between the slot and an edge/);
    // Exact: (14 − 12) / 2 at either end.
    const narrow = await tag(['body: {rectangle: [14, 30]}'], 'slot: {inset: 2, length: 12}');
    const ends = placesIn(only(narrow, 'hole-near-edge'));
    assert.equal(ends.length, 2);
    for (const { width } of ends) assertNear(width!, 1, 0.01);
    assertSilent(await tag(['body: {rectangle: [40, 20]}'], 'slot: {inset: 1.52}'), 'hole-near-edge');
  });
});

describe('A hole that holds nothing', () => {
  const disc = ['body: {ellipse: 12}'];

  it('is open to the edge', async () => {
    for (const at of ['up: 5', 'down: 5', 'left: 6.5', 'right: 4.3']) {
      const made = await tag(disc, `hole: {diameter: 4, at: {${at}}}`);
      const issue = only(made, 'hole-near-edge');
      assert.equal(issue.severity, 'error', at);
      assert.deepEqual(issue.points, [made.pieces[0]!.hangers[0]!.centre]);
      assert.match(issue.message, /The hole is open to the edge/);
      assert.equal(placeOf(made.report, issue).line, 6);
    }
    const slot = await tag(['body: {rectangle: [14, 30]}'], 'slot: {inset: 3, length: 14.2}');
    assert.match(only(slot, 'hole-near-edge').message, /The slot is open to the edge/);
  });

  it('is told the thin rest on its other side as well', async () => {
    // Exact: the hole's lower edge is at 0.6 − 2.5 = −1.9, the strip's at −3.
    const made = await tag(['body: {rectangle: [40, 6]}'], 'hole: {diameter: 5, at: {left: 10, up: 0.6}}');
    const [open, thin, ...others] = found(made, 'hole-near-edge');
    assert.deepEqual([open?.severity, thin?.severity, others.length], ['error', 'warning', 0]);
    assertNear(thin!.width!, 1.1, 0.01);
  });

  it('lies beside the body', async () => {
    for (const at of ['up: 15', 'right: 8.1']) {
      const issue = only(await tag(disc, `hole: {diameter: 4, at: {${at}}}`), 'hole-near-edge');
      assert.equal(issue.severity, 'error');
      assert.match(issue.message, /lies beside the body/);
    }
  });

  it('lies beside a body that is a ring, in the middle of which there is nothing', async () => {
    const ring = ['outer: {ellipse: 40}', 'inner: {ellipse: 30}', 'body: {difference: [outer, inner]}'];
    const issue = only(await tag(ring, 'hole: {diameter: 4, at: {up: 0}}'), 'hole-near-edge');
    assert.equal(issue.severity, 'error');
    assert.match(issue.message, /lies beside the body/);
    assertSilent(await tag(ring, 'hole: {diameter: 2, at: {up: 17.5}}', 1.4), 'hole-near-edge');
  });
});

describe('A hole that runs into another opening', () => {
  const window = ['body: {rectangle: [40, 20]}', 'window: {ellipse: 6}'];
  const beside = (up: number) => tag(window, `hole: {diameter: 4, at: {up: ${up}}}`, 0.2, ', cut: [window]');

  it('is an error, with what they share', async () => {
    const made = await beside(4);
    const issue = only(made, 'hole-near-edge');
    assert.equal(issue.severity, 'error');
    assert.equal(placeOf(made.report, issue).line, 7);
    const reported =
      /^The hole runs into another opening: it shares (\S+) mm² with the cut “window”, and the tie slips into that\.$/;
    // Exact: the lens of two circles, radii r and R, d apart: r²·acos(a/r) − a·√(r² − a²) of each, a = (d² + r² − R²)/2d.
    const segment = (r: number, a: number) => r * r * Math.acos(a / r) - a * Math.sqrt(r * r - a * a);
    const a = (16 + 4 - 9) / 8;
    assertNear(Number(reported.exec(issue.message)?.[1]), segment(2, a) + segment(3, 4 - a), 0.01);
  });

  it('begins where they meet', async () => {
    // Exact: radii 2 and 3 meet at 5.
    assert.equal(only(await beside(4.97), 'hole-near-edge').severity, 'error');
    const apart = only(await beside(5.03), 'hole-near-edge');
    assert.equal(apart.severity, 'warning');
    assertNear(apart.width!, 0.03, 0.01);
    assertSilent(await beside(5.22), 'hole-near-edge');
  });

  it('is not there at all where the other takes all of it', async () => {
    const swallowed =
      /^The hole runs into another opening: it lies entirely inside the cut “window”, so there is no separate hole\.$/;
    for (const up of [0, 1]) {
      const issue = only(await beside(up), 'hole-near-edge');
      assert.equal(issue.severity, 'error');
      assert.match(issue.message, swallowed);
    }
    assert.doesNotMatch(only(await beside(1.5), 'hole-near-edge').message, swallowed);
  });

  it('may be a counter, a shape without a name, another hanger or a slot', async () => {
    const counter = ['outer: {rectangle: [40, 20]}', 'inner: {ellipse: 6}', 'body: {difference: [outer, inner]}'];
    const made = await tag(counter, 'hole: {diameter: 4, at: {up: 4}}');
    assert.match(only(made, 'hole-near-edge').message, /with an opening of the body, and the tie slips into that/);
    const plate = ['body: {rectangle: [60, 30]}'];
    const cut = ', cut: [{rectangle: [20, 3]}]';
    assert.match(
      only(await tag(plate, 'slot: {length: 12, at: {up: 1}}', 1.5, cut), 'hole-near-edge').message,
      /^The slot runs into another opening: it shares .* with a shape that is cut out,/,
    );
    const two = 'body: [body], hanger: [{hole: {diameter: 4, at: {left: 1}}}, {hole: {diameter: 4, at: {right: 1}}}]';
    const twice = await make(specOf(plate, two));
    const issue = only(twice, 'hole-near-edge');
    assert.match(issue.message, /with the other hole,/);
    assert.deepEqual(issue.path, ['pieces', 'tag', 'hanger', 1, 'hole']);
  });

  it('may be the hole of a ring that a cut reaches', async () => {
    const shapes = ['body: {rectangle: [40, 20]}', 'window: {rectangle: [4, 12], nudge: {up: 5}}'];
    const reached = (up: number) => tag(shapes, `ring: {at: top, diameter: 3, sink: ${up}}`, 0.2, ', cut: [window]');
    // Exact: the window ends at 11; the hole of a ring that touches the edge at 10 begins there.
    assert.match(only(await reached(0), 'hole-near-edge').message, /^The hole of the ring runs into another opening/);
    const lower = ['body: {rectangle: [40, 20]}', 'window: {rectangle: [4, 12], nudge: {up: 1.5}}'];
    assertSilent(await tag(lower, 'ring: {at: top, diameter: 3, sink: 1}', 0.2, ', cut: [window]'), 'hole-near-edge');
  });

  it('is none where the body has just that hole already, or where it only has a nick', async () => {
    const own = ['outer: {rectangle: [40, 20]}', 'inner: {ellipse: 4}', 'body: {difference: [outer, inner]}'];
    assertSilent(await tag(own, 'hole: {diameter: 4, at: {up: 0}}'), 'hole-near-edge');
    // A twentieth of the hole of 12.57 mm² is 0.63: a nick half outside, 0.6 or 0.7 mm² of it.
    for (const [size, reported] of [
      [1.08, false],
      [1.28, true],
    ] as const) {
      const nicked = ['body: {rectangle: [40, 20]}', `nick: {ellipse: ${size}, nudge: {up: 2}}`];
      const made = await tag(nicked, 'hole: {diameter: 4, at: {up: 0}}', 0.2, ', cut: [nick]');
      assert.equal(found(made, 'hole-near-edge').length, reported ? 1 : 0, `${size}`);
    }
  });

  it('is none in an engraved field, and none for a ring that is set into the body on purpose', async () => {
    const field = ['body: {rectangle: [60, 30]}', 'field: {rectangle: [50, 20]}'];
    assertSilent(await tag(field, 'hole: {diameter: 4, at: {up: 2}}', 1.5, ', engrave: [field]'), 'hole-near-edge');
    for (const sink of [0.5, 1, 2, 3]) {
      assertSilent(await tag(['body: {rectangle: [60, 30]}'], `ring: {at: top, sink: ${sink}}`), 'hole-near-edge');
    }
  });
});
