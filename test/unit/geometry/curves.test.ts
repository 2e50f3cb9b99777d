import assert from 'node:assert/strict';
import { Bezier } from 'bezier-js';
import svgpath from 'svgpath';
import { curveBounds, reverseCurves, transformCurves } from '../../../src/geometry/curves.ts';
import { flatten, flatteningToleranceMm } from '../../../src/geometry/flatten.ts';
import type { CurveCommand, CurvePath } from '../../../src/geometry/curves.ts';
import type { Affine, Point, Ring } from '../../../src/geometry/types.ts';
import { seededRandom } from '../support/shapes.ts';

type Drawn = Exclude<CurveCommand, { type: 'M' | 'Z' }>;

const square: CurvePath = [
  { type: 'M', x: 0, y: 0 },
  { type: 'L', x: 10, y: 0 },
  { type: 'L', x: 10, y: 10 },
  { type: 'L', x: 0, y: 10 },
  { type: 'Z' },
];

/** Four cubics with the usual constant κ = 0.5522847498. */
function circle(radius: number): CurvePath {
  const k = 0.5522847498 * radius;
  const r = radius;
  const quarter = (x1: number, y1: number, x2: number, y2: number, x: number, y: number): CurveCommand => {
    return { type: 'C', x1, y1, x2, y2, x, y };
  };
  return [
    { type: 'M', x: r, y: 0 },
    quarter(r, k, k, r, 0, r),
    quarter(-k, r, -r, k, -r, 0),
    quarter(-r, -k, -k, -r, 0, -r),
    quarter(k, -r, r, -k, r, 0),
    { type: 'Z' },
  ];
}

/** Closed by a straight line, which is part of neither the curve nor the comparison. */
function randomCurves(count: number): { readonly from: Point; readonly command: Drawn; readonly bezier: Bezier }[] {
  const random = seededRandom(20);
  const coordinate = (): number => random() * 60 - 30;
  return Array.from({ length: count }, (_, i) => {
    const [x0, y0, x1, y1, x2, y2, x3, y3] = Array.from({ length: 8 }, coordinate) as [
      ...[number, number, number, number],
      ...[number, number, number, number],
    ];
    const from = { x: x0, y: y0 };
    return i % 2 === 0
      ? { from, command: { type: 'Q', x1, y1, x: x2, y: y2 }, bezier: new Bezier(x0, y0, x1, y1, x2, y2) }
      : {
          from,
          command: { type: 'C', x1, y1, x2, y2, x: x3, y: y3 },
          bezier: new Bezier(x0, y0, x1, y1, x2, y2, x3, y3),
        };
  });
}

function pathOf({ from, command }: { readonly from: Point; readonly command: Drawn }): CurvePath {
  return [{ type: 'M', x: from.x, y: from.y }, command];
}

function distanceToPolyline(point: Point, line: Ring): number {
  let least = Infinity;
  for (let i = 1; i < line.length; i++) {
    const a = line[i - 1]!;
    const b = line[i]!;
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const t = Math.min(1, Math.max(0, ((point.x - a.x) * dx + (point.y - a.y) * dy) / (dx * dx + dy * dy)));
    least = Math.min(least, Math.hypot(point.x - a.x - t * dx, point.y - a.y - t * dy));
  }
  return least;
}

function area(ring: Ring): number {
  return ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    return sum + (p.x * q.y - q.x * p.y) / 2;
  }, 0);
}

