import assert from 'node:assert/strict';
import { findNecks } from '../../../src/geometry/necks.ts';
import type { Neck } from '../../../src/geometry/necks.ts';
import type { Region } from '../../../src/geometry/types.ts';
import {
  box,
  disc,
  ellipse,
  polygon,
  roundedBox,
  seededRandom,
  star,
  subtract,
  transformed,
  unite,
} from '../support/shapes.ts';

/** A random piece and its necks by geometry (exact). Lengths in units of 1 mm at scale 1, where minWeb is 1.5. */
interface Case {
  readonly region: Region;
  readonly necks: readonly { readonly kind: Neck['kind'] | 'any'; readonly width: number }[];
}

type Family = (between: (low: number, high: number) => number, tolerance: number) => Case;

const minWeb = 1.5;

/** Widths stay clear of minWeb by 0.03 so that it is never in doubt whether a neck is to be reported. */
const thin = (between: (low: number, high: number) => number) => between(0.08, minWeb - 0.03);

const families: Record<string, Family> = {
  dumbbell: (between, tolerance) => {
    const width = thin(between);
    const [r1, r2] = [between(1.2, 8), between(1.2, 8)];
    const gap = between(0.1, 9);
    // The bar sinks into each disc by the sagitta of its width.
    const reach = (r: number) => Math.sqrt(r * r - (width / 2) ** 2);
    const distance = reach(r1) + gap + reach(r2);
    const region = unite(
      disc(0, 0, r1, tolerance),
      disc(distance, 0, r2, tolerance),
      box(0, -width / 2, distance, width / 2),
    );
    // The thin run goes on a little into the roots of the bar, so near the limit either kind is right.
    const kind = gap > 3 * minWeb ? 'stroke' : gap < 2 * minWeb ? 'bridge' : 'any';
    return { region, necks: [{ kind, width }] };
  },
  'overlapping discs': (between, tolerance) => {
    const width = between(0.3, minWeb - 0.03);
    const [r1, r2] = [between(1.3, 9), between(1.3, 9)];
    const reach = (r: number) => Math.sqrt(r * r - (width / 2) ** 2);
    // Where two arcs cross at a flat angle, flattening moves the crossing by up to radius / half the width as much.
    const finer = (tolerance * width) / (4 * Math.max(r1, r2));
    const region = unite(disc(0, 0, r1, finer), disc(reach(r1) + reach(r2), 0, r2, finer));
    return { region, necks: [{ kind: 'any', width }] };
  },
  'notched strip': (between, tolerance) => {
    const width = thin(between);
    const notch = between(0.2, 3);
    const strip = width + 2 * notch;
    const length = 4 * notch + between(6, 20);
    const at = between(notch + 3, length - notch - 3);
    const region = subtract(
      [box(0, 0, length, strip)],
      [disc(at, 0, notch, tolerance)],
      [disc(at, strip, notch, tolerance)],
    );
    // A strip that is thin itself is a stroke; one just about as wide as minWeb may be taken for either.
    return { region, necks: [{ kind: strip < minWeb - 0.05 ? 'stroke' : 'any', width }] };
  },
  'eccentric ring': (between, tolerance) => {
    const width = thin(between);
    const hole = between(0.5, 6);
    const offCentre = between(0.4 * minWeb, 3);
    const region = subtract([disc(0, 0, hole + offCentre + width, tolerance)], [disc(offCentre, 0, hole, tolerance)]);
    return { region, necks: [{ kind: 'any', width }] };
  },
  'plate with holes': (between, tolerance) => {
    const holes: Region[] = [];
    const necks: { kind: 'any' | 'loop'; width: number }[] = [];
    let x = 4;
    for (let i = Math.floor(between(1, 5)); i > 0; i -= 1) {
      const radius = between(0.5, 3);
      const wall = between(0, 1) < 0.5 ? thin(between) : between(minWeb + 0.03, 4);
      if (wall < minWeb) necks.push({ kind: 'any', width: wall });
      holes.push([disc(x + radius, wall + radius, radius, tolerance)]);
      x += 2 * radius + between(minWeb + 0.03, 5);
    }
    return { region: subtract([box(0, 0, x + 4, 14)], ...holes), necks };
  },
  'two holes side by side': (between, tolerance) => {
    const width = thin(between);
    const [r1, r2] = [between(0.5, 5), between(0.5, 5)];
    const angle = between(0, Math.PI);
    const d = r1 + r2 + width;
    const region = subtract(
      [disc(0, 0, 20, tolerance)],
      [disc(0, 0, r1, tolerance)],
      [disc(d * Math.cos(angle), d * Math.sin(angle), r2, tolerance)],
    );
    return { region, necks: [{ kind: 'any', width }] };
  },
  hourglass: (between, tolerance) => {
    const width = thin(between);
    const [r1, r2] = [between(2, 12), between(2, 12)];
    const angle = between(-0.4, 0.4);
    const d = r1 + r2 + width;
    const [x, y] = [d * Math.sin(angle), d * Math.cos(angle)];
    const long = 2 * (r1 + r2) + 6;
    // A plate between the two centres; the discs bite into it from both sides.
    const region = subtract(
      [polygon([-long, 0], [long, 0], [long + x, y], [-long + x, y])],
      [disc(0, 0, r1, tolerance)],
      [disc(x, y, r2, tolerance)],
    );
    return { region, necks: [{ kind: 'any', width }] };
  },
  'chain of discs': (between, tolerance) => {
    const rings = [disc(0, 0, 3, tolerance)];
    const necks: { kind: 'bridge'; width: number }[] = [];
    let x = 0;
    for (let i = Math.floor(between(2, 6)); i > 0; i -= 1) {
      const width = between(0, 1) < 0.7 ? thin(between) : between(minWeb + 0.03, 2.5);
      if (width < minWeb) necks.push({ kind: 'bridge', width });
      rings.push(box(x, -width / 2, x + 7.5, width / 2));
      x += 7.5;
      rings.push(disc(x, 0, 3, tolerance));
    }
    return { region: unite(...rings), necks };
  },
  'plate with a counter near the edge': (between, tolerance) => {
    const width = thin(between);
    const [w, h] = [between(2, 9), between(2, 9)];
    const frame = between(minWeb + 0.5, 5);
    const region = subtract(
      roundedBox(0, 0, frame * 2 + w, frame + width + h, 1, tolerance),
      roundedBox(frame, width, frame + w, width + h, Math.min(w, h) * between(0.3, 0.49), tolerance),
    );
    return { region, necks: [{ kind: 'any', width }] };
  },
  'hairline ring': (between, tolerance) => {
    const width = thin(between);
    const radius = between(2, 9);
    const region = subtract([disc(0, 0, radius + width, tolerance)], [disc(0, 0, radius, tolerance)]);
    return { region, necks: [{ kind: 'stroke', width }] };
  },
  'hairline bar': (between) => {
    const width = thin(between);
    return { region: [box(0, 0, between(3, 30), width)], necks: [{ kind: 'stroke', width }] };
  },
  ellipse: (between, tolerance) => ({
    region: [ellipse(0, 0, between(3, 30), between(0.85, 3), tolerance)],
    necks: [],
  }),
  star: (between) => {
    const inner = between(1.5, 10);
    return { region: [star(Math.floor(between(3, 14)), inner, inner * between(1.05, 3))], necks: [] };
  },
  gear: (between, tolerance) => {
    const teeth = Math.floor(between(6, 16));
    const radius = between(4, 10);
    const half = between(0.1, 0.4) * ((Math.PI * radius) / teeth);
    const rings = Array.from({ length: teeth }, (_, i) => {
      const tooth = [box(0, -half, radius + 1.5 * half, half)];
      return transformed(tooth, (2 * Math.PI * i) / teeth)[0]!;
    });
    return { region: unite(disc(0, 0, radius, tolerance), ...rings), necks: [] };
  },
  'rounded rectangle': (between, tolerance) => {
    const [w, h] = [between(2, 30), between(2, 30)];
    return { region: roundedBox(0, 0, w, h, Math.min(w, h) * between(0.02, 0.49), tolerance), necks: [] };
  },
  'letter with serifs': (between) => {
    const stem = between(minWeb + 0.05, 4);
    const height = between(8, 20);
    const wing = between(0.5, 3.5);
    const edge = between(0.1, 1.2);
    const slope = between(0, 2);
    const half = stem / 2;
    // A serif at foot and head: `edge` high at its tip, rising by `slope` towards the stem.
    const region = unite(
      box(-half, 0, half, height),
      polygon(
        [-half - wing, 0],
        [half + wing, 0],
        [half + wing, edge],
        [half, edge + slope],
        [-half, edge + slope],
        [-half - wing, edge],
      ),
      polygon(
        [-half - wing, height],
        [-half - wing, height - edge],
        [-half, height - edge - slope],
        [half, height - edge],
        [half, height],
      ),
    );
    return { region, necks: [] };
  },
  teardrop: (between, tolerance) => {
    const radius = between(1, 5);
    const tip = radius * between(1.5, 6);
    // Tangents from the tip touch the circle at cos α = r / d.
    const angle = Math.acos(radius / tip);
    const touch = [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
    const region = unite(disc(0, 0, radius, tolerance), polygon([touch[0], -touch[1]], [tip, 0], touch));
    return { region, necks: [] };
  },
  'plate with holes well inside': (between, tolerance) => {
    const [r1, r2] = [between(0.3, 4), between(0.3, 4)];
    const wall = between(minWeb + 0.03, 3);
    const height = 2 * (Math.max(r1, r2) + wall);
    const region = subtract(
      [box(0, 0, 2 * r1 + 2 * r2 + 3 * wall, height)],
      [disc(wall + r1, height / 2, r1, tolerance)],
      [disc(2 * wall + 2 * r1 + r2, height / 2, r2, tolerance)],
    );
    return { region, necks: [] };
  },
};

describe('The necks of random pieces', () => {
  const perFamily = 75;
  let count = 0;
  for (const [index, [name, make]] of Object.entries(families).entries()) {
    it(`are found, all and none besides, to 0.01 mm: ${name}`, () => {
      for (let seed = 0; seed < perFamily; seed += 1) {
        const random = seededRandom(index * 10_000 + seed);
        const between = (low: number, high: number) => low + random() * (high - low);
        const scale = Math.exp(between(Math.log(0.5), Math.log(20)));
        const { region, necks } = make(between, 0.002 / scale);
        const placed = transformed(region, between(0, 7), scale, between(-80, 80), between(-80, 80));
        const found = findNecks(placed, minWeb * scale);
        const expected = necks.toSorted((a, b) => a.width - b.width);
        const description = `seed ${seed}, scale ${scale.toFixed(2)}: ${JSON.stringify(found)} instead of ${JSON.stringify(expected)}`;
        assert.equal(found.length, expected.length, description);
        for (const [i, neck] of found.entries()) {
          const { width, kind } = expected[i]!;
          assert.ok(Math.abs(neck.width - width * scale) <= 0.01, description);
          if (kind !== 'any') assert.equal(neck.kind, kind, description);
          const apart = Math.hypot(neck.ends[0].x - neck.ends[1].x, neck.ends[0].y - neck.ends[1].y);
          assert.ok(Math.abs(apart - neck.width) < 1e-4, `ends as far apart as the neck is wide: ${description}`);
        }
        count += 1;
      }
    });
  }
  it('are more than a thousand pieces', () => {
    assert.ok(count >= 1000);
  });
});
