import assert from 'node:assert/strict';
import { svgPathProperties } from 'svg-path-properties';
import { jobOf } from '../../../src/export/job/job.ts';
import { toDxf } from '../../../src/export/dxf.ts';
import { toSvg } from '../../../src/export/svg.ts';
import { fitLines, reversed, strokesAlong } from '../../../src/geometry/strokes.ts';
import { contourLength, endOf } from '../../../src/geometry/contour.ts';
import { area } from '../../../src/geometry/measure.ts';
import { estimateJob } from '../../../src/toolpath/estimate.ts';
import { planCuts } from '../../../src/toolpath/cut-plan.ts';
import { assertNear, make, newEngine, report, specOf } from '../support/engine.ts';
import { dxfText } from '../support/file-readers.ts';

const plate = 'plate: {rectangle: [80, 60]}';
const curve = 'M0 0 C20 -20 40 20 60 0';
/** Come to a point again on the way: as an e that closes its eye, and as a loop of a pen. */
const eye = 'M0 10 H20 A10 10 0 1 0 0 10 A10 10 0 0 0 18 16';
const loop = 'M0 0 L30 30 H10 L30 0 L60 0 L30 30 L60 50';

function marked(line: string, operation: 'score' | 'engrave', head: readonly string[] = []): string {
  return specOf([plate, `line: ${line}`], `body: [plate], ${operation}: [line]`, head);
}

/** Of path data, by svg-path-properties. */
const lengthOf = (data: string): number => new svgPathProperties(data).getTotalLength();

describe('Strokes along lines', () => {
  it('are as wide as the beam with round ends: length · width + π·r²', () => {
    for (const line of [
      [
        { x: 0, y: 0 },
        { x: 60, y: 0 },
      ],
      [
        { x: 0, y: 0 },
        { x: 30, y: 10 },
        { x: 60, y: 20 },
      ],
    ]) {
      const last = line.at(-1)!;
      assertNear(area(strokesAlong([line], 2)), 2 * Math.hypot(last.x, last.y) + Math.PI, 0.02);
    }
  });

  it('of a closed line leave its inside free', () => {
    const square = [0, 10].flatMap((y) => (y === 0 ? [0, 10] : [10, 0]).map((x) => ({ x, y })));
    const found = area(strokesAlong([[...square, square[0]!]], 1));
    // Inside, a square less by the width; outside, one more by it with round corners.
    assertNear(found, 121 - (1 - Math.PI / 4) - 81, 0.01);
  });

  it('are fitted by curves that go from end to end, and back when they are turned round', () => {
    const line = Array.from({ length: 400 }, (_, i) => ({ x: i / 5, y: 8 * Math.sin(i / 40) }));
    const [contour] = fitLines([line]);
    assert.equal(contour!.closed, false);
    assert.deepEqual(contour!.start, line[0]);
    assertNear(endOf(contour!).x, line.at(-1)!.x, 1e-6);
    assert.ok(contour!.segments.length < 40, String(contour!.segments.length));
    const polyline = line.slice(1).reduce((sum, { x, y }, i) => sum + Math.hypot(x - line[i]!.x, y - line[i]!.y), 0);
    assertNear(contourLength(contour!), polyline, 0.01);
    const back = reversed(contour!);
    assertNear(contourLength(back), polyline, 0.01);
    assert.deepEqual(endOf(back), line[0]);
  });
});

