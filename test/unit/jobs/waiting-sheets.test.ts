import assert from 'node:assert/strict';
import { transform } from '../../../src/geometry/affine.ts';
import type { JobPiece } from '../../../src/jobs/orders/job-piece.ts';
import { checkedJob, files, jobOf, laidOutJob } from '../support/jobs.ts';

describe('Sheets of a job that wait for their files', () => {
  it('hold no outline of a piece and no path of the beam, and give the same ones whenever they are asked', async () => {
    const { layout } = await laidOutJob(
      jobOf(['{spec: plate.tag.yaml, quantity: 7}'], ['ply3: [{size: [200 mm, 100 mm]}]']),
    );
    assert.equal(layout.sheets.length, 2);
    for (const { pieces, plan } of layout.sheets) {
      for (const piece of pieces) {
        assert.deepEqual(piece.region, transform(piece.of.piece.region, piece.toSheet));
        assert.notEqual(piece.region, piece.region);
        assert.notEqual(piece.enclosed, piece.enclosed);
      }
      const paths = plan.steps.flatMap((step) => step.paths);
      assert.equal(paths.length, pieces.length);
      for (const path of paths) {
        assert.deepEqual(path.contours, path.contours);
        assert.notEqual(path.contours, path.contours);
      }
    }
  });

  it('are of pieces that hold none either, of which the copies have the same one as long as no other is asked for', async () => {
    const specs = ['{spec: plate.tag.yaml, quantity: 2}', '{spec: named.tag.yaml, orders: orders.csv}'];
    const beside = { ...files, 'orders.csv': 'name\nRue\n' };
    const { pieces } = await checkedJob(jobOf(specs, ['ply3: [{size: [200 mm, 100 mm]}]']), beside);
    const [one, copy, other] = pieces!.stocks[0]!.pieces as [JobPiece, JobPiece, JobPiece];
    assert.equal(Object.getOwnPropertyDescriptor(one, 'region')!.value, undefined, 'it is made for the asking');
    const region = one.region;
    assert.equal(copy.region, region);
    assert.notDeepEqual(other.region, region);
    assert.notEqual(one.region, region);
    assert.deepEqual(one.region, region);
  });
});
