import assert from 'node:assert/strict';
import { ShownText } from '../../../../src/vscode/common/shown-text.ts';

describe('A change by hand', () => {
  it('waits until the text as it is by then is shown', async () => {
    const shown = new ShownText(5000);
    shown.set('pinned');
    let present = 'pinned';
    assert.equal(await shown.until(() => present), true);
    present = 'moved';
    let isOver = false;
    const waited = shown
      .until(() => present)
      .then((result) => {
        isOver = true;
        return result;
      });
    shown.set('pinned');
    await Promise.resolve();
    assert.equal(isOver, false, 'sheets of an earlier text');
    present = 'moved again';
    shown.set('moved');
    await Promise.resolve();
    assert.equal(isOver, false, 'the text has changed meanwhile');
    shown.set('moved again');
    assert.equal(await waited, true);
  });

  it('does not wait for ever', async () => {
    const shown = new ShownText(5);
    assert.equal(await shown.until(() => 'broken'), false);
    shown.set('broken');
    assert.equal(await shown.until(() => 'broken'), true);
  });
});
