import assert from 'node:assert/strict';
import { nudgedCopy, nudgeEdits } from '../../../src/edits/nudge.ts';
import { withEdits } from '../../../src/core/issue.ts';
import { boundsOf } from '../../../src/geometry/measure.ts';
import { parseSpec } from '../../../src/spec/parse.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { report } from '../support/engine.ts';

const spec = (shape: string, hanger = '{hole: {at: top}}', body = '[plate]'): string =>
  `tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm, min_web: 1.5 mm}\nshapes:\n  plate: {rectangle: [80 mm, 40 mm]}\n  word: {text: Zoë, font: Pacifico, width: 40 mm}\n  mark: ${shape}\npieces:\n  tag:\n    body: ${body}\n    engrave: [mark]\n    hanger: ${hanger}\n`;

/** What is made, without the paths, which are of the text. */
function model(text: string): string {
  const { model: made, issues } = parseSpec(text);
  assert.ok(made, JSON.stringify(issues));
  return JSON.stringify([...made.shapes.values(), ...made.pieces], (key, value: unknown) =>
    key === 'path' ? undefined : value,
  );
}

async function box(text: string, name: string): Promise<NonNullable<ReturnType<typeof boundsOf>>> {
  const { tag, issues } = await report(text);
  assert.ok(tag, JSON.stringify(issues));
  const [, made] = [...tag.made].find(([shape]) => shape.name === name)!;
  return boundsOf(made.region)!;
}

describe('One word, where one word says it all', () => {
  const same: [string, string][] = [
    [spec('{ellipse: 9 mm}', '{ring: top}'), spec('{ellipse: 9 mm}', '{ring: {at: top}}')],
    [spec('{ellipse: 9 mm}', '{hole: 90}'), spec('{ellipse: 9 mm}', '{hole: {at: 90}}')],
    [spec('{ellipse: 9 mm}', '{slot: left}'), spec('{ellipse: 9 mm}', '{slot: {at: left}}')],
    [spec('{ellipse: 9 mm}', '{keyhole: top}'), spec('{ellipse: 9 mm}', '{keyhole: {at: top}}')],
    [spec('{ellipse: 9 mm}', '{hole: top}', 'plate'), spec('{ellipse: 9 mm}', '{hole: {at: top}}', '[plate]')],
    [spec('{ellipse: 9 mm, place: plate}'), spec('{ellipse: 9 mm, place: {on: plate}}')],
    [spec('{circle: 9 mm}'), spec('{ellipse: 9 mm}')],
    [spec('{text: Zoë, width: 30 mm, arc: bottom}'), spec('{text: Zoë, width: 30 mm, arc: {sweep: 120, at: bottom}}')],
  ];
  for (const [short, long] of same)
    it(`makes the same: ${/(?:mark|body|hanger): .*/g.exec(short)![0]}`, () => {
      assert.equal(model(short), model(long));
    });

  it('is kept beside what is added to it', () => {
    const text = spec('{ellipse: 9 mm, place: plate}', '{ring: top}', 'plate');
    const source = new SpecSource(text);
    const edits = nudgeEdits(source, ['pieces', 'tag', 'hanger', 'ring'], { x: 1, y: 2 }, 'mm')!;
    assert.match(withEdits(text, edits), /hanger: \{ring: \{at: top, nudge: \{right: 1 mm, up: 2 mm\}\}\}/);
    const margin = source.setKey(['shapes', 'mark', 'place'], 'by', 'box')!;
    assert.match(withEdits(text, [margin]), /place: \{on: plate, by: box\}/);
    const side = source.setKey(['pieces', 'tag', 'hanger', 'ring'], 'at', 'left')!;
    assert.match(withEdits(text, [side]), /hanger: \{ring: left\}/);
    const moved = nudgedCopy(source, ['pieces', 'tag', 'body'], { x: 3, y: 0 }, 'mm')!;
    assert.match(withEdits(text, [moved]), /body: \{from: plate, nudge: \{right: 3 mm\}\}/);
    assert.deepEqual(parseSpec(withEdits(text, [moved])).issues, []);
    assert.equal(source.setKey(['shapes', 'mark', 'ellipse'], 'at', '3'), undefined, 'a size is no group');
  });

  it('is judged at its own place', () => {
    const [issue] = parseSpec(spec('{ellipse: 9 mm, place: plat}')).issues;
    assert.match(issue!.message, /There is no shape “plat”\. Did you mean “plate”\?/);
  });
});

