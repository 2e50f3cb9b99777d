import assert from 'node:assert/strict';
import { make, specOf } from '../support/engine.ts';
import type { IssueCode } from '../../../src/core/issue-kinds.ts';
import { found, only } from './found.ts';

/** How much of a disc of radius R lies beyond a chord that is d inside its edge (exact). */
function segment(R: number, d: number): number {
  return R * R * Math.acos(1 - d / R) - (R - d) * Math.sqrt(2 * R * d - d * d);
}

/** A limit that is passed by one figure and not by the other; whose each limit is stands on the page of its code. */
interface Limit {
  readonly code: IssueCode;
  readonly what: string;
  /** Of the message, where the check has others too. */
  readonly words?: RegExp;
  readonly spec: (figure: number) => string;
  readonly silent: number;
  readonly reported: number;
}

const plate = 'plate: {rectangle: [60, 40]}';
const kerf = ['stock: {kerf: 0.2 mm, min_web: 0.2 mm}'];
const bars = (gap: number, length = 20): string =>
  `bars: {union: [{rectangle: [${length}, 5]}, {rectangle: [${length}, 5], nudge: {up: ${5 + gap}}}]}`;
const hole = 'hanger: {hole: {at: {up: 0}, diameter: 10}}';
/** Its lower edge is `inside` mm from the lower edge of a hole of 10 mm, or from its upper one. */
const fieldFrom = (y: number): string => `field: {rectangle: [40, 20], nudge: {up: ${y + 10}}}`;

/** A stock of a workshop's file of which nothing but the kerf was measured. */
const unmeasured = ['stock: ply3', 'stocks: {ply3: {material: birch plywood, thickness: 3 mm, kerf: 0.1 mm}}'];

/** Two plates joined by a neck. */
function neckOf(width: number, head: readonly string[]): string {
  const shapes = [
    'left: {rectangle: [20, 20], nudge: {left: 20}}',
    'right: {rectangle: [20, 20], nudge: {right: 20}}',
    `neck: {rectangle: [30, ${width}]}`,
  ];
  return specOf(shapes, 'body: [left, right, neck]', head);
}

