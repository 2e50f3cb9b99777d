import assert from 'node:assert/strict';
import { difference, offset } from '../../../src/geometry/clipper.ts';
import { EdgeIndex } from '../../../src/geometry/edge-index.ts';
import { area, boundsOf, boxCentre, ringArea } from '../../../src/geometry/measure.ts';
import type { Bounds, Point, Region } from '../../../src/geometry/types.ts';
import { assertNear, make, makeShapeUnchecked, makeUnchecked, placeOf, report, specOf } from '../support/engine.ts';
import { distance } from '../support/distance.ts';
import type { Unchecked } from '../support/engine.ts';

/** Signed distance to the edge of a room, worked out from what the room is rather than from its polygon. */
type Depth = (point: Point) => number;

/** A square on its corner of side a with half a disc on each upper side, as the reference describes it; `width` across. */
function heartDepth(width: number, middle: Point): Depth {
  const side = width / (Math.SQRT1_2 + 1);
  const radius = side / 2;
  const low = -(1.5 * Math.SQRT1_2 + 0.5) * side * 0.5 + 0;
  return ({ x, y }) => {
    const tip = { x: middle.x, y: middle.y + low };
    // Along the two lower sides of the square, from its lowest corner.
    const u = (x - tip.x + (y - tip.y)) * Math.SQRT1_2;
    const v = (-(x - tip.x) + (y - tip.y)) * Math.SQRT1_2;
    const right = { u: side, v: radius };
    const left = { u: radius, v: side };
    const inSquare = u >= 0 && v >= 0 && u <= side && v <= side;
    const inRight = Math.hypot(u - right.u, v - right.v) <= radius && u >= side;
    const inLeft = Math.hypot(u - left.u, v - left.v) <= radius && v >= side;
    const toSides = Math.min(
      Math.hypot(u - Math.min(side, Math.max(0, u)), v),
      Math.hypot(u, v - Math.min(side, Math.max(0, v))),
    );
    // An arc is nearest straight out from its middle, or at an end of it.
    const toArc = (at: { u: number; v: number }, beyond: boolean, ends: readonly (readonly [number, number])[]) =>
      beyond
        ? Math.abs(Math.hypot(u - at.u, v - at.v) - radius)
        : Math.min(...ends.map(([a, b]) => Math.hypot(u - a, v - b)));
    const nearest = Math.min(
      toSides,
      toArc(right, u >= side, [
        [side, 0],
        [side, side],
      ]),
      toArc(left, v >= side, [
        [0, side],
        [side, side],
      ]),
    );
    return inSquare || inRight || inLeft ? nearest : -nearest;
  };
}

/** A plate with a round hole. */
function plateDepth(width: number, height: number, hole: Point, radius: number): Depth {
  return ({ x, y }) =>
    Math.min(width / 2 - Math.abs(x), height / 2 - Math.abs(y), Math.hypot(x - hole.x, y - hole.y) - radius);
}

/**
 * Whether the outline, so many times as large, goes in anywhere on a grid: every place is tried, point by point. `spare` is how
 * far inside its room a point is: as a distance, it changes by no more than a step's length from one place to the next, so
 * that one point too far out rules out the places near by.
 */
function goesIn(outline: Region, times: number, spare: Depth, room: Bounds, step: number): boolean {
  const middle = boxCentre(boundsOf(outline)!);
  // A point every tenth of a millimetre, so that nothing slips in between.
  const points = outline.flatMap((ring) =>
    ring.flatMap((to, i) => {
      const from = ring.at(i - 1)!;
      const pieces = Math.ceil((Math.hypot(to.x - from.x, to.y - from.y) * times) / 0.1);
      return Array.from({ length: pieces }, (_, k) => ({
        x: times * (from.x + ((to.x - from.x) * k) / pieces - middle.x),
        y: times * (from.y + ((to.y - from.y) * k) / pieces - middle.y),
      }));
    }),
  );
  for (let x = room.minX; x <= room.maxX; x += step) {
    for (let y = room.minY; y <= room.maxY;) {
      const out = points.findIndex((point) => spare({ x: x + point.x, y: y + point.y }) < 0);
      if (out < 0) return true;
      const [point] = points.splice(out, 1) as [Point];
      const short = -spare({ x: x + point.x, y: y + point.y });
      y += step * Math.max(1, Math.ceil(short / step) - 1);
      // Whoever was out last is most likely out again.
      points.unshift(point);
    }
  }
  return false;
}

