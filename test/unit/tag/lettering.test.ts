import assert from 'node:assert/strict';
import { create, type Font } from 'fontkit';
import { boundsOf, contains } from '../../../src/geometry/measure.ts';
import type { Point, Region } from '../../../src/geometry/types.ts';
import { readTables, writeSfnt } from '../../../src/text/sfnt.ts';
import { blockFont } from '../../fonts/block-font.ts';
import { bundledFontBytes, packagedFont } from '../../fonts/font-files.ts';
import { assertNear, makeShape, newEngine, placeOf, report, specOf } from '../support/engine.ts';
import { outerCount } from '../support/shapes.ts';

const bytesOf = {
  roboto: new Uint8Array(await packagedFont('roboto')),
  slab: await bundledFontBytes('Alfa Slab One', 400),
  script: await bundledFontBytes('Pacifico', 400),
};

/** Every letter of it is a block: X from 0.2 em below the baseline to 0.8 above, p the part below, É the part above. */
const engine = newEngine({
  'blocks.otf': blockFont(),
  'roboto.woff': bytesOf.roboto,
  'unsaid.ttf': withoutHeights(bytesOf.slab),
});

/** The font as if made to version 1 of the OS/2 table, which has no heights (OpenType specification). */
function withoutHeights(bytes: Uint8Array): Uint8Array {
  const tables = new Map(readTables(bytes));
  const os2 = Uint8Array.from(tables.get('OS/2')!);
  new DataView(os2.buffer).setUint16(0, 1);
  tables.set('OS/2', os2);
  return writeSfnt(tables);
}

async function problems(shape: string): Promise<string[]> {
  const made = await report(specOf([`body: ${shape}`], 'body: [body], parts: many'), engine);
  return made.issues.map((issue) => `${placeOf(made, issue).text}: ${issue.message}`);
}

/** The least distance of an outline from a point, along its sides too. */
function clearance(region: Region, from: Point): number {
  let least = Infinity;
  for (const ring of region) {
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      const [dx, dy] = [q.x - p.x, q.y - p.y];
      const t = Math.min(1, Math.max(0, ((from.x - p.x) * dx + (from.y - p.y) * dy) / (dx * dx + dy * dy)));
      least = Math.min(least, Math.hypot(p.x + t * dx - from.x, p.y + t * dy - from.y));
    });
  }
  return least;
}

function turned({ x, y }: Point, clockwise: number): Point {
  const [cos, sin] = [Math.cos(clockwise), Math.sin(clockwise)];
  return { x: x * cos + y * sin, y: y * cos - x * sin };
}

function assertHas(region: Region, corners: readonly Point[]): void {
  const points = region.flat();
  for (const corner of corners) {
    const nearest = Math.min(...points.map((p) => Math.hypot(p.x - corner.x, p.y - corner.y)));
    assert.ok(nearest < 1e-4, `no corner at ${corner.x}, ${corner.y}, the nearest is ${nearest} off`);
  }
}

const centre = { x: 0, y: 0 };

/** Advances are kept at this height: at the top halfway up the small letters, at the bottom a quarter. */
const keptAt = ({ xHeight, unitsPerEm }: Font, em: number, share: number): number =>
  (share * em * xHeight) / unitsPerEm;
const blocks = create(blockFont());

