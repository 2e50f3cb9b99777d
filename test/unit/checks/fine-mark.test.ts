import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { fineMarks } from '../../../src/checks/fine-mark.ts';
import { checked } from '../support/checked.ts';
import { assertNear, specOf } from '../support/engine.ts';

function marks(shapes: readonly string[], lists: string, kerfMm = 0.16) {
  const spec = specOf(['plate: {rectangle: [120, 60]}', ...shapes], `body: [plate], ${lists}`, [
    `stock: {kerf: ${kerfMm} mm}`,
  ]);
  return checked(spec, fineMarks);
}

describe('Marks finer than the beam', () => {
  it('are engraved lines narrower than 0.2 mm, told at the mark with their width and length', async () => {
    const line = (width: number): string[] => [`line: {rectangle: [30, ${width}]}`];
    const { issues, lines, made } = await marks(line(0.15), 'engrave: [line]');
    assert.equal(issues.length, 1);
    assert.equal(issues[0]!.severity, 'info');
    assert.deepEqual(issues[0]!.path, made.pieces[0]!.marks[0]!.path);
    assert.deepEqual(lines, [7]);
    assertNear(issues[0]!.width!, 0.15, 1e-4);
    for (const figure of ['0.15 mm', '0.20 mm', '30 mm']) assert.ok(issues[0]!.message.includes(figure));
    assert.deepEqual((await marks(line(0.25), 'engrave: [line]')).issues, []);
    // The beam is as wide as its kerf.
    assert.equal((await marks(line(0.25), 'engrave: [line]', 0.3)).issues.length, 1);
  });

  it('are gaps inside an engraving that fill in', async () => {
    const bars = (gap: number): string[] => [
      `bars: {union: [{rectangle: [20, 5]}, {rectangle: [20, 5], nudge: {up: ${5 + gap}}}]}`,
    ];
    const { issues } = await marks(bars(0.12), 'engrave: [bars]');
    assert.match(issues[0]!.message, /gaps 0\.12 mm .* fill in/);
    assert.deepEqual((await marks(bars(0.3), 'engrave: [bars]')).issues, []);
  });

  it('are score lines nearer to each other than the beam is wide', async () => {
    const { issues, lines } = await marks(['line: {rectangle: [30, 0.15]}'], 'score: [line]');
    assert.match(issues[0]!.message, /score lines/);
    assert.deepEqual(lines, [7]);
    assert.deepEqual((await marks(['box: {rectangle: [30, 10]}'], 'score: [box]')).issues, []);
  });

  it('are one finding for each mark', async () => {
    const shapes = [
      'comb: {union: [{rectangle: [10, 0.1]}, {rectangle: [10, 0.15], nudge: {up: 3}}, {rectangle: [10, 0.12], nudge: {up: 6}}]}',
      'line: {rectangle: [0.1, 9], nudge: {left: 20}}',
    ];
    const { issues, made } = await marks(shapes, 'engrave: [comb, line]');
    assert.deepEqual(
      issues.map(({ path }) => path),
      made.pieces[0]!.marks.map(({ path }) => path),
    );
    assertNear(issues[0]!.width!, 0.1, 1e-4);
    assert.match(issues[0]!.message, /30 mm/);
  });

  it('are no tips, tapers, serifs and short details', async () => {
    const shapes = [
      'spike: {polygon: {points: [[0, 0], [40, 0.4], [0, 0.8]]}}',
      'star: {polygon: {points: [[0, 0], [20, 1], [2, 2], [20, 9], [1, 4]]}, nudge: {down: 15}}',
      'stub: {union: [{rectangle: [6, 6]}, {rectangle: [2, 0.15], nudge: {right: 4}}], nudge: {up: 15}}',
    ];
    assert.deepEqual((await marks(shapes, 'engrave: [spike, star, stub]')).issues, []);
  });

  it('are hairlines of a pen script set small, and none of a script set at the size of a tag', async () => {
    const word = (font: string, width: number): string[] => [`word: {text: Sorrel, font: ${font}, width: ${width}}`];
    const { issues } = await marks(word('Great Vibes', 20), 'engrave: [word]');
    assert.equal(issues.length, 1);
    assert.ok(issues[0]!.width! < 0.2);
    for (const font of ['Pacifico', 'Great Vibes', 'Nunito', 'Alfa Slab One']) {
      assert.deepEqual((await marks(word(font, 80), 'engrave: [word]')).issues, [], font);
    }
  });

  it('are in no sample', async () => {
    const folder = new URL('../../../samples/', import.meta.url);
    for (const name of readdirSync(folder).filter((each) => each.endsWith('.tag.yaml'))) {
      const { issues } = await checked(readFileSync(new URL(name, folder), 'utf8'), fineMarks);
      assert.deepEqual(issues, [], name);
    }
  });
});
