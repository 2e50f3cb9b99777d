import assert from 'node:assert/strict';
import { smoothedLine } from '../../../src/geometry/smooth.ts';
import { assertNear } from '../support/engine.ts';

describe('A smoothed line', () => {
  it('has lost ripples as short as two of its steps, and keeps its ends', () => {
    const rippled = Array.from({ length: 41 }, (_, k) => ({ x: 0.15 * k, y: k % 2 === 0 ? 0 : 0.04 }));
    const smooth = smoothedLine(rippled);
    assert.deepEqual([smooth[0], smooth.at(-1)], [rippled[0], rippled.at(-1)]);
    for (const { y } of smooth.slice(8, -8)) assertNear(y, 0.02, 1e-4);
  });

  it('sinks by the sagitta of a step, halved, in each pass: s²/4r on an arc', () => {
    const [radius, step] = [2, 0.15];
    const arc = Array.from({ length: 61 }, (_, k) => ({
      x: radius * Math.cos((k * step) / radius),
      y: radius * Math.sin((k * step) / radius),
    }));
    const { x, y } = smoothedLine(arc, 6)[30]!;
    assertNear(radius - Math.hypot(x, y), (6 * step ** 2) / (4 * radius), 2e-4);
  });
});
