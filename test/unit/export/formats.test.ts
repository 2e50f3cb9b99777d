import assert from 'node:assert/strict';
import { PNG } from 'pngjs';
import { transform, translation } from '../../../src/geometry/affine.ts';
import { offset, union } from '../../../src/geometry/clipper.ts';
import { area, boundsOf, contains, perimeter, ringArea } from '../../../src/geometry/measure.ts';
import type { Region, Ring } from '../../../src/geometry/types.ts';
import { lookOf } from '../../../src/look/looks.ts';
import { blend } from '../../../src/look/blend.ts';
import { toDxf } from '../../../src/export/dxf.ts';
import { formats } from '../../../src/export/formats.ts';
import { jobOf } from '../../../src/export/job/job.ts';
import type { Job } from '../../../src/export/job/job.ts';
import { toPdf } from '../../../src/export/pdf/pdf.ts';
import { toCover, toPng } from '../../../src/export/proof/png.ts';
import { proofPicture } from '../../../src/export/pictures/proof-picture.ts';
import { toSvg } from '../../../src/export/svg.ts';
import { areasIn } from '../../../src/tag/open-lines.ts';
import { coloursOf } from '../../../src/tag/operation-colours.ts';
import { operations } from '../../../src/tag/tag.ts';
import type { Operation, Tag } from '../../../src/tag/tag.ts';
import { openFace } from '../../../src/text/font-face.ts';
import { blockFont } from '../../fonts/block-font.ts';
import { assertNear, make, report, specOf } from '../support/engine.ts';
import { dxfText, outlinesInPdf, readDxf, readDxfToo, readPdf } from '../support/file-readers.ts';
import type { Outline, ReadDxf } from '../support/file-readers.ts';
import { samples } from '../support/samples.ts';
import { pathsOf } from '../support/svg-reader.ts';
import { cases, oneIn } from '../support/sweep.ts';
import { manyTags } from '../support/tags.ts';
import { tools } from '../support/tools.ts';

async function jobFrom(text: string): Promise<Job> {
  return jobOf((await make(text)).report)!;
}

/** With a picture of half the width: a quarter of the pixels to fill, pack and read. */
function small(job: Job): Job {
  const { output } = job.tag;
  return { ...job, tag: { ...job.tag, output: { ...output, pictureWidth: output.pictureWidth / 2 } } };
}

/** What a file says, whatever its format: outlines in mm, y up, by operation, in the order of the file. */
type Read = readonly (Outline & { readonly operation: Operation })[];

function fromSvg(svg: string): Read {
  const height = Number(/viewBox="0 0 [\d.]+ ([\d.]+)"/.exec(svg)![1]);
  return operations.flatMap((operation) =>
    pathsOf(svg, operation).flatMap(({ outlines }) =>
      outlines.map(({ ring, closed }) => {
        return { operation, closed, ring: ring.map(({ x, y }) => ({ x, y: height - y })) };
      }),
    ),
  );
}

function fromDxf(bytes: Uint8Array): Read {
  const { version, units, outlines } = readDxf(bytes);
  assert.equal(version, 'AC1015');
  assert.equal(units, 4);
  return byLayer(outlines);
}

function byLayer(outlines: ReadDxf['outlines']): Read {
  return outlines.map(({ layer, ring, closed }) => {
    const operation = operations.find((each) => each === layer);
    assert.ok(operation, layer);
    return { operation, ring, closed };
  });
}

/** From the cut page, the second of two. */
async function fromPdf(bytes: Uint8Array, tag: Tag): Promise<Read> {
  const colors = Object.entries(coloursOf(tag.output));
  return (await outlinesInPdf(bytes, 2)).flatMap(({ color, ring, closed }) => {
    const operation = colors.find(([, each]) => each.toLowerCase() === color)?.[0] as Operation | undefined;
    return operation ? [{ operation, ring, closed }] : [];
  });
}

