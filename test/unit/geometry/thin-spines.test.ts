import assert from 'node:assert/strict';
import { distance } from '../../../src/geometry/measure.ts';
import { thinSpines } from '../../../src/geometry/thin-spines.ts';
import type { Line } from '../../../src/geometry/types.ts';
import { assertNear } from '../support/engine.ts';
import { box, disc, polygon, unite } from '../support/shapes.ts';

const lengthOf = (line: Line): number => line.slice(1).reduce((sum, to, i) => sum + distance(line[i]!, to), 0);

describe('Middle lines of what is thin', () => {
  it('run along the axis of a bar between two bodies, from where it begins to be thin', () => {
    const [line, ...others] = thinSpines(unite(box(0, 0, 10, 10), box(10, 4.5, 20, 5.5), box(20, 0, 30, 10)), 1.5);
    assert.deepEqual(others, []);
    for (const { x, y } of line!.filter((point) => point.x > 10.5 && point.x < 19.5)) assertNear(y, 5, 0.01, `at ${x}`);
    // The first disc that is no longer thin touches both corners at the mouth: 0.75 across, so 0.56 before it.
    const inBodies = Math.sqrt(0.75 ** 2 - 0.5 ** 2);
    assertNear(lengthOf(line!), 10 + 2 * inBodies, 0.05);
  });

  it('are where the disc is smaller than asked, and nowhere else', () => {
    const bar = (height: number) => unite(box(0, 0, 10, 10), box(10, 0, 20, height), box(20, 0, 30, 10));
    assert.equal(thinSpines(bar(1.49), 1.5).length, 1);
    assert.equal(thinSpines(bar(1.51), 1.5).length, 0);
  });

  it('are not in corners and points', () => {
    assert.deepEqual(thinSpines([box(0, 0, 10, 10)], 1.5), []);
    assert.deepEqual(thinSpines(unite(box(0, 0, 10, 10), polygon([10, 2], [12, 5], [10, 8])), 1.5), []);
  });

  it('end with a stroke: the disc of that width goes as far as the stroke', () => {
    const [line] = thinSpines(unite(box(0, 0, 10, 10), box(10, 4.6, 20, 5.4)), 1.5);
    const end = Math.max(...line!.map(({ x }) => x));
    assert.ok(end + 0.75 > 19.9 && end + 0.75 < 20.4, `${end}`);
  });

  it('meet at forks, and follow a part that is thin all over', () => {
    const fork = thinSpines(unite(box(-10, -0.4, 10, 0.4), box(-0.4, 0, 0.4, 10)), 1.5);
    assert.equal(fork.length, 3);
    const ends = fork.map((line) => [line[0]!, line.at(-1)!].map(({ x, y }) => Math.hypot(x, y)));
    for (const each of ends) assert.ok(Math.min(...each) < 0.5 && Math.max(...each) > 9);
  });

  it('go round where a stroke does', () => {
    const ring = [disc(0, 0, 5), disc(0, 0, 4).toReversed()];
    const [line] = thinSpines(ring, 1.5);
    for (const { x, y } of line!) assertNear(Math.hypot(x, y), 4.5, 0.01);
    assertNear(lengthOf(line!), 2 * Math.PI * 4.5, 0.05);
  });

  it('end for any width, and there are none of a width that is none', () => {
    assert.deepEqual(thinSpines([box(0, 0, 10, 10)], 0), []);
    assert.deepEqual(thinSpines([], 1.5), []);
    assert.ok(thinSpines([box(0, 0, 10, 10)], 100).length >= 0);
  });
});