describe('curves', () => {
  it('cuts the quadratic (0,0)(5,10)(10,0) into 23 chords at 0.01 (Wang’s formula, as in Skia’s sources)', () => {
    const path: CurvePath = [
      { type: 'M', x: 0, y: 0 },
      { type: 'Q', x1: 5, y1: 10, x: 10, y: 0 },
    ];
    const [ring] = flatten(path, { tolerance: 0.01 });
    assert.equal(ring!.length, 23 + 1);
  });

  it('keeps every curve within the tolerance of its polygon (points of the curve by bezier-js)', () => {
    for (const tolerance of [flatteningToleranceMm, 0.05]) {
      for (const curve of randomCurves(60)) {
        const [ring] = flatten(pathOf(curve), { tolerance });
        const worst = Math.max(
          ...Array.from({ length: 500 }, (_, i) => distanceToPolyline(curve.bezier.get((i + 0.5) / 500), ring!)),
        );
        assert.ok(worst <= tolerance, `${worst} at tolerance ${tolerance}`);
      }
    }
  });

  it('encloses the area of the cubic circle, 3.1424723·R², within the tolerance times the perimeter', () => {
    const [ring] = flatten(circle(10));
    const exact = 3.1424723 * 100;
    assert.ok(Math.abs(area(ring!) - exact) < flatteningToleranceMm * 2 * Math.PI * 10, String(area(ring!)));
  });

  it('measures the tolerance after scaling, so that a large letter gets more points than a small one', () => {
    const scaled = (s: number): Affine => ({ a: s, b: 0, c: 0, d: s, e: 0, f: 0 });
    const small = flatten(circle(1), { affine: scaled(1) })[0]!.length;
    const large = flatten(circle(1), { affine: scaled(100) })[0]!.length;
    // Ten times the chords for a hundred times the size: the root in Wang's formula.
    assert.ok(large > small * 8 && large < small * 12, `${small} → ${large}`);
  });

  it('drops points that repeat, the closing point, and contours that enclose nothing', () => {
    const path: CurvePath = [
      { type: 'M', x: 0, y: 0 },
      { type: 'L', x: 0, y: 0 },
      { type: 'L', x: 4, y: 0 },
      { type: 'Q', x1: 4, y1: 0, x: 4, y: 0 },
      { type: 'L', x: 4, y: 4 },
      { type: 'L', x: 0, y: 0 },
      { type: 'Z' },
      { type: 'M', x: 9, y: 9 },
      { type: 'M', x: 7, y: 7 },
      { type: 'L', x: 8, y: 8 },
      { type: 'Z' },
    ];
    assert.deepEqual(flatten(path), [
      [
        { x: 0, y: 0 },
        { x: 4, y: 0 },
        { x: 4, y: 4 },
      ],
    ]);
  });

  it('takes up a contour where the last one began when no move comes between (SVG 2, section 9.3.4)', () => {
    const path: CurvePath = [...square, { type: 'L', x: -5, y: 0 }, { type: 'L', x: -5, y: 5 }, { type: 'Z' }];
    assert.deepEqual(flatten(path)[1], [
      { x: 0, y: 0 },
      { x: -5, y: 0 },
      { x: -5, y: 5 },
    ]);
    assert.deepEqual(flatten(reverseCurves(path)).map(area), [-100, 12.5]);
  });

  it('refuses coordinates that are no numbers or beyond all measure, and tolerances that are not above 0', () => {
    const ending = (command: Drawn): CurvePath => [...square.slice(0, -1), command];
    for (const bad of [NaN, Infinity, 1e200]) {
      assert.throws(() => flatten(ending({ type: 'Q', x1: bad, y1: 0, x: 1, y: 1 })), RangeError);
      assert.throws(() => flatten(ending({ type: 'C', x1: 0, y1: 0, x2: 0, y2: bad, x: 1, y: 1 })), RangeError);
    }
    assert.throws(() => flatten(ending({ type: 'L', x: NaN, y: 0 })), RangeError);
    for (const tolerance of [0, -1, NaN]) assert.throws(() => flatten(square, { tolerance }), RangeError);
  });

  it('finds the exact box of curves (bezier-js)', () => {
    for (const curve of randomCurves(400)) {
      const { x, y } = curve.bezier.bbox();
      const bounds = curveBounds(pathOf(curve))!;
      const pairs = [
        [bounds.minX, x.min],
        [bounds.maxX, x.max],
        [bounds.minY, y.min],
        [bounds.maxY, y.max],
      ] as const;
      for (const [ours, theirs] of pairs) assert.ok(Math.abs(ours - theirs) < 1e-9, `${ours} ${theirs}`);
    }
  });

  it('has no box where nothing is drawn', () => {
    assert.equal(curveBounds([]), undefined);
    assert.equal(curveBounds([{ type: 'M', x: 3, y: 4 }]), undefined);
    assert.deepEqual(curveBounds([{ type: 'M', x: 99, y: 99 }, ...square]), { minX: 0, minY: 0, maxX: 10, maxY: 10 });
  });

  it('maps curves as SVG’s matrix does (svgpath)', () => {
    for (const { from, command } of randomCurves(40)) {
      const path = pathOf({ from, command });
      const expected = svgpath(path.map((c) => Object.values(c).join(' ')).join('')).matrix([2, 1, -1, 2, 30, -7]);
      const mapped = transformCurves(path, { a: 2, b: 1, c: -1, d: 2, e: 30, f: -7 });
      expected.iterate((segment, i) => {
        const [, ...numbers] = Object.values(mapped[i]!) as [string, ...number[]];
        segment.slice(1).forEach((value, j) => {
          assert.ok(Math.abs(Number(value) - numbers[j]!) < 1e-9, `${value} ${numbers[j]}`);
        });
      });
    }
  });

  it('turns contours round without moving them', () => {
    const path = [...circle(5), ...square];
    const reversed = reverseCurves(path);
    assert.deepEqual(curveBounds(reversed), curveBounds(path));
    const before = flatten(path).map(area);
    const after = flatten(reversed).map(area);
    before.forEach((value, i) => {
      assert.ok(Math.abs(value + after[i]!) < 1e-9);
    });
  });
});