/** What is to be cut, scored and engraved, by the engine's own geometry and not by the plan. */
function wanted({ pieces, stock: { kerf } }: Tag): {
  cut: Region;
  score: Region;
  engrave: Region;
  width: number;
  height: number;
} {
  const cuts = pieces.map(({ region, cutLine }) => cutLine ?? offset(region, kerf / 2));
  const marks = pieces.map((piece) => ({
    engrave: union(piece.marks.filter(({ operation }) => operation === 'engrave').map(areasIn)),
    score: piece.marks.filter(({ operation }) => operation === 'score').flatMap((mark) => [...areasIn(mark)]),
  }));
  const boxes = pieces.map((_, i) => boundsOf([...cuts[i]!, ...marks[i]!.engrave, ...marks[i]!.score])!);
  return {
    cut: cuts.flat(),
    score: marks.flatMap(({ score }) => score),
    engrave: marks.flatMap(({ engrave }) => [...engrave]),
    width: boxes.reduce((sum, { minX, maxX }) => sum + maxX - minX, 5 * (boxes.length - 1)),
    height: Math.max(...boxes.map(({ minY, maxY }) => maxY - minY)),
  };
}

/** By how much an area may be off: 0.05 %, or the slivers of thin lettering between curves and polygons, 2/3 of 0.002 mm wide. */
function allowed(region: Region): number {
  return Math.max(5e-4 * area(region), (2 / 3) * 0.002 * perimeter(region));
}

/** What else is in the file than lines that enclose nothing, each of which is there once. */
function besidesLines(read: Read, { pieces }: Tag, what: string): Read {
  const left = [...read];
  for (const { operation, lines = [] } of pieces.flatMap(({ marks }) => marks)) {
    for (const line of lines) {
      const isClosed = line.length > 2 && line[0]!.x === line.at(-1)!.x && line[0]!.y === line.at(-1)!.y;
      const found = left.findIndex(
        (each) => each.operation === operation && each.closed === isClosed && isAsLarge(each.ring, line),
      );
      assert.ok(found >= 0, `${what}: a line of ${line.length} points`);
      left.splice(found, 1);
    }
  }
  return left;
}

function isAsLarge(ring: Ring, line: Ring): boolean {
  const [a, b] = [boundsOf([ring])!, boundsOf([line])!];
  const off = [a.maxX - a.minX - (b.maxX - b.minX), a.maxY - a.minY - (b.maxY - b.minY)];
  return off.every((each) => Math.abs(each) < 0.02);
}

function assertRight(read: Read, tag: Tag, what: string): void {
  const expected = wanted(tag);
  const areas = besidesLines(read, tag, what);
  const rings = (...chosen: Operation[]) =>
    areas.filter(({ operation }) => chosen.includes(operation)).map(({ ring }) => ring);
  assert.ok(
    areas.every(({ closed }) => closed),
    `${what}: all areas are closed`,
  );
  for (const [found, region, name] of [
    [rings('cut-inner', 'cut-outer'), expected.cut, 'cut'],
    [rings('score'), expected.score, 'score'],
    [rings('engrave'), expected.engrave, 'engrave'],
  ] as const) {
    assert.equal(found.length, region.length, `${what}: outlines to ${name}`);
    assertNear(area(found), area(region), allowed(region), `${what}: area to ${name}`);
  }
  const bounds = boundsOf(read.map(({ ring }) => ring))!;
  assertNear(bounds.minX, 0, 0.01, `${what}: left`);
  assertNear(bounds.minY, 0, 0.01, `${what}: bottom`);
  assertNear(bounds.maxX, expected.width, 0.01, `${what}: width`);
  assertNear(bounds.maxY, expected.height, 0.01, `${what}: height`);
  const order = read.map(({ operation }) => operations.indexOf(operation));
  assert.deepEqual(
    order,
    [...order].sort((a, b) => a - b),
    `${what}: order`,
  );
  assertInsideFirst(rings('cut-inner', 'cut-outer'), what);
}

