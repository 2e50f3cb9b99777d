import assert from 'node:assert/strict';
import { svgPathProperties } from 'svg-path-properties';
import { outcomeOf } from '../../../src/scene/outcome.ts';
import { report } from '../support/engine.ts';

describe('What a fix would make, as it is sent to the page', () => {
  it('is all that is cut as one path, what is drawn as another, and the box round it', async () => {
    const { tag } = await report(`tagwright: 1
shapes:
  plate: {rectangle: [40, 20]}
  window: {rectangle: [6, 4]}
  line: {rectangle: [10, 2], nudge: {up: 6}}
pieces:
  back: {body: [plate], cut: [window], engrave: [line]}
  top: {title: On top, body: [line], glue_to: back}
`);
    const [back, top] = outcomeOf(tag!);
    assert.deepEqual(
      [back!.id, back!.glueTo, top!.id, top!.title, top!.glueTo],
      ['back', undefined, 'top', 'On top', 'back'],
    );
    assert.deepEqual(back!.bounds, [-20, -10, 20, 10]);
    // Its length by svg-path-properties: the outline of the plate and of its window; then that of the line.
    const length = (data: string): number => new svgPathProperties(data).getTotalLength();
    assert.ok(Math.abs(length(back!.solid) - (120 + 20)) < 1e-6, back!.solid);
    assert.ok(Math.abs(length(back!.marks) - 24) < 1e-6, back!.marks);
    assert.equal(top!.marks, '');
  });
});