const markOf = (made: Unchecked, index = 0): Region => made.pieces[0]!.marks[index]!.region;

describe('Fitting anywhere', () => {
  for (const [word, font] of [
    ['Rosemary', 'Pacifico'],
    ['Rosemary', 'Nunito, weight: 800'],
    ['Sweet Cicely', 'Pacifico'],
    ['Seed Swap', 'Great Vibes'],
  ] as const) {
    it(`finds room in a heart for ${word} in ${font} to a fortieth, by brute force`, async () => {
      const made = await makeUnchecked(
        specOf(
          ['plate: {heart: 60}', `word: {text: ${word}, font: ${font}, fit: {in: plate, margin: 4}}`],
          'body: [plate], engrave: [word]',
        ),
      );
      const word_ = markOf(made);
      const depth = heartDepth(60, boxCentre(made.bounds));
      const least = Math.min(...word_.flat().map(depth));
      assert.ok(least > 4 - 0.02, `${least} from the edge`);
      // Two hundredths are given up where that brings it nearer to the middle.
      assert.ok(!goesIn(word_, 1.025, (point) => depth(point) - 4, made.bounds, 0.1), 'it could be larger');
    });
  }

  it('sees the space above and below a block of lines in its middle, not at the ends of a wide line', async () => {
    const spec = (lines: string) =>
      specOf(
        [
          'plate: {oval: {size: [60, 90], exponent: 4}}',
          `names: {lines: [${lines}], font: Great Vibes, fit: {in: plate, margin: 5}}`,
        ],
        'body: [plate], engrave: [names], hanger: {slot: {at: top, length: 9}}',
      );
    for (const lines of ['Wilhelmina, Bo, Ingeborg, Jäckel', 'Wilhelmina, Ada, Ingeborg']) {
      const made = await make(spec(lines));
      const { minY, maxY } = boundsOf(markOf(made))!;
      assert.ok(Math.abs(minY + maxY) / 2 < 7, `${lines}: ${(minY + maxY) / 2} mm off the middle`);
    }
  });

  it('goes by the edges where two letters leave their middle empty', async () => {
    const made = await make(
      specOf(
        [
          'outer: {circle: 60}',
          'initials: {text: IL, font: Alfa Slab One, overlap: auto, fit: {in: outer, margin: 3}}',
        ],
        'body: [outer], engrave: [initials]',
      ),
    );
    const { minX, maxX, minY, maxY } = boundsOf(markOf(made))!;
    assert.ok(Math.hypot(maxX - minX, maxY - minY) > 50, 'as large as it can be');
    assert.ok(Math.abs(minY + maxY) / 2 < 2, `${(minY + maxY) / 2} mm off the middle`);
  });

  it('gives up a little of the largest size to stand on the axis of a heart, and no more than it may', async () => {
    for (const [word, font, hole, isCentred] of [
      ['Ty', 'Great Vibes', 'hole: top', true],
      ['Dill', 'Pacifico', 'keyhole: top', true],
      ['Rosemary', 'Pacifico', 'keyhole: top', true],
      // In one half there is room for much larger letters than below a long keyhole.
      ['Ty', 'Pacifico', 'keyhole: {at: top, length: 18}', false],
    ] as const) {
      const made = await makeUnchecked(
        specOf(
          ['plate: {heart: 60}', `word: {text: ${word}, font: ${font}, fit: {in: plate, margin: 4}}`],
          `body: [plate], engrave: [word], hanger: {${hole}}`,
        ),
      );
      const word_ = markOf(made);
      const depth = heartDepth(60, boxCentre(made.bounds));
      const [hanger] = made.pieces[0]!.hangers;
      const kept = offset(hanger!.opening, 4);
      const blocked = new EdgeIndex(kept);
      // How far into the opening's surroundings a point is, is not known: it rules out no more than its own place.
      const free = (point: Point) => (blocked.contains(point) ? -1e-6 : depth(point) - 4);
      const { minX, maxX } = boundsOf(word_)!;
      const aside = Math.abs(minX + maxX) / 2;
      assert.equal(aside < 1.5, isCentred, `${word} is ${aside} aside`);
      // By brute force: 0.85 of the largest at least where it is centred, and the largest to a fortieth where it is not.
      const most = isCentred ? 1.025 / 0.85 : 1.025;
      assert.ok(!goesIn(word_, most, free, made.bounds, 0.15), `${word} could be larger`);
    }
  });

  it('stands on the level axis of a label, beside its hole, rather than higher and a little larger', async () => {
    for (const [word, font] of [
      ['Chamomile', 'Pacifico'],
      ['Ty', 'Great Vibes'],
      ['Sweet William', 'Nunito'],
    ] as const) {
      const made = await makeUnchecked(
        specOf(
          ['plate: {label: [70, 30]}', `word: {text: ${word}, font: ${font}, fit: {in: plate, margin: 3, clear: 2}}`],
          'body: [plate], engrave: [word], hanger: {hole: {diameter: 4, at: left}}',
        ),
      );
      const { minY, maxY } = boundsOf(markOf(made))!;
      const high = (minY + maxY) / 2 - boxCentre(made.bounds).y;
      // The middle of the small letters is on the axis; capitals and tails reach to different sides of it.
      assert.ok(Math.abs(high) < 0.25 * (maxY - minY), `${word} is ${high} above the middle, and ${maxY - minY} high`);
    }
  });

  it('stands level with a hole at the side also where it would be larger off both axes, or on the upright one higher up', async () => {
    const word = (asked: string): readonly string[] => [
      'plate: {rectangle: [140, 55], radius: 4}',
      `word: {text: OATS 80, font: Nunito, weight: 800, fit: {in: plate, margin: 7${asked}}}`,
    ];
    const hung = 'body: [plate], engrave: [word], hanger: {hole: {at: left}}';
    const label = [
      'plate: {label: {size: [90, 34], end: left}}',
      'word: {lines: [{text: Anne-Sophie, font: Nunito, weight: 800, share: 2}, {text: sown in April, font: Nunito, weight: 700}], fit: {in: plate, margin: 3, clear: 3, at_most: {x_height: 6.2}}}',
    ];
    for (const shapes of [word(''), word(', at_most: {width: 118}'), label]) {
      const made = await makeUnchecked(specOf(shapes, hung, ['tie: {twine: 3}']));
      const { minY, maxY } = boundsOf(markOf(made))!;
      const high = (minY + maxY) / 2 - boxCentre(made.bounds).y;
      assert.ok(Math.abs(high) < 0.1 * (maxY - minY), `${shapes[1]!}: ${high} above the middle, ${maxY - minY} high`);
    }
  });

  for (const [what, hanger] of [
    ['one hole', 'at: top'],
    ['two holes', 'at: top, count: 2, spacing: 90'],
  ] as const) {
    it(`stands in the middle below ${what} of what is not the same to both sides, if it is as large there`, async () => {
      const shapes = {
        label: ['plate: {label: {size: [160, 40]}}'],
        arrow: ['plate: {arrow: {length: 180, width: 60, shaft: 40}}'],
        stack: [
          'back: {rectangle: [150, 40]}',
          'nose: {polygon: {sides: 3, across: 30}, rotate: -90}',
          'plate: {stack: {shapes: [back, nose], towards: right}}',
        ],
      };
      for (const [name, lines] of Object.entries(shapes)) {
        const made = await makeUnchecked(
          specOf(
            [...lines, 'word: {text: In, font: Nunito, weight: 800, fit: {in: plate, margin: 4}}'],
            `body: [plate], engrave: [word], hanger: {hole: {${hanger}, diameter: 4}}`,
          ),
        );
        const { minX, minY, maxX, maxY } = boundsOf(markOf(made))!;
        const holes = made.pieces[0]!.hangers.map(({ opening }) => boxCentre(boundsOf(opening)!).x);
        const aside = (minX + maxX) / 2 - (Math.min(...holes) + Math.max(...holes)) / 2;
        assert.ok(Math.abs(aside) < 1.5, `${name}: ${aside} aside`);
        // The shaft of an arrow, a label and the rectangle are all 40 high.
        assertNear(maxY - minY, 32, 0.5, name);
      }
    });
  }

  it('stands at the side of a hole that is nearest to the middle, where nothing has an axis', async () => {
    const made = await makeUnchecked(
      specOf(
        [
          'plate: {label: {size: [160, 40]}}',
          'word: {text: HI, font: Nunito, weight: 800, fit: {in: plate, margin: 4}}',
        ],
        'body: [plate], engrave: [word], hanger: {hole: {at: top, count: 2, spacing: 70, diameter: 4, nudge: {right: 20}}}',
      ),
    );
    const box = boundsOf(markOf(made))!;
    const [left] = made.pieces[0]!.hangers.map(({ opening }) => boundsOf(opening)!.maxX).sort((a, b) => a - b);
    assert.ok(box.minX > left! && box.minX < left! + 7, `${box.minX - left!} from the hole`);
    assertNear(box.maxY - box.minY, 32, 0.7);
  });

  it('stands below a slot rather than beside the middle, as large as it was asked for', async () => {
    const placed = async (plate: string) => {
      const made = await makeUnchecked(
        specOf(
          [
            `plate: ${plate}`,
            'word: {text: Dill, font: Pacifico, fit: {in: plate, margin: 5, at_most: {x_height: 6}}}',
          ],
          'body: [plate], engrave: [word], hanger: {slot: {at: top, length: 12, inset: 6}}',
        ),
      );
      const [mark] = made.pieces[0]!.marks;
      const { minX, maxX } = boundsOf(mark!.region)!;
      return { aside: (minX + maxX) / 2, xHeight: mark!.lettering![0]!.xHeight };
    };
    const even = await placed('{rectangle: [80, 46]}');
    assert.ok(Math.abs(even.aside) < 1, `${even.aside}`);
    assertNear(even.xHeight, 6, 0.01);
    // A plate that is not the same to both sides has no axis.
    const odd = await placed('{polygon: {points: [[0, 0], [80, 0], [80, 46], [20, 46], [0, 26]]}}');
    assertNear(odd.xHeight, 6, 0.01);
  });

  it('finds about the same size whatever little the hole beside it changes, in the middle where that is as good', async () => {
    const widths: number[] = [];
    for (const diameter of [2.6, 2.8, 2.9, 3, 3.2]) {
      const made = await makeUnchecked(
        specOf(
          ['plate: {heart: 55}', 'word: {text: Zoë, font: Pacifico, fit: {in: plate, margin: 4}}'],
          `body: [plate], engrave: [word], hanger: {hole: {at: top, diameter: ${diameter}}}`,
          ['stock: {material: lime, thickness: 3}'],
        ),
      );
      const { minX, maxX } = boundsOf(markOf(made))!;
      widths.push(maxX - minX);
      if (diameter > 2.7) assert.ok(Math.abs(minX + maxX) / 2 < 1, `${(minX + maxX) / 2} aside at ${diameter}`);
    }
    assert.ok(Math.max(...widths) < 1.08 * Math.min(...widths), widths.join(' '));
  });

  it('crowds neither the edge nor a keyhole where it has some way between them', async () => {
    const { tag } = await report(
      specOf(
        [
          'plate: {rectangle: [120, 60], radius: 6}',
          'name: {text: Toolshed, font: Pacifico, fit: {in: plate, margin: 4, clear: 2}}',
        ],
        'body: [plate], engrave: [name], hanger: {keyhole: top}',
      ),
    );
    const piece = tag!.pieces[0]!;
    const { region } = piece.marks[0]!;
    const box = boundsOf(region)!;
    assertNear(box.maxX - box.minX, 112, 0.1);
    const toKeyhole = distance(region, piece.hangers[0]!.opening) - 2;
    const toEdge = box.minY + 30 - 4;
    assert.ok(toKeyhole > 1.5 && toEdge > 1.5, `${toKeyhole} mm above, ${toEdge} mm below`);
  });

  it('stands in the middle below a hole that its tall initial passes on one side', async () => {
    for (const name of ['Tansy', 'Lotte', 'Fern', 'Basil']) {
      const made = await makeUnchecked(
        specOf(
          [
            'plate: {ticket: {size: [84, 40]}}',
            `word: {text: ${name}, font: Pacifico, align: baseline, fit: {in: plate, margin: 4, at_most: {x_height: 9}}}`,
          ],
          'body: [plate], engrave: [word], hanger: {hole: {at: top}}',
        ),
      );
      const { minX, maxX } = boundsOf(markOf(made))!;
      assert.ok(Math.abs(minX + maxX) / 2 < 1.5, `${name}: ${(minX + maxX) / 2} mm aside`);
    }
  });

  it('has nothing within it, or across it between its corners', async () => {
    // A square beside a bar of 44 × 15: the strip at the right is 36 mm wide, as the plate is high.
    const bar = ['plate: {rectangle: [80, 36]}', 'bar: {rectangle: [40, 15], place: {on: plate, at: left, margin: 4}}'];
    const letters = [
      'plate: {rectangle: [80, 36]}',
      'bar: {text: Swap, font: Nunito, width: 40, place: {on: plate, at: left, margin: 4}}',
    ];
    for (const others of [bar, letters]) {
      const made = await makeUnchecked(
        specOf(
          [...others, 'square: {rectangle: [10, 10], fit: {in: plate, margin: 0}}'],
          'body: [plate], engrave: [bar, square]',
        ),
      );
      const [other, square] = made.pieces[0]!.marks;
      const bounds = boundsOf(square!.region)!;
      assertNear(bounds.maxX - bounds.minX, 36, 0.3);
      assert.ok(bounds.minX > boundsOf(other!.region)!.maxX - 0.01);
    }
  });

  it('goes inside a border, and keeps clear of its bays', async () => {
    const shapes = (into: string) => [
      'plate: {rectangle: [140, 60], radius: 5}',
      'edge: {border: {of: plate, inset: 3, width: 1, double: 1}}',
      `words: {text: Potting Shed, font: Pacifico, fit: ${into}}`,
    ];
    const piece = 'body: [plate], engrave: [edge, words], hanger: {hole: {at: top, count: 2}}';
    const { pieces } = await makeUnchecked(specOf(shapes('{in: edge, margin: 4}'), piece));
    const [edge, words] = pieces[0]!.marks;
    const apart = distance(edge!.region, words!.region);
    assert.ok(apart > 3.97 && apart < 4.1, `${apart} mm`);
    const { minX, maxX, minY, maxY } = boundsOf(words!.region)!;
    // The border takes 3 mm, two lines and the gap between them on each side.
    assert.ok(maxX - minX > 100 && maxX - minX <= 140 - 2 * (6 + 4) + 0.01 && minY > -30 + 6 + 4 - 0.01 && maxY < 20);
    const short = await make(specOf(shapes('edge'), piece));
    assert.ok(boundsOf(short.pieces[0]!.marks[1]!.region)!.maxX > maxX, 'a name alone is the shape to fill');
    const [around, name] = short.pieces[0]!.marks;
    const usual = distance(around!.region, name!.region);
    assert.ok(usual > 1.97 && usual < 2.1, `${usual} mm, where no margin is given`);
    assert.deepEqual(short.issues, []);
  });

  it('keeps clear of a hole and finds the largest place beside it, by brute force', async () => {
    const made = await makeUnchecked(
      specOf(
        [
          'plate: {rectangle: [86, 34]}',
          'dot: {ellipse: 6, nudge: {left: 30, up: 6}}',
          'word: {text: Lovage, font: Pacifico, fit: {in: plate, margin: 3, clear: 2}}',
        ],
        'body: [plate], cut: [dot], engrave: [word]',
      ),
    );
    const depth = plateDepth(86 - 6, 34 - 6, { x: -30, y: 6 }, 3 + 2);
    const word = markOf(made);
    assert.ok(Math.min(...word.flat().map(depth)) > -0.02);
    assert.ok(!goesIn(word, 1.005, depth, made.bounds, 0.1), 'it could be larger');
  });

  it('goes into the larger part of a room that a slit divides', async () => {
    const made = await makeUnchecked(
      specOf(
        [
          'plate: {rectangle: [90, 20]}',
          'slit: {rectangle: [1, 30], nudge: {left: 15}}',
          'word: {text: OAT, font: Nunito, fit: {in: plate, margin: 1}}',
        ],
        'body: [plate], cut: [slit], engrave: [word], parts: many',
      ),
    );
    const box = boundsOf(markOf(made))!;
    assert.ok(box.minX > -15 + 0.5 + 1 - 0.01);
  });

  it('keeps letters together: nothing comes between them, were there room', async () => {
    const made = await makeUnchecked(
      specOf(
        [
          'plate: {rectangle: [100, 24]}',
          'dot: {ellipse: 2}',
          'word: {text: "A    B", font: Nunito, fit: {in: plate, margin: 1, clear: 0.5}}',
        ],
        'body: [plate], cut: [dot], engrave: [word]',
      ),
    );
    const [a, b] = [...markOf(made)].filter((ring) => ringArea(ring) > 0).map((ring) => boxCentre(boundsOf([ring])!).x);
    assert.ok(a! * b! > 0, `one on each side of the dot: ${a}, ${b}`);
  });
});