function assertInsideFirst(rings: readonly Ring[], what: string): void {
  const boxes = rings.map((ring) => boundsOf([ring])!);
  rings.forEach((ring, i) => {
    for (let later = i + 1; later < rings.length; later++) {
      const [a, b] = [boxes[i]!, boxes[later]!];
      if (b.minX < a.minX || b.maxX > a.maxX || b.minY < a.minY || b.maxY > a.maxY) continue;
      assert.ok(!contains([ring], rings[later]![0]!), `${what}: something inside is cut after what frees it`);
    }
  });
}

describe('The files of a tag', () => {
  for (const { name, text } of samples) {
    it(`of ${name} say the same in every format, read by svgpath, dxf-parser, dxf and pdfjs`, async () => {
      const job = await jobFrom(text);
      assertRight(fromSvg(toSvg(job)), job.tag, 'SVG');
      const dxf = await toDxf(job);
      assertRight(fromDxf(dxf), job.tag, 'DXF');
      const { units, extent, outlines } = readDxfToo(dxf);
      assert.equal(units, 4);
      assertRight(byLayer(outlines), job.tag, 'DXF, read by another');
      const { maxX, maxY } = boundsOf(outlines.map(({ ring }) => ring))!;
      assertNear(extent.x, maxX, 0.01);
      assertNear(extent.y, maxY, 0.01);
      assertRight(await fromPdf(await toPdf(job, tools), job.tag), job.tag, 'PDF');
    });
  }

  // Of glued pieces; of an engraved one; with errors.
  for (const name of oneIn(2, ['4-', '3-', '7-'])) {
    it(`of sample ${name} are the same bytes every time`, async () => {
      const { text } = samples.find((sample) => sample.name.startsWith(name))!;
      const [one, other] = [small(await jobFrom(text)), small(await jobFrom(text))];
      for (const [format, write] of Object.entries(formats)) {
        const [a, b] = [await write(one, tools), await write(other, tools)];
        assert.ok(Buffer.from(a).equals(Buffer.from(b)), format);
      }
    }).timeout(180_000);
  }

  it('say the same for many tags in either unit', async () => {
    // Captions in blocks: letters of proofs, which are looked at elsewhere, take most of the time.
    const blocks = await openFace({ bytes: blockFont(), index: 0, variations: {} });
    const quick = { ...tools, captions: () => Promise.resolve(blocks) };
    const all = cases(16, 48);
    let made = 0;
    for (const [i, text] of manyTags(all, 4).entries()) {
      const job = jobOf(await report(text));
      if (!job) continue;
      made++;
      assertRight(fromSvg(toSvg(job)), job.tag, `SVG ${i}\n${text}`);
      assertRight(fromDxf(await toDxf(job)), job.tag, `DXF ${i}\n${text}`);
      assertRight(await fromPdf(await toPdf(job, quick), job.tag), job.tag, `PDF ${i}\n${text}`);
    }
    assert.ok(made > 0.94 * all, `${made} were made`);
  }).timeout(300_000);
});

