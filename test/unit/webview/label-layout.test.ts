import assert from 'node:assert/strict';
import fc from 'fast-check';
import { crosses, overlap } from '../../../webview/preview/measure/edge-grid.ts';
import { layOut, type LabelToPlace } from '../../../webview/preview/measure/label-layout.ts';
import { type PlacedLabel, type LabelSpace } from '../../../webview/preview/measure/placed-labels.ts';
import type { SpotLabel } from '../../../webview/preview/measure/label-places.ts';
import { sizePlaces } from '../../../webview/preview/measure/size-lines.ts';
import type { Box, XY } from '../../../webview/common/camera/viewport.ts';

const stage = { width: 600, height: 400 };
const room: Box = [0, 0, 600, 400];
const size = { width: 70, height: 18 };
const empty: LabelSpace = { room, under: () => 'free', boxes: [], marks: [] };
const none: ReadonlyMap<string, string> = new Map();

const spot = (id: string, at: XY, more: Partial<SpotLabel> = {}): SpotLabel => ({
  id,
  at,
  size,
  from: 0,
  outwards: 0,
  isVital: false,
  ...more,
});

/** A plate in the middle of the stage, with an opening in the middle of it. */
const plate: Box = [150, 100, 450, 300];
const opening: Box = [290, 190, 310, 210];
const onPlate: LabelSpace = {
  ...empty,
  under: (box) => {
    if (overlap(box, opening)) return 'taken';
    if (!overlap(box, plate)) return 'free';
    return box[0] > plate[0] && box[1] > plate[1] && box[2] < plate[2] && box[3] < plate[3] ? 'material' : 'taken';
  },
};

const keysOf = (placed: ReadonlyMap<string, PlacedLabel>) => new Map([...placed].map(([id, { key }]) => [id, key]));

describe('What is written on the drawing', () => {
  it('overlaps nothing, wherever it is about something, and keeps on the stage', () => {
    const point = fc.tuple(fc.integer({ min: 5, max: 595 }), fc.integer({ min: 5, max: 395 }));
    fc.assert(
      fc.property(fc.array(point, { minLength: 1, maxLength: 6 }), (points) => {
        const wanted = points.map((at, nth) => spot(`${nth}`, at, { isVital: true }));
        const placed = [...layOut(wanted, empty, none).values()];
        assert.equal(placed.length, points.length);
        placed.forEach(({ box, lines: [leader] }, nth) => {
          assert.ok(box[0] >= 0 && box[1] >= 0 && box[2] <= 600 && box[3] <= 400, `${nth} is on the stage`);
          placed.forEach((other, which) => {
            if (which === nth) return;
            assert.ok(!overlap(box, other.box), `${nth} and ${which}`);
            assert.ok(!crosses(...leader!, other.box), `the leader of ${nth} and ${which}`);
          });
        });
      }),
      { seed: 3 },
    );
  });

  it('stands beside the material by a leader; on it only where there is no other place; never on an opening', () => {
    const beside = layOut([spot('hole', [300, 200], { from: 10 })], onPlate, none).get('hole')!;
    assert.ok(!overlap(beside.box, plate) && !beside.isOnMaterial);
    const [from, to] = beside.lines[0]!;
    assert.ok(Math.abs(Math.hypot(from[0] - 300, from[1] - 200) - 10) < 1e-9, 'it begins at the edge of the hole');
    assert.ok(to[0] >= beside.box[0] && to[0] <= beside.box[2] && to[1] >= beside.box[1] && to[1] <= beside.box[3]);
    const close = { ...onPlate, room: plate };
    const on = layOut([spot('hole', [300, 200], { from: 10 })], close, none).get('hole')!;
    assert.ok(on.isOnMaterial && !overlap(on.box, opening));
  });

  it('is left out where there is no room, the least important first; what is vital never is', () => {
    // Room for one label beside its spot.
    const narrow: LabelSpace = { ...empty, room: [0, 0, 130, 24] };
    const wanted = [spot('first', [15, 12]), spot('second', [16, 13])];
    assert.deepEqual([...layOut(wanted, narrow, none).keys()], ['first']);
    assert.deepEqual([...layOut(wanted.toReversed(), narrow, none).keys()], ['second']);
    const vital = wanted.map((label) => ({ ...label, isVital: true }));
    assert.equal(layOut(vital, narrow, none).size, 2);
  });

  it('says less where there is no room for all of it', () => {
    // All of a label only fits into the strip along the top.
    const under: LabelSpace['under'] = ([left, , right, bottom]) =>
      bottom <= 26 || right - left < 30 ? 'free' : 'taken';
    const narrow: LabelSpace = { ...empty, room: [0, 0, 130, 90], under };
    const wanted = [spot('first', [15, 12]), spot('second', [60, 60], { least: { width: 18, height: 18 } })];
    const placed = layOut(wanted, narrow, none);
    const [first, second] = [placed.get('first')!, placed.get('second')!];
    assert.deepEqual([first.isLeast, second.isLeast], [undefined, true]);
    assert.equal(second.box[2] - second.box[0], 18);
    assert.ok(!overlap(first.box, second.box));
  });

  it('turns aside sooner than have its leader run over a letter', () => {
    const letter: Box = [310, 100, 335, 300];
    const beside: LabelSpace = { ...empty, under: (box) => (overlap(box, letter) ? 'taken' : 'free') };
    const leaderIn = (around: LabelSpace) => layOut([spot('name', [300, 200])], around, none).get('name')!.lines[0]!;
    assert.ok(crosses(...leaderIn(empty), letter));
    assert.ok(!crosses(...leaderIn(beside), letter));
  });

  it('says less sooner than at the end of a long leader', () => {
    const least = { width: 18, height: 18 };
    const widthFrom = (free: number): number => {
      // All of a label only fits right of there.
      const under: LabelSpace['under'] = ([left, , right]) => (left >= free || right - left < 30 ? 'free' : 'taken');
      const [left, , right] = layOut([spot('name', [300, 200], { least })], { ...empty, under }, none).get('name')!.box;
      return right - left;
    };
    assert.deepEqual([widthFrom(340), widthFrom(480)], [size.width, least.width]);
  });

  it('makes room for what is vital by letting it choose first', () => {
    // The second, which is large, can only go right of its spot, where the first would go if it were asked first.
    const under: LabelSpace['under'] = ([left, top, , bottom]) =>
      left >= 300 || (left < 150 && bottom - top < 40) ? 'free' : 'taken';
    const tight = { ...empty, room: [0, 170, 420, 230] as const, under };
    const wanted = [
      spot('either', [250, 200], { isVital: true }),
      spot('right', [290, 200], { isVital: true, size: { width: 90, height: 50 } }),
    ];
    const placed = layOut(wanted, tight, none);
    assert.ok(placed.get('right')!.box[0] >= 300);
    assert.ok(placed.get('either')!.box[2] < 290, placed.get('either')!.box.join(' '));
  });

  it('hides neither what others are about nor what is written already', () => {
    const marks = [[[340, 195] as const, [420, 205] as const] as const];
    const boxes: Box[] = [[250, 100, 350, 180]];
    const { box } = layOut([spot('a', [300, 200])], { ...empty, marks, boxes }, none).get('a')!;
    assert.ok(!overlap(box, boxes[0]!) && !crosses(...marks[0]!, box));
  });

  it('stays on its side while one zooms in, and slides without a jump', () => {
    let last = none;
    let before: PlacedLabel | undefined;
    for (let step = 0; step <= 100; step++) {
      const scale = 1 + step / 100;
      const grown: Box = [300 - 150 * scale, 200 - 60 * scale, 300 + 150 * scale, 200 + 60 * scale];
      const under: LabelSpace['under'] = (box) => (overlap(box, grown) ? 'taken' : 'free');
      const placed = layOut(
        [spot('a', [300, 200 - 40 * scale], { outwards: -Math.PI / 2 })],
        { ...empty, under },
        last,
      );
      const now = placed.get('a')!;
      if (before) {
        assert.equal(now.key, before.key, `at ${scale}`);
        const moved = Math.hypot(now.box[0] - before.box[0], now.box[1] - before.box[1]);
        // A step is one hundredth of 60 px; a place is found to half a pixel.
        assert.ok(moved <= 1.2, `${moved} px at ${scale}`);
      }
      before = now;
      last = keysOf(placed);
    }
  });

  it('stays where it is though another place has become a little better', () => {
    const at: XY = [300, 200];
    const first = layOut([spot('a', at, { outwards: 0 })], empty, none);
    const turned = layOut([spot('a', at, { outwards: 0.9 })], empty, keysOf(first));
    assert.equal(turned.get('a')!.key, first.get('a')!.key);
    const far = layOut([spot('a', at, { outwards: 3 })], empty, keysOf(first));
    assert.notEqual(far.get('a')!.key, first.get('a')!.key);
  });
});

