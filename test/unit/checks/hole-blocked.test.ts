import assert from 'node:assert/strict';
import { boundsOf, boxCentre } from '../../../src/geometry/measure.ts';
import type { Bounds } from '../../../src/geometry/types.ts';
import { marksAbove } from '../../../src/tag/lettering/marks-above.ts';
import { ringReads } from '../../../src/checks/measures/ring-reads.ts';
import { assertNear, make, placeOf, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertSilent, only } from './found.ts';

/** A plate with a hole of 4 mm whose centre is 10 above the middle, and what is glued on it. */
function glued(front: string, tie = 'tie: {twine: 2}', hanger = 'hole: {diameter: 4, at: {up: 10}}'): Promise<Made> {
  return make(`tagwright: 1
${tie}
shapes:
  plate: {rectangle: [60, 40]}
  front: ${front}
pieces:
  back: {body: [plate], hanger: {${hanger}}}
  front: {title: Leaf, body: [front], glue_to: back, parts: many}
`);
}

describe('A tie beside a glued piece', () => {
  // The hole reaches from 8 to 12.
  const above = (gap: number) => `{rectangle: [10, 4], nudge: {up: ${14 + gap}}}`;
  const below = (gap: number) => `{rectangle: [10, 8], nudge: {up: ${4 - gap}}}`;

  it('needs its own thickness on the way to the edge that is up', async () => {
    const made = await glued(above(0.6));
    const issue = only(made, 'hole-blocked');
    assert.equal(issue.severity, 'warning');
    assert.equal(placeOf(made.report, issue).line, 7);
    assertNear(issue.width!, 0.6, 0.01);
    assert.equal(issue.minimum, 2);
    assert.match(
      issue.message,
      /^Only 0\.\d\d mm between the hole and “Leaf”, glued on; minimum 2\.00 mm for 2\.00 mm twine\.$/,
    );
    const [on, at] = issue.points!;
    assertNear(on!.y, 12, 0.01);
    assertNear(at!.y, 12.6, 0.01);
    only(await glued(above(1.97)), 'hole-blocked');
    assertSilent(await glued(above(2.01)), 'hole-blocked');
  });

  it('needs half of that elsewhere', async () => {
    assertNear(only(await glued(below(0.6)), 'hole-blocked').width!, 0.6, 0.01);
    only(await glued(below(0.97)), 'hole-blocked');
    assertSilent(await glued(below(1.01)), 'hole-blocked');
    const beside = (gap: number) => `{rectangle: [8, 2], nudge: {up: 10, right: ${6 + gap}}}`;
    only(await glued(beside(0.97)), 'hole-blocked');
    assertSilent(await glued(beside(1.01)), 'hole-blocked');
  });

  it('goes out within 60° of straight up', async () => {
    // Small discs, their rim 1.5 mm from that of the hole: too near on the way only.
    const disc = (degrees: number) => {
      const angle = (degrees * Math.PI) / 180;
      const [right, up] = [3.75 * Math.sin(angle), 10 + 3.75 * Math.cos(angle)];
      return `{ellipse: 0.5, nudge: {right: ${right.toFixed(4)}, up: ${up.toFixed(4)}}}`;
    };
    for (const side of [1, -1]) {
      only(await glued(disc(side * 58)), 'hole-blocked');
      assertSilent(await glued(disc(side * 65)), 'hole-blocked');
    }
  });

  it('is as thick as it is said, or as twine usually is', async () => {
    for (const [tie, hanger, needed] of [
      ['tie: {twine: 3}', 'hole: {diameter: 4, at: {up: 10}}', 3],
      ['units: mm', 'hole: {diameter: 4, at: {up: 10}}', 1.5],
      // Gathered: a fifth of its width. Flat in a slot: 1 mm.
      ['tie: {ribbon: 6}', 'hole: {diameter: 4, at: {up: 10}}', 1.2],
      ['tie: {ribbon: 6}', 'slot: {width: 4, length: 8, at: {up: 10}}', 1],
    ] as const) {
      only(await glued(above(needed - 0.03), tie, hanger), 'hole-blocked');
      assertSilent(await glued(above(needed + 0.01), tie, hanger), 'hole-blocked', tie);
    }
  });

  it('goes over the wall of a ring, whose hole touches a rim glued along the edge, whichever way it hangs', async () => {
    const rim = (at: string) =>
      make(`tagwright: 1
tie: {twine: 2}
shapes:
  disc: {circle: 60}
  rim: {difference: [disc, {from: disc, grow: -4}]}
pieces:
  back: {body: disc, hanger: {ring: {on: disc, at: ${at}}}}
  rim: {body: rim, glue_to: back}
`);
    for (const at of ['top', 'left', 'bottom', 'top-right', '1', '30', '45', '60', '137'])
      assertSilent(await rim(at), 'hole-blocked', at);
  });

  it('passes a glued piece that has a hole of its own for it', async () => {
    const holed = (size: number) =>
      `{difference: [{rectangle: [30, 12], nudge: {up: 10}}, {ellipse: ${size}, nudge: {up: 10}}]}`;
    for (const size of [4, 5, 7.9]) assertSilent(await glued(holed(size)), 'hole-blocked', `${size}`);
    // A frame is none, where the hole lies near one side of it.
    const frame = '{difference: [{rectangle: [60, 40]}, {rectangle: [50, 25.2]}]}';
    assertNear(only(await glued(frame), 'hole-blocked').width!, 0.6, 0.01);
    assertSilent(await glued('{difference: [{rectangle: [60, 40]}, {rectangle: [50, 28.1]}]}'), 'hole-blocked');
  });

  it('counts what is glued on a glued piece', async () => {
    const text = `tagwright: 1
tie: {twine: 2}
shapes:
  plate: {rectangle: [60, 40]}
  low: {rectangle: [40, 10], nudge: {down: 12}}
  high: {rectangle: [10, 24], nudge: {down: 4.6}}
pieces:
  back: {body: [plate], hanger: {hole: {diameter: 4, at: {up: 10}}}}
  middle: {body: [low], glue_to: back}
  top: {body: [high], glue_to: middle}
`;
    assert.match(only(await make(text), 'hole-blocked').message, /“top”, glued on/);
  });
});