describe('The DXF file', () => {
  const shapes = ['plate: {rectangle: [60, 30], radius: 5}', 'window: {ellipse: 8}'];

  it('has lines and arcs with the radius they have', async () => {
    const text = dxfText(await toDxf(await jobFrom(specOf(shapes, 'body: [plate], cut: [window]'))));
    const bulges = [...text.matchAll(/^42\n(.*)$/gm)].map(([, value]) => Math.abs(Number(value)));
    // A quarter turn is tan 22.5°; four of the window, four of the plate, some of them in two where a cut begins.
    assert.ok(bulges.filter((bulge) => Math.abs(bulge - Math.tan(Math.PI / 8)) < 2e-4).length >= 6);
  });

  it('has the layers, colours and line widths that the spec asks for', async () => {
    const output =
      'output: {cut_outer: {layer: Outer edge, color: "#FF0000", line_width: 0.26 mm}, cut_inner: {layer: Holes, color: "#0000FF", line_width: 0.01 mm}}';
    const file = await toDxf(await jobFrom(specOf(shapes, 'body: [plate], cut: [window]', [output])));
    const { layers, outlines } = readDxf(file);
    assert.deepEqual(
      outlines.map(({ layer }) => layer),
      ['Holes', 'Outer edge'],
    );
    assert.equal(layers['Holes']!.color, '#0000ff');
    assert.equal(layers['Outer edge']!.color, '#ff0000');
    // The nearest that the format's reference lists for group 370.
    assert.deepEqual(readDxfToo(file).lineWeights, { '0': 0, Holes: 0, 'Outer edge': 25 });
  });

  it('keeps every letter of a name, as both readers find it', async () => {
    const output = 'output: {cut_outer: {layer: Außen 外 🌱}, cut_inner: {layer: Löcher–€}}';
    const file = await toDxf(await jobFrom(specOf(shapes, 'body: [plate], cut: [window]', ['title: Zoë “č”', output])));
    const names = ['Löcher–€', 'Außen 外 🌱'];
    for (const { outlines } of [readDxf(file), readDxfToo(file)])
      assert.deepEqual(
        outlines.map(({ layer }) => layer),
        names,
      );
    assert.deepEqual(Object.keys(readDxf(file).layers), ['0', ...names]);
    assert.deepEqual(Object.keys(readDxfToo(file).lineWeights), ['0', ...names]);
    // Code page 1252 has ö at F6 and ß at DF; what it lacks, the format's reference writes with its number in Unicode.
    assert.match(dxfText(file), /^L\xf6cher\\U\+2013\\U\+20AC$/m);
    assert.match(dxfText(file), /^Au\xdfen \\U\+5916 \\U\+D83C\\U\+DF31$/m);
    assert.match(dxfText(file), /^999\nZo\xeb \\U\+201C\\U\+010D\\U\+201D$/m);
  });

  it('takes no names that begin or end in a blank, which readers cut off', async () => {
    for (const layer of [' ', ' a', 'a ']) {
      const { issues } = await report(specOf(shapes, 'body: [plate]', [`output: {cut_outer: {layer: "${layer}"}}`]));
      assert.deepEqual(
        issues.map(({ path }) => path.join('.')),
        ['output.cut_outer.layer'],
      );
    }
  });

  it('has one layer for names that differ in capitals only, which are one name to the format', async () => {
    const output = 'output: {cut_outer: {layer: Edge}, cut_inner: {layer: edge}}';
    const { layers, outlines } = readDxf(
      await toDxf(await jobFrom(specOf(shapes, 'body: [plate], cut: [window]', [output]))),
    );
    assert.deepEqual(Object.keys(layers), ['0', 'edge']);
    assert.deepEqual(
      outlines.map(({ layer }) => layer),
      ['edge', 'edge'],
    );
  });

  it('says when it was asked for in spite of errors, in a comment that is one line', async () => {
    const job = await jobFrom(specOf(['body: {text: "i", font: Nunito, height: 30}'], undefined, ['title: "a\\nb"']));
    const file = await toDxf(job);
    assert.match(dxfText(file), /^999\nDO NOT CUT: this tag has errors\. .*\n999\na b\n/);
    assert.equal(readDxf(file).outlines.length, job.plan.steps.flatMap(({ paths }) => paths).length);
    assert.doesNotMatch(dxfText(await toDxf({ ...job, issues: [] })), /DO NOT CUT/);
  });

  it('holds tabs as open polylines', async () => {
    const spec = specOf(shapes, 'body: [plate], cut: [window]', ['output: {tabs: 2}']);
    const { outlines } = readDxf(await toDxf(await jobFrom(spec)));
    assert.deepEqual(
      outlines.map(({ closed }) => closed),
      [true, false, false],
    );
  });
});

