import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import type { Report } from '../../../src/engine/engine.ts';
import type { IssueCode } from '../../../src/core/issue-kinds.ts';
import { isGrainUpright } from '../../../src/tag/grain-direction.ts';
import { assertNear, make, newEngine, placeOf, report, specOf } from '../support/engine.ts';
import { assertWorked, worked } from '../support/effort.ts';

/** Far above what any of these takes, far below what a person would wait for. */
const mostSeconds = 4;

async function timed(text: string, engine = newEngine()): Promise<Report> {
  const started = worked();
  const made = await report(text, engine);
  assertWorked(started, mostSeconds);
  return made;
}

async function assertReported(
  text: string,
  code: IssueCode,
  at: string,
  engine?: ReturnType<typeof newEngine>,
): Promise<void> {
  const made = await timed(text, engine);
  const issue = made.issues.find((each) => each.code === code);
  assert.ok(issue, `${code} is not among ${JSON.stringify(made.issues.slice(0, 3))}`);
  assert.equal(placeOf(made, issue).text, at);
}

describe('Lettering that cannot be made as written', () => {
  it('of three hundred letters is made in bounded time, and of five thousand is refused', async () => {
    const words = 'sage mint dill chive '.repeat(24).slice(0, 300);
    const made = await timed(
      specOf([`body: {text: "${words}", font: Nunito, width: 2900}`], 'body: [body], parts: many'),
    );
    assert.equal(made.tag?.pieces.length, 1);
    const more = await timed(specOf([`body: {text: "${'x'.repeat(5000)}", width: 90}`]));
    assert.equal(more.issues[0]?.code, 'bad-value');
  });

  it('in a font file that is cut short is told at the font', async () => {
    const file = 'node_modules/@expo-google-fonts/nunito/600SemiBold/Nunito_600SemiBold.ttf';
    const bytes = await readFile(new URL(`../../../${file}`, import.meta.url));
    const whole = newEngine({ 'n.ttf': bytes });
    const good = await make(specOf(['body: {text: Mint, font: n.ttf, width: 60}'], 'body: [body], parts: many'), whole);
    assertNear(good.width, 60, 0.01);
    for (const share of [0, 0.001, 0.1, 0.5]) {
      const cut = newEngine({ 'n.ttf': bytes.subarray(0, Math.floor(bytes.length * share)) });
      await assertReported(specOf(['body: {text: Mint, font: n.ttf, width: 60}']), 'bad-font', 'n.ttf', cut);
    }
  });

  it('in a text file called a font, or one that is not there, is told at the font', async () => {
    const text = specOf(['body: {text: Mint, font: n.ttf, width: 60}']);
    await assertReported(text, 'bad-font', 'n.ttf', newEngine({ 'n.ttf': 'This is no font.' }));
    const missing = await timed(text);
    assert.ok(missing.issues.some(({ code }) => code === 'bad-font' || code === 'unknown-font' || code === 'bad-file'));
  });

  it('in Hebrew, with a font that has none, names what is missing', async () => {
    const made = await timed(specOf(['body: {text: "נענע", font: Pacifico, width: 60}']));
    const missing = made.issues.filter(({ code }) => code === 'missing-glyph');
    assert.ok(missing.length > 0);
    assert.ok(missing.every(({ message }) => /[\u05d0-\u05ea]/.test(message)));
  });

  it('as emoji alone is told, and nothing is made of it', async () => {
    const made = await timed(specOf(['body: {text: "🌱🌿", font: Nunito, width: 60}']));
    const [reported, ...others] = made.issues.filter(({ code }) => code === 'missing-glyph');
    assert.match(reported!.message, /🌱.*🌿/, 'both in one sentence');
    assert.deepEqual(others, []);
    assert.deepEqual(made.tag?.pieces, []);
  });

  it('is the same with an accent composed or written after its letter', async () => {
    // Unicode canonical equivalence: é is e + U+0301.
    for (const font of ['Nunito', 'Pacifico']) {
      const shape = (word: string) =>
        specOf([`body: {text: "${word}", font: ${font}, width: 60}`], 'body: [body], parts: many');
      const composed = await make(shape('caf\u00e9'));
      const apart = await make(shape('cafe\u0301'));
      assert.deepEqual(apart.region, composed.region, font);
    }
  });

  it('of spaces and controls alone is told', async () => {
    for (const text of ['" "', '"\\n\\n"', '"\\u200b"', '"\\u0000"']) {
      const made = await timed(specOf([`body: {text: ${text}, width: 60}`]));
      assert.ok(made.issues.length > 0, text);
    }
  });
});