describe('What crosses the opening for the tie', () => {
  const marked = (shape: string, rest: string) =>
    make(
      specOf(
        ['body: {rectangle: [60, 40]}', `mark: ${shape}`],
        `body: [body], ${rest}, hanger: {hole: {diameter: 4, at: {up: 10}}}`,
      ),
    );

  it('is in the way from 0.02 mm² on', async () => {
    // Exact: a disc of radius 1 and the hole of radius 2 share 0.02 mm² where they lie 2.9545 apart (circular segments).
    const lens = (d: number) => {
      const part = (r: number, a: number) => r * r * Math.acos(a / r) - a * Math.sqrt(r * r - a * a);
      const a = (d * d + 4 - 1) / (2 * d);
      return part(2, a) + part(1, d - a);
    };
    const [near, far] = [2.93, 2.97];
    assert.ok(lens(near) > 0.025 && lens(far) < 0.015);
    for (const use of ['engrave', 'score']) {
      const at = (up: number) => marked(`{ellipse: 2, nudge: {up: ${up}}}`, `${use}: [mark]`);
      assert.equal(only(await at(10 - near), 'hole-blocked').severity, 'warning');
      const touching = (await at(10 - far)).issues.filter(({ code }) => code === 'hole-blocked');
      assert.ok(touching.every(({ severity }) => severity === 'info'));
    }
  });

  it('is none that surrounds it: a field of which it takes 98 %, or a scored border', async () => {
    // Exact: the segment of a circle of radius 2 beyond a chord at 1.78 or 1.81 is 2.15 or 1.73 % of it.
    const field = (top: number) => `{rectangle: [50, 20], nudge: {up: ${top}}}`;
    only(await marked(field(1.78), 'engrave: [mark]'), 'hole-blocked');
    assertSilent(await marked(field(1.81), 'engrave: [mark]'), 'hole-blocked');
    for (const border of ['{ellipse: 6, nudge: {up: 10}}', '{rectangle: [50, 30]}', '{ellipse: 4, nudge: {up: 10}}'])
      assertSilent(await marked(border, 'score: [mark]'), 'hole-blocked', border);
    only(await marked('{rectangle: [50, 20]}', 'score: [mark]'), 'hole-blocked');
  });

  it('is the body where a ring is put deeper than its middle, unless “sink” asks for that', async () => {
    const hung = (ring: string) =>
      make(specOf(['body: {rectangle: [60, 40]}'], `body: [body], hanger: {ring: {${ring}, diameter: 4}}`));
    assertSilent(await hung('at: {up: 20.02}'), 'hole-blocked');
    only(await hung('at: {up: 19.98}'), 'hole-blocked');
    for (const sink of [1.98, 2.02, 4]) assertSilent(await hung(`at: top, sink: ${sink}`), 'hole-blocked');
  });

  it('is a piece glued over it, which is an error, from 0.02 mm² on', async () => {
    const over = (by: number) => glued(`{rectangle: [10, 8], nudge: {up: ${4 + by}}}`);
    // Exact: a segment 0.05 high of a circle of radius 2 has 0.030 mm², one of 0.03 high 0.014.
    assert.equal(only(await over(0.05), 'hole-blocked').severity, 'error');
    assert.equal(only(await over(0.03), 'hole-blocked').severity, 'warning');
  });
});