describe('The PDF file', () => {
  it('has a cut page of true size: 1/72 in a point', async () => {
    const job = await jobFrom(specOf(['plate: {rectangle: [100, 50]}'], 'body: [plate]'));
    const { pages } = await readPdf(await toPdf(job, tools));
    // CSS Values and Units: 100 mm are 283.4646 pt.
    assertNear(pages[1]!.width, 283.4646, 1e-3);
    assertNear(pages[1]!.height, 141.7323, 1e-3);
  });

  it('has the colours and line widths that the spec asks for on its cut page', async () => {
    const output =
      'output: {cut_outer: {color: "#FF0000", line_width: 0.26 mm}, cut_inner: {color: "#0000FF"}, engrave: {color: "#112233"}}';
    const shapes = ['plate: {rectangle: [60, 30]}', 'window: {ellipse: 8}', 'dot: {ellipse: 4, nudge: {right: 20}}'];
    const spec = specOf(shapes, 'body: [plate], cut: [window], engrave: [dot]', [output]);
    const found = (await outlinesInPdf(await toPdf(await jobFrom(spec), tools), 2)).map(({ color, lineWidth }) => [
      color,
      lineWidth?.toFixed(3),
    ]);
    assert.deepEqual(found, [
      ['#112233', undefined],
      ['#0000ff', '0.100'],
      ['#ff0000', '0.260'],
    ]);
  });

  it('has a proof page that can be searched, on A4, before the cut page', async () => {
    const { report: made } = await make(samples.find(({ name }) => name.startsWith('7-'))!.text);
    const { pages, title } = await readPdf(await toPdf(jobOf(made)!, tools));
    assert.equal(title, 'Chives, weak on purpose');
    const [proof, cut] = pages;
    for (const phrase of [
      'Chives',
      'Great Vibes',
      'Birch plywood',
      'Twine 2.5 mm thick',
      'a hole 2.8 mm across',
      '84.1 mm wide',
      '34.1 mm high',
    ])
      assert.ok(proof!.text.includes(phrase), phrase);
    assert.match(proof!.text, /Draft: not ready to be made yet\./);
    assert.match(cut!.text, /DO NOT CUT/);
    // ISO 216: A4 is 210 × 297 mm.
    assertNear(proof!.width, (210 * 72) / 25.4, 1e-3);
    assertNear(proof!.height, (297 * 72) / 25.4, 1e-3);
  });

  it('has a proof at true size, on a sheet of letter size where the spec is in inches', async () => {
    const spec = specOf(['plate: {rectangle: [3, 2]}'], 'body: [plate]', ['units: in']);
    const file = await toPdf(await jobFrom(spec), tools);
    const { pages } = await readPdf(file);
    assertNear(pages[0]!.width, 612, 1e-9);
    assertNear(pages[0]!.height, 792, 1e-9);
    assert.match(pages[0]!.text, /3 in wide, 2 in high/);
    const face = (await outlinesInPdf(file, 1)).find(({ color }) => color === lookOf(undefined).wood);
    const { minX, maxX, minY, maxY } = boundsOf([face!.ring])!;
    assertNear(maxX - minX, 76.2, 0.01);
    assertNear(maxY - minY, 50.8, 0.01);
  });

  it('warns above what must not be cut, and not across it, however small it is', async () => {
    const spec = specOf(['body: {text: i, font: Nunito, height: 9}']);
    const file = await toPdf(await jobFrom(spec), tools);
    const [, page] = (await readPdf(file)).pages;
    const outlines = await outlinesInPdf(file, 2);
    const [warning, cuts] = [true, false].map((red) =>
      boundsOf(outlines.filter(({ color }) => (color === '#b00020') === red).map(({ ring }) => ring))!,
    );
    assert.match(page!.text, /DO NOT CUT.* fall/);
    assert.ok(warning!.minY > cuts!.maxY, `${warning!.minY} over ${cuts!.maxY}`);
    assert.ok(warning!.maxY < (page!.height * 25.4) / 72);
    assert.ok(warning!.maxX < (page!.width * 25.4) / 72);
  });

  it('takes titles in any script, and of any length', async () => {
    for (const title of ['Žluťásek 種 🌱', 'x '.repeat(99), '\\ud800']) {
      const job = await jobFrom(
        specOf(['plate: {rectangle: [30, 20]}'], 'body: [plate]', [`title: ${JSON.stringify(title)}`]),
      );
      assert.equal((await readPdf(await toPdf(job, tools))).pages.length, 2);
    }
  });
});

