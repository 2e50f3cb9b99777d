import assert from 'node:assert/strict';
import fc from 'fast-check';
import { cardPlace } from '../../../webview/preview/problems/card-place.ts';
import { overlap } from '../../../webview/preview/measure/edge-grid.ts';
import type { Box } from '../../../webview/common/camera/viewport.ts';

const window = { width: 900, height: 700 };
const card = { width: 300, height: 200 };

describe('The card of a problem', () => {
  it('opens below its pin, or above it where there is no room below', () => {
    assert.deepEqual(cardPlace([400, 300, 470, 318], card, window, undefined), [400, 322]);
    assert.deepEqual(cardPlace([400, 600, 470, 618], card, window, undefined), [400, 396]);
  });

  it('keeps off the tag, if that is near', () => {
    const tag: Box = [100, 330, 800, 560];
    const [x, y] = cardPlace([400, 300, 470, 318], card, window, tag);
    assert.ok(!overlap([x, y, x + card.width, y + card.height], tag), `${x} ${y}`);
    const whole = cardPlace([400, 300, 470, 318], card, window, [0, 0, 900, 700]);
    assert.deepEqual(whole, [400, 322], 'where all is tag, it stays near');
  });

  it('is within the window and not on its pin, wherever that is', () => {
    const pin = fc.tuple(fc.integer({ min: 0, max: 830 }), fc.integer({ min: 0, max: 682 }));
    fc.assert(
      fc.property(pin, ([left, top]) => {
        const anchor: Box = [left, top, left + 70, top + 18];
        const [x, y] = cardPlace(anchor, card, window, [200, 200, 700, 500]);
        assert.ok(x >= 0 && y >= 0 && x + card.width <= 900 && y + card.height <= 700);
        assert.ok(!overlap([x, y, x + card.width, y + card.height], anchor));
      }),
    );
  });
});
