import assert from 'node:assert/strict';
import { difference } from '../../../src/geometry/clipper.ts';
import { area, boundsOf, boxCentre, centroid, contains } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import { assertNear, make, makeShape, newEngine, report, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { box, erode, subtract } from '../support/shapes.ts';

/** Sizes are promised to a hundredth of a millimetre; plates are exact. */
const exact = 1e-4;

function assertBounds(
  { bounds }: Made,
  minX: number,
  minY: number,
  maxX: number,
  maxY: number,
  tolerance = exact,
): void {
  assertNear(bounds.minX, minX, tolerance, 'minX');
  assertNear(bounds.minY, minY, tolerance, 'minY');
  assertNear(bounds.maxX, maxX, tolerance, 'maxX');
  assertNear(bounds.maxY, maxY, tolerance, 'maxY');
}

// Areas and bounds in this file are exact mathematics unless a source is named.
describe('Plates', () => {
  it('rectangle: a·b − (4 − π)r², centred', async () => {
    const made = await makeShape('{rectangle: [84 mm, 40 mm], radius: 6 mm}');
    assertNear(made.area, 84 * 40 - (4 - Math.PI) * 36, 0.08);
    assertBounds(made, -42, -20, 42, 20);
    assertNear((await makeShape('{rectangle: [84, 40]}')).area, 3360, exact);
  });

  it('ellipse: π·a·b, and a circle by its diameter', async () => {
    const made = await makeShape('{ellipse: [60 mm, 20 mm]}');
    assertNear(made.area, Math.PI * 300, 0.15);
    assertBounds(made, -30, -10, 30, 10);
    const circle = await makeShape('{ellipse: 30 mm}');
    assertNear(circle.area, Math.PI * 225, 0.15);
    assertBounds(circle, -15, -15, 15, 15);
  });

  it('polygon: a regular hexagon has ¾√3·d²/2, one corner at the top', async () => {
    const made = await makeShape('{polygon: {sides: 6, across: 20 mm}}');
    assertNear(made.area, (3 * Math.sqrt(3) * 100) / 2, exact);
    assertBounds(made, -10 * Math.sin(Math.PI / 3), -10, 10 * Math.sin(Math.PI / 3), 10);
  });

  it('polygon by points, [right, down], closed by itself', async () => {
    const made = await makeShape('{polygon: {points: [[0, 0], [30 mm, 0], [0, 40 mm]]}}');
    assertNear(made.area, 600, exact);
    assertBounds(made, 0, -40, 30, 0);
    assert.ok(centroid(made.region)!.x < 15);
  });

  it('arrow: shaft, head and tip by their figures, pointing right', async () => {
    // Tip 90° on a head of 40: 20 long. Shaft 26 wide and 100 long. Notch: a triangle of 26 × 9 / 2.
    const straight = await makeShape('{arrow: {length: 120, width: 40, shaft: 26, tip: 90}}');
    assertNear(straight.area, 100 * 26 + 400, exact);
    assertBounds(straight, -60, -20, 60, 20);
    // (2600·(−10) + 400·(40 + 20/3)) / 3000
    assertNear(centroid(straight.region)!.x, -22 / 9, exact);
    const notched = await makeShape('{arrow: {length: 120, width: 40, shaft: 26, tip: 90, tail: notched, notch: 9}}');
    assertNear(notched.area, 100 * 26 + 400 - 117, exact);
    assertBounds(notched, -60, -20, 60, 20);
    const pointed = await makeShape('{arrow: {length: 120, width: 26, tail: pointed, notch: 13}}');
    // As wide as the shaft: a tip of 13, a point of 13, and 94 between.
    assertNear(pointed.area, 94 * 26 + 2 * 13 * 13, exact);
  });
});

describe('Stacks', () => {
  const members = ['neck: {rectangle: [26, 18], radius: 6}', 'plate: {rectangle: [84, 40], radius: 6}'];

  it('lap the narrower member until no shoulder shows', async () => {
    const made = await makeShape('{stack: {shapes: [neck, plate], towards: down}}', members);
    // The neck's round end must lie wholly in the plate: it goes in by its radius.
    assertNear(made.height, 18 + 40 - 6, 0.02);
    assertNear(made.width, 84, exact);
    const neck = 26 * (18 - 6) - ((4 - Math.PI) * 36) / 2;
    assertNear(made.area, 84 * 40 - (4 - Math.PI) * 36 + neck, 0.6);
    assert.equal(made.region.length, 1);
  });

  for (const towards of ['down', 'up', 'left', 'right'] as const)
    it(`lap a member with sharp corners until those lie on a round one, ${towards}`, async () => {
      const upright = towards === 'down' || towards === 'up';
      const members = [`neck: {rectangle: [${upright ? '20, 12' : '12, 20'}]}`, 'disc: {circle: 50}'];
      for (const shapes of ['neck, disc', 'disc, neck']) {
        const made = await makeShape(`{stack: {shapes: [${shapes}], towards: ${towards}}}`, members);
        // The sagitta of a chord c in a circle of radius r: r − √(r² − c²/4).
        const sagitta = 25 - Math.sqrt(25 ** 2 - 10 ** 2);
        assertNear(upright ? made.height : made.width, 12 + 50 - sagitta, 0.02);
        assert.equal(made.region.length, 1);
      }
    });

  it('abut along a straight edge, without a lap', async () => {
    const made = await makeShape('{stack: {shapes: [cap, foot], towards: down}}', [
      'cap: {rectangle: [20, 12]}',
      'foot: {rectangle: [40, 12]}',
    ]);
    assertNear(made.height, 24, exact);
    assert.equal(made.region.length, 1);
  });

  it('lap as far as they are told', async () => {
    const made = await makeShape('{stack: {shapes: [neck, plate], towards: down, lap: 10 mm}}', members);
    assertNear(made.height, 48, exact);
  });

  for (const [towards, atNeck] of [
    ['down', 'maxY'],
    ['up', 'minY'],
    ['left', 'maxX'],
    ['right', 'minX'],
  ] as const) {
    it(`run ${towards} from the first member`, async () => {
      const discs = ['neck: {ellipse: 10}', 'plate: {ellipse: 40}'];
      const made = await makeShape(`{stack: {shapes: [neck, plate], towards: ${towards}, lap: 2}}`, discs);
      const centre = centroid(made.region)!;
      const along = atNeck.endsWith('X') ? centre.x : centre.y;
      assert.ok(Math.sign(along) === (atNeck.startsWith('max') ? -1 : 1), 'the large disc lies away from the neck');
      assertNear(atNeck.endsWith('X') ? centre.y : centre.x, 0, 1e-3);
      assertNear(Math.max(made.width, made.height), 48, exact);
    });
  }
});

describe('Paths and drawings', () => {
  it('take SVG path data in mm with y down, filled by the non-zero rule', async () => {
    const made = await makeShape('{path: "M0 0h20v10h-20z M5 2v6h10v-6z"}');
    assertBounds(made, 0, -10, 20, 0);
    assertNear(made.area, 200 - 60, exact);
    const same = await makeShape('{path: "M0 0h20v10h-20z M5 2h10v6h-10z"}');
    assertNear(same.area, 200, exact);
  });

  it('take it in inches in a spec in inches', async () => {
    const made = await make(specOf(['body: {path: "M0 0h2v1h-2z"}'], undefined, ['units: in']));
    assertNear(made.area, 2 * 25.4 * 25.4, 1e-3);
  });

  it('draw a circle of four cubics as large as it is: 3.1424723·R²', async () => {
    const k = 5.522847498;
    const data = `M10 0C10 ${k} ${k} 10 0 10S-10 ${k} -10 0S${-k} -10 0 -10S10 ${-k} 10 0Z`;
    const made = await makeShape(`{path: "${data}"}`);
    assertNear(made.area, 314.24723, 0.1);
    assertBounds(made, -10, -10, 10, 10, 0.003);
  });

  it('draw arcs', async () => {
    const made = await makeShape('{path: "M-10 0A10 10 0 0 1 10 0A10 10 0 0 1 -10 0Z"}');
    assertNear(made.area, Math.PI * 100, 0.1);
  });

  it('draw arcs on the side they are on', async () => {
    // Quarters of a disc bitten out of a square's corners, or standing at them (SVG 1.1, 8.3.8, the sweep flag).
    const square = (sweep: 0 | 1): string =>
      `M4 0H16A4 4 0 0 ${sweep} 20 4V16A4 4 0 0 ${sweep} 16 20H4A4 4 0 0 ${sweep} 0 16V4A4 4 0 0 ${sweep} 4 0Z`;
    assertNear((await makeShape(`{path: "${square(1)}"}`)).area, 400 - (4 - Math.PI) * 16, 0.03);
    assertNear((await makeShape(`{path: "${square(0)}"}`)).area, 400 - Math.PI * 16, 0.03);
  });

  it('read an SVG file at its true size, transforms and basic shapes included', async () => {
    const svg = `<?xml version="1.0"?>
<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 120 80">
  <defs><rect width="900" height="900"/></defs>
  <g transform="translate(10 10)"><rect width="40" height="20"/></g>
  <circle cx="90" cy="20" r="10"/>
  <polygon points="10,60 50,60 10,80"/>
</svg>`;
    const made = await makeShape('{drawing: leaf.svg}', [], newEngine({ 'leaf.svg': svg }));
    // Half a millimetre a unit: 20 × 10, π·5², and a triangle of 20 × 10 / 2.
    assertNear(made.area, 200 + Math.PI * 25 + 100, 0.1);
    assertBounds(made, 5, -40, 50, -5);
    assert.deepEqual(made.report.files, ['/specs/leaf.svg']);
  });

  it('say what is wrong with a drawing or a path, at its value', async () => {
    const wrong = newEngine({
      'text.svg': 'not a drawing',
      'empty.svg': '<svg xmlns="http://www.w3.org/2000/svg"/>',
      'cut.svg': '<svg><path d="M0 0L',
    });
    for (const [shape, code, at] of [
      ['{drawing: missing.svg}', 'bad-file', 'missing.svg'],
      ['{drawing: text.svg}', 'bad-file', 'text.svg'],
      ['{drawing: empty.svg}', 'bad-file', 'empty.svg'],
      ['{drawing: cut.svg}', 'bad-file', 'cut.svg'],
      ['{path: "M0 0L5 boo"}', 'bad-value', '"M0 0L5 boo"'],
    ] as const) {
      const { issues, source } = await report(specOf([`body: ${shape}`]), wrong);
      const found = issues.find((issue) => issue.code === code);
      assert.ok(found, `${shape}: ${JSON.stringify(issues)}`);
      assert.equal(source.text.slice(found.range.start, found.range.end), at);
    }
  });
});

describe('Shapes made from shapes', () => {
  const two = ['left: {rectangle: [10, 10]}', 'right: {rectangle: [10, 6], nudge: {right: 6}}'];

  it('union, difference and intersection have the areas that add up', async () => {
    // They share 4 × 6.
    assertNear((await makeShape('{union: [left, right]}', two)).area, 136, exact);
    assertNear((await makeShape('{difference: [left, right]}', two)).area, 76, exact);
    assertNear((await makeShape('{intersection: [left, right]}', two)).area, 24, exact);
    assertNear((await makeShape('{union: [left, {rectangle: [20, 2]}]}', two)).area, 120, exact);
  });

  it('from copies, and leaves the first as it is', async () => {
    const text = specOf(
      ['one: {ellipse: 20}', 'body: {from: one, grow: 2, nudge: {right: 50}}'],
      'body: [one, body], parts: many',
    );
    assertNear((await make(text)).area, Math.PI * (100 + 144), 0.3);
  });

  it('around a convex plate is Steiner’s: A + P·r + πr²', async () => {
    const made = await makeShape('{around: {rectangle: [80, 40]}, by: 2 mm}');
    assertNear(made.area, 3692.56637, 2 * Math.PI * 2 * 0.005);
    assertBounds(made, -42, -22, 42, 22);
  });

  it('around fills holes unless told to keep them', async () => {
    const ring = ['ring: {difference: [{ellipse: 40}, {ellipse: 20}]}'];
    assertNear((await makeShape('{around: ring, by: 2}', ring)).area, Math.PI * 22 ** 2, 1);
    assertNear((await makeShape('{around: ring, by: 2, holes: keep}', ring)).area, Math.PI * (22 ** 2 - 8 ** 2), 1);
  });

  it('around lines leaves no slot between them, however they are turned, unless bays are asked for', async () => {
    // In the slot under “ana”, from the middle of the box.
    for (const [shape, turn, { x, y }, isFilled] of [
      ['{around: words, by: 4}', '', { x: 20, y: -5 }, true],
      ['{around: words, by: 4}', ', rotate: 90', { x: -5, y: -20 }, true],
      ['{around: words, by: 4, bays: 4}', '', { x: 20, y: -5 }, false],
    ] as const) {
      for (const lines of ['lines: [Nana, Bear]', 'text: "Nana\\nBear"']) {
        const words = `words: {${lines}, font: Pacifico, width: 70${turn}}`;
        const { region, bounds } = await makeShape(shape, [words]);
        const middle = boxCentre(bounds);
        assert.equal(contains(region, { x: middle.x + x, y: middle.y + y }), isFilled, `${shape} ${words}`);
      }
    }
  });

  it('around several lines of one text is one backing, and waists none of them', async () => {
    const backing = (text: string, more = '') =>
      makeShape(`{around: {text: "${text}", font: Pacifico, width: 50 mm, line_height: 1.75}, by: 4 mm${more}}`);
    const apart = await backing('Nana\\nBear', ', bays: 4 mm');
    assert.equal(partsOf(apart.region).length, 2, 'where it is said how wide, no wider is closed');
    const { region } = await backing('Nana\\nBear');
    assert.equal(partsOf(region).length, 1);
    // Half as wide as the words at least, at every height.
    const { minY, maxY } = boundsOf(region)!;
    for (let y = minY + 6; y < maxY - 6; y += 1) {
      const crossings = region
        .flatMap((ring) => ring.map((from, i) => ({ from, to: ring[(i + 1) % ring.length]! })))
        .filter(({ from, to }) => from.y > y !== to.y > y)
        .map(({ from, to }) => from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x))
        .sort((one, other) => one - other);
      const width = crossings.reduce((sum, x, i) => sum + (i % 2 === 1 ? x - crossings[i - 1]! : 0), 0);
      assert.ok(width > 25, `${width} at ${y}`);
    }
    const one = await backing('Nana');
    assert.deepEqual(one.region, (await backing('Nana', ', bays: 4 mm')).region, 'one line is as it was');
  });

  it('around closes bays and slits narrower than it is told, as growing and thinning by Clipper2 does', async () => {
    const [plate, slit] = [box(-30, -20, 30, 20), box(-5, -10, 5, 20)];
    const source = subtract([plate], [slit]);
    const slitted = ['slitted: {difference: [{rectangle: [60, 40]}, {rectangle: [10, 30], nudge: {up: 5}}]}'];
    // 2 mm out, 6 mm of the slit are left.
    for (const [bays, open] of [
      ['', true],
      [', bays: 0', true],
      [', bays: 5.9', true],
      [', bays: 6.1', false],
      [', corners: miter', true],
      [', corners: miter, bays: 6.1', false],
    ] as const) {
      const made = await makeShape(`{around: slitted, by: 2${bays}}`, slitted);
      assert.equal(!contains(made.region, { x: 0, y: 0 }), open, bays);
      if (bays.includes('miter')) {
        assertBounds(made, -32, -22, 32, 22);
        continue;
      }
      const radius = bays === '' ? 1 : Number(bays.slice(8)) / 2;
      const expected = erode(erode(source, -2 - radius), radius);
      assertNear(made.area, area(expected), 0.5, `area${bays}`);
    }
    // What a slit leaves behind as it closes is a hole, and goes or stays with the others.
    const bottle = ['bottle: {union: [slitted, {rectangle: [60, 4], nudge: {up: 18}}]}', ...slitted];
    assert.equal((await makeShape('{around: bottle, by: 2, holes: keep}', bottle)).region.length, 2);
    assert.equal((await makeShape('{around: bottle, by: 2, holes: keep, bays: 7}', bottle)).region.length, 1);
    assert.equal((await makeShape('{around: bottle, by: 2}', bottle)).region.length, 1);
  });

  it('around lettering holds all of it, at no less than the distance', async () => {
    const spec = specOf(['word: {text: Borage, font: Pacifico, width: 74}', 'body: {around: word, by: 6}']);
    const made = await make(spec.replace('body: [body]', 'body: [body], engrave: [word]'));
    const word = made.pieces[0]!.marks[0]!.region;
    assert.equal(made.region.length, 1);
    assertNear(made.width, 86, 0.02);
    assert.ok(area(word) > 300);
    assert.deepEqual(difference(word, [made.region]), []);
    assertNear(boundsOf(word)!.maxX - boundsOf(word)!.minX, 74, 0.01);
  });
});