describe('Text sized by its letters', () => {
  // Heights of H and x as fontkit reads them from the outlines; in these fonts they are the heights that OS/2 states.
  for (const [font, bytes, key, letter] of [
    ['roboto.woff', bytesOf.roboto, 'cap_height', 'H'],
    ['roboto.woff', bytesOf.roboto, 'x_height', 'x'],
    ['Alfa Slab One', bytesOf.slab, 'cap_height', 'H'],
    ['Pacifico', bytesOf.script, 'x_height', 'x'],
  ] as const) {
    it(`${key} of ${font}: an ${letter} is as high as that, growth included`, async () => {
      const font2 = create(bytes);
      const fontHeight = key === 'cap_height' ? font2.capHeight : font2.xHeight;
      for (const grow of [0, 0.6, -0.2]) {
        const made = await makeShape(`{text: ${letter}, font: ${font}, ${key}: 12 mm, grow: ${grow}}`, [], engine);
        const em = (12 - 2 * grow) / (fontHeight / font2.unitsPerEm);
        const { bbox } = font2.layout(letter).glyphs[0]!;
        assertNear(made.height, (em * (bbox.maxY - bbox.minY)) / font2.unitsPerEm + 2 * grow, 0.02);
      }
    });
  }

  it('measures the H of a font that does not say how high it is', async () => {
    assert.equal(create(withoutHeights(bytesOf.slab))['OS/2'].version, 1);
    const made = await makeShape('{text: H, font: unsaid.ttf, cap_height: 12 mm}', [], engine);
    assertNear(made.height, 12, 1e-3);
    const small = await makeShape('{text: x, font: unsaid.ttf, x_height: 9 mm}', [], engine);
    assertNear(small.height, 9, 1e-3);
  });

  it('gives two words of one font the same height of letters, whatever they are', async () => {
    const height = async (text: string): Promise<number> =>
      (await makeShape(`{text: ${text}, font: roboto.woff, cap_height: 10 mm, letter_spacing: 1 mm}`, [], engine))
        .height;
    assertNear(await height('HEN'), await height('TIE'), 1e-3);
    assertNear(await height('TIE'), 10, 1e-3);
  });

  it('says so, at the key, where two sizes clash', async () => {
    for (const [keys, problem] of [
      ['cap_height: 9, width: 40', 'cap_height: “cap_height” and “width” both set the size; keep one.'],
      ['x_height: 9, height: 40', 'x_height: “x_height” and “height” both set the size; keep one.'],
      ['x_height: 9, cap_height: 12', 'cap_height: “cap_height” and “x_height” both set the size; keep one.'],
      ['size: 9, cap_height: 12', 'size: “size” and “cap_height” both set the size; keep one.'],
      ['cap_height: 9, fit: {in: body}', 'cap_height: “cap_height” and “fit” both set the size; keep one.'],
      ['cap_height: 1, grow: 0.6', '1: The growth alone takes up this height; make it taller, or grow less.'],
      ['cap_height: 0', '0: “cap_height” must be more than 0.'],
    ] as const) {
      const found = await problems(`{text: Rue, ${keys}}`);
      assert.ok(found.includes(problem), `${keys}: ${found.join('\n')}`);
    }
  });
});