describe('An opening through two layers', () => {
  const layers = (front: string) =>
    make(`tagwright: 1
stock: {thickness: 3}
stocks: {thin: {thickness: 2}}
tie: {twine: 2}
hangers: {eye: {hole: {on: plate, at: left}}}
shapes:
  plate: {rectangle: [60, 40]}
  band: {from: plate, grow: -2}
pieces:
  back: {body: [plate], hanger: eye}
  front: {body: [band], glue_to: back, stock: thin, ${front}}
`);

  it('is in line wherever both have the same hanger, however thick their sheets are', async () => {
    const made = await layers('hanger: eye');
    const [one, other] = made.pieces.map(({ hangers }) => hangers[0]!.centre);
    assert.deepEqual(one, other);
    assertSilent(made, 'hole-blocked');
  });

  it('is said to be out of line where each has one of its own', async () => {
    const made = await layers('hanger: {hole: {on: plate, at: left, inset: 6.2}}');
    assert.match(only(made, 'hole-blocked').message, /covers part of the hole: its own is \d\.\d\d mm out of line/);
  });

  it('is blind, an error, where what lies below closes more than half of it', async () => {
    // The middle of the hole a little inside the edge of what lies below, and a little outside.
    const at = (x: number) =>
      make(`tagwright: 1
tie: {twine: 2}
shapes:
  plate: {rectangle: [60, 40]}
  flag: {rectangle: [60, 20], nudge: {right: 20}}
pieces:
  back: {body: [plate]}
  flag: {body: [flag], glue_to: back, hanger: {hole: {at: {right: ${x}}, diameter: 4}}}
`);
    const found = only(await at(9.8), 'hole-blocked');
    assert.equal(found.severity, 'error');
    assert.match(found.message, /^“back”, below, closes the hole of “flag” \(7\.1 mm²\)\.$/);
    assertSilent(await at(10.2), 'hole-blocked');
  });
});