describe('Figures that cannot be made', () => {
  const wrong: readonly (readonly [string, string, string])[] = [
    ['zero', '0', 'bad-length'],
    ['less than nothing', '-5 mm', 'bad-length'],
    ['larger than any sheet', '99999 mm', 'bad-length'],
    ['.nan', '.nan', ''],
    ['.inf', '.inf', ''],
    ['text', 'wide', 'bad-length'],
  ];
  for (const [what, value, code] of wrong) {
    it(`are told at the figure: ${what}`, async () => {
      for (const shape of [`{ellipse: ${value}}`, `{text: A, width: ${value}}`, `{rectangle: [5, ${value}]}`]) {
        const made = await timed(specOf([`body: ${shape}`]));
        assert.equal(made.tag, undefined);
        const issue = made.issues.find((each) => placeOf(made, each).text === value);
        assert.ok(issue, shape);
        if (code !== '') assert.equal(issue.code, code);
      }
    });
  }

  it('as a growth by −1000 leave nothing, and that is told', async () => {
    const made = await timed(specOf(['body: {rectangle: [60, 20], grow: -1000}']));
    assert.deepEqual(
      made.issues.map(({ code }) => code),
      ['empty-shape'],
    );
    assert.equal(placeOf(made, made.issues[0]!).line, 3);
  });

  it('as a path of rubbish are told at the path', async () => {
    for (const data of ['M0 0L', 'hello', 'M 1e999 0 L 5 5 L 5 0 Z', 'L5 5', 'M0 0 A1 1 0 9 9 5 5']) {
      const made = await timed(specOf([`body: {path: "${data}"}`]));
      assert.ok(made.issues.length > 0, data);
      assert.equal(placeOf(made, made.issues[0]!).line, 3);
    }
  });

  it('as an arrow whose head is impossible are told at the arrow', async () => {
    await assertReported(specOf(['body: {arrow: {length: 10 mm, width: 90, shaft: 20}}']), 'bad-length', '10 mm');
  });

  it('as a grown plate three metres across are made', async () => {
    const made = await make(specOf(['body: {rectangle: [3000, 3000], grow: 2}']));
    // Steiner: A + P·r + πr².
    assertNear(made.area, 9e6 + 24_000 + 4 * Math.PI, 0.1);
  });
});

describe('Specs that lead nowhere', () => {
  it('as shapes made from themselves are told', async () => {
    await assertReported(specOf(['body: {from: body}']), 'cycle', 'body');
    await assertReported(specOf(['body: {ellipse: 9, place: {on: body}}']), 'cycle', 'body');
    await assertReported(specOf(['body: {ellipse: 9, fit: {in: body}}']), 'cycle', 'body');
  });

  it('as shapes in shapes by the hundred are made or told', async () => {
    for (const depth of [50, 150, 1000]) {
      const shape = `${'{from: '.repeat(depth)}{ellipse: 20}${'}'.repeat(depth)}`;
      const made = await timed(specOf([`body: ${shape}`]));
      if (depth < 100) assert.equal(made.tag?.pieces.length, 1);
      else assert.ok(made.tag?.pieces.length === 1 || made.issues.length > 0);
    }
  });

  it('as a doubling of unions stay quick, each shape being made once', async () => {
    const levels = Array.from({ length: 40 }, (_, i) => `s${i + 1}: {union: [s${i}, s${i}]}`);
    const made = await timed(specOf(['s0: {ellipse: 20}', ...levels, 'body: {from: s40}']));
    assert.deepEqual(made.issues, []);
    assert.equal(isGrainUpright(made.tag!.pieces[0]!, made.tag!), false);
  });
});

describe('Very many shapes', () => {
  it('are made quickly: 2,000 rectangles', async () => {
    const names = Array.from({ length: 2000 }, (_, i) => `r${i}`);
    const shapes = names.map(
      (name, i) => `${name}: {rectangle: [4, 4], nudge: {right: ${(i % 50) * 3}, up: ${Math.floor(i / 50) * 3}}}`,
    );
    const made = await timed(specOf(shapes, `body: [${names.join(', ')}]`));
    assert.deepEqual(made.issues, []);
    const region = made.tag!.pieces[0]!.region;
    assert.equal(region.length, 1);
    // 50 by 40 squares of 4 at steps of 3.
    const xs = region[0]!.map(({ x }) => x);
    assertNear(Math.max(...xs) - Math.min(...xs), 49 * 3 + 4, 1e-4);
  });
});

describe('Stopping', () => {
  const text = specOf(['body: {text: Chamomile, font: Pacifico, width: 90, grow: 0.5}']);

  it('before it begins rejects with the reason given', async () => {
    const reason = new Error('no longer wanted');
    await assert.rejects(report(text, newEngine(), AbortSignal.abort(reason)), reason);
  });

  it('on the way rejects, and the engine goes on working', async () => {
    const engine = newEngine();
    const controller = new AbortController();
    const stopped = report(text, engine, controller.signal);
    controller.abort();
    await assert.rejects(stopped, { name: 'AbortError' });
    assert.equal((await report(text, engine)).tag?.pieces.length, 1);
  });

  it('of nothing rejects nothing: two computations at once give the same', async () => {
    const engine = newEngine();
    const [one, two] = await Promise.all([report(text, engine), report(text, engine)]);
    assert.deepEqual(one.tag, two.tag);
  });
});
