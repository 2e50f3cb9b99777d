import assert from 'node:assert/strict';
import { contains } from '../../../src/geometry/measure.ts';
import { assertNear, make, placeOf, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertSilent, found, only } from './found.ts';

const wide = 'wide: {rectangle: [60, 20], radius: 6}';
const narrow = 'narrow: {rectangle: [30, 20], radius: 5}';

function stack(keys: string, members = [wide, narrow], rest = ''): Promise<Made> {
  return make(
    specOf([...members, `body: {stack: {shapes: [wide, narrow]${keys}}${rest}}`], 'body: [body], parts: many'),
  );
}

/** Exact: the notch beside a corner of radius r, from where it begins to turn to a depth d: a rectangle less a stretch of disc. */
function notch(r: number, d: number): number {
  return r * d - (d * Math.sqrt(r * r - d * d) + r * r * Math.asin(d / r)) / 2;
}

describe('The shoulders of a stack', () => {
  it('are hidden where the lap is left out', async () => {
    const narrows = [
      narrow,
      'narrow: {rectangle: [58, 20], radius: 5}',
      'narrow: {rectangle: [30, 20]}',
      'narrow: {polygon: {sides: 6, across: 30}}',
      'narrow: {rectangle: [90, 20], radius: 8}',
    ];
    for (const each of narrows) assertSilent(await stack('', [wide, each]), 'shoulder-shows', each);
  });

  it('show where the lap is less than the corner’s radius, with the lap that hides them', async () => {
    const made = await stack(', lap: 2');
    const issue = only(made, 'shoulder-shows');
    assert.equal(issue.severity, 'warning');
    // Exact: the side of the narrower one begins at its radius.
    assertNear(issue.width!, 5, 0.01);
    assert.match(issue.message, /“narrow” joins the shape before it; a lap of 5\.00 mm hides them/);
    const place = placeOf(made.report, issue);
    assert.equal(place.line, 5);
    assert.equal(place.text, '{shapes: [wide, narrow], lap: 2}');
    // The pin is in a notch: beside the narrower member, just below the wider one.
    const [{ x, y }] = issue.points as [{ x: number; y: number }];
    assert.ok(!contains(made.region, { x, y }));
    assert.ok(Math.abs(x) > 13 && Math.abs(x) < 15);
    assert.ok(contains(made.region, { x, y: y + 3.5 }) && contains(made.region, { x, y: y - 3.5 }));
    assertSilent(await stack(`, lap: ${issue.width!.toFixed(2)}`), 'shoulder-shows');
  });

  it('of a point on a plate with round corners are lapped until nobody sees a nick, and said where the lap leaves one', async () => {
    const members = [
      'wide: {rectangle: [70, 26], radius: 3}',
      'narrow: {polygon: {points: [[0, 0], [18, 13], [0, 26]]}}',
    ];
    assertSilent(await stack(', towards: right', members), 'shoulder-shows');
    for (const lap of [0, 1, 3, 5]) only(await stack(`, towards: right, lap: ${lap}`, members), 'shoulder-shows');
    // Sharp corners have none, nor does what leaves the plate in a step.
    const square = ['wide: {rectangle: [70, 26]}', members[1]!];
    assertSilent(await stack(', towards: right', square), 'shoulder-shows');
    assertSilent(
      await stack(', towards: right', [
        'wide: {rectangle: [70, 26], radius: 3}',
        'narrow: {rectangle: [70, 26], radius: 4}',
      ]),
      'shoulder-shows',
    );
  });

  it('show where sharp corners only touch a round member, with the lap at which they lie on it', async () => {
    const members = ['wide: {circle: 50}', 'narrow: {rectangle: [20, 12]}'];
    const made = await stack(', lap: 0.5', members);
    const issue = only(made, 'shoulder-shows');
    // The sagitta of a chord c in a circle of radius r: r − √(r² − c²/4).
    assertNear(issue.width!, 25 - Math.sqrt(25 ** 2 - 10 ** 2), 0.02);
    assert.ok(!contains(made.region, issue.points![0]!), 'in the gap');
    assertSilent(await stack('', members), 'shoulder-shows');
    assertSilent(await stack(', lap: 2.1', members), 'shoulder-shows');
  });

  for (const towards of ['down', 'up', 'left', 'right']) {
    it(`are the same towards the ${towards}, turned and mirrored`, async () => {
      const members = ['left', 'right'].includes(towards)
        ? ['wide: {rectangle: [20, 60], radius: 6}', 'narrow: {rectangle: [20, 30], radius: 5}']
        : [wide, narrow];
      for (const rest of ['', ', rotate: 30', ', mirror: up-down', ', nudge: {right: 9}']) {
        const made = await stack(`, towards: ${towards}, lap: 2`, members, rest);
        const issue = only(made, 'shoulder-shows');
        assertNear(issue.width!, 5, 0.01);
        assert.ok(!contains(made.region, issue.points![0]!), 'in the notch');
      }
    });
  }

  it('are told of the narrower member, be it the first or the second', async () => {
    const issue = only(
      await stack(', lap: 2', ['wide: {rectangle: [30, 20], radius: 5}', 'narrow: {rectangle: [60, 20], radius: 6}']),
      'shoulder-shows',
    );
    assertNear(issue.width!, 5, 0.01);
  });

  it('are told at each join of three members', async () => {
    const shapes = [
      wide,
      narrow,
      'third: {rectangle: [50, 20], radius: 4}',
      'body: {stack: {shapes: [wide, narrow, third], lap: 2}}',
    ];
    const reported = found(await make(specOf(shapes)), 'shoulder-shows');
    assert.deepEqual(
      reported.map(({ message }) => /“(\w+)”/.exec(message)?.[1]),
      ['narrow', 'third'],
    );
    for (const { width } of reported) assertNear(width!, 5, 0.01);
    const hidden = found(await make(specOf(shapes.map((line) => line.replace('lap: 2', 'lap: 5')))), 'shoulder-shows');
    assert.deepEqual(hidden, []);
  });

  it('are judged at the size they end at, and the lap is told as it is written', async () => {
    for (const rest of [', width: 120', ', width: 30', ', width: 120, height: 50']) {
      const issue = only(await stack(', lap: 2', [wide, narrow], rest), 'shoulder-shows');
      assertNear(issue.width!, 5, 0.01);
      assertSilent(await stack(', lap: 5', [wide, narrow], rest), 'shoulder-shows', rest);
    }
  });

  it('are not seen where a corner has hardly begun to turn', async () => {
    // A notch of less than 0.05 mm² (our own judgement).
    for (const [radius, seen, unseen] of [
      [5, 1.3, 1.05],
      [3, 1.05, 0.9],
    ] as const) {
      assert.ok(notch(radius, seen) > 0.055 && notch(radius, unseen) < 0.045);
      const members = [wide, `narrow: {rectangle: [30, 20], radius: ${radius}}`];
      only(await stack(`, lap: ${radius - seen}`, members), 'shoulder-shows');
      assertSilent(await stack(`, lap: ${radius - unseen}`, members), 'shoulder-shows');
    }
  });

  it('are told once, not again for a copy', async () => {
    const shapes = [
      wide,
      narrow,
      'both: {stack: {shapes: [wide, narrow], lap: 2}}',
      'body: {from: both, nudge: {up: 50}}',
    ];
    only(await make(specOf(shapes)), 'shoulder-shows');
  });

  it('are none where a member has no corners: discs, triangles, ends that are all round', async () => {
    for (const each of [
      'narrow: {ellipse: 20}',
      'narrow: {ellipse: [30, 20]}',
      'narrow: {rectangle: [30, 20], radius: 10}',
      'narrow: {polygon: {sides: 3, across: 30}}',
    ]) {
      for (const lap of ['', ', lap: 3']) assertSilent(await stack(lap, [wide, each]), 'shoulder-shows', each + lap);
    }
    assertSilent(await stack(', lap: 3', ['wide: {ellipse: 40}', 'narrow: {ellipse: 24}']), 'shoulder-shows');
    assertSilent(
      await stack(', lap: 0', ['wide: {rectangle: [60, 20]}', 'narrow: {rectangle: [30, 20]}']),
      'shoulder-shows',
    );
  });

  it('show where no lap could hide them', async () => {
    // As wide as each other, the corners of both together as long as the shorter of them.
    const members = ['wide: {rectangle: [60, 20], radius: 8}', 'narrow: {rectangle: [60, 20], radius: 8}'];
    const issue = only(await stack('', members), 'shoulder-shows');
    assert.match(issue.message, /no lap hides them/);
    assert.equal(issue.width, undefined);
  });
});