describe('A hole that looks like a slip', () => {
  const tag = (shapes: readonly string[], uses: string, hanger = 'hole: {diameter: 4, at: {up: 10}}') =>
    make(specOf(['plate: {rectangle: [60, 40]}', ...shapes], `body: [plate], ${uses}, hanger: {${hanger}}`));
  // The hole reaches from 8 to 12.
  const below = (gap: number) => [`mark: {rectangle: [30, 6], nudge: {up: ${5 - gap}}}`];

  it('lies less than a millimetre from engraving', async () => {
    const issue = only(await tag(below(0.97), 'engrave: [mark]'), 'hole-blocked');
    assert.equal(issue.severity, 'info');
    assert.equal(issue.message, 'Only 0.97 mm between the hole and “mark”: it looks like a mistake; minimum 1.00 mm.');
    assertNear(issue.width!, 0.97, 0.001);
    assertSilent(await tag(below(1.01), 'engrave: [mark]'), 'hole-blocked');
    // A line that is scored beside it is a border or a fold.
    assertSilent(await tag(below(0.5), 'score: [mark]'), 'hole-blocked');
  });

  it('is none in a field that is engraved, and none in a border', async () => {
    for (const shape of [
      '{rectangle: [50, 30]}',
      '{difference: [{ellipse: 9, nudge: {up: 10}}, {ellipse: 4.6, nudge: {up: 10}}]}',
      '{difference: [{rectangle: [50, 25.6]}, {rectangle: [48, 24.6]}]}',
    ])
      assertSilent(await tag([`mark: ${shape}`], 'engrave: [mark]'), 'hole-blocked', shape);
  });

  it('is in the way of a letter, however fat its strokes', async () => {
    const fat = '{text: I, font: Alfa Slab One, height: 30, place: {on: plate, by: box}}';
    assert.equal(only(await tag([`mark: ${fat}`], 'engrave: [mark]'), 'hole-blocked').severity, 'warning');
  });

  // Exact: the outline of I in Alfa Slab One is a box as high as its capitals.
  const letter = (top: number, how = 12) => [
    `mark: {text: I, font: Alfa Slab One, cap_height: ${how}, place: {on: plate, by: box}, nudge: {up: ${top - how / 2}}}`,
  ];

  it('lies beside lettering that is engraved, scored, cut through or glued on', async () => {
    for (const use of ['engrave', 'score', 'cut']) {
      only(await tag(letter(7.05), `${use}: [mark]`, 'slot: {width: 4, length: 8, at: {up: 10}}'), 'hole-blocked');
      const far = await tag(letter(6.95), `${use}: [mark]`, 'slot: {width: 4, length: 8, at: {up: 10}}');
      assertSilent(far, 'hole-blocked', use);
    }
    const word = (top: number) => glued(letter(top)[0]!.replace('mark: ', ''), 'tie: {twine: 1}');
    assert.match(only(await word(7.05), 'hole-blocked').message, /“Leaf”: it looks like a mistake/);
  });

  it('is one more letter as an upright slot beside those that are cut through, within half of their height', async () => {
    // The I is 12 mm high.
    const mark = 'mark: {text: I, font: Alfa Slab One, cap_height: 12, place: {on: plate, by: box}}';
    const [cut] = (await tag([mark], 'cut: [mark]', 'hole: top')).pieces[0]!.sources.filter(({ use }) => use === 'cut');
    const half = boundsOf(cut!.region)!.maxX;
    const beside = (gap: number, use = 'cut', length = 12) =>
      tag(
        [mark],
        `${use}: [mark]`,
        `slot: {width: 2, length: ${length}, at: left, inset: 3, nudge: {right: ${25 - half - gap}}}`,
      );
    assert.equal(
      only(await beside(2.5), 'hole-blocked').message,
      'The slot stands 2.50 mm beside the “I” of “mark”, about as high, and reads as one more letter.',
    );
    only(await beside(5.95), 'hole-blocked');
    assertSilent(await beside(6.05), 'hole-blocked');
    assertSilent(await beside(2.5, 'cut', 4.5), 'hole-blocked');
    assertSilent(await beside(2.5, 'engrave'), 'hole-blocked');
  });

  describe('over a letter', () => {
    /** The I as it was made: half its width, its top, and what of the font is its x-height. */
    const over = async (top: number, hole: string, how = 12) => {
      const made = await tag(letter(top, how), 'engrave: [mark]', hole);
      const [lettering] = made.pieces[0]!.marks[0]!.lettering!;
      const box = boundsOf(lettering!.letters[0]!.region)!;
      assertNear(box.maxY, top, 0.001);
      return { made, half: (box.maxX - box.minX) / 2, xHeight: lettering!.xHeight };
    };
    const at = (up: number, right = 0, size = 3) => `hole: {diameter: ${size}, at: {up: ${up}, right: ${right}}}`;

    it('reads as its accent up to 0.35 of the height of small letters', async () => {
      const { xHeight } = await over(2, at(12));
      const gap = (share: number) => at(2 + 1.5 + share * xHeight);
      const issue = only((await over(2, gap(0.345))).made, 'hole-blocked');
      assert.match(issue.message, /^The hole stands \d\.\d\d mm above the “I” of “mark” and reads as its accent\.$/);
      assertSilent((await over(2, gap(0.355))).made, 'hole-blocked');
    });

    it('reads as another dot beside or below one, up to its own width from it', async () => {
      const made = (left: number, level: number) =>
        tag(['mark: {text: i, font: Nunito, x_height: 16, place: plate}'], 'engrave: [mark]', at(level, left + 1.5));
      const { maxX, minY, maxY } = boundsOf(marksAbove((await made(1, 9)).pieces[0]!.marks[0]!.region)[0]!)!;
      const beside = (gap: number, level = (minY + maxY) / 2) => made(maxX + gap, level);
      const issue = only(await beside(1.1), 'hole-blocked');
      assert.match(
        issue.message,
        /^The hole stands 1\.\d\d mm beside the dot of the “i” of “mark” and reads as another one\.$/,
      );
      only(await beside(2.9), 'hole-blocked');
      assertSilent(await beside(3.1), 'hole-blocked');
      assertSilent(await beside(1.1, maxY + 0.1), 'hole-blocked');
    });

    it('reads so over capitals that have one in some language, and over small letters', async () => {
      for (const [text, isOne] of [
        ['A', true],
        ['S', false],
        ['W', false],
        ['s', true],
      ] as const) {
        const shape = [`mark: {text: ${text}, font: Nunito, weight: 800, size: 16, place: {on: plate}}`];
        const { pieces } = await tag(shape, 'engrave: [mark]', at(18, 0, 0.5));
        const { letters, xHeight } = pieces[0]!.marks[0]!.lettering![0]!;
        const { maxX, minX, maxY } = boundsOf(letters[0]!.region)!;
        const hole = at(maxY + 0.25 * xHeight + 1.5, (minX + maxX) / 2);
        const made = await tag(shape, 'engrave: [mark]', hole);
        if (isOne) only(made, 'hole-blocked');
        else assertSilent(made, 'hole-blocked', text);
      }
    });

    it('reads so the less, the farther it is off the middle, and over the edge not at all', async () => {
      const { half, xHeight } = await over(2, at(12));
      const gap = 0.21 * xHeight;
      // An ellipse: 0.21 is 0.6 of 0.35, so 0.8 of the half width is the end (3, 4, 5).
      assert.ok(half > 1.5, 'the letter is wider than the hole');
      for (const side of [1, -1]) {
        only((await over(2, at(3.5 + gap, side * 0.79 * half))).made, 'hole-blocked');
        assertSilent((await over(2, at(3.5 + gap, side * 0.81 * half))).made, 'hole-blocked');
        assertSilent((await over(2, at(3.5 + 1.05, side * 1.01 * half))).made, 'hole-blocked');
      }
    });

    it('reads so where it is as large as an accent, 0.2 to 0.7 of the height of small letters', async () => {
      const xHeight = (await over(2, at(12), 14)).xHeight;
      for (const [share, isOne] of [
        [0.195, false],
        [0.205, true],
        [0.695, true],
        [0.705, false],
      ] as const) {
        const size = share * xHeight;
        const { made } = await over(2, at(2 + 1.1 + size / 2, 0, size), 14);
        if (isOne) only(made, 'hole-blocked');
        else assertSilent(made, 'hole-blocked', `${share}`);
      }
    });
  });
});

