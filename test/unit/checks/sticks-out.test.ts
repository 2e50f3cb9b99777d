import assert from 'node:assert/strict';
import { findFixes, withEdits } from '../../../src/fixes/find-fixes.ts';
import { make, newEngine, specOf } from '../support/engine.ts';
import { assertSilent, only } from './found.ts';

const code = 'sticks-out';

/** A frame, 80 mm wide outside and 4 mm thick, and a name of that width and twice as much again as `beyond` across its middle. */
const framed = (beyond: number, more = '', shapes: readonly string[] = []) =>
  specOf(
    [
      'outer: {rectangle: [80, 50]}',
      'rim: {difference: [outer, {from: outer, grow: -4}]}',
      `name: {text: Marie, font: Pacifico, width: ${80 + 2 * beyond}, place: {on: outer, by: box}${more}}`,
      ...shapes,
    ],
    `body: [${['rim', 'name', ...(shapes.length > 0 ? ['leaves'] : [])].join(', ')}]`,
  );

describe('A name across a frame', () => {
  it('that ends just beyond it is told so: by how much, where, and at the name', async () => {
    const issue = only(await make(framed(2)), code);
    assert.equal(issue.severity, 'info');
    assert.match(issue.message, /^“name” ends 2\.00 mm beyond “rim” at “M” and “e”/);
    assert.deepEqual(issue.path, ['shapes', 'name']);
    assert.ok(Math.abs(Math.abs(issue.points![0]!.x) - 42) < 0.01);
  });

  it('counts from a fifth of a millimetre, on one side too', async () => {
    assertSilent(await make(framed(0.19)), code);
    only(await make(framed(0.25)), code);
    assert.match(only(await make(framed(-3, ', nudge: {right: 4}')), code).message, /1\.00 mm beyond “rim” at “e”/);
  });

  it('is told so as one shape with the frame too, at its own line', async () => {
    const united = (width: number, more = '') =>
      specOf(
        [
          'rim: {difference: [{circle: 60}, {circle: 50}]}',
          `initial: {text: H, font: Alfa Slab One, width: ${width}, place: {on: rim}}`,
          `both: {union: [rim, initial]${more}}`,
        ],
        'body: both',
      );
    // Its corners are 24 mm from the middle to the sides; and an H of that face is about as high as wide.
    const issue = only(await make(united(48)), code);
    assert.match(issue.message, /^“initial” ends \d\.\d+ mm beyond “rim”/);
    assert.deepEqual(issue.path, ['shapes', 'initial']);
    const { x, y } = issue.points![0]!;
    assert.ok(Math.abs(Math.hypot(x, y) - 30 - issue.width!) < 0.02, `${Math.hypot(x, y)}`);
    assertSilent(await make(united(36)), code);
    assertSilent(await make(united(36, ', straps: {width: 3, at: left-right}')), code);
  });

  it('is silent where a letter is meant to be outside, within the frame, and on a plate without an opening', async () => {
    assertSilent(await make(framed(14)), code);
    assertSilent(await make(framed(-2)), code);
    const plate = specOf(
      ['plate: {rectangle: [80, 50]}', 'name: {text: Marie, font: Pacifico, width: 84, place: {on: plate, by: box}}'],
      'body: [plate, name]',
    );
    assertSilent(await make(plate), code);
    const holed = specOf(
      [
        'plate: {difference: [{rectangle: [80, 50]}, {circle: 6}]}',
        'name: {text: Marie, font: Pacifico, width: 84, place: {on: plate, by: box}}',
      ],
      'body: [plate, name]',
    );
    assertSilent(await make(holed), code, 'a hole is no frame');
  });

  it('that ends in a notch of the frame is in it', async () => {
    // A serif of the last letter is in a notch 3 mm deep, and 2 mm out of its floor.
    const spec = (wide: number) =>
      specOf(
        [
          'outer: {rectangle: [80, 50]}',
          `rim: {difference: [outer, {rectangle: [66, 36]}, {rectangle: [6, ${wide}], nudge: {right: 40, up: 6}}]}`,
          'name: {text: HHHH, font: Alfa Slab One, width: 68, place: {on: outer, by: box}, nudge: {right: 5}}',
        ],
        'body: [rim, name]',
      );
    assertSilent(await make(spec(5)), code);
    only(await make(spec(30)), code);
  });

  it('ends within the frame after the fix', async () => {
    const engine = newEngine();
    const options = { locate: () => undefined };
    for (const [more, words] of [
      ['', /^Make “name” smaller: width 7\d/],
      [', nudge: {right: 2}', /^Move “name”: \d(\.\d)? mm left/],
    ] as const) {
      const report = await engine.compute(framed(more ? -1 : 2, more), options);
      const fixes = await findFixes(engine, report, only(report, code), options);
      const fix = fixes.find(({ title }) => words.test(title));
      assert.ok(fix, fixes.map(({ title }) => title).join('\n'));
      assertSilent(await engine.compute(withEdits(report.source.text, fix.edits), options), code);
    }
  });
});

describe('A shape with a margin at a side', () => {
  const onDisc = (bar: string, more = '', use = 'body: [disc, bar]') =>
    specOf(['disc: {circle: 40}', `bar: {${bar}, place: {on: disc, at: bottom, margin: 3}${more}}`], use);

  it('that has no room for it there is told: beyond the edge, or nearer to it', async () => {
    // Where its box has the margin, its lower corners are √(17² + 18²) from the centre of a circle of 20 mm.
    const out = only(await make(onDisc('rectangle: [36, 8]')), code);
    assert.equal(out.severity, 'warning');
    assert.match(
      out.message,
      /^“bar” ends 4\.76 mm beyond “disc”: at the bottom there is no room for it with a margin of 3\.00 mm/,
    );
    // Half-way up the corners of a wide and flat one are √(17.5² + 1²) from the centre.
    const spec = specOf(
      ['plate: {rectangle: [40, 40]}', 'bar: {rectangle: [38, 4], place: {on: plate, at: bottom, margin: 3}}'],
      'body: plate, engrave: bar',
    );
    const near = only(await make(spec), code);
    assert.equal(near.severity, 'info');
    assert.match(near.message, /^“bar” comes as near as 1\.00 mm to the edge of “plate”/);
  });

  it('is silent where it moves in, where it was nudged, and where engraving beyond the edge is told already', async () => {
    assertSilent(await make(onDisc('rectangle: [26, 8]')), code);
    assertSilent(await make(onDisc('rectangle: [36, 8]', ', nudge: {down: 1}')), code);
    assertSilent(await make(onDisc('rectangle: [36, 8]', '', 'body: disc, engrave: bar')), code);
  });

  it('is silent where it only comes nearer to another side, but for the very edge', async () => {
    // A line to tear along, 22 mm from the right and 5 mm from the top; then 1 mm from it.
    const ticket = (long: number) =>
      specOf(
        [
          'plate: {rectangle: [90, 36]}',
          `tear: {rectangle: [0.4, ${long}], place: {on: plate, at: right, margin: 22}}`,
        ],
        'body: plate, engrave: tear',
      );
    assertSilent(await make(ticket(26)), code);
    only(await make(ticket(34)), code);
  });

  it('has a fix: smaller', async () => {
    const engine = newEngine();
    const options = { locate: () => undefined };
    const report = await engine.compute(onDisc('heart: 20, width: 38'), options);
    const [fix] = await findFixes(engine, report, only(report, code), options);
    assert.match(fix?.title ?? '', /^Make “bar” smaller/);
    assertSilent(await engine.compute(withEdits(report.source.text, fix!.edits), options), code);
  });
});