describe('Open lines', () => {
  it('are as long in the plan as they were drawn, and are not closed', async () => {
    for (const data of [curve, 'M0 0 L60 0', 'M0 0 H30 V20', 'M0 0 Q30 30 60 0', 'M0 0 A30 30 0 0 1 60 0', eye, loop]) {
      const made = await make(marked(`{path: "${data}", lines: true}`, 'score'));
      const plan = planCuts(made.report.tag!)!;
      const { paths } = plan.steps.find(({ operation }) => operation === 'score')!;
      assert.equal(paths.length, 1);
      const [contour] = paths[0]!.contours;
      assert.equal(contour!.closed, false, data);
      assertNear(contourLength(contour!), lengthOf(data), 0.02, data);
      assertNear(estimateJob(made.report.tag!, plan).scoreLength, lengthOf(data), 0.02, data);
    }
  });

  it('have the width that is asked for, turn and are placed like any shape', async () => {
    const made = await make(
      marked(`{path: "${curve}", lines: true, width: 30, rotate: 90, place: {on: plate, by: box}}`, 'score'),
    );
    const lines = made.pieces[0]!.marks[0]!.lines!;
    const ys = lines.flat().map(({ y }) => y);
    assertNear(Math.max(...ys) - Math.min(...ys), 30, 1e-3);
    assertNear(Math.max(...ys), 15, 1e-3);
  });

  it('that are engraved are followed by the beam, and take their time and no area', async () => {
    const head = ['machine: {cut: 10 mm/s, engrave: 100 mm/s, acceleration: 50000 mm/s2}'];
    const made = await make(marked('{path: "M0 0 H60", lines: true}', 'engrave', head));
    const { tag } = made.report;
    const estimate = estimateJob(tag!, planCuts(tag!)!);
    assert.equal(estimate.engravedArea, 0);
    assert.ok('engrave' in estimate.time);
    assertNear(estimate.time.engrave, 0.6, 0.01);
  });

  it('are in the files as open paths without a fill', async () => {
    for (const operation of ['score', 'engrave'] as const) {
      const made = await report(marked('{path: "M0 0 L60 0 L60 10", lines: true}', operation));
      const job = jobOf(made)!;
      const svg = toSvg(job);
      const [, group = ''] = new RegExp(`<g id="${operation}"([^]*?)</g>`).exec(svg) ?? [];
      assert.match(group, /fill="none" stroke="#[0-9A-F]{6}"/);
      const data = [...group.matchAll(/ d="([^"]*)"/g)].map(([, each]) => each!);
      assert.equal(data.length, 1);
      assert.ok(!data[0]!.includes('Z'));
      assertNear(lengthOf(data[0]!), 70, 1e-3);
      const dxf = dxfText(await toDxf(job));
      const [, polyline = ''] =
        new RegExp(`LWPOLYLINE\\n[^]*?\\n8\\n${operation}\\n([^]*?)\\n0\\n(?=[A-Z])`, 'i').exec(dxf) ?? [];
      assert.match(polyline, /(^|\n)90\n3(\n|$)/, 'three corners');
      assert.match(polyline, /(^|\n)70\n0(\n|$)/, 'open');
    }
  });

  it('are what has a stroke in a drawing, and the same file may give its areas too', async () => {
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="30mm" viewBox="0 0 60 30">
      <path d="M0 15 C12 0 48 0 60 15 C48 30 12 30 0 15Z" fill="green"/>
      <g fill="none" stroke="black"><path d="M5 15H55"/><polyline points="20,15 30,8 35,7"/><circle cx="10" cy="15" r="2"/></g></svg>`;
    const spec = specOf(
      ['leaf: {drawing: leaf.svg}', 'veins: {drawing: leaf.svg, lines: true}'],
      'body: [leaf], score: [veins]',
    );
    const made = await make(spec, newEngine({ 'leaf.svg': svg }));
    assert.deepEqual(
      made.issues.filter(({ code }) => code === 'not-drawn'),
      [],
    );
    const { lines = [] } = made.pieces[0]!.marks[0]!;
    assert.equal(lines.length, 3);
    const plan = planCuts(made.report.tag!)!;
    const total = estimateJob(made.report.tag!, plan).scoreLength;
    assertNear(total, 50 + Math.hypot(10, 7) + Math.hypot(5, 1) + 4 * Math.PI, 0.05);
  });

  it('of a drawing without strokes, and areas of one without areas, are told', async () => {
    const filled = '<svg viewBox="0 0 10 10"><path d="M0 0H9V9Z"/></svg>';
    const stroked = '<svg viewBox="0 0 10 10"><path d="M0 0H9" fill="none" stroke="red"/></svg>';
    const messages = async (svg: string, lines: string): Promise<string[]> => {
      const { issues } = await report(
        specOf([plate, `it: {drawing: it.svg${lines}}`], 'body: [plate], score: [it]'),
        newEngine({ 'it.svg': svg }),
      );
      return issues.map(({ message }) => message);
    };
    assert.ok(
      (await messages(filled, ', lines: true')).includes(
        'The drawing “it.svg” has no strokes, and “lines” keeps only those.',
      ),
    );
    assert.ok(
      (await messages(stroked, '')).includes(
        'The drawing “it.svg” has only lines without a fill; only filled shapes are used unless “lines: true” keeps them as lines.',
      ),
    );
    assert.deepEqual(await messages(stroked, ', lines: true'), []);
  });

  it('stay lines in copies, rows and unions', async () => {
    for (const [shape, count] of [
      ['{from: line}', 1],
      ['{repeat: {shape: line, count: 3, spacing: 5, along: down}}', 3],
      ['{union: [line, {from: line, nudge: {down: 4}}]}', 2],
      ['{union: [line, {ellipse: 3}]}', 1],
    ] as const) {
      const made = await make(
        specOf(
          [plate, `line: {path: "${curve}", lines: true, width: 40}`, `it: ${shape}`],
          'body: [plate], score: [it]',
        ),
      );
      assert.equal(made.pieces[0]!.marks[0]!.lines?.length, count, shape);
    }
  });

  it('can be no part of what is cut, and have no width to change', async () => {
    for (const key of ['body', 'cut']) {
      const piece = key === 'body' ? 'body: [line]' : 'body: [plate], cut: [line]';
      const { issues } = await report(specOf([plate, `line: {path: "${curve}", lines: true}`], piece));
      assert.deepEqual(
        issues.map(({ message }) => message),
        ['“line” is made of lines, which enclose nothing: score or engrave it.'],
      );
    }
    const { issues } = await report(marked(`{path: "${curve}", lines: true, grow: 1}`, 'score'));
    assert.deepEqual(
      issues.map(({ message }) => message),
      ['“grow” is for areas, and lines have no width; “around” makes a band of them.'],
    );
  });

  it('are a border without a width, one or two, round a hole as well', async () => {
    const made = await make(
      specOf([plate, 'edge: {border: {of: plate, inset: 4, double: 1}}'], 'body: [plate], score: [edge]'),
    );
    const plan = planCuts(made.report.tag!)!;
    assertNear(estimateJob(made.report.tag!, plan).scoreLength, 2 * (72 + 52) + 2 * (70 + 50), 0.01);
  });
});
