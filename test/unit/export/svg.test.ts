import assert from 'node:assert/strict';
import { Resvg } from '@resvg/resvg-js';
import { svgPathProperties } from 'svg-path-properties';
import { offset } from '../../../src/geometry/clipper.ts';
import { contourLength } from '../../../src/geometry/contour.ts';
import { area, boundsOf, ringArea } from '../../../src/geometry/measure.ts';
import { toDxf } from '../../../src/export/dxf.ts';
import { jobOf } from '../../../src/export/job/job.ts';
import { toSvg } from '../../../src/export/svg.ts';
import { assertNear, make, newEngine, specOf } from '../support/engine.ts';
import { samples } from '../support/samples.ts';
import { pathsOf, ringsOf } from '../support/svg-reader.ts';

async function svgOf(text: string): Promise<string> {
  const { report } = await make(text);
  return toSvg(jobOf(report)!);
}

/** resvg reads XML strictly: a stray “&”, “<” or control character is an error to it. */
function assertWellFormed(svg: string): void {
  assert.doesNotThrow(() => new Resvg(svg));
  assert.throws(() => new Resvg(svg.replace('<title>', '<title>&')));
}

const groupsOf = (svg: string): string[] => [...svg.matchAll(/<g id="([^"]+)"/g)].map((match) => match[1]!);