type Picture = ReturnType<typeof PNG.sync.read>;

describe('The proof picture', () => {
  const picture = async (text: string): Promise<Picture> =>
    PNG.sync.read(Buffer.from(await toPng(await jobFrom(text), tools)));

  /** Pixels that have exactly this colour. */
  function counted({ data }: Picture, hex: string): number {
    const [r, g, b] = [1, 3, 5].map((from) => parseInt(hex.slice(from, from + 2), 16));
    let count = 0;
    for (let i = 0; i < data.length; i += 4) if (data[i] === r && data[i + 1] === g && data[i + 2] === b) count++;
    return count;
  }

  /** ISO 216: A4 is 210 mm wide, of which 18 on either side are margin. */
  function pixelsPerMm(tag: Tag, width: number): number {
    return (proofPicture(tag, { width: 174, height: 120, most: 3 })!.scale * width) / 210;
  }

  it('is as wide as is asked for, read by pngjs', async () => {
    const spec = (head: string[]) => specOf(['plate: {rectangle: [60, 30]}'], 'body: [plate]', head);
    assert.equal((await picture(spec([]))).width, 1600);
    assert.equal((await picture(spec(['output: {picture_width: 640}']))).width, 640);
  });

  it('shows engraving as large as it is, with the grain of the preview about it', async () => {
    const { text } = samples.find(({ name }) => name.startsWith('5-'))!;
    const { report: made } = await make(text);
    const image = await picture(text);
    const { wood, burn, burnStrength, grain } = lookOf('walnut');
    const perMm = pixelsPerMm(made.tag!, image.width);
    const engraved = area(made.tag!.pieces[0]!.marks[0]!.region);
    assertNear(counted(image, blend(wood, burn, burnStrength)) / perMm ** 2, engraved, 0.05 * engraved);
    assert.ok(counted(image, wood) > 100_000);
    // The darkest line of the grain: 0.38 of its colour.
    assert.ok(counted(image, blend(wood, grain!, 0.38)) > 500);
  });

  it('for a listing is the tag alone on white, its longer side as long as is asked for', async () => {
    const head = ['stock: {material: walnut, thickness: 3}', 'output: {picture_width: 900}'];
    const high = specOf(['plate: {rectangle: [30, 60]}'], 'body: [plate]', head);
    const cover = async (text: string) => PNG.sync.read(Buffer.from(await toCover(await jobFrom(text), tools)));
    const image = await cover(high);
    assert.equal(image.height, 900);
    assert.ok(image.width < 600);
    // Only white, the shadow and the wood: whatever is within a margin of 3 % of the edges is white.
    const edge = 27;
    const { data, width, height } = image;
    for (let i = 0; i < data.length; i += 4) {
      const [x, y] = [(i / 4) % width, Math.floor(i / 4 / width)];
      const isInside = x > edge && x < width - edge && y > edge && y < height - edge;
      if (!isInside) assert.deepEqual([...data.subarray(i, i + 4)], [255, 255, 255, 255], `${x}, ${y}`);
    }
    // The face and its grain are three quarters of the picture: 30 × 60 of 38.4 × 68.4 mm (a margin of 7 % on each side).
    const isWhite = (i: number) => data[i] === 255 && data[i + 1] === 255 && data[i + 2] === 255;
    let dark = 0;
    for (let i = 0; i < data.length; i += 4) if (!isWhite(i)) dark++;
    assertNear(dark / (width * height), (30 * 60) / (38.4 * 68.4), 0.05);
    const wide = await cover(high.replace('[30, 60]', '[60, 30]'));
    assert.equal(wide.width, 900);
  });

  it('for a listing says that a tag with errors is a draft', async () => {
    const spec = (more: string) => specOf(['plate: {rectangle: [40, 30]}', more], 'body: [plate], cut: [dots]');
    const red = async (text: string) => {
      const image = PNG.sync.read(Buffer.from(await toCover(await jobFrom(text), tools)));
      return counted(image, '#B00020');
    };
    assert.equal(await red(spec('dots: {ellipse: 4}')), 0);
    assert.ok((await red(spec('dots: {difference: [{ellipse: 8}, {ellipse: 4}]}'))) > 200, 'the middle falls out');
  });

  it('leaves the hole open in a field that is engraved', async () => {
    const shapes = ['plate: {rectangle: [60, 30]}', 'field: {rectangle: [60, 30]}'];
    const hole = 'hole: {opening: 8, at: {left: 20}}';
    const image = await picture(
      specOf(shapes, `body: [plate], engrave: [field], hanger: {${hole}}`, [
        'stock: {material: walnut, thickness: 3, kerf: 0.1}',
      ]),
    );
    const { wood, burn, burnStrength } = lookOf('walnut');
    const engraved = counted(image, blend(wood, burn, burnStrength));
    // Exact: the plate less the hole, against the plate.
    const whole = counted(
      await picture(
        specOf(shapes, 'body: [plate], engrave: [field]', ['stock: {material: walnut, thickness: 3, kerf: 0.1}']),
      ),
      blend(wood, burn, burnStrength),
    );
    assertNear(engraved / whole, 1 - (Math.PI * 16) / 1800, 0.004);
  });

  // Layers are shown a second time, lifted off one another.
  const single = samples.filter((sample) => !sample.text.includes('glue_to'));
  for (const { name, text } of oneIn(2, single)) {
    it(`of ${name} covers as many pixels as the pieces and their cut edges have area, and reaches as far`, async () => {
      const job = { ...(await jobFrom(text)), issues: [] };
      const { width, data } = PNG.sync.read(Buffer.from(await toPng(job, tools)));
      // Wood and what is burnt into it are brown: their red is at least 30 more than their blue. Ink, table and shadow are grey.
      let covered = 0;
      let [left, right] = [width, 0];
      for (let i = 0; i < data.length; i += 4) {
        if (data[i]! - data[i + 2]! < 15) continue;
        covered++;
        const x = (i / 4) % width;
        [left, right] = [Math.min(left, x), Math.max(right, x)];
      }
      const perMm = pixelsPerMm(job.tag, width);
      // The cut edge: 0.17 of 3 mm below the face, in two steps.
      const face = union(job.tag.pieces.map(({ region }) => region));
      const seen = union([face, ...[0.255, 0.51].map((y) => transform(face, translation(0, -y)))]);
      const rim = 0.1 * perimeter(seen);
      assertNear(covered / perMm ** 2, area(seen) + rim / 2, 0.01 * area(seen) + rim / 2, 'area');
      const { minX, maxX } = boundsOf(seen)!;
      assertNear((right + 1 - left) / perMm, maxX - minX, 0.2 + 1 / perMm, 'width');
    });
  }

  it('has a red note for a tag with errors, and none for a sound one', async () => {
    const red = '#B00020';
    const weak = samples.find(({ name }) => name.startsWith('7-'))!.text;
    assert.ok(counted(await picture(weak), red) > 200);
    assert.equal(counted(await picture(samples[0]!.text), red), 0);
  });
});

it('Outlines of parts run counter-clockwise in DXF files, and openings clockwise', async () => {
  const spec = specOf(['plate: {rectangle: [60, 30]}', 'window: {ellipse: 8}'], 'body: [plate], cut: [window]');
  const { outlines } = readDxf(await toDxf(await jobFrom(spec)));
  assert.deepEqual(
    outlines.map(({ ring, layer }) => [layer, Math.sign(ringArea(ring))]),
    [
      ['cut-inner', -1],
      ['cut-outer', 1],
    ],
  );
});
