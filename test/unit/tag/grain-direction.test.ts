import assert from 'node:assert/strict';
import { isGrainUpright } from '../../../src/tag/grain-direction.ts';
import { make, specOf } from '../support/engine.ts';

async function uprightOf(stick: string, stock = 'stock: {material: birch plywood}', body = 'body: [head, stick]') {
  const { report } = await make(specOf(['head: {ellipse: [40, 26]}', `stick: ${stick}`], body, [stock]));
  return isGrainUpright(report.tag!.pieces[0]!, report.tag!);
}

describe('The grain of a piece', () => {
  it('runs along its stick', async () => {
    assert.equal(await uprightOf('{stick: {carries: head, length: 60}}'), true);
    assert.equal(await uprightOf('{stick: {carries: head, length: 60, towards: left}}'), false);
    assert.equal(
      await uprightOf('{union: [head, {stick: {carries: head, length: 60}}], rotate: 90}', undefined, 'body: [stick]'),
      false,
    );
    assert.equal(await uprightOf('{circle: 20}'), false);
  });

  it('runs as the look of its stock says', async () => {
    const stick = '{stick: {carries: head, length: 60}}';
    assert.equal(await uprightOf(stick, 'stock: {material: birch plywood, look: {grain: left-right}}'), false);
    assert.equal(await uprightOf('{circle: 20}', 'stock: {material: birch plywood, look: {grain: up-down}}'), true);
  });
});
