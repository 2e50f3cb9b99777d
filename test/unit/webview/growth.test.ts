import assert from 'node:assert/strict';
import { ahead, growthOf, ontoBox } from '../../../webview/preview/drag/growth.ts';

describe('A shape whose size is changed by hand', () => {
  it('grows about its middle, until it is seen to grow otherwise', () => {
    const before = [10, 0, 50, 20] as const;
    assert.deepEqual(ahead('width', before, before, 4), [8, 0, 52, 20]);
    assert.deepEqual(ahead('height', before, before, -4), [10, 2, 50, 18]);
    // Against a side, and in proportion: by 10 mm to the right it has become 5 mm taller, downwards.
    const now = [10, 0, 60, 25] as const;
    assert.deepEqual(growthOf('width', before, now), [0, 0, 1, 0.5]);
    assert.deepEqual(ahead('width', before, now, 2), [10, 0, 62, 26]);
  });

  it('is not turned inside out', () => {
    const [left, , right] = ahead('width', [0, 0, 10, 10], [0, 0, 10, 10], -30);
    assert.ok(left < right);
  });

  it('is drawn where it will be', () => {
    assert.equal(ontoBox([10, 0, 50, 20], [8, 0, 52, 20]), 'matrix(1.1 0 0 1 -3 0)');
    assert.equal(ontoBox([3, 4, 3, 9], [3, 4, 3, 9]), 'matrix(0 0 0 1 3 0)');
  });
});
