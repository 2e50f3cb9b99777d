import assert from 'node:assert/strict';
import { findFixes } from '../../../src/fixes/find-fixes.ts';
import { newEngine, specOf } from '../support/engine.ts';

const engine = newEngine();
const options = { locate: () => undefined };

async function titlesFor(
  code: string,
  shapes: readonly string[],
  rest: string,
  head: readonly string[] = [],
): Promise<string[]> {
  const report = await engine.compute(specOf(shapes, rest, head), options);
  const issue = report.issues.find((each) => each.code === code);
  assert.ok(issue, report.issues.map(({ message }) => message).join('\n'));
  return (await findFixes(engine, report, issue, options)).map(({ title }) => title);
}

describe('Remedies', () => {
  const plate = 'plate: {rectangle: [80, 40]}';

  it('move the window, by what is missing, and leave the plate as large as it is', async () => {
    const window = 'window: {rectangle: [50, 20], nudge: {up: 9.2}}';
    const titles = await titlesFor('thin-stroke', [plate, window], 'body: [plate], cut: [window]');
    assert.match(titles[0]!, /^Move “window”: \d\.\d+ mm down/);
    assert.ok(!titles.some((title) => title.startsWith('Thicken “plate”')), titles.join('\n'));
  });

  it('move letters that are cut through apart, by what the wall between them is short of', async () => {
    const word = 'word: {text: PARSLEY, font: Nunito, weight: 800, fit: {in: plate, margin: 6}, bridges: auto}';
    const titles = await titlesFor('weak-bridge', [plate, word], 'body: [plate], cut: [word]');
    assert.match(titles[0]!, /^Move the letters apart: letter_spacing 0\.\d+ mm \(bridge \d\.\d+ → 1\.[56]\d mm, /);
  });

  it('tell how much heavier lines get by all of their ink, however small one of them is', async () => {
    const words =
      'words: {lines: [{text: Plum jam, font: Great Vibes, share: 1.6}, {text: 250 g, font: Nunito}], width: 38}';
    const titles = await titlesFor('fine-mark', [plate, words], 'body: [plate], engrave: [words]');
    // A rim of 0.05 mm along strokes that are half a millimetre wide on the whole: a fifth.
    const [, heavier] = /^Thicken the mark: grow 0\.05 mm \(letters (\d+) % heavier\)/.exec(titles[0]!)!;
    assert.ok(Number(heavier) > 14 && Number(heavier) < 27, titles[0]);
  });

  it('move the point of a size ten times too large for its plate, whatever the hole above it reads as then', async () => {
    const small = 'plate: {rectangle: [70, 35], radius: 5}';
    const word = 'word: {text: Endive, font: Pacifico, width: 450, place: plate}';
    const titles = await titlesFor(
      'mark-off-body',
      [small, word],
      'body: [plate], engrave: [word], hanger: {hole: {at: top}}',
    );
    assert.ok(
      titles.some((title) => title.startsWith('Move the point of the width of “word”: width 45 mm')),
      titles.join('\n'),
    );
  });

  it('set a row of rings on letters where they are level', async () => {
    for (const name of ['Marigold', 'Lavender']) {
      const word = `word: {text: ${name}, font: Pacifico, width: 120, overlap: auto}`;
      const titles = await titlesFor('hangs-askew', [word], 'body: [word], hanger: {ring: {at: top, count: 2}}');
      assert.match(String(titles[0]), /^Set the rings where they are level: spacing \d+ mm/, name);
    }
  });

  it('hang by two what has nothing to hang by right above its centre of gravity, and neither of them in its gap', async () => {
    const posts = [
      'left: {rectangle: [12, 50], nudge: {left: 23}}',
      'right: {rectangle: [16, 50], nudge: {right: 21}}',
      'foot: {rectangle: [58, 8], nudge: {down: 21}}',
    ];
    for (const ring of ['top', '{at: top}']) {
      const titles = await titlesFor('hangs-askew', posts, `body: [left, right, foot], hanger: {ring: ${ring}}`);
      assert.equal(titles.length, 2, titles.join('\n'));
      assert.match(titles[1]!, /^Hang it from its side: at left/);
      // On both posts: between 34 mm and 58 mm apart.
      const [, spacing] = /^Hang it by two rings: count 2, spacing (\d+) mm/.exec(titles[0]!)!;
      assert.ok(Number(spacing) > 34 && Number(spacing) < 58, titles[0]);
    }
  });

  it('make the hole of a ring as large as its place in thin letters lets it be, or move it with what it needs', async () => {
    const titles = (name: string, at: string) =>
      titlesFor(
        'hole-too-small',
        [`name: {text: ${name}, font: Great Vibes, x_height: 11, overlap: auto, grow: auto}`],
        `body: [name], hanger: {ring: {at: ${at}, diameter: 2}}`,
        ['stock: {material: birch plywood, thickness: 3}', 'tie: {twine: 2}'],
      );
    // Twine of 2 mm, doubled, goes through 4 mm easily and through 3 mm only just.
    const left = await titles('Angela', 'left');
    assert.match(left[0]!, /^Make the hole larger: diameter 3 mm \(/, left.join('\n'));
    assert.match(left[1]!, /^Make the hole larger and move the ring: diameter 4 mm, at top/);
    const top = await titles('Ivy', 'top');
    assert.match(top[0]!, /^Make the hole larger: diameter 4 mm \(/);
  });

  it('tell the move, not the push that comes of it', async () => {
    const word = 'word: {text: Tansy, font: Pacifico, width: 30, nudge: {right: 30}}';
    const titles = await titlesFor('mark-off-body', [plate, word], 'body: [plate], engrave: [word]');
    // 15 mm to either side of 30 mm, on a plate that ends at 40 mm: 5 mm beyond it, and 2 mm of clearance.
    assert.ok(
      titles.some((title) => /^Move “word”: 7(\.0\d)? mm left/.test(title)),
      titles.join('\n'),
    );
  });

  it('go on to 2 mm from the edge, or to the middle of what room there is', async () => {
    const glued = (width: number) =>
      titlesFor(
        'off-backing',
        [plate, `word: {rectangle: [${width}, 10], nudge: {right: 30}}`],
        'body: [plate]}\n  top: {body: [word], glue_to: tag',
      );
    // The plate ends at 40 mm: 30 mm wide to 45 mm, 77 mm wide to 68.5 mm.
    assert.match(String((await glued(30))[0]), /^Move “word”: 7 mm left/);
    assert.match(String((await glued(77))[0]), /^Move “word”: 30 mm left/);
  });

  it('make what overhangs smaller so that it has a margin to the true edge of its backing', async () => {
    const glued = async (hanger: string) => {
      const titles = await titlesFor(
        'off-backing',
        ['plate: {ellipse: [100, 40]}', 'word: {path: M0 0H104V6H0Z, width: 104, place: plate}'],
        `body: [plate]${hanger}}\n  top: {body: [word], glue_to: tag`,
      );
      const smaller = titles.find((title) => title.startsWith('Make “word” smaller'));
      const [, width, right = '0'] = /width ([\d.]+) mm(?:, ([\d.]+) mm right)?/.exec(smaller!)!;
      return [Number(width), Number(right)] as const;
    };
    /** From a corner of the word to the ellipse, by points on it. */
    const marginOf = ([width, right]: readonly [number, number]) => {
      const corner = { x: width / 2 + right, y: (3 * width) / 104 };
      const distances = Array.from({ length: 100_000 }, (_, i) => {
        const angle = (Math.PI / 2 / 100_000) * i;
        return Math.hypot(50 * Math.cos(angle) - corner.x, 20 * Math.sin(angle) - corner.y);
      });
      return Math.min(...distances);
    };
    const alone = await glued('');
    assert.equal(alone[1], 0);
    assert.ok(marginOf(alone) >= 2 - 0.01 && marginOf(alone) < 2.1, `${marginOf(alone)} mm`);
    // Beside a hole it is smaller still, and in the middle of what the hole leaves.
    const beside = await glued(', hanger: {hole: {at: left, diameter: 4}}');
    assert.ok(beside[0] < alone[0] && beside[1] > 1, String(beside));
    // With 2 mm it would be another tag.
    assert.ok(marginOf(beside) >= 1.5 - 0.01, `${marginOf(beside)} mm`);
  });

  it('make what overhangs smaller with less of a margin where more would make it another tag', async () => {
    const plate = 'plate: {rectangle: [80, 40]}';
    const widths = async (width: number) => {
      const word = `word: {path: M0 0H${width}V6H0Z, width: ${width}, place: plate}`;
      const titles = await titlesFor(
        'off-backing',
        [plate, word],
        'body: [plate]}\n  top: {body: [word], glue_to: tag',
      );
      return Number(
        /^Make “word” smaller: width ([\d.]+) mm/.exec(titles.find((each) => each.startsWith('Make'))!)![1],
      );
    };
    // 76 mm with 2 mm on either side: of 84 mm that is nine tenths, of 89 mm 85 %, and 78 mm are 88 %.
    assert.equal(await widths(84), 76);
    assert.equal(await widths(89), 77);
    assert.equal(await widths(90), 78);
    // Whatever the margin, a tenth more is another tag.
    assert.equal(await widths(100), 76);
  });

  it('draw a backing round all that is glued on it', async () => {
    const shapes = [
      'plate: {around: word, by: 3}',
      'word: {rectangle: [60, 20]}',
      'heart: {heart: 20, place: {right_of: word, gap: -2}}',
    ];
    const rest = 'body: [plate]}\n  top: {body: [word, heart], parts: many, glue_to: tag';
    const titles = await titlesFor('off-backing', shapes, rest);
    assert.equal(titles[0], 'Let “plate” go round “heart” too: around {union: [word, heart]}');
  });

  it('make what they move smaller where the room is too short for it', async () => {
    const word = 'word: {path: M0 0H84V10H0Z, width: 84, nudge: {right: 30}}';
    const [first] = await titlesFor('mark-off-body', [plate, word], 'body: [plate], engrave: [word]');
    // 76 mm leave 2 mm on either side of 80 mm; the middle of the path is 42 mm from its origin.
    assert.match(String(first), /^Move “word”: 72 mm left, width 76 mm/);
  });

  it('move a hole as far in as one that was given no inset, where there is room', async () => {
    // 1.5 mm of material without a stock, and half as much again.
    const titles = await titlesFor('hole-near-edge', [plate], 'body: [plate], hanger: {hole: {at: top, inset: 0.5}}');
    assert.match(String(titles[0]), /^Move the hole inwards: inset 2\.25 mm/);
    const bar = 'bar: {rectangle: [80, 6.4]}';
    const narrow = await titlesFor(
      'hole-near-edge',
      [bar],
      'body: [bar], hanger: {hole: {at: top, inset: 0.5, diameter: 3}}',
    );
    assert.match(String(narrow[0]), /^Move the hole inwards: inset 1\.55 mm/);
  });

  it('are written in round steps, rounded away from what was there', async () => {
    const titles = async (units: string, length: (mm: number) => string) =>
      titlesFor(
        'thin-stroke',
        [
          `bar: {path: "M0 0H${length(60)}V${length(1.31)}H0Z", grow: -${length(0.02)}}`,
          `plate: {rectangle: [${length(40)}, ${length(30)}]}`,
        ],
        'body: [plate, bar]',
        [`units: ${units}`, `stock: {min_web: ${length(1.5)}}`],
      );
    // 1.27 mm are missing 0.23 mm: growth from −0.02 by 0.115 mm or more.
    assert.match((await titles('mm', (mm) => `${mm}`))[0]!, /^Thicken “bar”: grow 0\.1 mm/);
    assert.match((await titles('in', (mm) => (mm / 25.4).toFixed(5)))[0]!, /^Thicken “bar”: grow 0\.004 in/);
  });

  it('hold on a stock of which nothing was measured: that is said of it once nothing is too narrow', async () => {
    const bar = 'bar: {path: "M0 0H60V1.3H0Z"}';
    const stocks = ['stocks:', '  ply3: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}', 'stock: ply3'];
    const rest = 'body: [bar], parts: many';
    const fixed = await engine.compute(specOf(['bar: {path: "M0 0H60V1.3H0Z", grow: 0.15}'], rest, stocks), options);
    assert.deepEqual(
      fixed.issues.map(({ code }) => code),
      ['not-measured'],
    );
    assert.match((await titlesFor('thin-stroke', [bar], rest, stocks))[0]!, /^Thicken “bar”: grow 0\.\d+ mm/);
  });

  it('slide letters further together, or thicken them where they lap as far already', async () => {
    const name = 'name: {text: Tom, font: Pacifico, x_height: 5 mm, overlap: 0.6 mm}';
    const titles = await titlesFor('weak-bridge', [name], 'body: [name], parts: many');
    assert.ok(
      titles.some((title) => title.startsWith('Thicken “name”: grow')),
      titles.join('\n'),
    );
    assert.ok(!titles.some((title) => title.includes('overlap 0.6 mm')), titles.join('\n'));
  });

  it('slide no letters together that are glued one by one: what carries them joins them', async () => {
    const name = 'name: {text: SAGE, font: Great Vibes, x_height: 10}';
    const back = 'back: {around: name, by: 5}';
    const titles = async (letters: string, code: string) =>
      titlesFor(code, [name, back], `body: [back]}\n  letters: {body: [name], ${letters}`);
    const glued = await titles('parts: many, glue_to: tag', 'thin-stroke');
    assert.ok(
      glued.some((title) => title.startsWith('Thicken “name”')),
      glued.join('\n'),
    );
    assert.ok(!glued.some((title) => title.startsWith('Slide')), glued.join('\n'));
    const loose = await titles('parts: many', 'thin-stroke');
    assert.ok(
      loose.some((title) => title.startsWith('Slide')),
      loose.join('\n'),
    );
  });

  it('take a letter that is missing from another font, of a text and of a line', async () => {
    const titles = async (name: string) =>
      titlesFor('missing-glyph', [plate, `name: ${name}`], 'body: [plate], engrave: [name]');
    const [first] = await titles('{text: Ωx, font: Alfa Slab One, width: 30}');
    assert.equal(first, 'Take the missing letters from another font: font [Alfa Slab One, Nunito]');
    assert.equal((await titles('{lines: [Dill, Ωx], font: Alfa Slab One, width: 30}'))[0], first);
    const strokes = await titles('{text: Мята, font: single line, cap_height: 8}');
    assert.match(strokes[0]!, /^Set “name” in another font: font Nunito/);
  });

  it('write a fraction or a joined sign that is missing as its figures or letters', async () => {
    const titles = async (text: string) =>
      titlesFor(
        'missing-glyph',
        [plate, `name: {text: ${text}, font: Alfa Slab One, width: 30}`],
        'body: [plate], engrave: [name]',
      );
    assert.ok((await titles('sow 1⅔ in')).includes('Write it in other letters: text "sow 1 2/3 in"'));
    assert.ok((await titles('Ⅷ')).includes('Write it in other letters: text "VIII"'));
    assert.ok(!(await titles('Ω')).some((title) => title.startsWith('Write')));
  });
});