describe('Beside another shape', () => {
  it('is outside it, the gap between their inks, centred by what is seen', async () => {
    const at = (place: string): string => spec(`{rectangle: [10 mm, 6 mm], place: ${place}}`);
    const plate = { minX: -40, maxX: 40, minY: -20, maxY: 20 };
    const near = (a: number, b: number, what: string): void => {
      assert.ok(Math.abs(a - b) < 0.001, `${what}: ${a} instead of ${b}`);
    };
    const below = await box(at('{below: plate, gap: 3 mm}'), 'mark');
    near(below.maxY, plate.minY - 3, 'below');
    near(below.minX + below.maxX, 0, 'in the middle');
    near((await box(at('{above: plate}'), 'mark')).minY, plate.maxY + 2, 'above, by the usual gap');
    near((await box(at('{left_of: plate, gap: 1 mm}'), 'mark')).maxX, plate.minX - 1, 'left');
    near((await box(at('{right_of: plate, gap: 0}'), 'mark')).minX, plate.maxX, 'right');
    const word = await box(at('{below: word, gap: 1.5 mm}'), 'word');
    // Its letters overshoot the baseline by different amounts, and not all are above it.
    const { maxY } = await box(at('{below: word, gap: 1.5 mm}'), 'mark');
    assert.ok(maxY > word.minY - 1.501 && maxY < word.minY - 1.48, `${maxY} below ${word.minY}`);
  });

  it('is said in one way only', () => {
    const messageAt = (place: string): string =>
      parseSpec(spec(`{ellipse: 9 mm, place: ${place}}`))
        .issues.map(({ message }) => message)
        .join(' ');
    assert.match(messageAt('{gap: 3 mm}'), /“place” needs one of on, above, below, left_of, right_of/);
    assert.match(messageAt('{on: plate, below: word}'), /“on” and “below” both say where it goes; keep one/);
    assert.match(messageAt('{below: word, at: left}'), /“at” goes with on/);
    assert.match(messageAt('{on: word, gap: 3 mm}'), /“gap” goes with above, below, left_of or right_of/);
    assert.match(
      messageAt('{on: word, at: right, margin: -4 mm}'),
      /“margin” cannot be less than 0; “nudge” moves it past the edge\./,
    );
    assert.match(messageAt('{below: wort}'), /There is no shape “wort”\. Did you mean “word”/);
  });
});

describe('A distance below 0', () => {
  it('names the way to what was meant', () => {
    const messageOf = (shape: string, hanger = ''): string =>
      parseSpec(
        `tagwright: 1\nshapes:\n  plate: {circle: 40 mm}\n  mark: ${shape}\npieces:\n  tag: {body: [plate], engrave: [mark]${hanger}}\n`,
      )
        .issues.map(({ message }) => message)
        .join(' ');
    const border = '{border: {of: plate, inset: -2 mm, width: 1 mm}}';
    assert.match(messageOf(border), /less than 0; outside it is “of: \{around: plate, by: 2 mm\}, inset: 0”\.$/);
    assert.equal(messageOf('{border: {of: {around: plate, by: 2 mm}, inset: 0, width: 1 mm}}'), '');
    assert.match(messageOf('{circle: 9 mm, fit: {in: plate, margin: -2 mm}}'), /less than 0; to reach beyond it, /);
    assert.match(messageOf('{around: plate, by: -2 mm}'), /less than 0; the outline inside a shape is “from” /);
    const mark = '{circle: 9 mm}';
    assert.match(messageOf(mark, ', hanger: {hole: {at: top, inset: -2 mm}}'), /outside the edge is a “ring”\.$/);
    assert.match(messageOf('{stack: {shapes: [plate], lap: -1 mm}}'), /a shape between two keeps them apart\.$/);
  });
});

describe('As wide as the stock needs it', () => {
  it('are straps and bridges of that width', async () => {
    const area = async (text: string): Promise<string> => JSON.stringify([...(await report(text)).tag!.made.values()]);
    const straps = (width: string): string => spec(`{text: Zoë, font: Nunito, width: 40 mm, straps: ${width}}`);
    assert.equal(await area(straps('auto')), await area(straps('1.5 mm')));
    assert.notEqual(await area(straps('auto')), await area(straps('2 mm')));
    const bridges = (width: string): string => spec(`{text: Zoë, font: Nunito, width: 40 mm, bridges: ${width}}`);
    assert.equal(await area(bridges('auto')), await area(bridges('1.5 mm')));
  });
});

describe('The width of an arrow', () => {
  it('is that of its head; one written the old way is the same arrow, and both keys are renamed together', () => {
    const old = spec('{arrow: {length: 90 mm, width: 20 mm, head: 34 mm}}');
    const now = spec('{arrow: {length: 90 mm, width: 34 mm, shaft: 20 mm}}');
    assert.equal(model(old), model(now));
    const { issues } = parseSpec(old);
    assert.deepEqual(
      issues.map(({ code }) => code),
      ['renamed-key', 'renamed-key'],
    );
    for (const { repairs } of issues) {
      const fixed = withEdits(old, repairs![0]!.edits);
      assert.match(fixed, /\{length: 90 mm, shaft: 20 mm, width: 34 mm\}/);
      assert.deepEqual(parseSpec(fixed).issues, []);
    }
    assert.deepEqual(
      parseSpec(spec('{arrow: {length: 90 mm, width: 20 mm}}')).issues,
      [],
      'without a head nothing changes',
    );
  });
});