describe('Fitting clear of what is there', () => {
  const plate = 'plate: {rectangle: [80, 40]}';
  const fitted = (keys = '') => `word: {text: Sage, font: Nunito, fit: {in: plate, margin: 2${keys}}}`;

  for (const [what, others, piece] of [
    ['a hole that it hangs on', [], 'engrave: [word], hanger: {hole: {diameter: 6, at: left}}'],
    ['a ring’s opening', [], 'engrave: [word], hanger: {ring: {diameter: 6, at: left, sink: 5}}'],
    ['what is cut', ['other: {rectangle: [10, 10], nudge: {left: 20}}'], 'cut: [other], engrave: [word]'],
    ['what is engraved', ['other: {rectangle: [10, 10], nudge: {left: 20}}'], 'engrave: [other, word]'],
    ['what is engraved after it', ['other: {rectangle: [10, 10], nudge: {left: 20}}'], 'engrave: [word, other]'],
    ['what is scored', ['other: {rectangle: [10, 10], nudge: {left: 20}}'], 'engrave: [word], score: [other]'],
  ] as const) {
    it(`such as ${what}, by the clear asked for and no more`, async () => {
      const made = await makeUnchecked(specOf([plate, ...others, fitted(', clear: 3')], `body: [plate], ${piece}`));
      const [tag] = made.pieces;
      const word = tag!.marks.find(({ shape }) => shape.name === 'word')!.region;
      const other = [
        ...tag!.hangers.map(({ opening }) => opening),
        ...[...tag!.marks, ...tag!.sources].filter(({ shape }) => shape.name === 'other').map(({ region }) => region),
      ];
      const gap = Math.min(...other.map((region) => distance(region, word)));
      assert.ok(gap > 3 - 0.03, `${gap} clear`);
    });
  }

  it('is by the margin where nothing is said', async () => {
    const piece = 'body: [plate], engrave: [word], hanger: {hole: {diameter: 6, at: left}}';
    const asked = await makeUnchecked(specOf([plate, fitted(', clear: 2')], piece));
    const silent = await makeUnchecked(specOf([plate, fitted()], piece));
    assert.deepEqual(markOf(silent), markOf(asked));
  });

  it('is not of what lies within a scored line that it is fitted into', async () => {
    const made = await makeUnchecked(
      specOf(
        [plate, 'panel: {rectangle: [50, 20]}', 'word: {text: Sage, font: Nunito, fit: {in: panel, margin: 2}}'],
        'body: [plate], score: [panel], engrave: [word]',
      ),
    );
    const { minX, maxX, minY, maxY } = boundsOf(markOf(made))!;
    assert.ok(maxX - minX > 45.9 || maxY - minY > 15.9);
  });

  it('gives the first of two the first choice, and the second what is left', async () => {
    const two = (order: string) =>
      makeUnchecked(
        specOf(
          [
            plate,
            'a: {text: Sage, font: Nunito, fit: {in: plate, margin: 2}}',
            'b: {text: Mint, font: Nunito, fit: {in: plate, margin: 2}}',
          ],
          `body: [plate], engrave: ${order}`,
        ),
      );
    for (const order of ['[a, b]', '[b, a]']) {
      const [first, second] = (await two(order)).pieces[0]!.marks;
      assert.ok(area(first!.region) > 4 * area(second!.region), order);
      assert.ok(distance(first!.region, second!.region) > 2 - 0.03);
    }
  });

  it('does not wait for what waits for it', async () => {
    const made = await makeUnchecked(
      specOf(
        [
          plate,
          'a: {text: Sage, font: Nunito, fit: {in: plate, margin: 2, at_most: {x_height: 5}}}',
          'b: {text: Mint, font: Nunito, fit: {in: plate, margin: 2}}',
          'dot: {ellipse: 3, place: {on: b, at: left}}',
        ],
        'body: [plate], engrave: [dot, a, b]',
      ),
    );
    assert.equal(made.pieces[0]!.marks.length, 3);
  });

  it('counts what it is glued on', async () => {
    const made = await makeUnchecked(
      [
        'tagwright: 1',
        'shapes:',
        `  ${plate}`,
        '  word: {text: Sage, font: Nunito, weight: 800, fit: {in: plate, margin: 3}}',
        'pieces:',
        '  base: {body: [plate], hanger: {hole: {diameter: 6, at: left}}}',
        '  word: {body: [word], parts: many, glue_to: base}',
        '',
      ].join('\n'),
    );
    const [base, word] = made.pieces;
    assert.ok(distance(base!.hangers[0]!.opening, word!.region) > 3 - 0.03);
  });
});

