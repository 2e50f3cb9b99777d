import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';
import { svgPathProperties } from 'svg-path-properties';
import { planCuts } from '../../../src/output/cut-plan.ts';
import { toSvg } from '../../../src/output/svg.ts';
import { offset } from '../../../src/geometry/clipper.ts';
import { area, boundsOf, perimeter, ringArea } from '../../../src/geometry/measure.ts';
import type { Point, Region } from '../../../src/geometry/types.ts';
import { assertNear, make, newEngine, specOf } from '../support/engine.ts';

const folder = new URL('../../../samples/', import.meta.url);
const samples = readdirSync(folder)
  .filter((name) => name.endsWith('.tag.yaml'))
  .map((name) => ({ name, text: readFileSync(new URL(name, folder), 'utf8') }));

async function svgOf(text: string): Promise<string> {
  const made = await make(text);
  const svg = toSvg(made.report.tag!);
  assert.ok(svg);
  return svg;
}

/** resvg reads XML strictly: a stray “&”, “<” or control character is an error to it. */
function assertWellFormed(svg: string): void {
  assert.doesNotThrow(() => new Resvg(svg));
  assert.throws(() => new Resvg(svg.replace('<title>', '<title>&')));
}

/** Path data of a group's paths, by pattern: an independent reader of what the file says. */
function pathsOf(svg: string, group: string): string[] {
  const body = new RegExp(`<g id="${group}"[^]*?</g>`).exec(svg)?.[0] ?? '';
  return [...body.matchAll(/ d="([^"]*)"/g)].map((match) => match[1]!);
}

function ringsOf(data: string): Region {
  return data
    .split('Z')
    .filter((part) => part !== '')
    .map((part) =>
      part
        .replace('M', '')
        .split('L')
        .map((pair): Point => {
          const [x, y] = pair.split(' ').map(Number);
          return { x: x!, y: y! };
        }),
    );
}

describe('The SVG file', () => {
  for (const { name, text } of samples) {
    it(`of ${name} holds the outlines at their size, as svg-path-properties reads them`, async () => {
      const { report } = await make(text);
      const svg = toSvg(report.tag!)!;
      assertWellFormed(svg);
      const plan = planCuts(report.tag!)!;
      for (const { operation, paths } of plan.steps) {
        const written = pathsOf(svg, operation);
        assert.equal(written.length, paths.length, operation);
        paths.forEach(({ rings }, index) => {
          const data = written[index]!;
          const read = ringsOf(data);
          assertNear(Math.abs(area(read)), Math.abs(area(rings)), Math.abs(area(rings)) * 5e-4, `${operation} area`);
          const lengths = read.map((_, ring) => {
            const one = data.split('Z')[ring]!;
            return new svgPathProperties(`${one}Z`).getTotalLength();
          });
          const total = lengths.reduce((sum, length) => sum + length, 0);
          assertNear(total, perimeter(rings), perimeter(rings) * 1e-3, `${operation} length`);
          const [has, wanted] = [boundsOf(read)!, boundsOf(rings)!];
          assertNear(has.minX, wanted.minX, 0.01);
          assertNear(has.maxX, wanted.maxX, 0.01);
          assertNear(has.minY, plan.bounds.maxY - wanted.maxY, 0.01);
          assertNear(has.maxY, plan.bounds.maxY - wanted.minY, 0.01);
        });
      }
      // Cut lines lie half a kerf outside the finished piece.
      const [piece] = report.tag!.pieces;
      const outer = boundsOf(plan.steps.find(({ operation }) => operation === 'cut-outer')!.paths[0]!.rings)!;
      const finished = boundsOf(piece!.region)!;
      const { kerf } = report.tag!.stock;
      assertNear(outer.maxX - outer.minX, finished.maxX - finished.minX + kerf, 0.01);
      assertNear(outer.maxY - outer.minY, finished.maxY - finished.minY + kerf, 0.01);
    });

    it(`of ${name} is the same bytes from any engine`, async () => {
      const first = await svgOf(text);
      assert.equal(await svgOf(text), first);
      const fresh = await make(text, newEngine());
      assert.equal(toSvg(fresh.report.tag!), first);
    });

    it(`of ${name} is in real millimetres and in working order`, async () => {
      const svg = await svgOf(text);
      const [, width, height, box] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/.exec(svg)!;
      assert.equal(box, `0 0 ${width} ${height}`);
      const groups = [...svg.matchAll(/<g id="([^"]+)"/g)].map((match) => match[1]!);
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
    const svg = toSvg(tag)!;
    const data = [...pathsOf(svg, 'cut-outer'), ...pathsOf(svg, 'cut-inner')].join('');
    const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg)!;
    const perMm = 20;
    const filled = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"><path fill-rule="evenodd" d="${data}"/></svg>`;
    const { pixels } = new Resvg(filled, { fitTo: { mode: 'zoom', value: perMm } }).render();
    let covered = 0;
    for (let index = 3; index < pixels.length; index += 4) covered += pixels[index]! / 255;
    const expected = area(offset(tag.pieces[0]!.region, tag.stock.kerf / 2));
    assertNear(covered / perMm ** 2, expected, expected * 1e-3);
  });

  it('is wider by a kerf outside and narrower by one in every opening', async () => {
    const shapes = ['plate: {rectangle: [20, 40]}', 'window: {rectangle: [8, 10]}'];
    const svg = await svgOf(specOf(shapes, 'body: [plate], cut: [window]', ['stock: {kerf: 0.2 mm}']));
    const outer = boundsOf(ringsOf(pathsOf(svg, 'cut-outer')[0]!))!;
    assertNear(outer.maxX - outer.minX, 20.2, 1e-3);
    assertNear(outer.maxY - outer.minY, 40.2, 1e-3);
    const inner = boundsOf(ringsOf(pathsOf(svg, 'cut-inner')[0]!))!;
    assertNear(inner.maxX - inner.minX, 7.8, 1e-3);
    assertNear(inner.maxY - inner.minY, 9.8, 1e-3);
    assert.match(svg, /kerf of 0\.2 mm/);
    assert.match(svg, /width="20\.2mm" height="40\.2mm"/);
  });

  it('has y running down: what is at the top of the tag has the least y', async () => {
    const shapes = ['plate: {rectangle: [20, 40]}', 'dot: {ellipse: 4, nudge: {up: 15}}'];
    const svg = await svgOf(specOf(shapes, 'body: [plate], engrave: [dot]'));
    const dot = boundsOf(ringsOf(pathsOf(svg, 'engrave')[0]!))!;
    assertNear((dot.minY + dot.maxY) / 2, 5, 1e-3);
  });

  it('lays pieces side by side without overlap', async () => {
    const { report } = await make(samples.find(({ name }) => name.startsWith('4-'))!.text);
    const rings = planCuts(report.tag!)!.steps.find(({ operation }) => operation === 'cut-outer')!.paths;
    assert.equal(rings.length, 2);
    assert.ok(boundsOf(rings[1]!.rings)!.minX > boundsOf(rings[0]!.rings)!.maxX + 4);
    for (const { rings: outer } of rings) assert.ok(outer.every((ring) => ringArea(ring) > 0));
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
    assert.equal(toSvg({ ...made.report.tag!, pieces: [] }), undefined);
  });
});
