import assert from 'node:assert/strict';
import { assemblyPages, toAssemblySheet } from '../../../src/export/bench/assembly-sheet.ts';
import { beforeGluing } from '../../../src/export/bench/assembly-steps.ts';
import { filesIn } from '../../../src/export/formats.ts';
import { jobOf } from '../../../src/export/job/job.ts';
import type { Job } from '../../../src/export/job/job.ts';
import { pathOfLetters } from '../../../src/export/page/page.ts';
import { make } from '../support/engine.ts';
import { readPdf } from '../support/file-readers.ts';
import { samples } from '../support/samples.ts';
import { tools } from '../support/tools.ts';

/** A panel on a back, and a knob on the panel; `scores`: of the back. */
function spec(scores: string): string {
  return `tagwright: 1
title: Shelf sign
stocks:
  ply3: {material: birch plywood, thickness: 3 mm}
  clear2: {material: acrylic, thickness: 2 mm}
stock: ply3
shapes:
  plate: {rectangle: [100, 60]}
  panel: {rectangle: [60, 30]}
  knob: {rectangle: [10, 10]}
  below: {rectangle: [56, 26]}
  corner: {rectangle: [12, 6], nudge: {right: 40, up: 22}}
  frame: {rectangle: [94, 54]}
  half: {rectangle: [20, 10], nudge: {left: 30}}
pieces:
  back: {title: Back, body: [plate]${scores === '' ? '' : `, score: [${scores}]`}}
  panel: {title: Panel, body: [panel], glue_to: back, stock: clear2}
  knob: {title: Knob, body: [knob], glue_to: panel}
`;
}

async function jobFrom(text: string): Promise<Job> {
  const { report } = await make(text);
  return jobOf(report)!;
}

/** What is said of a piece before anything is glued. */
async function before(text: string, id = 'back'): Promise<string> {
  const { tag } = await jobFrom(text);
  return beforeGluing(
    tag.pieces.find((piece) => piece.id === id)!,
    tag,
  ).join(' ');
}

const sample = (wanted: string): string => samples.find(({ name }) => name === wanted)!.text;

describe('The assembly sheet', () => {
  it('numbers the layers from the back, each with what it is made of, its glue side and its step', async () => {
    const { pages } = await readPdf(await toAssemblySheet(await jobFrom(spec('below')), tools));
    const text = pages.map((page) => page.text.replace(/\s+/g, ' ')).join(' ');
    for (const phrase of [
      'Assembly sheet, for the bench Shelf sign',
      'Layer 1: Back, birch plywood 3 mm Layer 2: Panel, acrylic 2 mm Layer 3: Knob, birch plywood 3 mm Before you glue',
      'Before you glue Layer 1: Back, birch plywood 3 mm Comes off',
      'Comes off the machine cut and scored.',
      'Glue “Panel” onto “Back”, over the scored lines.',
      'Glue “Knob” onto “Panel”.',
      'Layer 1 from the front, at true size: blue is where layer 2 goes.',
      'Layer 2 from the front, at true size: blue is where layer 3 goes.',
    ])
      assert.ok(text.includes(phrase), `${phrase} in ${text}`);
    assert.ok(!text.includes('Layer 3 from the front'));
  });

  it('says what to finish first and what to leave bare, by what it is made of', async () => {
    assert.match(await before(spec('below')), /^Finish its face first, but leave the wood bare where other layers go/);
    assert.doesNotMatch(await before(spec('below')), /Glue side/);
    assert.match(
      await before(spec('below'), 'panel'),
      /leave it clean and bare where other layers go.*Glue side: the back/,
    );
    assert.match(await before(spec('below'), 'knob'), /^Finish its face and its edges first/);
  });

  it('says which score lines stay in sight, how much of them and where', async () => {
    assert.match(await before(spec('below')), /All its score lines disappear/);
    // Exact: the outline of 12 × 6.
    assert.match(await before(spec('corner')), /stays in sight: 36 mm of it, at the top, on the right\./);
    assert.match(await before(spec('frame')), /stays in sight: 296 mm of it, all round\./);
    // Half of 20 × 10 lies beyond the panel, which ends 30 mm left of the middle: one short side and half of each long one.
    assert.match(await before(spec('half')), /stays in sight: 30 mm of it, on the left\./);
    assert.match(await before(spec('below, corner')), /stays in sight: 36 mm/);
    // An area and a line in one shape: a square of four sides, and a line that has none.
    const mixed =
      '{union: [{rectangle: [10, 10], nudge: {up: 20}}, {path: "M0 0 H8", lines: true, nudge: {up: 20, left: 30}}]}';
    const told = await before(spec('both').replace('shapes:\n', `shapes:\n  both: ${mixed}\n`));
    assert.match(told, /stays in sight: 40 mm of it/);
    assert.match(told, /stays in sight: 8(?:\.\d)? mm of it/);
    assert.doesNotMatch(await before(spec('')), /score line/);
  });

  it('says of a score line on the very edge of what is glued on that all of it stays in sight, as the map shows', async () => {
    const edge = /stays in sight: (\d+(?:\.\d)?) mm of it, along the edge of what is glued on\./;
    assert.equal(edge.exec(await before(spec('panel')))?.[1], '180');
    // Of an ellipse with these half axes: Ramanujan's second approximation, good to a millionth here.
    const [a, b] = [30, 15];
    const h = ((a - b) / (a + b)) ** 2;
    const length = Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
    const oval = spec('panel').replace('panel: {rectangle: [60, 30]}', 'panel: {ellipse: [60, 30], rotate: 7}');
    assert.ok(Math.abs(Number(edge.exec(await before(oval))?.[1]) - length) < 0.06);
    // Half of it is along the edge, the rest lies free.
    const line = (path: string) =>
      spec('line').replace('shapes:\n', `shapes:\n  line: {path: "${path}", lines: true, nudge: {up: 15}}\n`);
    assert.equal(edge.exec(await before(line('M-20 0 H20')))?.[1], '40');
    assert.match(await before(line('M-40 0 H40')), /stays in sight: 80 mm of it/);
    // Where it is meant to be hidden, it is.
    for (const within of ['{from: panel, grow: -0.5 mm}', '{from: panel, grow: -0.2 mm}'])
      assert.match(await before(spec(within)), /All its score lines disappear/);
    const { pages } = await readPdf(await toAssemblySheet(await jobFrom(spec('panel')), tools));
    assert.match(pages.map(({ text }) => text.replace(/\s+/g, ' ')).join(' '), /180 mm of it, along the edge/);
  });

  it('has a place for what is larger than the layer it is glued on', async () => {
    const wide = spec('').replace('panel: {rectangle: [60, 30]}', 'panel: {rectangle: [130, 30]}');
    const [page, ...others] = await assemblyPages(await jobFrom(wide), tools);
    for (const { drawings, width } of [page!, ...others]) {
      for (const each of drawings) {
        if ('clip' in each) continue;
        const path = 'letters' in each ? pathOfLetters(each) : each.path;
        for (const point of path) if ('x' in point) assert.ok(point.x > 0 && point.x < width);
      }
    }
  });

  it('is there for glued tags alone, and the same bytes every time', async () => {
    const one = await jobFrom(sample('5-stacked-plate.tag.yaml'));
    assert.deepEqual(await filesIn('assembly', one, 'plate', tools), {});
    const glued = await jobFrom(sample('4-glued-letters.tag.yaml'));
    const files = await filesIn('assembly', glued, 'fennel', tools);
    assert.deepEqual(Object.keys(files), ['fennel-assembly.pdf']);
    assert.deepEqual(await filesIn('assembly', glued, 'fennel', tools), files);
  });
});
