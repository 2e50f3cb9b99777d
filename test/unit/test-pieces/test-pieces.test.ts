import assert from 'node:assert/strict';
import { contains, ringArea } from '../../../src/geometry/measure.ts';
import { jobOf } from '../../../src/export/job/job.ts';
import { toDxf } from '../../../src/export/dxf.ts';
import { toSvg } from '../../../src/export/svg.ts';
import { accepted } from '../../../src/test-pieces/accepted.ts';
import { engravingField, fieldCells, fieldValues, usualFor } from '../../../src/test-pieces/engraving-field.ts';
import { spacingsMm, xHeightsMm } from '../../../src/test-pieces/engraving-ladder.ts';
import { holesMm } from '../../../src/test-pieces/hole-comb.ts';
import { headOfSpec, headOfUsed } from '../../../src/test-pieces/stock-head.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { isTestPiece, testPieceNames, testPieces } from '../../../src/test-pieces/all.ts';
import type { TestPieceName } from '../../../src/test-pieces/all.ts';
import { neckWidthsMm } from '../../../src/test-pieces/web-comb.ts';
import { assertNear, make, newEngine } from '../support/engine.ts';
import { Eroded } from '../support/eroded.ts';
import { readDxf } from '../support/file-readers.ts';
import { differenceAreaByJts } from '../support/reference.ts';

const stocks = [
  'stock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}',
  'stock: {material: walnut, thickness: 4 mm, kerf: 0.2 mm}',
  'stock: {material: card, thickness: 0.6 mm}',
  'stock: {material: cork, thickness: 3 mm}',
];
const fonts = ['Pacifico', 'Great Vibes', 'Nunito', 'Alfa Slab One'];

const specFor = (name: TestPieceName, stock = stocks[0]!, font = 'Nunito'): string =>
  testPieces[name].spec({ head: [stock], name: 'ply3', font });

const made = (name: TestPieceName, stock?: string, font?: string) => make(specFor(name, stock, font));

describe('Test pieces', () => {
  it('go on a scrap of 150 × 100 mm, in one part, whatever the stock and the font', async () => {
    for (const name of testPieceNames) {
      for (const [i, stock] of stocks.entries()) {
        // Lettering is what differs with the font, and takes its time.
        if (name !== 'ladder' && i % 3 > 0) continue;
        const { width, height, region, issues } = await made(name, stock, fonts[i]);
        assert.ok(width <= 141 && height <= 93, `${name}: ${width} × ${height}`);
        assert.equal(region.filter((ring) => ringArea(ring) > 0).length, 1, name);
        assert.deepEqual(
          issues.filter(({ severity, code }) => severity === 'error' || code === 'marks-overlap'),
          [],
          `${name} on ${stock}`,
        );
      }
    }
    assert.ok(isTestPiece('web') && !isTestPiece('toString'));
  }).timeout(180_000);

  it('have every figure and word in material, by jsts, and clear of every cut', async () => {
    for (const name of testPieceNames) {
      const { pieces, region } = await made(name, stocks[0], 'Pacifico');
      for (const { region: mark, path } of pieces[0]!.marks)
        for (const outline of mark.filter((ring) => ringArea(ring) > 0)) {
          assert.ok(differenceAreaByJts([outline], region) < 1e-6, `${name}: ${path.join('.')} runs off`);
          const gap = Math.min(...region.map((ring) => clearance(outline, ring)));
          assert.ok(gap > 0.6, `${name}: ${path.join('.')} is ${gap} mm from a cut`);
        }
    }
  }).timeout(180_000);

  it('say on themselves what they are and on which stock, in letters that any beam draws', () => {
    for (const name of testPieceNames) {
      const spec = specFor(name);
      assert.match(spec, new RegExp(`text: "${testPieces[name].title.toLowerCase()}, ply3`));
      for (const [, height] of spec.matchAll(/(?<!x_)height: ([\d.]+) mm, place/g))
        assert.ok(Number(height) >= 2.4, height);
    }
  });

  it('are quiet once what is weak on purpose is accepted', async () => {
    const engine = newEngine();
    const options = { locate: () => undefined };
    for (const name of ['web', 'ladder'] as const)
      for (const stock of [stocks[0]!, stocks[3]!]) {
        const text = await accepted(engine, specFor(name, stock, 'Great Vibes'), options);
        const report = await engine.compute(text, options);
        assert.deepEqual(
          report.issues.map(({ message }) => message),
          [],
          `${name} on ${stock}`,
        );
        assert.ok(name === 'ladder' || report.accepted.length > 0);
      }
  }).timeout(180_000);
});