describe('The line of a size', () => {
  const wanted = (axis: 'width' | 'height'): LabelToPlace => {
    const turned = axis === 'width' ? size : { width: size.height, height: size.width };
    return { id: axis, size: turned, places: sizePlaces(axis, plate, stage, turned) };
  };

  it('runs below and right of what it measures, from end to end, its figure in the middle', () => {
    const placed = layOut([wanted('width'), wanted('height')], onPlate, none);
    assert.deepEqual(placed.get('width')!.lines[0], [
      [150, 320],
      [450, 320],
    ]);
    assert.deepEqual(placed.get('width')!.box, [265, 311, 335, 329]);
    assert.deepEqual(placed.get('height')!.lines[0], [
      [470, 100],
      [470, 300],
    ]);
    assert.deepEqual(placed.get('height')!.box, [461, 165, 479, 235]);
  });

  it('makes way, first along itself, then further out, then to the other side', () => {
    const at = (boxes: readonly Box[]) => layOut([wanted('width')], { ...onPlate, boxes }, none).get('width')!;
    const isAlong = at([]);
    assert.equal(at([[280, 322, 320, 330]]).lines[0]![0][1], isAlong.lines[0]![0][1]);
    assert.ok(
      at([[100, 305, 500, 325]]).lines[0]![0][1] < plate[1],
      'nothing may lie between the line and what it measures',
    );
    assert.ok(at([[200, 317, 400, 323]]).box[1] > 323);
  });

  it('has its figure where it is seen when the rest is beyond the stage', () => {
    const wide: Box = [-900, 100, 500, 300];
    const places = sizePlaces('width', wide, stage, size);
    const { box } = layOut([{ id: 'w', size, places }], empty, none).get('w')!;
    assert.ok(box[0] >= 0 && box[2] <= 500);
  });
});
