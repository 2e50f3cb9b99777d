import assert from 'node:assert/strict';
import { build } from 'esbuild';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { nestHere, seeds } from '../../../src/nesting/best-of.ts';
import type { Layout, PartToNest } from '../../../src/nesting/layout.ts';
import { nest } from '../../../src/nesting/nest.ts';
import { packed, unpacked } from '../../../src/nesting/threads/messages.ts';
import { NestThreads } from '../../../src/nesting/threads/nest-threads.ts';
import { nodeThreads } from '../../../src/nesting/threads/node-thread.ts';
import { threadsFor } from '../../../src/nesting/threads/thread-count.ts';
import { polygon, seededRandom, star } from '../support/shapes.ts';
import { never } from '../support/sheets.ts';

const random = seededRandom(5);
const parts: readonly PartToNest[] = Array.from({ length: 14 }, (_, i) => ({
  region: [star(5 + Math.floor(3 * random()), 4 + 3 * random(), 8 + 5 * random())],
  turns: i % 2 === 0 ? 'half' : 'quarter',
}));
const room = { width: 90, height: 60, margin: 3, gap: 1 };
const effort = 400_000;

describe('Layouts found by several searches', () => {
  const folder = mkdtempSync(join(tmpdir(), 'tagwright-nest-'));
  const program = join(folder, 'nest-thread.mjs');
  const made: NestThreads[] = [];
  const threads = (...source: ConstructorParameters<typeof NestThreads>): NestThreads => {
    const own = new NestThreads(...source);
    made.push(own);
    return own;
  };
  before(async () => {
    await build({
      entryPoints: [join(import.meta.dirname, '../../../src/nesting/threads/node-serve.ts')],
      bundle: true,
      platform: 'node',
      format: 'esm',
      mainFields: ['module', 'main'],
      outfile: program,
    });
  });
  afterEach(() => {
    for (const each of made.splice(0)) each.end();
  });
  after(() => {
    rmSync(folder, { recursive: true });
  });

  it('are the best of them, the first where some are equal', async () => {
    const each: Layout[] = [];
    for (const seed of seeds) each.push(await nest(parts, room, never, effort, { seed }));
    const least = Math.min(...each.map(({ used }) => used));
    assert.deepEqual(
      await nestHere(parts, room, never, effort),
      each.find(({ used }) => used < least + 1e-9),
    );
    assert.ok(seeds.length > 1);
  });

  it('count the share of the last sheet that is used', async () => {
    const square: PartToNest = {
      region: [[0, 1, 2, 3].map((i) => ({ x: [0, 20, 20, 0][i]!, y: [0, 0, 20, 20][i]! }))],
      turns: 'none',
    };
    const sheet = { width: 60, height: 40, margin: 0, gap: 0, keep: 'width' as const };
    for (const [count, used] of [
      [1, 0.5],
      [3, 0.5],
      [4, 1],
      [6, 1],
      [7, 1.5],
    ] as const) {
      const layout = await nestHere(
        Array.from({ length: count }, () => square),
        sheet,
        never,
        10_000,
      );
      assert.ok(Math.abs(layout.used - used) < 1e-6, `${count}: ${layout.used}`);
    }
  });

  it('are the same in threads, in one as in two, again and again', async () => {
    const expected = await nestHere(parts, room, never, effort);
    const source = nodeThreads(program);
    for (const count of [1, 2]) {
      const { nest: there } = threads({ ...source, count });
      assert.deepEqual(await there(parts, room, never, effort), expected);
      assert.deepEqual(await there(parts, room, never, effort), expected);
    }
    const fixed = [[[star(6, 5, 9).map(({ x, y }) => ({ x: x + 20, y: y + 20 }))]]];
    const { nest: there } = threads({ ...source, count: 2 });
    assert.deepEqual(
      await there(parts, room, never, effort, { fixed }),
      await nestHere(parts, room, never, effort, { fixed }),
    );
  });

  it('leave a core to whoever asks, where there are more than two', () => {
    assert.deepEqual(
      [1, 2, 3, 4, 8].map((cores) => threadsFor(cores, 4)),
      [1, 2, 2, 3, 4],
    );
  });

  it('are the same where several layouts are asked for at once, in more threads too, and where those break', async () => {
    const others = parts.slice(3);
    const alone = [await nestHere(parts, room, never, effort), await nestHere(others, room, never, effort)];
    const start = () => {
      throw new Error('No thread.');
    };
    for (const { nest: nestThere } of [threads({ ...nodeThreads(program), count: 3 }), threads({ start, count: 3 })]) {
      assert.ok(nestThere.takesSeveral);
      const both = [parts, others].map((each) => nestThere(each, room, never, effort));
      assert.deepEqual(await Promise.all(both), alone);
    }
    assert.ok(!nestHere.takesSeveral);
  });

  it('end their threads at once where nobody keeps them', async () => {
    const source = nodeThreads(program);
    let ended = 0;
    const start = () => {
      const thread = source.start();
      const end = (): void => {
        ended += 1;
        thread.end();
      };
      return { ...thread, end };
    };
    const { nest: there } = threads({ start, count: 2 }, 0);
    const first = await there(parts, room, never, effort);
    assert.equal(ended, 2);
    assert.deepEqual(await there(parts, room, never, effort), first);
    assert.equal(ended, 4);
  });

  it('leave the thread free that asks for them', async () => {
    // Between two turns here lies a slice of the search, which is what holds up everything else.
    let slices = 0;
    await nestHere(
      parts,
      room,
      async () => {
        slices += 1;
        await setImmediate();
      },
      effort,
    );
    assert.ok(slices > 50, String(slices));
    const { nest: there } = threads({ ...nodeThreads(program), count: 2 });
    const state = { isDone: false };
    const laid = there(parts, room, never, effort).finally(() => (state.isDone = true));
    let turns = 0;
    for (; !state.isDone; turns += 1) await setImmediate();
    await laid;
    assert.ok(turns > 10 * slices, `${turns} turns while threads searched, ${slices} while this one did`);
  });

  it('are told on the way, each better than the one before', async () => {
    const { nest: there } = threads({ ...nodeThreads(program), count: 2 });
    const told: number[] = [];
    const last = await there(parts, room, never, 8 * effort, { onBetter: ({ used }) => told.push(used) });
    assert.ok(told.length > 0);
    for (const [i, used] of told.slice(1).entries()) assert.ok(used < told[i]!, String(told));
    assert.ok(last.used <= told.at(-1)! + 1e-9);
  });

  it('stop when nobody wants them, and the same threads search again', async () => {
    const { nest: there } = threads({ ...nodeThreads(program), count: 2 });
    const reason = new Error('no longer wanted');
    let asked = 0;
    const until = (most: number) => () => (asked++ >= most ? Promise.reject(reason) : Promise.resolve());
    // So much that it would take an hour.
    await assert.rejects(there(parts, room, until(6), 1e11), (error) => error === reason);
    asked = 0;
    await assert.rejects(there(parts, room, until(0), 1e11), (error) => error === reason);
    assert.deepEqual(await there(parts, room, never, effort), await nestHere(parts, room, never, effort));
  });

  it('are found here where threads break or cannot be had', async () => {
    const expected = await nestHere(parts, room, never, 200_000);
    const broken = join(folder, 'broken.mjs');
    writeFileSync(broken, 'throw new Error("no memory");\n');
    for (const file of [broken, join(folder, 'missing.mjs')]) {
      const { nest: there } = threads({ ...nodeThreads(file), count: 2 });
      assert.deepEqual(await there(parts, room, never, 200_000), expected);
      assert.deepEqual(await there(parts, room, never, 200_000), expected);
    }
    const start = () => {
      throw new Error('forbidden');
    };
    assert.deepEqual(await threads({ start, count: 2 }).nest(parts, room, never, 200_000), expected);
    assert.deepEqual(await threads().nest(parts, room, never, 200_000), expected);
  });

  it('refuse what the search refuses', async () => {
    const { nest: there } = threads({ ...nodeThreads(program), count: 2 });
    await assert.rejects(there(parts, { ...room, gap: -1 }, never, effort), RangeError);
  });
});

describe('A task for a thread', () => {
  it('comes out as it went in, through what messages are cloned by', () => {
    const [one, other] = [parts[0]!.region, [star(7, 3, 6), star(4, 1, 2), []]];
    const task = {
      parts: [
        { region: one, turns: 'none' as const },
        { region: other, turns: 'half' as const },
        { region: one, turns: 'quarter' as const },
        { region: [], turns: 'none' as const },
      ],
      room,
      effort: 7,
      fixed: [[other], [], [one, one]],
    };
    const there = unpacked(structuredClone(packed(task)));
    assert.deepEqual(there, task);
    // On the grid of regions, points take half the room.
    const whole = {
      ...task,
      parts: [{ region: [polygon([0, 0], [12.34567, 0], [0, 9])], turns: 'none' as const }],
      fixed: [],
    };
    assert.deepEqual(unpacked(structuredClone(packed(whole))), whole);
    assert.equal(packed(whole).regions.points.byteLength, 4 * 6);
  });
});