describe('Fitting at most', () => {
  const spec = (most: string, word = 'Sage', more = '') =>
    specOf(
      [
        'plate: {rectangle: [80, 40]}',
        `word: {text: ${word}, font: Nunito, fit: {in: plate, margin: 2, at_most: ${most}}${more}}`,
      ],
      'body: [plate], engrave: [word]',
    );
  const size = async (text: string) => {
    const { minX, maxX, minY, maxY } = boundsOf(markOf(await makeUnchecked(text)))!;
    return { width: maxX - minX, height: maxY - minY, x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  };

  const heightOf = async (text: string) => (await makeShapeUnchecked(`{text: ${text}, font: Nunito}`)).height;

  it('makes a short name as large as is asked for, and a long one as large as goes in', async () => {
    assertNear((await size(spec('{cap_height: 8}', 'HH'))).height, await heightOf('HH, cap_height: 8'), 0.02);
    assertNear((await size(spec('{cap_height: 8}', 'HHHHHHHHHHHHHHHHHHHHH'))).width, 76, 0.02);
    assertNear((await size(spec('{x_height: 6}', 'xx'))).height, await heightOf('xx, x_height: 6'), 0.02);
    assertNear((await size(spec('{width: 50}'))).width, 50, 0.02);
    assertNear((await size(spec('{width: 76.5}'))).width, 76, 0.02);
  });

  it('counts growth as the sizes of a text do', async () => {
    const grown = await heightOf('HH, grow: 0.5, cap_height: 8');
    assertNear((await size(spec('{cap_height: 8}', 'HH', ', grow: 0.5'))).height, grown, 0.02);
    assertNear((await size(spec('{width: 50}', 'Sage', ', grow: 0.5'))).width, 50, 0.05);
  });

  it('leaves it in the middle of what is free', async () => {
    const { x, y } = await size(spec('{cap_height: 8}', 'HOH'));
    assertNear(x, 0, 0.1);
    assertNear(y, 0, 0.1);
  });

  it('goes with text, but for a width', async () => {
    const text = specOf([
      'plate: {rectangle: [80, 40]}',
      'body: {ellipse: 9, fit: {in: plate, at_most: {x_height: 3}}}',
    ]);
    const { issues, ...made } = await report(text);
    assert.match(issues[0]!.message, /“x_height” goes with text/);
    assert.equal(placeOf({ ...made, issues }, issues[0]!).text, 'x_height');
  });

  it('keeps the space between letters that is asked for in millimetres', async () => {
    const wide = await size(spec('{cap_height: 8}', 'HHH', ', letter_spacing: 2'));
    const tight = await size(spec('{cap_height: 8}', 'HHH'));
    assertNear(wide.width - tight.width, 4, 0.05);
  });
});

describe('Fitting what is put somewhere', () => {
  const plate = 'plate: {rectangle: [80, 40]}';
  const box = async (keys: string) =>
    boundsOf(
      markOf(
        await makeUnchecked(
          specOf([plate, `word: {text: HOH, font: Nunito, ${keys}}`], 'body: [plate], engrave: [word]'),
        ),
      ),
    )!;

  it('makes it as large as goes there', async () => {
    const low = await box(
      'fit: {in: plate, margin: 2, at_most: {cap_height: 8}}, place: {on: plate, at: bottom, margin: 2}',
    );
    assertNear(low.minY, -18, 0.01);
    const corner = await box('fit: {in: plate, margin: 2}, place: {on: plate, at: bottom-left, margin: 3}');
    assertNear(corner.minX, -37, 0.01);
    assertNear(corner.minY, -17, 0.01);
    assert.ok(corner.maxX > 37.5 || corner.maxY > 17.5);
  });

  it('keeps its margin at the side of what it is fitted into, whatever kind of shape it is', async () => {
    for (const shape of [
      'text: HOH, font: Nunito',
      'lines: [Kale, Rue]',
      'heart: 10',
      'text: HOH, font: Nunito, grow: 0.4',
    ])
      for (const [at, side] of [
        ['bottom', 'minY'],
        ['left', 'minX'],
      ] as const) {
        const put = `word: {${shape}, fit: {in: plate, margin: 4}, place: {on: plate, at: ${at}}}`;
        const bounds = boundsOf(markOf(await makeUnchecked(specOf([plate, put], 'body: [plate], engrave: [word]'))))!;
        assertNear(bounds[side], at === 'left' ? -36 : -16, 0.02, `${shape} ${at}`);
      }
    const wider = await box('fit: {in: plate, margin: 4}, place: {on: plate, at: left, margin: 7}');
    assertNear(wider.minX, -33, 0.02);
  });

  it('makes it as large as goes beside another, such as below it', async () => {
    const made = await makeUnchecked(
      specOf(
        [
          plate,
          'name: {text: Sage, font: Nunito, x_height: 5, place: {on: plate}, nudge: {up: 8}}',
          'word: {text: HOH, font: Nunito, fit: {in: plate, margin: 2, clear: 1}, place: {below: name, gap: 3}}',
        ],
        'body: [plate], engrave: [name, word]',
      ),
    );
    const [name, word] = made.pieces[0]!.marks.map(({ region }) => boundsOf(region)!);
    assertNear(name!.minY - word!.maxY, 3, 0.01);
    assertNear(word!.minY, -18, 0.05);
  });

  it('is moved by the nudge from where it fits', async () => {
    const still = await box('fit: {in: plate, margin: 4}');
    const moved = await box('fit: {in: plate, margin: 4}, nudge: {up: 1}');
    assertNear(moved.minY - still.minY, 1, 1e-6);
    assertNear(moved.maxX - moved.minX, still.maxX - still.minX, 1e-6);
  });
});

describe('Fitting without room', () => {
  const messages = async (shapes: readonly string[], piece: string) => {
    const made = await report(specOf(shapes, piece));
    const found = made.issues.find(({ code }) => code === 'empty-shape');
    return found && { message: found.message, at: placeOf(made, found).text };
  };
  const word = (keys: string) => `word: {text: A, font: Nunito, fit: {in: plate, ${keys}}}`;
  const marked = 'body: [plate], engrave: [word]';

  it('says how much is missing, at its line', async () => {
    const found = await messages(['plate: {rectangle: [20, 3]}', word('margin: 2')], marked);
    assert.match(
      found!.message,
      /^There is no room in “plate”: with a margin of 2.00 mm it is more than 1.00 mm too narrow\.$/,
    );
    assert.equal(found!.at, '{in: plate, margin: 2}');
  });

  it('is silent as soon as there is some', async () => {
    assert.equal(await messages(['plate: {rectangle: [20, 3]}', word('margin: 1.45')], marked), undefined);
    assert.ok(await messages(['plate: {rectangle: [20, 3]}', word('margin: 1.55')], marked));
  });

  it('counts what is kept clear of', async () => {
    const shapes = ['plate: {ellipse: 20}', 'dot: {ellipse: 10}', word('margin: 2, clear: 4')];
    const found = await messages(shapes, 'body: [plate], cut: [dot], engrave: [word]');
    assert.match(found!.message, /a margin of 2.00 mm and 4.00 mm clear of “dot” it is more than 1.00 mm too/);
    const covered = await messages(
      ['plate: {ellipse: 20}', 'dot: {ellipse: 30}', word('margin: 1')],
      'body: [plate], engrave: [dot, word]',
    );
    assert.match(covered!.message, /There is no room left in “plate”: “dot” takes all of it\./);
  });

  it('says which opening it means', async () => {
    for (const [hanger, which] of [
      ['hole: {diameter: 4, at: top}', 'the hole at the top'],
      ['hole: {diameter: 4, at: top, count: 2, spacing: 9}', 'the holes at the top'],
      ['slot: {length: 9, width: 3, at: left}', 'the slot on the left'],
      ['hole: {diameter: 4, at: top-left}', 'the hole at the top left'],
      ['hole: {diameter: 4, at: {right: 8}}', 'the hole on the right'],
    ]) {
      const found = await messages(
        ['plate: {rectangle: [30, 16]}', word('margin: 1, clear: 40')],
        `${marked}, hanger: {${hanger}}`,
      );
      assert.ok(found?.message.includes(`40.00 mm clear of ${which} it is more than`), found?.message);
    }
  });

  it('says so where it is put where nothing goes', async () => {
    const found = await messages(
      [
        'plate: {ellipse: [80, 40]}',
        'word: {text: A, font: Nunito, fit: {in: plate, margin: 2}, place: {on: plate, at: top-left, margin: 2}}',
      ],
      marked,
    );
    assert.match(
      found!.message,
      /^No size of this shape fits “plate” where “place” puts it; leave out “place”, or choose another place\.$/,
    );
  });
});

describe('Fitting leaves what is symmetrical where it was', () => {
  it('in the middle of a plate, to the eye', async () => {
    const made = await makeUnchecked(
      specOf(
        [
          'plate: {rectangle: [80, 22], radius: 6}',
          'word: {text: BEANS, font: Nunito, weight: 800, fit: {in: plate, margin: 2}}',
        ],
        'body: [plate], engrave: [word]',
      ),
    );
    const word = markOf(made);
    assertNear(boxCentre(boundsOf(word)!).x, 0, 0.5);
    assertNear(area(difference(word, [offset(made.region, -2)])), 0, 0.01);
  });
});