describe('The SVG file', () => {
  for (const { name, text } of samples) {
    it(`of ${name} holds the outlines at their size, as svgpath and svg-path-properties read them`, async () => {
      const { report } = await make(text);
      const tag = report.tag!;
      const job = jobOf(report)!;
      const svg = toSvg(job);
      assertWellFormed(svg);
      for (const { operation, paths } of job.plan.steps) {
        const written = pathsOf(svg, operation);
        assert.equal(written.length, paths.length, operation);
        paths.forEach(({ contours, alongLines }, i) => {
          const total = contours.reduce((sum, contour) => sum + contourLength(contour), 0);
          const data = written[i]!.data.match(/M[^M]*/g)!;
          const read = data.reduce((sum, each) => sum + new svgPathProperties(each).getTotalLength(), 0);
          assertNear(read, total, total * 1e-3, `${operation} length`);
          for (const { closed } of written[i]!.outlines) assert.ok(closed || alongLines);
        });
      }
      const cut = ringsOf([...pathsOf(svg, 'cut-inner'), ...pathsOf(svg, 'cut-outer')]);
      const { kerf } = tag.stock;
      const expected = tag.pieces.map(({ region }) => offset(region, kerf / 2));
      // y runs down in the file, so outlines run clockwise there and openings the other way.
      assertNear(-area(cut), area(expected.flat()), 5e-4 * area(expected.flat()), 'area');
      const outer = pathsOf(svg, 'cut-outer');
      for (const piece of tag.pieces) {
        const has = boundsOf(ringsOf(outer.filter((path) => path.piece === piece.id)))!;
        const finished = boundsOf(piece.region)!;
        assertNear(has.maxX - has.minX, finished.maxX - finished.minX + kerf, 0.01, 'width');
        assertNear(has.maxY - has.minY, finished.maxY - finished.minY + kerf, 0.01, 'height');
      }
    });

    it(`of ${name} is the same bytes from any engine`, async () => {
      const first = await svgOf(text);
      assert.equal(await svgOf(text), first);
      const fresh = await make(text, newEngine());
      assert.equal(toSvg(jobOf(fresh.report)!), first);
    });

    it(`of ${name} is in real millimetres and in working order`, async () => {
      const svg = await svgOf(text);
      const [, width, height, box] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/.exec(svg)!;
      assert.equal(box, `0 0 ${width} ${height}`);
      const groups = groupsOf(svg);
      const order = ['engrave', 'score', 'cut-inner', 'cut-outer'];
      assert.deepEqual(
        groups,
        order.filter((operation) => groups.includes(operation)),
      );
      assert.equal(groups.at(-1), 'cut-outer');
    });
  }

  it('covers as many pixels as the piece has area, drawn by resvg', async () => {
    const { report } = await make(samples.find(({ name }) => name.startsWith('1-'))!.text);
    const tag = report.tag!;
    const svg = toSvg(jobOf(report)!);
    const data = [...pathsOf(svg, 'cut-outer'), ...pathsOf(svg, 'cut-inner')].map((path) => path.data).join('');
    const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg)!;
    const perMm = 20;
    const filled = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"><path fill-rule="evenodd" d="${data}"/></svg>`;
    const { pixels } = new Resvg(filled, { fitTo: { mode: 'zoom', value: perMm } }).render();
    let covered = 0;
    for (let index = 3; index < pixels.length; index += 4) covered += pixels[index]! / 255;
    const expected = area(offset(tag.pieces[0]!.region, tag.stock.kerf / 2));
    assertNear(covered / perMm ** 2, expected, expected * 5e-4);
  });

  it('has y running down: what is at the top of the tag has the least y', async () => {
    const shapes = ['plate: {rectangle: [20, 40]}', 'dot: {ellipse: 4, nudge: {up: 15}}'];
    const svg = await svgOf(specOf(shapes, 'body: [plate], engrave: [dot]'));
    const dot = boundsOf(ringsOf(pathsOf(svg, 'engrave')))!;
    assertNear((dot.minY + dot.maxY) / 2, 5, 2e-3);
  });

  it('is drawn in the colours, widths and layers that the spec asks for', async () => {
    const output =
      'output: {cut_outer: {color: "#ff0000", line_width: 0.01 mm, layer: Cut & free}, engrave: {color: "#000000"}}';
    const shapes = ['plate: {rectangle: [20, 40]}', 'dot: {ellipse: 4}'];
    const svg = await svgOf(specOf(shapes, 'body: [plate], engrave: [dot]', [output]));
    assert.match(svg, /<g id="cut-outer" fill="none" stroke="#FF0000" stroke-width="0.01">\s*<title>Cut &amp; free</);
    assert.match(svg, /<g id="engrave" fill="#000000"/);
    assertWellFormed(svg);
  });

  it('says when it was asked for in spite of errors', async () => {
    const spec = specOf(['body: {text: i, font: Nunito, height: 30}']);
    const { report } = await make(spec);
    assert.ok(report.issues.some(({ severity }) => severity === 'error'));
    assert.match(toSvg(jobOf(report)!), /<desc>DO NOT CUT: this tag has errors\. [^<]*fall/);
    assert.doesNotMatch(toSvg(jobOf({ ...report, issues: [] })!), /errors/);
  });

  it('has all its lengths in mm, those that it tells too, of a spec in inches', async () => {
    const head = ['units: in', 'stock: {material: cherry, thickness: 0.125 in, kerf: 0.0039 in}'];
    const { report } = await make(specOf(['plate: {rectangle: [3.5, 1.5]}'], 'body: [plate]', head));
    const notes = [toSvg(jobOf(report)!), Buffer.from(await toDxf(jobOf(report)!)).toString()];
    for (const text of notes) {
      assert.match(text, /Lengths in mm\.\s+(999\s+)?Cut lines are compensated for a kerf of 0\.099 mm\./);
      assert.doesNotMatch(text, /0\.0039/);
    }
  });

  it('lays pieces side by side without overlap', async () => {
    const svg = await svgOf(samples.find(({ name }) => name.startsWith('4-'))!.text);
    const outer = pathsOf(svg, 'cut-outer');
    const [back, letters] = ['back', 'letters'].map((id) =>
      boundsOf(ringsOf(outer.filter(({ piece }) => piece === id)))!,
    );
    assert.ok(letters!.minX > back!.maxX + 4);
    for (const ring of ringsOf(outer)) assert.ok(ringArea(ring) < 0);
  });

  it('is well-formed XML whatever the title', async () => {
    for (const title of ['<script>&"\'</title>', ']]> --> <!--', 'Café 🌱 \u200f', '\\u0007\\u0000bell', '&amp;']) {
      const svg = await svgOf(specOf(['body: {ellipse: 20}'], undefined, [`title: ${JSON.stringify(title)}`]));
      assertWellFormed(svg);
      const written = /<title>(.*?)<\/title>/s.exec(svg)![1]!;
      assert.doesNotMatch(written, /[<>]|&(?!(amp|lt|gt|quot|apos);)/);
      assert.doesNotMatch(svg, /<script/);
    }
  });

  it('is not made of nothing', async () => {
    const made = await make(specOf(['body: {ellipse: 20}']));
    assert.equal(jobOf({ tag: { ...made.report.tag!, pieces: [] }, issues: [] }), undefined);
    assert.equal(jobOf({ issues: [] }), undefined);
  });
});