const limits: readonly Limit[] = [
  {
    code: 'not-measured',
    what: '1.1 times the 1.5 mm that plywood is taken to bear',
    words: /narrowest place/,
    spec: (width) => neckOf(width, unmeasured),
    silent: 1.66,
    reported: 1.64,
  },
  {
    code: 'not-measured',
    what: '1.3 times the 1.5 mm that is taken of a material of which nothing is known',
    words: /narrowest place/,
    spec: (width) =>
      neckOf(
        width,
        unmeasured.map((line) => line.replace('birch plywood', 'straw panel')),
      ),
    silent: 1.96,
    reported: 1.93,
  },
  {
    code: 'not-measured',
    what: '1.3 times the 1.2 mm of letters that are taken to be readable',
    words: /^Engraved letters are/,
    spec: (height) =>
      specOf(
        [plate, `word: {text: seeds, font: Nunito, weight: 800, x_height: ${height}, place: {on: plate}}`],
        'body: [plate], engrave: [word]',
        unmeasured,
      ),
    silent: 1.57,
    reported: 1.55,
  },
  {
    code: 'fine-mark',
    what: 'a stroke of 0.2 mm',
    spec: (width) => specOf([plate, `line: {rectangle: [30, ${width}]}`], 'body: [plate], engrave: [line]'),
    silent: 0.202,
    reported: 0.198,
  },
  {
    code: 'fine-mark',
    what: 'a gap of 0.2 mm',
    spec: (gap) => specOf([plate, bars(gap)], 'body: [plate], engrave: [bars]'),
    silent: 0.202,
    reported: 0.198,
  },
  {
    code: 'fine-mark',
    what: '3 mm of it in all',
    spec: (length) => specOf([plate, bars(0.1, length)], 'body: [plate], engrave: [bars]'),
    silent: 2.95,
    reported: 3.05,
  },
  {
    code: 'gap-closes',
    what: '0.005 mm below the kerf',
    spec: (gap) => specOf([bars(gap)], 'body: [bars], parts: many', kerf),
    silent: 0.196,
    reported: 0.194,
  },
  {
    code: 'gap-closes',
    what: '1 mm along one outline',
    spec: (lip) =>
      specOf([`clasp: {path: "M0 0H20V9.95H${20 - lip}V5H5V15H${20 - lip}V10.05H20V20H0Z"}`], 'body: [clasp]', kerf),
    silent: 0.95,
    reported: 1.05,
  },
  {
    code: 'speck',
    what: 'a hole 0.8 mm across',
    spec: (size) => specOf([plate, `dot: {rectangle: [${size}, ${size}]}`], 'body: [plate], cut: [dot]', kerf),
    silent: 0.802,
    reported: 0.798,
  },
  {
    code: 'speck',
    what: 'a short hole as wide as the kerf',
    spec: (width) => specOf([plate, `slot: {rectangle: [${width}, 1.5]}`], 'body: [plate], cut: [slot]', kerf),
    silent: 0.202,
    reported: 0.198,
  },
  {
    code: 'speck',
    what: 'a narrow hole 12 kerfs long',
    spec: (length) => specOf([plate, `slot: {rectangle: [0.15, ${length}]}`], 'body: [plate], cut: [slot]', kerf),
    silent: 2.42,
    reported: 2.38,
  },
  {
    code: 'hole-too-small',
    what: '1 % below one and a half times the twine',
    spec: (opening) => specOf([plate], `body: [plate], hanger: {hole: {diameter: ${opening}}}`, ['tie: {twine: 2}']),
    silent: 2.971,
    reported: 2.969,
  },
  {
    code: 'hole-blocked',
    what: '0.02 mm² of the hole under engraving',
    // What merely lies near it is another matter.
    words: /runs across the hole/,
    spec: (inside) => specOf([plate, fieldFrom(5 - inside)], `body: [plate], engrave: [field], ${hole}`),
    silent: 0.027,
    reported: 0.032,
  },
  {
    code: 'hole-blocked',
    what: '98 % of the hole in an engraved field',
    spec: (left) => specOf([plate, fieldFrom(-5 + left)], `body: [plate], engrave: [field], ${hole}`),
    silent: 0.5,
    reported: 0.55,
  },
  {
    code: 'hole-blocked',
    what: 'half the hole of a ring in the body',
    spec: (up) => specOf([plate], `body: [plate], hanger: {ring: {at: {up: ${up}}}}`),
    silent: 20.01,
    reported: 19.99,
  },
  {
    code: 'score-shows',
    what: 'a tenth of a millimetre inside',
    spec: (grow) => glued(grow),
    silent: -0.102,
    reported: -0.098,
  },
  {
    code: 'score-shows',
    what: 'a millimetre outside, beyond which a line is decoration',
    spec: (grow) => glued(grow),
    silent: 1.01,
    reported: 0.99,
  },
  {
    code: 'exceeds-sheet',
    what: 'a hundredth of a millimetre more than the room',
    spec: (width) =>
      specOf([`plate: {rectangle: [${width}, 30]}`], 'body: [plate]', ['sheet: {size: [90, 40], margin: 5}']),
    silent: 80.008,
    reported: 80.012,
  },
  {
    code: 'off-centre',
    what: 'half a millimetre off',
    // The centre for the eye of a right-angled triangle lies a twelfth of its side off the middle of its box.
    spec: (side) => specOf(['plate: {rectangle: [24, 24]}', triangle(side)], 'body: [plate], engrave: [corner]'),
    silent: 5.9,
    reported: 6.1,
  },
  {
    code: 'off-centre',
    what: 'a fiftieth of what it is centred on',
    spec: (side) => specOf(['plate: {rectangle: [100, 100]}', triangle(side)], 'body: [plate], engrave: [corner]'),
    silent: 23.9,
    reported: 24.1,
  },
];

function triangle(side: number): string {
  return `corner: {path: "M0 0H${side}L0 ${side}Z", place: {on: plate, by: box}}`;
}

function glued(grow: number): string {
  return `tagwright: 1
shapes:
  ${plate}
  badge: {rectangle: [30, 12]}
pieces:
  back: {body: [plate], score: [{from: badge, grow: ${grow}}]}
  front: {body: [badge], glue_to: back}
`;
}