describe('A ring on a plate with a piece glued on', () => {
  const ring = (front: string) => glued(front, 'tie: {twine: 3}', 'ring: {on: plate, at: top}');

  it('has its tie over the wall, away from what lies wholly on the plate', async () => {
    for (const frame of [
      '{difference: [{rectangle: [60, 40]}, {rectangle: [50, 30]}]}',
      '{rectangle: [50, 8], nudge: {up: 15.9}}',
    ])
      assertSilent(await ring(frame), 'hole-blocked', frame);
  });

  it('has not where that runs beyond the plate, beside the ring', async () => {
    only(await ring('{rectangle: [4, 12], nudge: {up: 17, right: 4.5}}'), 'hole-blocked');
  });
});

describe('A ring that reads as a letter', () => {
  // A small letter is 8 mm high; ring: diameter + 2 × 1 mm of wall.
  const xHeight = 8;
  const hung = async (
    word: string,
    size: number,
    place: (at: LetterBox) => { readonly x: number; readonly y: number },
  ) => {
    const shapes = [`word: {text: ${word}, font: Nunito, x_height: ${xHeight}}`];
    const tag = (at: string) =>
      make(
        specOf(
          shapes,
          `body: [word], parts: many, hanger: {ring: {diameter: ${size - 2}, wall: 1, sink: 0.1, at: ${at}}}`,
        ),
      );
    const solid = [...(await tag('left')).report.tag!.made.values()][0]!;
    const box = boundsOf(solid.region)!;
    const ends = solid.lettering![0]!.letters.map(({ region }) => boundsOf(region)!);
    const centres = ends.map((each) => boxCentre(each).x);
    const { x, y } = place({ ...box, ends, baseline: solid.band!.baseline, first: centres[0]!, last: centres.at(-1)! });
    const { x: cx, y: cy } = boxCentre(box);
    return tag(`{right: ${(x - cx).toFixed(4)}, up: ${(y - cy).toFixed(4)}}`);
  };
  interface LetterBox extends Bounds {
    readonly baseline: number;
    readonly first: number;
    readonly last: number;
    /** Of each letter. */
    readonly ends: readonly Bounds[];
  }
  const behind = (up: number) => (at: LetterBox) => ({ x: at.maxX + 3, y: at.baseline + up });
  const before = (up: number) => (at: LetterBox) => ({ x: at.minX - 3, y: at.baseline + up });

  it('stands beside them between the baseline and their top', async () => {
    const issue = only(await hung('tea', 6.4, behind(4)), 'hole-blocked');
    assert.equal(issue.severity, 'info');
    assert.equal(issue.message, 'The ring stands beside the letters, about as large as they are, and reads as an “o”.');
    only(await hung('tea', 6.4, behind(0.03)), 'hole-blocked');
    assertSilent(await hung('tea', 6.4, behind(-0.03)), 'hole-blocked');
    only(await hung('tea', 6.4, behind(xHeight - 0.03)), 'hole-blocked');
    assertSilent(await hung('tee', 6.4, behind(xHeight + 0.03)), 'hole-blocked');
    only(await hung('tea', 6.4, before(4)), 'hole-blocked');
  });

  it('is the bowl of a “p” behind a stem up to half of its radius above the letters, but where the right was asked for', async () => {
    const issue = only(await hung('tea', 6.4, behind(xHeight + 0.03)), 'hole-blocked');
    assert.equal(issue.message, 'The ring stands behind the last letter and reads as the bowl of a “p”.');
    only(await hung('tea', 6.4, behind(xHeight + 1.57)), 'hole-blocked');
    assertSilent(await hung('tea', 6.4, behind(xHeight + 1.63)), 'hole-blocked');
    const hanger = { readAs: ['p'] } as const;
    assert.deepEqual(ringReads({ ...hanger, at: { kind: 'auto' } }), ['p']);
    assert.deepEqual(ringReads({ ...hanger, at: { kind: 'anchor', anchor: 'right' } }), []);
    // Over the middle of a word that ends in a stem, it is behind nothing.
    const { pieces } = await make(
      specOf(
        ['name: {text: Angelica, font: Pacifico, width: 92 mm, grow: 0.5 mm}'],
        'body: [name], hanger: {ring: {at: top, diameter: 3 mm}}',
      ),
    );
    assert.deepEqual(pieces[0]!.hangers[0]!.readAs, ['accent']);
  });

  describe('in front of a capital at the left', () => {
    const named = async (name: string, font = 'Pacifico', size = 'x_height: 11') => {
      const { pieces, issues } = await make(
        specOf([`name: {text: ${name}, font: ${font}, ${size}, overlap: auto}`], 'body: [name], hanger: {ring: left}', [
          'stock: {material: birch plywood, thickness: 3}',
          'tie: {twine: 1.5}',
        ]),
      );
      const said = issues.flatMap(({ code, message }) => (code === 'hole-blocked' ? [message] : []));
      return { readAs: pieces[0]!.hangers[0]!.readAs, said, centre: pieces[0]!.hangers[0]!.centre };
    };

    it('is none under its swash where that is twice as high: OCR reads the name', async () => {
      for (const name of ['Benedikt', 'Fergus', 'Henryk', 'Yvonne', 'Teresa', 'Lucas']) {
        const { readAs, said } = await named(name);
        assert.deepEqual([readAs, said], [['small'], []], name);
      }
      // The same ring is as large as half of the letter.
      assert.equal((await named('Teresa', 'Pacifico', 'x_height: 8')).said.length, 1);
    });

    it('is one beside a first stroke that stands by itself', async () => {
      for (const name of ['Nina', 'Ulf']) assert.equal((await named(name)).said.length, 1, name);
      // Another place at that side is no dearer.
      assert.equal((await named('Jane')).said.length, 0);
    });

    it('is told with what helps where nobody has put it there', async () => {
      const shape = 'name: {text: Simon, font: Nunito, x_height: 11, overlap: auto}';
      const said = async (name: string) => {
        const head = ['stock: {material: birch plywood, thickness: 3}', 'tie: {twine: 1.5}'];
        const { issues } = await make(specOf([name], 'body: [name], hanger: {ring: {at: auto}}', head));
        return issues.flatMap(({ code, message }) => (code === 'hole-blocked' ? [message] : []));
      };
      // A place that reads as nothing is worth a little less of a joint.
      assert.deepEqual(await said(shape), []);
      const [noah = ''] = await said(shape.replace('Simon, font: Nunito', 'Noah, font: Pacifico'));
      assert.match(
        noah,
        /reads as an “o”\. Another side may suit better; larger letters help, or a backing with a hole\.$/u,
      );
    });

    it('is preferred to one among them where it may go to any side', async () => {
      const shape = 'name: {text: Walter, font: Nunito, x_height: 11, overlap: auto}';
      const head = ['stock: {material: birch plywood, thickness: 3}', 'tie: {twine: 1.5}'];
      const { pieces } = await make(specOf([shape], 'body: [name], hanger: {ring: {at: auto}}', head));
      assert.deepEqual(
        pieces[0]!.hangers[0]!.readAs!.filter((each) => ['accent', 'crook', 'letter within'].includes(each)),
        [],
      );
    });

    it('is the bowl of a “d” beside the first stroke of a V or a U, and stands at its head, or says so', async () => {
      for (const [name, font] of [
        ['Vivienne', 'Pacifico'],
        ['Ulf', 'Nunito'],
        ['Vera', 'Nunito'],
      ] as const) {
        const { readAs, said } = await named(name, font);
        assert.deepEqual([readAs, said], [[], []], `${name}, ${font}`);
      }
      assert.deepEqual((await named('Wendy', 'Nunito')).said, [
        'The ring stands under the first stroke of the first letter and reads as a “d” with it.',
      ]);
    });
  });

  it('is half as large as they are to 1.6 times', async () => {
    // As near to the letter whatever its size, so that it covers none of it.
    const touching = (share: number) => (at: LetterBox) => ({
      x: at.maxX + (share * xHeight) / 2 - 1,
      y: at.baseline + 4,
    });
    for (const share of [0.505, 1.595]) only(await hung('tea', share * xHeight, touching(share)), 'hole-blocked');
    for (const share of [0.495, 1.605])
      assertSilent(await hung('tea', share * xHeight, touching(share)), 'hole-blocked');
  });

  it('stands between them, from the middle of the first to that of the last', async () => {
    const within = (from: number) => (at: LetterBox) => ({ x: at.first + from, y: at.baseline + 4 });
    const isBetween = ({ message }: { readonly message: string }) => message.includes('between the letters');
    assert.ok(isBetween(only(await hung('Bea', 5, within(0.05)), 'hole-blocked')));
    assert.ok(!isBetween(only(await hung('Bea', 5, within(-0.05)), 'hole-blocked')));
    const short = (by: number) => (at: LetterBox) => ({ x: at.last - by, y: at.baseline + 4 });
    assert.ok(isBetween(only(await hung('Bea', 5, short(0.05)), 'hole-blocked')));
    assert.ok(!isBetween(only(await hung('Bea', 5, short(-0.05)), 'hole-blocked')));
  });

  it('stands between two words, from the last letter of one to the first of the next, at any height', async () => {
    const said = 'The ring stands over the gap between two words and reads as a sign of its own.';
    const gap = (x: number, up: number) =>
      hung('Old Pear', 5, (at: LetterBox) => ({ x: at.ends[2]!.minX + x, y: at.baseline + up }));
    for (const up of [4, 14]) {
      assert.equal(only(await gap(0.05, up), 'hole-blocked').message, said);
      const before = (await gap(-0.05, up)).issues.filter(({ code }) => code === 'hole-blocked');
      assert.ok(before.every(({ message }) => message !== said));
    }
    const last = (x: number) =>
      hung('Old Pear', 5, (at: LetterBox) => ({ x: at.ends[3]!.maxX + x, y: at.baseline + 14 }));
    assert.equal(only(await last(-0.05), 'hole-blocked').message, said);
    assertSilent(await last(0.05), 'hole-blocked');
  });

  it('is an accent above a small letter up to 0.6 of its height, and one more dot beside an apostrophe', async () => {
    const readAs = async (...at: Parameters<typeof hung>) => (await hung(...at)).pieces[0]!.hangers[0]!.readAs;
    const above = (share: number) =>
      readAs('Leo', 5, (at: LetterBox) => ({ x: at.last, y: at.baseline + (1 + share) * xHeight + 1.5 }));
    assert.deepEqual(await above(0.595), ['accent']);
    assert.deepEqual(await above(0.605), []);
    const beside = (gap: number) =>
      readAs('Jo’el', 5, (at: LetterBox) => ({ x: at.ends[2]!.maxX + gap, y: at.ends[2]!.maxY - 1 }));
    assert.deepEqual(await beside(4.95), ['mark']);
    assert.ok(!(await beside(5.05))!.includes('mark'));
  });

  it('is reported as an accent, but not where the top was asked for', async () => {
    const onO = (at: LetterBox) => ({ x: at.last, y: at.baseline + 1.3 * xHeight + 1.5 });
    const { message } = only(await hung('Leo', 5, onO), 'hole-blocked');
    assert.equal(message, 'The ring stands on a small letter and reads as its accent.');
    const emma = 'body: {text: Emma, font: Pacifico, x_height: 11, overlap: auto, grow: 0.4}';
    const stock = ['stock: {thickness: 3, kerf: 0.16, min_web: 1.5}', 'tie: {twine: 1.5}'];
    const atTop = await make(specOf([emma], 'body: [body], hanger: {ring: top}', stock));
    assert.deepEqual(atTop.pieces[0]!.hangers[0]!.readAs, ['accent']);
    assertSilent(atTop, 'hole-blocked');
  });

  it('covers a dot where its middle is nearer to it than its radius, and is one more within twice that', async () => {
    const above = (name: string, gap: number) =>
      hung(name, 5, (at: LetterBox) => ({ x: boxCentre(at.ends[1]!).x, y: at.ends[1]!.maxY + gap }));
    const [on, off] = [await above('Lêl', 2.45), await above('Lêl', 2.55)];
    assert.deepEqual(on.pieces[0]!.hangers[0]!.readAs, ['on a mark']);
    const said = ({ issues }: typeof on) =>
      issues.flatMap(({ code, message }) => (code === 'hole-blocked' ? message : []));
    assert.deepEqual(said(on), [
      'The ring stands on a dot or an accent of the letters, which can no longer be seen as one.',
    ]);
    assert.deepEqual(off.pieces[0]!.hangers[0]!.readAs, ['mark']);
    assert.deepEqual(said(off), [
      'The ring stands so near to a part above the letters, such as a dot or an accent, that it reads as one more.',
    ]);
    // Straight above the dot of an “i” it is read as that dot.
    const dot = await above('Lil', 2.45);
    assert.deepEqual(dot.pieces[0]!.hangers[0]!.readAs, ['dot']);
    assertSilent(dot, 'hole-blocked');
    assert.deepEqual((await above('Lil', 2.55)).pieces[0]!.hangers[0]!.readAs, ['mark']);
  });

  it('makes a “6” of an L and a “B” of a b where it stands in the crook of their stems, and an “R” of an N on its left head', async () => {
    const said = async (...at: Parameters<typeof hung>) =>
      (await hung(...at)).issues.flatMap(({ code, message }) => (code === 'hole-blocked' ? message : []));
    const crook =
      'The ring stands beside the stem of a letter, over its other strokes, and makes another letter of it, as an “L” becomes a “6”.';
    const inL = (up: number) => (at: LetterBox) => ({ x: at.ends[0]!.minX + 5.5, y: at.baseline + up });
    assert.deepEqual(await said('Lamb', 8, inL(8.5)), [crook]);
    // On the head of the stem it is a ring on a letter.
    assert.deepEqual(await said('Lamb', 8, (at) => ({ x: at.ends[0]!.minX + 1, y: at.maxY + 3 })), []);
    const onB = (up: number) => (at: LetterBox) => ({ x: at.ends[3]!.minX + 4, y: at.baseline + up });
    assert.deepEqual(await said('Lambs', 6, onB(9.3)), [crook]);
    const onN = (share: number) => (at: LetterBox) => {
      const { minX, maxX, maxY } = at.ends[3]!;
      return { x: minX + share * (maxX - minX), y: maxY + 2.5 };
    };
    const asR = 'The ring stands on the left head of the “N”, which reads as an “R”.';
    for (const [share, expected] of [
      [0.02, asR],
      [0.38, asR],
      [0.42, undefined],
    ] as const)
      assert.deepEqual(await said('QUINOA', 7, onN(share)), expected ? [expected] : [], `${share}`);
  });

  it('stands in front of a capital only where it stands on the line and is as large as a small letter', async () => {
    const at = (share: number, foot = 0) => before((share / 2 + foot) * xHeight);
    for (const share of [0.755, 1.295]) only(await hung('Tea', share * xHeight, at(share)), 'hole-blocked');
    for (const share of [0.745, 1.305]) assertSilent(await hung('Tea', share * xHeight, at(share)), 'hole-blocked');
    for (const foot of [-0.145, 0.145]) only(await hung('Tea', xHeight, at(1, foot)), 'hole-blocked');
    for (const foot of [-0.155, 0.155]) assertSilent(await hung('Tea', xHeight, at(1, foot)), 'hole-blocked');
    // All capitals: an O like the others, by their own height.
    only(await hung('TEA', 8, before(6)), 'hole-blocked');
  });

  it('makes a “d” of a capital that is a stem there, as near to it as a tenth of the small letters', async () => {
    const beside = (word: string, gap: number) =>
      hung(word, 5, (at: LetterBox) => ({ x: at.minX - 2.5 - gap * xHeight, y: at.baseline + 0.55 * xHeight }));
    const { message } = only(await beside('Ida', 0.095), 'hole-blocked');
    assert.equal(message, 'The ring and the stem of the first letter read as a “d”.');
    assertSilent(await beside('Ida', 0.105), 'hole-blocked');
    assertSilent(await beside('Oda', 0), 'hole-blocked');
  });

  // OCR reads “dNilma”, “dlera” and “dara” in two faces, and all of eight names that begin with a stem or a bowl.
  it('makes a “d” of the first stroke of a W, a V or a Y, beside its middle', async () => {
    const besideFirst = (word: string) =>
      hung(word, 5, ({ minX, baseline }: LetterBox) => ({ x: minX - 2, y: baseline + 0.7 * xHeight }));
    for (const word of ['Wilma', 'Vera', 'Yara']) {
      const { message } = only(await besideFirst(word), 'hole-blocked');
      assert.equal(message, 'The ring and the stem of the first letter read as a “d”.', word);
    }
    for (const word of ['Nora', 'Emma', 'Olga']) assertSilent(await besideFirst(word), 'hole-blocked', word);
  });
});

describe('A ring over the last letter', () => {
  it('covers it where it has no stem, and makes another of it where it has', async () => {
    for (const [text, size, says] of [
      ['Klaus', 10, 'The ring covers much of the “s”, which may be read as another letter.'],
      ['Sorrel', 6, 'The ring and the stem of the last letter read as a “b”.'],
    ] as const) {
      const shapes = [`name: {text: ${text}, font: Pacifico, x_height: ${size}, overlap: auto, grow: 0.3}`];
      const head = ['tie: {twine: 1.5}', 'stock: {thickness: 3, kerf: 0.16}'];
      const made = await make(specOf(shapes, 'body: name, hanger: {ring: {at: right}}', head));
      assert.equal(only(made, 'hole-blocked').message, says);
    }
  });
});