describe('Text on an arc', () => {
  it('stands each letter on the circle, turned about the middle of its advance', async () => {
    // Two blocks of 10 mm with a space of 10 mm between: their middles are 20 mm apart along the circle on which advances are kept.
    const step = 10 / (40 + keptAt(blocks, 10, 1 / 2));
    const made = await makeShape('{text: X X, font: blocks.otf, size: 10 mm, arc: {radius: 40 mm}}', [], engine);
    const block = [
      { x: -5, y: 38 },
      { x: 5, y: 38 },
      { x: 5, y: 48 },
      { x: -5, y: 48 },
    ];
    assertHas(
      made.region,
      block.map((p) => turned(p, step)),
    );
    assertHas(
      made.region,
      block.map((p) => turned(p, -step)),
    );
    assertNear(made.area, 200, 1e-3);
    assert.equal(made.region.flat().length, 8);
  });

  it('at the bottom stands inside the circle, heads inwards, and reads from left to right', async () => {
    const made = await makeShape('{text: p É, font: blocks.otf, size: 10, arc: {radius: 40, at: bottom}}', [], engine);
    const step = 10 / (40 - keptAt(blocks, 10, 1 / 4));
    const box = (bottom: number, top: number): Point[] =>
      [bottom, top].flatMap((y) => [-5, 5].map((x) => ({ x, y: y - 40 })));
    assertHas(
      made.region,
      box(-2, 0).map((p) => turned(p, step)),
    );
    assertHas(
      made.region,
      box(0, 8).map((p) => turned(p, -step)),
    );
    assertNear(made.area, 20 + 80, 1e-3);
    assert.equal(made.region.flat().length, 8);
  });

  it('takes the sweep asked for: four letters on 180° stand 45° apart', async () => {
    const made = await makeShape('{text: ÉÉÉÉ, font: blocks.otf, size: 10, arc: {sweep: 180}}', [], engine);
    const radius = 40 / Math.PI - keptAt(blocks, 10, 1 / 2);
    assertNear(clearance(made.region, centre), radius, 1e-3);
    for (const eighth of [-3, -1, 1, 3]) {
      const top = { x: 5, y: radius + 8 };
      assertHas(made.region, [turned(top, (eighth * Math.PI) / 8)]);
    }
  });

  for (const at of ['top', 'bottom'] as const) {
    for (const size of ['width: 60', 'width: 30', 'height: 14', 'cap_height: 7', 'size: 9']) {
      for (const more of ['', ', letter_spacing: 1.5', ', letter_spacing: -0.4', ', grow: 0.5']) {
        it(`keeps to its circle at ${at} with ${size}${more}`, async () => {
          const arc = `arc: {radius: 36, at: ${at}}`;
          // É has its foot on the baseline; at the bottom its feet are what is farthest out.
          const made = await makeShape(`{text: ÉÉÉÉ, font: blocks.otf, ${size}${more}, ${arc}}`, [], engine);
          const grow = more.includes('grow') ? 0.5 : 0;
          const [key, value] = [size.split(':')[0]!, Number(size.split(' ')[1])];
          if (key === 'width') assertNear(made.width, value, 0.02, key);
          if (key === 'height') assertNear(made.height, value, 0.02, key);
          if (at === 'top') assertNear(clearance(made.region, centre), 36 - grow, 0.02);
          else {
            // The foot of a letter of width w touches the circle in the middle; its ends stick out to √(r² + w²/4).
            const reach = Math.max(...made.region.flat().map((p) => Math.hypot(p.x, p.y)));
            assert.ok(reach >= 36 + grow - 0.02 && reach < 36 + grow + 2.5, String(reach));
          }
        });
      }
    }
  }

  it('is what fontkit’s outlines make, each turned by its place along the line', async () => {
    for (const [family, weight, text] of [
      ['Nunito', 600, 'Waffle bean'],
      ['Pacifico', 400, 'Angelica'],
      ['Great Vibes', 400, 'To Wyn'],
    ] as const) {
      const font = create(await bundledFontBytes(family, weight));
      const run = font.layout(text);
      const unit = 12 / font.unitsPerEm;
      const whole = run.positions.reduce((sum, { xAdvance }) => sum + xAdvance, 0) * unit;
      let pen = 0;
      const expected = run.glyphs.flatMap(({ path }, i) => {
        const advance = run.positions[i]!.xAdvance * unit;
        const angle = (pen + advance / 2 - whole / 2) / (50 + keptAt(font, 12, 1 / 2));
        pen += advance;
        // The corners of the outline; its control points lie elsewhere.
        return path.commands.flatMap(({ command, args }) =>
          command === 'lineTo' || command === 'moveTo'
            ? [turned({ x: args[0]! * unit - advance / 2, y: args[1]! * unit + 50 }, angle)]
            : [],
        );
      });
      const made = await makeShape(
        `{text: ${text}, font: ${family}, weight: ${weight}, size: 12, arc: {radius: 50}}`,
        [],
        engine,
      );
      // A corner may lie inside another stroke, but none outside the outline, and many lie on it.
      const onOutline = expected.filter((p) => clearance(made.region, p) < 0.01);
      const outside = expected.filter((p) => !onOutline.includes(p) && !contains(made.region, p));
      assert.deepEqual(outside, [], family);
      assert.ok(onOutline.length > expected.length / 2, `${family}: ${onOutline.length} of ${expected.length}`);
    }
  });

  it('keeps the letters of joined scripts joined, all but three of 28', async () => {
    const apart: string[] = [];
    for (const font of ['Pacifico', 'Great Vibes']) {
      for (const text of ['Angelica', 'Lovage', 'Borage', 'Fennel', 'sorrel', 'marigold', 'Wiesława']) {
        const parts = async (arc: string): Promise<number> =>
          outerCount((await makeShape(`{text: ${text}, font: ${font}, size: 14${arc}}`)).region);
        const straight = await parts('');
        // A letter is about 7 mm wide: its neighbour is turned by about 10°.
        for (const at of ['top', 'bottom'])
          if ((await parts(`, arc: {radius: 40, at: ${at}}`)) > straight) apart.push(`${text} in ${font} at the ${at}`);
      }
    }
    // These hang together by a hair in a straight line already.
    assert.deepEqual(apart, [
      'Wiesława in Pacifico at the top',
      'sorrel in Great Vibes at the bottom',
      'marigold in Great Vibes at the bottom',
    ]);
  });

  it('stands further lines on smaller circles at the top, on larger ones at the bottom', async () => {
    for (const [at, radii] of [
      ['top', [40, 28]],
      ['bottom', [40, 52]],
    ] as const) {
      const text = `"É\\nÉ"`;
      const arc = `arc: {radius: 40, at: ${at}}`;
      const made = await makeShape(`{text: ${text}, font: blocks.otf, size: 10, line_height: 1.2, ${arc}}`, [], engine);
      const feet = made.region.map((ring) => boundsOf([ring])!).map((box) => (at === 'top' ? box.minY : -box.minY));
      assert.deepEqual(
        feet.sort((a, b) => a - b).map((y) => Math.round(y * 1000) / 1000),
        [...radii].sort((a, b) => a - b),
      );
    }
  });

  it('has the middle of its circle where it is placed, and keeps it in copies', async () => {
    const disc = 'disc: {ellipse: 100, nudge: {right: 30, up: 20}}';
    const arc = 'arc: {radius: 40}';
    const placed = [disc, `word: {text: ÉÉ, font: blocks.otf, size: 10, ${arc}, place: {on: disc}}`];
    const made = await makeShape('{from: word}', placed, engine);
    assertNear(clearance(made.region, { x: 30, y: 20 }), 40, 1e-3);
    const grown = await makeShape('{from: word, grow: 0.5, place: {on: disc}}', placed, engine);
    assertNear(clearance(grown.region, { x: 30, y: 20 }), 39.5, 1e-3);
    const unplaced = await makeShape(`{text: ÉÉ, font: blocks.otf, size: 10, ${arc}, grow: 0.5}`, [], engine);
    assertNear(clearance(unplaced.region, centre), 39.5, 1e-3);
  });

  it('fits a disc about the same middle, by its sweep', async () => {
    const made = await makeShape(
      '{text: ÉÉÉÉÉÉ, font: blocks.otf, arc: {sweep: 300}, fit: {in: disc, margin: 2}}',
      ['disc: {ellipse: 100}'],
      engine,
    );
    const reach = Math.max(...made.region.flat().map((p) => Math.hypot(p.x, p.y)));
    assertNear(reach, 48, 0.05);
  });

  for (const [keys, problem] of [
    ['width: 90, arc: {radius: 40, sweep: 90}', /An arc needs either a radius or a sweep in degrees\./],
    ['width: 90, arc: {at: top}', /An arc needs either a radius or a sweep in degrees\./],
    ['width: 90, height: 20, arc: {radius: 40}', /^radius: “width” and “height” together stretch the circle too/],
    ['fit: {in: disc}, arc: {radius: 40}', /^radius: “fit” changes the circle too; give “sweep” instead/],
    ['width: 60, arc: {radius: 0}', /^0: “radius” must be more than 0\./],
    ['width: 60, arc: {sweep: 400}', /^400: “sweep” must be at most 360\./],
    ['size: 40, arc: {radius: 20}', /^20: The text goes around its circle more than once; use a larger radius/],
    ['width: 200, arc: {radius: 40}', /^200: On this circle the text cannot reach this width: maximum 1\d\d\.\d mm\./],
    ['height: 300, arc: {radius: 40}', /^300: On this circle the text cannot reach this height/],
  ] as const) {
    it(`says what is wrong with ${keys}`, async () => {
      const made = await report(
        specOf(['disc: {ellipse: 90}', `body: {text: ÉÉÉÉÉÉÉÉÉÉÉÉÉÉÉÉ, font: blocks.otf, ${keys}}`]),
        engine,
      );
      const found = made.issues.map((issue) => `${placeOf(made, issue).text}: ${issue.message}`);
      assert.ok(
        found.some((each) => problem.test(each)),
        found.join('\n'),
      );
    });
  }

  it('says so where lines find no circle any more', async () => {
    const found = await problems(
      '{text: "É\\nÉ\\nÉ\\nÉ", font: blocks.otf, size: 10, line_height: 1, arc: {radius: 25}}',
    );
    assert.ok(
      found.includes('25: The circle is too small for letters of this size, or for this many lines.'),
      found.join('\n'),
    );
  });
});
