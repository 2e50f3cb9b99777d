import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { cutAway } from '../../../src/checks/measures/cut-away.ts';
import { hardToRead } from '../../../src/checks/hard-to-read.ts';
import { doubtful, isBlob, isPlainlySpoiled, readability, unlikely } from '../../../src/checks/measures/readability.ts';
import { Lettering } from '../../../src/tag/lettering/letters.ts';
import { letteringOf } from '../../calibration/cases.ts';
import { bundledFace } from '../../fonts/faces.ts';
import { checked } from '../support/checked.ts';
import { make, newEngine, specOf } from '../support/engine.ts';

const plate = 'plate: {rectangle: [120, 60], radius: 4}';

async function findingsOf(shapes: readonly string[], piece: string, kerfMm = 0.16) {
  const { issues } = await checked(specOf([plate, ...shapes], piece, [`stock: {kerf: ${kerfMm}}`]), hardToRead);
  return issues;
}

const name = (keys: string) => [`name: {text: Gwen, font: Pacifico, ${keys}}`];

describe('Lettering that is hard to read', () => {
  it('has counters closed and letters run together by growth, told at the growth', async () => {
    for (const use of ['body: [name]', 'body: [plate], engrave: [name]', 'body: [plate], cut: [name]']) {
      const [issue, ...others] = await findingsOf(name('x_height: 17, grow: 2.7'), use);
      assert.deepEqual(others, [], use);
      assert.equal(issue!.severity, 'warning', use);
      assert.deepEqual(issue!.path, ['shapes', 'name', 'grow']);
      assert.equal(issue!.message, '“Gwen” is hard to read: both counters are closed and the letters run together.');
    }
  });

  it('is one word among others that are read, as that word is by itself', async () => {
    const said = async (text: string, more: string) => {
      const shape = `name: {text: "${text}", font: Pacifico, x_height: ${more}, overlap: auto}`;
      return (await findingsOf([shape], 'body: [name], parts: many')).map(({ message }) => message);
    };
    const closed = 'both counters are closed and the letters run together.';
    assert.deepEqual(await said('Britt', '5.5, grow: 0.5'), [`“Britt” may be hard to read: ${closed}`]);
    for (const text of ['Ann-Britt & Wim', 'Wim Britt', 'Ann Britt'])
      assert.deepEqual(await said(text, '5.5, grow: 0.5'), [`“${text}” may be hard to read: in “Britt” ${closed}`]);
    for (const text of ['Britt', 'Ann-Britt & Wim', 'Wim Britt'])
      assert.deepEqual(await said(text, '11, grow: 0.5'), [], text);
  });

  it('is no name that is grown a little', async () => {
    for (const use of ['body: [name], parts: many', 'body: [plate], engrave: [name]', 'body: [plate], cut: [name]'])
      assert.deepEqual(await findingsOf(name('x_height: 12, grow: 0.4'), use), [], use);
  });

  it('is covered by another shape of its body, letter by letter, and not by a bar along its baseline', async () => {
    const sorrel = 'name: {text: Sorrel, font: Pacifico, width: 60, overlap: auto}';
    const said = async (bar: string, body = '[name, bar]') =>
      (await findingsOf([sorrel, `bar: ${bar}`], `body: ${body}`)).map(
        ({ severity, message }) => `${severity}: ${message}`,
      );
    const post = (right: number, up: number) =>
      `{rectangle: [7, 60], place: name, nudge: {right: ${right}, up: ${up}}}`;
    assert.deepEqual(await said(post(-11, -25)), ['warning: “Sorrel” is hard to read: “bar” covers “o”.']);
    assert.deepEqual(await said(post(-11, -25), '{union: [name, bar]}'), [
      'warning: “Sorrel” is hard to read: what it is united with covers “o”.',
    ]);
    assert.deepEqual(await said(post(-11, -33)), [
      'info: “Sorrel” may be hard to read: “bar” fills the counter of “o”.',
    ]);
    assert.deepEqual(await said(post(0, -32)), ['info: “Sorrel” may be hard to read: “bar” covers part of “r”.']);
    for (const fine of [
      post(0, -35),
      '{rectangle: [60, 5], place: {below: name}, nudge: {up: 4}}',
      '{heart: 20, place: {right_of: name}, nudge: {left: 5}}',
      '{stick: {carries: name, length: 50}}',
    ])
      assert.deepEqual(await said(fine), [], fine);
  });

  it('is in doubt before it is unreadable, and each limit is where it is said to be', async () => {
    const face = await bundledFace('Pacifico');
    // Without counters, it is never a blob.
    const readAt = (text: string, grow: number) => readability(letteringOf(face, text, 12, grow), { beam: 0.16 })!;
    const growthAt = (text: string, doubt: number) => {
      let [low, high] = [0, 5];
      while (high - low > 1e-3) {
        const middle = (low + high) / 2;
        if (readAt(text, middle).doubt > doubt) high = middle;
        else low = middle;
      }
      return high;
    };
    const severityAt = async (text: string, grow: number) => {
      const word = `name: {text: ${text}, font: Pacifico, size: ${12 / face.xHeight}, grow: ${grow}}`;
      return (await findingsOf([word], 'body: [name], parts: many'))[0]?.severity;
    };
    const [doubt, fail] = [growthAt('Kim', doubtful), growthAt('Kim', unlikely)];
    assert.equal(await severityAt('Kim', doubt - 0.01), undefined);
    assert.equal(await severityAt('Kim', doubt + 0.01), 'info');
    assert.equal(await severityAt('Kim', fail - 0.01), 'info');
    assert.equal(await severityAt('Kim', fail + 0.01), 'warning');
    const blob = readAt('banana', 2.4);
    assert.ok(isBlob(blob));
    assert.equal(await severityAt('banana', 2.4), 'warning');
  });

  it('is plainly spoiled where no counter of several is open, or all is one lump, and a blob where it is both', () => {
    const is = (drawn: number, open: number, crowded: number, gone = 0, fused = 0, doubt = -1) => {
      const read = { counters: { drawn, open }, crowded, gone, marks: { drawn: 2, fused }, doubt };
      return [isPlainlySpoiled(read), isBlob(read)];
    };
    assert.deepEqual(is(2, 0, 0.991), [true, true]);
    assert.deepEqual(is(2, 0, 0.989), [true, false]);
    assert.deepEqual(is(2, 1, 0.991), [true, false]);
    assert.deepEqual(is(1, 0, 0.991), [true, false]);
    assert.deepEqual(is(2, 1, 0.989), [false, false]);
    assert.deepEqual(is(1, 0, 0.989), [false, false]);
    // Loops of a thin script, of which every word of the calibration was read.
    assert.deepEqual(is(5, 0, 0.3, 0, 0, -1.99), [true, false]);
    assert.deepEqual(is(5, 0, 0.3, 0, 0, -2.01), [false, false]);
    assert.deepEqual(is(2, 2, 0, 0, 1), [true, false]);
    assert.deepEqual(is(2, 2, 0, 0.121), [true, false]);
    assert.deepEqual(is(2, 2, 0, 0.119), [false, false]);
  });

  it('is said of words whose counters are all closed, though a reader of pictures guesses them', async () => {
    const face = await bundledFace('Pacifico');
    assert.ok(readability(letteringOf(face, 'Sea Kale', 12, 2.1), { beam: 0.16 })!.doubt < doubtful);
    const at = (grow: number) =>
      findingsOf(
        [`name: {text: Sea Kale, font: Pacifico, size: ${12 / face.xHeight}, grow: ${grow}}`],
        'body: [name], parts: many',
      );
    const [issue] = await at(2.1);
    assert.equal(issue!.severity, 'info');
    assert.match(issue!.message, /^“Sea Kale” may be hard to read: all 5 counters are closed/);
    assert.deepEqual(await at(1), []);
  });

  it('runs together by spacing as well as by growth, but for a script that is joined anyway', async () => {
    const spaced = (font: string, by: number) =>
      findingsOf(
        [`name: {text: SEEDS, font: ${font}, cap_height: 30, letter_spacing: ${by}}`],
        'body: [name], parts: many',
      );
    const [issue] = await spaced('Alfa Slab One', -11);
    assert.equal(issue!.code, 'hard-to-read');
    assert.match(issue!.message, /the letters run together\.$/);
    assert.deepEqual(await spaced('Alfa Slab One', -1.5), []);
    const face = await bundledFace('Pacifico');
    const joined = letteringOf(face, 'summer', 12);
    assert.deepEqual(readability(joined, { beam: 0.16 })!.neighbours, { apart: 0, merged: 0 });
  });

  it('keeps counters that no growth has closed, thinned or bridged', async () => {
    const face = await bundledFace('Alfa Slab One');
    for (const grow of [-0.4, 0])
      assert.deepEqual(readability(letteringOf(face, 'BOARD', 12, grow), { beam: 0.16 })!.counters, {
        drawn: 6,
        open: 6,
      });
  });

  it('is incomplete where letters are cut away, by more than two fifths of each', async () => {
    const word = 'name: {text: HIMIN, font: Nunito, cap_height: 10}';
    const bar = (width: number) => `bar: {rectangle: [${width}, 40]}`;
    const holed = 'holed: {difference: [name, bar]}';
    for (const use of ['engrave', 'score'])
      assert.deepEqual(await findingsOf([word, bar(2.5), holed], `body: [plate], ${use}: [holed]`), [], use);
    const [issue] = await findingsOf([word, bar(11), holed], 'body: [plate], engrave: [holed]');
    assert.equal(issue!.severity, 'warning');
    assert.equal(issue!.message, '“HIMIN” is incomplete: 1 of its 5 letters is cut away.');
    const [cut] = await findingsOf([word, bar(11)], 'body: [name], cut: [bar], parts: many');
    assert.equal(cut!.message, issue!.message);
    const low = 'low: {rectangle: [20, 5], nudge: {down: 25}}';
    const [all] = await findingsOf([word, bar(100), low], 'body: [name, low], cut: [bar]');
    assert.equal(all?.message, '“HIMIN” is cut away.');
  });

  it('misses a letter of which more than two fifths are gone', () => {
    const square = (minX: number, maxX: number) => [
      [
        { x: minX, y: 0 },
        { x: maxX, y: 0 },
        { x: maxX, y: 10 },
        { x: minX, y: 10 },
      ],
    ];
    const letter = { text: 'I', region: square(0, 10) };
    const lettering = new Lettering({ path: [], xHeight: 10, grow: 0, as: 'material' }, () => [letter]);
    const missing = (share: number) => {
      const shape = letter.region;
      return cutAway(lettering, { shape, region: shape, cuts: [square(-1, 10 * share)] }).length;
    };
    assert.equal(missing(0.395), 0);
    assert.equal(missing(0.405), 1);
  });

  it('is an info where fewer than one letter in five is missing, from there on a warning', async () => {
    const oneOf = async (text: string) => {
      const shapes = [
        `name: {text: ${text}, font: Nunito, cap_height: 10, align: left}`,
        'first: {rectangle: [3, 20], place: {on: name, at: left}}',
        'holed: {difference: [name, first]}',
      ];
      return (await findingsOf(shapes, 'body: [plate], engrave: [holed]'))[0]!;
    };
    const [six, five] = [await oneOf('IHIHIH'), await oneOf('IHIHI')];
    assert.match(six.message, /1 of its 6 letters is cut away/);
    assert.equal(six.severity, 'info');
    assert.match(five.message, /1 of its 5 letters is cut away/);
    assert.equal(five.severity, 'warning');
  });

  it('is read if one of its uses is, on its piece or on what is glued to it', async () => {
    const word = ['name: {text: Gwen, font: Pacifico, x_height: 12}', 'fat: {from: name, grow: 2.7}'];
    const cleared = [...word, 'field: {difference: [plate, fat]}', 'all: {union: [field, name]}'];
    assert.deepEqual(await findingsOf(word, 'body: [plate], engrave: [name], score: [fat]'), []);
    assert.deepEqual(await findingsOf(cleared, 'body: [plate], engrave: [all]'), []);
    assert.equal((await findingsOf(cleared, 'body: [plate], engrave: [field]'))[0]?.severity, 'warning');
    const glued = 'body: [fat], parts: many}\n  front: {body: [name], parts: many, glue_to: ';
    const spec = specOf(word, glued, ['stock: {kerf: 0.16}']);
    const id = /^ {2}(\w+): \{body: \[fat\]/m.exec(spec)![1]!;
    const { issues } = await checked(spec.replace('glue_to: ', `glue_to: ${id}`), hardToRead);
    assert.deepEqual(issues, []);
  });

  it('has lost its strokes by thinning', async () => {
    const thin = (by: number) =>
      findingsOf(name(`x_height: 12, grow: ${by}`), 'body: [plate], cut: [name], parts: many');
    const [issue] = await thin(-2.47);
    assert.equal(issue!.severity, 'warning');
    assert.match(issue!.message, /“Gwen” is hard to read: (the letters fall apart|thin strokes are gone)/);
    assert.deepEqual(await thin(-0.3), []);
  });

  it('is smaller than its use allows, a hundredth of a millimetre below each limit', async () => {
    const word = (height: number) => [`name: {text: sown in March, font: Nunito, x_height: ${height}}`];
    const severityAt = async (height: number, use: string) =>
      (await findingsOf(word(height), `body: [plate], ${use}: [name]`, 0.05))[0]?.severity;
    for (const [use, usual, least] of [
      ['engrave', 1.2, 0.8],
      ['score', 2, 1.2],
      ['cut', 3, 2],
    ] as const) {
      assert.equal(await severityAt(usual, use), undefined, use);
      assert.equal(await severityAt(usual - 0.02, use), 'info', use);
      assert.equal(await severityAt(least, use), 'info', use);
      assert.equal(await severityAt(least - 0.02, use), 'warning', use);
    }
  });

  it('is told with the beam where that is what fills it', async () => {
    const [issue] = await findingsOf(
      ['name: {text: Bea, font: Alfa Slab One, x_height: 0.9}'],
      'body: [plate], engrave: [name]',
    );
    assert.match(issue!.message, /at this size, with a beam 0\.20 mm wide\.$/);
    assert.deepEqual(issue!.path, ['shapes', 'name']);
  });

  it('is not there at all inside its own plate, however they are united', async () => {
    const word = ['name: {text: Gwen, font: Nunito, x_height: 8}'];
    for (const piece of ['body: [plate, name]', 'body: [all]']) {
      const shapes = piece.includes('all') ? [...word, 'all: {union: [plate, name]}'] : word;
      const [issue] = await findingsOf(shapes, piece);
      assert.equal(issue!.severity, 'warning');
      assert.equal(
        issue!.message,
        '“Gwen” cannot be seen: it runs into the rest of the piece. Engraved there, or cut as a layer of its own and glued on, it would be seen.',
      );
    }
    const window = 'window: {rectangle: [100, 50]}';
    const [issue] = await findingsOf([...word, window], 'body: [plate], cut: [window, name], parts: many');
    assert.equal(issue!.message, '“Gwen” cannot be seen: what surrounds it is cut away as well.');
    const [marked] = await findingsOf([...word, 'all: {union: [plate, name]}'], 'body: [plate], engrave: [all]');
    assert.equal(marked!.message, '“Gwen” cannot be seen: what surrounds it is engraved as well.');
  });

  it('says which letters a bar covers, where that is more than half of them, and when none can be seen', async () => {
    const bar = (height: number) => [
      'name: {text: HIMIN, font: Nunito, cap_height: 10}',
      `bar: {rectangle: [70, 20], nudge: {down: ${15 - height}}}`,
    ];
    assert.deepEqual(await findingsOf(bar(2), 'body: [name, bar], parts: many'), []);
    const [issue] = await findingsOf(bar(6.5), 'body: [name, bar], parts: many');
    assert.equal(issue!.severity, 'warning');
    assert.match(issue!.message, /“HIMIN” is hard to read: “bar” covers “H”, “I”, “M”, “I” and “N”/);
    const [all] = await findingsOf(bar(9), 'body: [name, bar], parts: many');
    assert.match(all!.message, /cannot be seen/);
  });

  it('is no opening in a plate, stencil, strap, sign, digit, capital, or script without case', async () => {
    const shapes = [
      'body: {difference: [plate, word]}',
      'word: {text: Rosalind, font: Nunito, x_height: 9}',
      'stencil: {text: BOARD, font: Alfa Slab One, cap_height: 14, bridges: 1.5}',
      'strapped: {text: Gwen Bea, font: Nunito, x_height: 10, straps: 1.5}',
    ];
    assert.deepEqual(await findingsOf(shapes, 'body: [body], parts: many'), []);
    assert.deepEqual(await findingsOf(shapes, 'body: [plate], cut: [stencil]'), []);
    assert.deepEqual(await findingsOf(shapes, 'body: [strapped]'), []);
    for (const text of ['♥ ★', 'WWW', 'No. 17', 'i', 'B', '—', 'שלום', 'مرحبا', '🌱', 'Ṩ̈ṻ̊', 'Wiesław Ürgüp', 'lll']) {
      const word = [`name: {text: "${text}", font: Nunito, height: 12}`];
      for (const use of ['engrave', 'cut'])
        assert.deepEqual(await findingsOf(word, `body: [plate], ${use}: [name]`), [], text);
    }
  });

  it('is one problem for each text of a piece', async () => {
    const shapes = [...name('x_height: 17, grow: 2.7'), 'copy: {from: name, nudge: {down: 20}}'];
    const issues = await findingsOf(shapes, 'body: [plate], engrave: [name, copy]');
    assert.equal(issues.length, 1);
  });

  it('is judged in a copy that is grown', async () => {
    const shapes = [...name('x_height: 12'), 'fat: {from: name, grow: 2.4}'];
    const [issue] = await findingsOf(shapes, 'body: [plate], engrave: [fat]');
    assert.equal(issue!.severity, 'warning');
    assert.deepEqual(issue!.path, ['shapes', 'name']);
  });

  it('is in no sample', async () => {
    const folder = new URL('../../../samples/', import.meta.url);
    for (const file of readdirSync(folder).filter((each) => each.endsWith('.tag.yaml'))) {
      const { issues } = await checked(readFileSync(new URL(file, folder), 'utf8'), hardToRead);
      assert.deepEqual(issues, [], file);
    }
  });
});

describe('Lettering whose size fit chose', () => {
  const heart = (width: number, keys: string) => [
    `heart: {heart: ${width}}`,
    `word: {text: Sown with love, font: Nunito, ${keys}}`,
  ];
  const on = 'body: [heart], engrave: [word]';

  it('is a warning where letters of that size by themselves are only a note', async () => {
    const [fitted] = await findingsOf(heart(17, 'fit: {in: heart, margin: 1}'), on, 0.05);
    assert.equal(fitted?.severity, 'warning');
    const height = Number(/(\d\.\d+) mm high/.exec(fitted.message)?.[1]);
    assert.ok(height > 0.8 && height < 1.2, fitted.message);
    const [asked] = await findingsOf(heart(17, `x_height: ${height}, place: {on: heart}`), on, 0.05);
    assert.equal(asked?.severity, 'info');
  });

  it('is a warning below two fifths of the size asked for, and none just above', async () => {
    const messages = async (atMost: number) =>
      (await findingsOf(heart(60, `fit: {in: heart, margin: 4, at_most: {x_height: ${atMost}}}`), on)).map(
        ({ severity, message }) => `${severity}: ${message}`,
      );
    const own = await checked(specOf([plate, ...heart(60, 'fit: {in: heart, margin: 4}')], on), hardToRead);
    const { xHeight } = own.made.report.tag!.pieces[0]!.marks[0]!.lettering![0]!;
    assert.deepEqual(await messages(xHeight / 0.42), []);
    const [told, ...others] = await messages(xHeight / 0.38);
    assert.deepEqual(others, []);
    assert.match(told!, /^warning: “Sown with love” came out at 3[789] % of the size asked for/);
  });
});

describe('Letters that bridges cross', () => {
  const cutThrough = (capHeight: number) =>
    findingsOf(
      [`word: {text: BASIL 8, font: Nunito, cap_height: ${capHeight}, bridges: 1.5, place: {on: plate}}`],
      'body: [plate], cut: [word]',
    );

  it('are told of once a fifth of one is bridge, and a warning from a third on', async () => {
    assert.deepEqual(await cutThrough(10), []);
    const [noted] = await cutThrough(8);
    assert.equal(noted?.severity, 'info');
    assert.match(
      noted.message,
      /^“BASIL 8” may be hard to read: bridges take 2\d % of the “A”\. Larger letters lose less, such as in two lines\.$/,
    );
    const [lost] = await cutThrough(5);
    assert.equal(lost?.severity, 'warning');
  });
});

describe('A stencil in a script', () => {
  const said = async (text: string, width: number): Promise<string[]> => {
    const word = `word: {text: ${text}, font: Pacifico, width: ${width} mm, bridges: {width: 1.5 mm}}`;
    const made = await make(
      specOf(['plate: {rectangle: [130, 70]}', word], 'body: [plate], cut: [word]'),
      newEngine({}),
    );
    return hardToRead(made.report.tag!).map(({ severity }) => severity);
  };

  // Tesseract.js reads the second, and nothing of the first.
  it('is a warning where half of its letters lose more than a fifth, and quiet where they lose little', async () => {
    assert.deepEqual(await said('Sweet pea', 36), ['warning']);
    assert.deepEqual(await said('Borage', 90), []);
  });
});