type XY = { readonly x: number; readonly y: number };

/** From the points of one outline to the edges of another. */
function clearance(outline: readonly XY[], ring: readonly XY[]): number {
  let least = Infinity;
  for (const { x, y } of outline)
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length]!;
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const t = Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy || 1)));
      least = Math.min(least, Math.hypot(x - a.x - t * dx, y - a.y - t * dy));
    }
  return least;
}

describe('The stock of a test piece', () => {
  const head = (text: string) => headOfSpec(new SpecSource(text), [], (file) => file);

  it('is copied as the spec writes it, in a block too, and named by its material', () => {
    assert.deepEqual(head('tagwright: 1\nstock: {material: walnut, kerf: 0.2 mm}\n'), {
      head: ['stock: {material: walnut, kerf: 0.2 mm}'],
      name: 'walnut',
    });
    const block =
      'tagwright: 1\nunits: in\nstock:\n    material: cherry   # third shelf\n    kerf:\n      outer: 0.01\ntie: {twine: 0.1}\n';
    const { head: lines } = head(block);
    const read = new SpecSource(lines.join('\n')).value;
    assert.deepEqual(read, { units: 'in', stock: { material: 'cherry', kerf: { outer: 0.01 } } });
  });

  it('has a name that goes on every piece, however long or strange it is', async () => {
    const names = ['MMMMMMMMMMMMMMMMMMMMMMMM', '椴木', '"}: <b>&', '{name}'].map(
      (material) => head(`tagwright: 1\nstock: {material: ${JSON.stringify(material)}}\n`).name,
    );
    assert.deepEqual(names.slice(1), ['stock', 'b', 'name']);
    for (const name of testPieceNames) {
      const { issues } = await make(testPieces[name].spec({ head: [], name: names[0]!, font: 'Nunito' }));
      const faults = issues.filter(({ code }) => !['thin-stroke', 'hard-to-read', 'fine-mark'].includes(code));
      assert.deepEqual(faults, [], name);
    }
    assert.deepEqual(headOfUsed('../a b.workshop.yaml', 'ply3').head, ['use: "../a b.workshop.yaml"', 'stock: ply3']);
  }).timeout(180_000);
});

describe('The web comb', () => {
  it('has ten necks as wide as their figures: a disc passes just below, by Clipper2, and not just above', async () => {
    const { region } = await made('web');
    assert.equal(neckWidthsMm.length, 10);
    for (const [i, width] of neckWidthsMm.entries()) {
      // Each disc a little larger parts one more tongue from the plate.
      assert.equal(new Eroded(region, width - 0.02).parts.length, i + 1, `just below ${width}`);
      assert.equal(new Eroded(region, width + 0.02).parts.length, i + 2, `just above ${width}`);
    }
  });

  it('has the figure of each neck under it', async () => {
    const { report, pieces } = await made('web');
    const middles = [...report.tag!.made].flatMap(([shape, { region }]) =>
      /^(neck|figure)\d/.test(shape.name ?? '') ? [[shape.name!, middleOf(region)] as const] : [],
    );
    const at = new Map(middles);
    for (const i of neckWidthsMm.keys()) assertNear(at.get(`figure${i + 1}`)!.x, at.get(`neck${i + 1}`)!.x, 0.01);
    assert.equal(pieces[0]!.marks.length, 11);
  });
});

describe('The hole comb', () => {
  it('has a hole of each diameter, by the area of its outline', async () => {
    const { region } = await made('holes');
    const found = region.filter((ring) => ringArea(ring) < 0).map((ring) => Math.sqrt((4 * -ringArea(ring)) / Math.PI));
    found.sort((a, b) => a - b);
    assert.equal(found.length, holesMm.length);
    for (const [i, hole] of holesMm.entries()) assertNear(found[i]!, hole, 0.01);
  });
});

