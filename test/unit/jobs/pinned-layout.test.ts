/** What a pin does to the rest of a layout: nothing, where it leaves the rest its room. Places are compared as numbers. */

import assert from 'node:assert/strict';
import { boundsOf } from '../../../src/geometry/measure.ts';
import { layOutJob } from '../../../src/jobs/job.ts';
import type { LaidOutJob } from '../../../src/jobs/job.ts';
import { pieceId } from '../../../src/jobs/orders/job-piece.ts';
import { checkedJob, files, jobOf, laidOutJob } from '../support/jobs.ts';
import { distanceByJts } from '../support/reference.ts';
import { littleEffort, nestSoon, never } from '../support/sheets.ts';

/** A job on an offcut and three sheets of 200 × 100 mm, the last of them hardly used. */
const beside = {
  ...files,
  'orders.csv': 'name,quantity\nRue,4\nKale,5\n',
  'ply3.offcuts.yaml':
    'tagwright_offcuts: 1\noffcuts:\n  - {id: 4, outline: [[0, 0], [150, 0], [150, 50], [80, 50], [80, 110], [0, 110]]}\n',
};
const tags = ['{spec: plate.tag.yaml, quantity: 12}', '{spec: named.tag.yaml, orders: orders.csv}'];
const sheets = ['ply3: [{offcuts: ply3.offcuts.yaml}, {size: [200 mm, 100 mm]}]'];

const jobWith = (fixed: readonly string[]) =>
  jobOf(tags, sheets, fixed.length > 0 ? ['fixed:', ...fixed.map((each) => `  - ${each}`)] : []);
const laidWith = (...fixed: readonly string[]) => laidOutJob(jobWith(fixed), beside);

/** Where each piece lies, by its id. */
const placesOf = ({ layout }: LaidOutJob) =>
  new Map(
    layout.sheets.flatMap(({ name, offcut, number, pieces }) =>
      pieces.map(({ of, region }) => {
        const { minX, minY } = boundsOf(region)!;
        const on = `${offcut ? 'offcut' : 'sheet'}: ${number}`;
        return [pieceId(of), { of, on, sheet: name, x: Math.round(minX * 100), y: Math.round(minY * 100) }] as const;
      }),
    ),
  );

const namesOf = ({ layout }: LaidOutJob) => layout.sheets.map(({ name }) => name);

type Place = ReturnType<typeof placesOf> extends Map<string, infer P> ? P : never;

const pinOf = ({ of, on, x, y }: Place, aside = 0) => {
  const tag = of.of.label === '' ? '' : `tag: ${of.of.label}, `;
  return `{spec: ${of.of.spec}, ${tag}copy: ${of.copy}, ${on}, at: [${(x + aside) / 100} mm, ${y / 100} mm]}`;
};

describe('A pin', () => {
  it('where a piece lies already changes nothing', async () => {
    const plain = await laidWith();
    const places = placesOf(plain);
    const all = [...places.values()];
    // One of each sheet, and all of one.
    const ones = namesOf(plain).map((name) => [all.find(({ sheet }) => sheet === name)!]);
    for (const some of [...ones, all.filter(({ on }) => on === 'sheet: 1')]) {
      const pinned = await laidWith(...some.map((place) => pinOf(place)));
      assert.deepEqual(pinned.issues, []);
      assert.deepEqual(namesOf(pinned), namesOf(plain));
      for (const [id, { sheet, x, y }] of placesOf(pinned)) {
        const before = places.get(id)!;
        assert.deepEqual([sheet, x, y], [before.sheet, before.x, before.y], id);
      }
    }
  });

  it('that is in the way of others moves those alone, and takes no sheet more', async () => {
    const plain = await laidWith();
    const places = placesOf(plain);
    const pushed = [...places.values()].find(({ on, of }) => on === 'sheet: 1' && of.of.spec === 'plate.tag.yaml')!;
    const pinned = await laidWith(pinOf(pushed, 900));
    assert.deepEqual(namesOf(pinned), namesOf(plain));
    const changed = [...placesOf(pinned)].filter(([id, { sheet, x, y }]) => {
      const before = places.get(id)!;
      return sheet !== before.sheet || x !== before.x || y !== before.y;
    });
    assert.ok(changed.length > 1 && changed.length < places.size / 2, `${changed.length} of ${places.size}`);
    for (const { pieces } of pinned.layout.sheets)
      for (const [index, { enclosed }] of pieces.entries())
        for (const other of pieces.slice(0, index)) assert.ok(distanceByJts(enclosed, other.enclosed) >= 2 - 1e-3);
  });

  it('is laid out round once where it takes no sheet more: everything as without it, and what was in the way', async () => {
    let searches: number[] = [];
    const nest: typeof nestSoon = (parts, ...rest) => {
      searches.push(parts.length);
      return nestSoon(parts, ...rest);
    };
    const counted = async (...fixed: readonly string[]) => {
      searches = [];
      const job = await checkedJob(jobWith(fixed), beside);
      const laid = (await layOutJob(job, { checkpoint: never, effort: littleEffort, nest }))!;
      return { laid, searches };
    };
    const plain = await counted();
    const pushed = [...placesOf(plain.laid).values()].find(
      ({ on, of }) => on === 'sheet: 1' && of.of.spec === 'plate.tag.yaml',
    )!;
    const pinned = await counted(pinOf(pushed, 900));
    assert.deepEqual(pinned.searches.slice(0, plain.searches.length), plain.searches);
    const more = pinned.searches.slice(plain.searches.length);
    const all = placesOf(plain.laid).size;
    assert.ok(
      more.every((count) => count < all / 4),
      `${more.join(', ')} of ${all}`,
    );
  });
});
