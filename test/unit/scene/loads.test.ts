import assert from 'node:assert/strict';
import { loadsOf } from '../../../src/scene/loads.ts';
import { make, specOf } from '../support/engine.ts';

describe('What the page is told of loads', () => {
  const shapes = ['plate: {rectangle: [60, 30]}', 'badge: {ellipse: 20}'];

  it('is an estimate with its caution for each piece that hangs', async () => {
    const stock = 'stock: {material: walnut, thickness: 3 mm}';
    const { report } = await make(specOf(shapes, 'body: [plate], hanger: {hole: {at: top}}', [stock]));
    const [load, ...others] = loadsOf(report.tag!);
    assert.deepEqual(others, []);
    assert.equal(load!.piece, 'tag');
    assert.match(load!.headline, /about \d/);
    assert.match(load!.caution, /estimate/i);
    assert.ok(load!.lines.length > 0);
  });

  it('is that it is unknown where nothing is published', async () => {
    const stock = 'stock: {material: bamboo, thickness: 3 mm}';
    const { report } = await make(specOf(shapes, 'body: [plate], hanger: {hole: {at: top}}', [stock]));
    assert.match(loadsOf(report.tag!)[0]!.headline, /unknown/i);
  });

  it('is nothing for a piece without a hanger', async () => {
    const { report } = await make(specOf(shapes, 'body: [plate]'));
    assert.deepEqual(loadsOf(report.tag!), []);
  });
});