describe('Arrows in a stack', () => {
  const arrow = (name: string, turn = ''): string =>
    `${name}: {arrow: {length: 60, width: 30, shaft: 16, tip: 90}${turn}}`;
  const plateOf = (one: string, two: string, towards: string) =>
    make(specOf([one, two, `plate: {stack: {shapes: [one, two], towards: ${towards}}}`], 'body: [plate]'));

  it('one behind the other keep their heads: a tip of 90° is as wide as the shaft at half of that', async () => {
    const right = await plateOf(arrow('one'), arrow('two'), 'right');
    assertNear(right.width, 60 + 60 - 8, 0.15);
    const up = await plateOf(arrow('one', ', rotate: -90'), arrow('two', ', rotate: -90'), 'down');
    assertNear(up.bounds.maxY - up.bounds.minY, 60 + 60 - 8, 0.15);
    for (const each of [right, up]) assertSilent(each, 'shoulder-shows');
  });

  it('touch a plate before them with their tail alone', async () => {
    const made = await plateOf('one: {rectangle: [40, 40], radius: 4}', arrow('two'), 'right');
    assertNear(made.width, 100, 0.03);
  });

  it('side by side are joined along their shafts without a slit, and say that the barbs between are lost', async () => {
    const made = await plateOf(arrow('one'), arrow('two'), 'down');
    // Exact: two shafts of 16 mm, and a barb of 7 mm above and below.
    assertNear(made.bounds.maxY - made.bounds.minY, 2 * 16 + 2 * 7, 0.1);
    assertSilent(made, 'gap-closes');
    assert.match(only(made, 'shoulder-shows').message, /^“two” and the shape before it run into each other/);
    const post = await make(
      specOf(
        [
          arrow('one'),
          arrow('two'),
          'post: {rectangle: [6, 40]}',
          'plate: {stack: {shapes: [one, post, two], towards: down}}',
        ],
        'body: [plate]',
      ),
    );
    assertSilent(post, 'shoulder-shows');
    assertSilent(post, 'loose-part');
  });
});