describe('The engraving ladder', () => {
  it('has lines whose letters are as high as their figures, and patches on layers of their own', async () => {
    const { report, pieces } = await made('ladder');
    for (const [i, height] of xHeightsMm.entries()) {
      const solid = [...report.tag!.made].find(([shape]) => shape.name === `line${i + 1}`)![1];
      const n = solid.lettering![0]!.letters.find(({ text }) => text === 'n')!;
      const ys = n.region.flat().map(({ y }) => y);
      // Nunito's n overshoots its x-height a little, as round letters do.
      assertNear((Math.max(...ys) - Math.min(...ys)) / height, 1.02, 0.03, `x-height ${height}`);
    }
    const names = pieces[0]!.marks.map(({ shape }) => shape.name);
    assert.deepEqual(names.slice(0, 2), ['legend', 'lines']);
    assert.equal(names.length, 2 + spacingsMm.length);
  });
});

describe('The engraving field', () => {
  it('is of the powers and speeds that are asked for, and has numbers only where they are known elsewhere', () => {
    const values = (what: 'powers' | 'speeds', typed: string) => {
      const result = fieldValues(what, typed);
      assert.ok('values' in result, typed);
      return result.values;
    };
    const field = { powers: values('powers', '5, 15,25 %'), speeds: values('speeds', '80 120 mm/s') };
    assert.deepEqual(field, { powers: ['5 %', '15 %', '25 %'], speeds: ['80 mm/s', '120 mm/s'] });
    const text = engravingField({ head: [], name: 'ply3', font: 'Nunito', field });
    assert.equal(text.match(/^ {2}cell-\d+:/gm)!.length, 6);
    assert.match(text, /power3: \{text: "25"/);
    assert.match(text, /speed2: \{text: "120"/);
    assert.doesNotMatch(text, /number1:/);
    const usual = { powers: values('powers', usualFor('powers')), speeds: values('speeds', usualFor('speeds')) };
    const plain = engravingField({ head: [], name: 'ply3', font: 'Nunito' });
    assert.equal(engravingField({ head: [], name: 'ply3', font: 'Nunito', field: usual }), plain);
    assert.match(plain, /number25:/);
    for (const typed of ['', '10', '10, 10', '10, 101', '0, 10', '1, 2, 3, 4, 5, 6', 'a, b'])
      assert.ok('problem' in fieldValues('powers', typed), typed);
  });

  it('has a layer for each square, in a colour of its own, in SVG and DXF, and its number beside it', async () => {
    const { report } = await made('field');
    const job = jobOf(report)!;
    const svg = toSvg(job);
    const groups = [...svg.matchAll(/<g id="(engrave[^"]*)" fill="(#[0-9A-F]{6})"[^>]*>\s*<title>([^<]*)</g)];
    assert.equal(groups.length, 26);
    assert.deepEqual(
      groups.map(([, , , title]) => title),
      ['legend', ...fieldCells().map(({ number }) => `cell-${number}`)],
    );
    assert.equal(new Set(groups.map(([, , colour]) => colour)).size, 26);
    assert.equal(new Set(groups.map(([, id]) => id)).size, 26);
    const layers = new Set(Object.keys(readDxf(await toDxf(job)).layers));
    for (const { number } of fieldCells()) assert.ok(layers.has(`cell-${number}`), String(number));
    const middles = new Map([...report.tag!.made].map(([shape, { region }]) => [shape.name, middleOf(region)]));
    for (const { number } of fieldCells()) {
      assertNear(middles.get(`number${number}`)!.y, middles.get(`cell-${number}`)!.y, 0.01);
      assert.ok(middles.get(`number${number}`)!.x < middles.get(`cell-${number}`)!.x);
    }
  });
});

describe('The kerf test', () => {
  it('is cut on the line, so that its slots come out a kerf wider than drawn', async () => {
    const { region } = await made('kerf');
    const widths = region.filter((ring) => ringArea(ring) < 0).map((ring) => width(ring));
    for (const [i, drawn] of [10, 20, 30].entries()) assertNear(widths.sort((a, b) => a - b)[i]!, drawn + 0.16, 0.001);
    assert.ok(contains(region, { x: 0, y: -11 }));
  });
});

function width(ring: readonly { readonly x: number }[]): number {
  const xs = ring.map(({ x }) => x);
  return Math.max(...xs) - Math.min(...xs);
}

function middleOf(region: readonly (readonly { readonly x: number; readonly y: number }[])[]): {
  x: number;
  y: number;
} {
  const points = region.flat();
  const middle = (values: number[]) => (Math.max(...values) + Math.min(...values)) / 2;
  return { x: middle(points.map(({ x }) => x)), y: middle(points.map(({ y }) => y)) };
}
