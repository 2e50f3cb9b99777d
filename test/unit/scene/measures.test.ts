import assert from 'node:assert/strict';
import { cutPathsOf, wallsOf } from '../../../src/scene/measures.ts';
import { make, specOf } from '../support/engine.ts';
import { outlinesOf } from '../support/svg-reader.ts';

/** Width of the box round path data, as svgpath reads it. */
function widthOf(data: string): number {
  const xs = outlinesOf(data).flatMap(({ ring }) => ring.map(({ x }) => x));
  return Math.max(...xs) - Math.min(...xs);
}

describe('What the page is told of a drawing when there is time', () => {
  const shapes = ['plate: {rectangle: [60 mm, 30 mm]}', 'window: {rectangle: [20 mm, 10 mm]}'];
  const piece = 'body: [plate], cut: [window]';

  it('is the path of the beam: a kerf wider than the plate, a kerf narrower than its opening', async () => {
    const { report } = await make(specOf(shapes, piece, ['stock: {kerf: 0.2 mm}']));
    const [outer, inner, ...others] = cutPathsOf(report.tag!);
    assert.deepEqual(others, []);
    assert.ok(Math.abs(widthOf(outer!.data) - 60.2) < 0.002, outer!.data);
    assert.ok(Math.abs(widthOf(inner!.data) - 19.8) < 0.002, inner!.data);
    assert.deepEqual([outer!.kerf, inner!.kerf], [0.2, 0.2]);
  });

  it('is the thinnest wall of each piece that has one, y down: (30 − 10) / 2 = 10 mm', async () => {
    const { report } = await make(specOf(shapes, piece));
    const [wall, ...others] = wallsOf(report.tag!, []);
    assert.deepEqual(others, []);
    assert.ok(Math.abs(wall!.width - 10) < 0.01, `${wall!.width}`);
    const plain = await make(specOf(shapes, 'body: [plate]'));
    assert.deepEqual(wallsOf(plain.report.tag!, []), []);
  });

  it('is not told of a piece whose thin places are pinned with their widths', async () => {
    const { report } = await make(specOf(shapes, piece, ['stock: {min_web: 11 mm}']));
    assert.ok(report.issues.some(({ width }) => width !== undefined));
    assert.deepEqual(wallsOf(report.tag!, report.issues), []);
  });
});