describe('Each limit is where it is said to be', () => {
  for (const { code, what, words = /./, spec, silent, reported } of limits) {
    const findingsIn = async (text: string) =>
      found(await make(text), code)
        .map(({ message }) => message)
        .filter((message) => words.test(message));
    it(`of ${code}: ${what}`, async () => {
      assert.deepEqual(await findingsIn(spec(silent)), [], `${silent} is no fault`);
      assert.equal((await findingsIn(spec(reported))).length, 1, `${reported} is one`);
    });
  }

  it('and the areas of hole-blocked lie on both sides of theirs', () => {
    assert.ok(segment(5, 0.027) < 0.02 && segment(5, 0.032) > 0.02);
    const all = Math.PI * 25;
    assert.ok(segment(5, 0.5) < 0.02 * all && segment(5, 0.55) > 0.02 * all);
  });

  it('of score-shows: a line is at the very edge up to a hundredth of a millimetre outside', async () => {
    assert.match(only(await make(glued(0.008)), 'score-shows').message, /runs right along the edge/);
    assert.match(only(await make(glued(0.012)), 'score-shows').message, /runs up to 0\.01 mm outside/);
  });

  it('of hole-too-small: what is too large for which opening, and by how much', async () => {
    const message = async (tie: string, hanger: string) => {
      const made = await make(specOf([plate], `body: [plate], hanger: {${hanger}}`, [`tie: {${tie}}`]));
      const issue = only(made, 'hole-too-small');
      assert.equal(issue.severity, 'warning');
      return issue.message;
    };
    // Rule of thumb, no source: twice the twine through one and a half times its width; a ribbon gathers to 0.4 of its own.
    const [hole, slot] = ['hole: {diameter: 2.5}', 'slot: {length: 8, width: 2.5}'];
    assert.equal(await message('twine: 2', hole), 'The hole is 2.50 mm; 2.00 mm twine, doubled, needs 3.00 mm.');
    assert.equal(await message('twine: 2', slot), 'The slot is 2.50 mm; 2.00 mm twine, doubled, needs 3.00 mm.');
    assert.equal(await message('ribbon: 10', hole), 'The hole is 2.50 mm; 10.00 mm ribbon needs 4.00 mm.');
    assert.equal(await message('ribbon: 10', slot), 'The slot is 8.00 mm; 10.00 mm ribbon needs 10.00 mm.');
  });

  it('of hanger-weak: a ring that shares 0.02 mm² with the body merely touches it', async () => {
    // A lug of radius 5 whose edge is so much inside the edge of the plate.
    const ring = async (inside: number) => {
      const made = await make(
        specOf([plate], `body: [plate], parts: many, hanger: {ring: {at: {up: ${25 - inside}}, diameter: 2, wall: 4}}`),
      );
      return found(made, 'hanger-weak').filter(({ severity }) => severity === 'error').length;
    };
    assert.equal(await ring(0.027), 1);
    assert.equal(await ring(0.032), 0);
  });

  it('of hole-near-edge: a hole that takes 0.02 mm² of the body lies beside it', async () => {
    assert.ok(segment(2, 0.037) < 0.02 && segment(2, 0.04) > 0.02);
    const at = async (inside: number) => {
      const made = await make(
        specOf([plate], `body: [plate], hanger: {hole: {at: {up: ${22 - inside}}, diameter: 4}}`),
      );
      return only(made, 'hole-near-edge').message;
    };
    assert.match(await at(0.037), /lies beside the body/);
    assert.match(await at(0.04), /is open to the edge/);
  });

  it('of loose-part: up to six parts are counted, more are told as a whole', async () => {
    const discs = (count: number) => {
      const all = Array.from({ length: count }, (_, i) => `{ellipse: 5, nudge: {right: ${8 * i}}}`);
      return make(specOf([`discs: {union: [${all.join(', ')}]}`], 'body: [discs]'));
    };
    assert.match(only(await discs(7), 'loose-part').message, /^6 parts of “tag”/);
    assert.match(only(await discs(8), 'loose-part').message, /falls into 8 parts/);
  });

  it('of shoulder-shows: a notch of 0.05 mm² is seen', async () => {
    // Exact: beside a corner of radius r, from where it begins to turn to a depth d.
    const notch = (r: number, d: number) => r * d - (d * Math.sqrt(r * r - d * d) + r * r * Math.asin(d / r)) / 2;
    assert.ok(notch(5, 1.13) < 0.05 && notch(5, 1.16) > 0.05);
    const stack = (depth: number) =>
      make(
        specOf(
          [
            'wide: {rectangle: [60, 20], radius: 6}',
            'narrow: {rectangle: [30, 20], radius: 5}',
            `body: {stack: {shapes: [wide, narrow], lap: ${5 - depth}}}`,
          ],
          'body: [body]',
        ),
      );
    assert.deepEqual(found(await stack(1.13), 'shoulder-shows'), []);
    only(await stack(1.16), 'shoulder-shows');
  });
});
