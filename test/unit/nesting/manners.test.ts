import assert from 'node:assert/strict';
import { nest } from '../../../src/nesting/nest.ts';
import type { PartToNest } from '../../../src/nesting/layout.ts';
import { assertKept, moved, never } from '../support/sheets.ts';
import { disc, seededRandom, star, unite } from '../support/shapes.ts';

const random = seededRandom(21);
const blot = () =>
  unite(...Array.from({ length: 6 }, () => disc(20 * random(), 10 * random(), 2 + 4 * random(), 0.01)));
const parts: readonly PartToNest[] = Array.from({ length: 10 }, (_, i) => ({
  region: i % 3 === 0 ? [star(6, 6, 12)] : blot(),
  turns: i % 2 === 0 ? 'half' : 'quarter',
}));
const room = { width: 100, height: 80, margin: 4, gap: 1 };

describe('Laying out', () => {
  it('gives the same for the same parts, however often and whatever was laid out before', async () => {
    const first = await nest(parts, room, never, 500_000);
    await nest(parts.slice(3), { ...room, gap: 3 }, never, 100_000);
    assert.deepEqual(await nest(parts, room, never, 500_000), first);
    assert.deepEqual(await nest(structuredClone(parts), room, never, 500_000), first);
  });

  it('does not depend on where parts are drawn', async () => {
    const away = parts.map(({ region, turns }) => ({
      region: moved(region, { a: 1, b: 0, c: 0, d: 1, e: 512, f: -128 }),
      turns,
    }));
    const [here, there] = [await nest(parts, room, never, 500_000), await nest(away, room, never, 500_000)];
    for (const [i, { transform: m }] of there.placements.entries()) {
      const expected = here.placements[i]!.transform;
      assert.deepEqual([m.a, m.b, m.c, m.d], [expected.a, expected.b, expected.c, expected.d]);
      assert.ok(Math.abs(m.e + 512 * m.a - 128 * m.c - expected.e) < 1e-6);
      assert.ok(Math.abs(m.f + 512 * m.b - 128 * m.d - expected.f) < 1e-6);
    }
  });

  it('takes parts of the same shape for what they are, wherever each is drawn', async () => {
    const row = Array.from({ length: 4 }, (_, i): PartToNest => ({
      region: moved([star(6, 6, 12)], { a: 1, b: 0, c: 0, d: 1, e: 40 * i, f: 7 * i }),
      turns: 'none',
    }));
    assertKept(row, room, await nest(row, room, never, 100_000));
  });

  it('stops when it is told to, wherever it is', async () => {
    let all = 0;
    await nest(parts, room, () => Promise.resolve(void (all += 1)), 500_000);
    assert.ok(all > 30, String(all));
    for (const at of [1, 5, Math.floor(all / 2), all]) {
      const stop = new Error('no longer wanted');
      let calls = 0;
      const checkpoint = () => {
        calls += 1;
        return calls === at ? Promise.reject(stop) : Promise.resolve();
      };
      await assert.rejects(nest(parts, room, checkpoint, 500_000), (error) => error === stop);
      assert.equal(calls, at);
    }
  });

  it('refuses lengths that are none', async () => {
    for (const wrong of [{ gap: -1 }, { margin: NaN }, { width: Infinity }]) {
      await assert.rejects(nest(parts, { ...room, ...wrong }, never), RangeError);
    }
  });

  it('takes no worse a layout for more effort', async () => {
    const tops: number[] = [];
    for (const effort of [1, 100_000, 3_000_000]) {
      const layout = await nest(parts, { ...room, height: 200, keep: 'width' }, never, effort);
      const laid = layout.placements.map(({ part, transform }) => moved(parts[part]!.region, transform));
      tops.push(Math.max(...laid.flat(2).map(({ y }) => y)));
    }
    // To within what parts settle by at the end.
    assert.ok(tops[0]! >= tops[1]! - 0.2 && tops[1]! >= tops[2]! - 0.2, String(tops));
    assert.ok(tops[2]! < tops[0]! - 0.5, String(tops));
  });

  it('gets better where shapes are many and all differ, before every two of them have met', async () => {
    const own = seededRandom(8);
    const differing = Array.from({ length: 18 }, (): PartToNest => {
      const discs = Array.from({ length: 7 }, () => disc(30 * own(), 12 * own(), 2 + 4 * own(), 0.05));
      return { region: unite(...discs), turns: 'none' };
    });
    const wide = { width: 150, height: 400, margin: 4, gap: 1, keep: 'width' } as const;
    const first = await nest(differing, wide, never, 1);
    const better = await nest(differing, wide, never, 2_000_000);
    assertKept(differing, wide, better);
    assert.ok(better.used < 0.98 * first.used, `${better.used} of ${first.used}`);
  });
});
