import assert from 'node:assert/strict';
import { kerfEdits, kerfFrom } from '../../../src/edits/kerf.ts';
import { boundsOf, ringArea } from '../../../src/geometry/measure.ts';
import { planCuts } from '../../../src/toolpath/cut-plan.ts';
import { contourBounds } from '../../../src/geometry/contour.ts';
import { parseSpec } from '../../../src/spec/parse.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { assertNear, make } from '../support/engine.ts';
import { samples } from '../support/samples.ts';

function kerfOf(slots: string, pieces: string, units: 'mm' | 'in' = 'mm'): number {
  const result = kerfFrom(slots, pieces, units);
  assert.ok('mm' in result, JSON.stringify(result));
  return result.mm;
}

function written(text: string, mm = 0.16, units: 'mm' | 'in' = 'mm'): string | undefined {
  const source = new SpecSource(text);
  const edits = kerfEdits(source, mm, units);
  return edits
    ?.toSorted((a, b) => b.range.start - a.range.start)
    .reduce((now, { range, text: put }) => now.slice(0, range.start) + put + now.slice(range.end), text);
}

describe('The kerf from a test', () => {
  it('is half of how much wider slots are than what fell out of them', () => {
    // Exact: a beam of k on the line leaves slots of d + k and pieces of d − k.
    assertNear(kerfOf('10.16', '9.84'), 0.16, 1e-12);
    assertNear(kerfOf('10.16, 20.14, 30.18', '9.84, 19.86, 29.82'), 0.16, 1e-12);
    assertNear(kerfOf('10.16; 20.14', '9.84; 19.86'), 0.15, 1e-12);
    assertNear(kerfOf('0.4 in, 0.8 in', '0.39 in, 0.79 in'), 0.127, 1e-12);
    assertNear(kerfOf('0.4 0.8', '0.39 0.79', 'in'), 0.127, 1e-12);
  });

  it('is doubtful where the measurements do not agree', () => {
    const result = kerfFrom('10.1, 20.5', '9.9, 19.5', 'mm');
    assert.ok('doubtful' in result && result.doubtful);
    assertNear(result.spreadMm, 0.4, 1e-12);
    const good = kerfFrom('10.16, 20.14', '9.84, 19.86', 'mm');
    assert.ok('doubtful' in good && !good.doubtful);
  });

  it('says what is wrong with the measurements', () => {
    for (const [slots, pieces, problem] of [
      ['wide', '9.84', /Write widths/],
      ['', '', /Write widths/],
      ['10.16, 20.1', '9.84', /As many/],
      ['9.84', '10.16', /Slot 1 should be/],
      ['10, 25', '9.8, 19', /Slot 2 should be/],
    ] as const) {
      const result = kerfFrom(slots, pieces, 'mm');
      assert.ok('problem' in result, slots);
      assert.match(result.problem, problem);
    }
  });

  it('comes out of the sample as it went in: what is left of its plate, and what the beam leaves of the slots', async () => {
    const { text } = samples.find(({ name }) => name.startsWith('kerf-test'))!;
    const kerf = 0.19;
    const { report, pieces } = await make(text.replace('thickness: 3 mm', `thickness: 3 mm, kerf: ${kerf} mm`));
    const widths = pieces[0]!.region
      .filter((ring) => ringArea(ring) < 0)
      .map((ring) => boundsOf([ring])!)
      .map(({ minX, maxX }) => maxX - minX)
      .sort((a, b) => a - b);
    const inner = planCuts(report.tag!)!.steps.find(({ operation }) => operation === 'cut-inner')!;
    // What falls out is what the cut goes round, less half a kerf on each side.
    const fallen = inner.paths
      .map(({ contours }) => contourBounds(contours)!)
      .map(({ minX, maxX }) => maxX - minX - kerf)
      .sort((a, b) => a - b);
    assert.equal(widths.length, 3);
    assertNear(kerfOf(widths.join(', '), fallen.join(', ')), kerf, 0.002);
  });
});

describe('Writing a kerf', () => {
  it('puts it where the stock is, and leaves the rest as it is', () => {
    const spec = (stock: string) =>
      `tagwright: 1 # a tag\n${stock}shapes: {a: {ellipse: 9}}\npieces: {t: {body: [a]}}\n`;
    assert.equal(
      written(spec('stock: {material: oak, kerf: 0.1} # mine\n')),
      spec('stock: {material: oak, kerf: 0.16 mm} # mine\n'),
    );
    assert.equal(written(spec('stock: {material: oak}\n')), spec('stock: {material: oak, kerf: 0.16 mm}\n'));
    assert.equal(
      written(spec('stock:\n  material: oak # hard\n')),
      spec('stock:\n  material: oak # hard\n  kerf: 0.16 mm\n'),
    );
    assert.equal(
      written(spec('stock: {kerf: {outer: 0.1, inner: 0.2, engrave: 0.3}}\n')),
      spec('stock: {kerf: {outer: 0.16 mm, inner: 0.16 mm, engrave: 0.3}}\n'),
    );
    const named = 'stocks: {ply: {thickness: 3}, oak: {thickness: 5}}\nstock: ply\n';
    assert.equal(written(spec(named)), spec(named.replace('thickness: 3', 'thickness: 3, kerf: 0.16 mm')));
    assert.match(written(spec(''))!, /^stock: \{kerf: 0\.16 mm\}$/m);
    assert.equal(parseSpec(written(spec(''))!).model?.stock.kerf, 0.16);
    assert.match(written(spec('units: in\nstock: {material: oak}\n'), 0.16, 'in')!, /kerf: 0\.0063 in/);
  });

  it('does not write into other files', () => {
    assert.equal(
      written('tagwright: 1\nuse: house.yaml\nstock: ply\npieces: {t: {body: [{ellipse: 9}]}}\n'),
      undefined,
    );
  });
});
