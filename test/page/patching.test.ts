import assert from 'node:assert/strict';
import { usePreview } from './use-preview.ts';
import { sceneMessage, source } from './scenes.ts';

describe('The preview’s page patches what it draws', () => {
  const preview = usePreview();

  it('and keeps every element of what is still there', async () => {
    await preview.open();
    const selector = '.piece, .part, .part path, .shape, .pin, #issues li, #pieces li, .part-name';
    const count = await preview.brand(selector);
    assert.ok(count > 30);
    await preview.send(sceneMessage(2, 95));
    assert.equal(await preview.branded(selector), count);
  });

  it('and changes only the lines that changed', async () => {
    await preview.open();
    await preview.page.evaluate(() => {
      const changed: (string | undefined)[] = [];
      Object.assign(window, { changed });
      new MutationObserver((records) => {
        for (const { target } of records)
          changed.push((target as Element).closest<SVGElement>('[data-id]')?.dataset['id']);
      }).observe(document.querySelector('#world')!, { subtree: true, attributeFilter: ['d'] });
    });
    await preview.send(sceneMessage(2, 95));
    const changed = await preview.page.evaluate(
      () => (window as unknown as { changed: (string | undefined)[] }).changed,
    );
    assert.deepEqual(new Set(changed.filter((id) => id !== undefined)), new Set(['back/body-0', 'back/outer']));
  });

  it('and removes what is gone', async () => {
    await preview.open();
    const message = sceneMessage(2);
    const scene = { ...message.scene!, pieces: message.scene!.pieces.slice(0, 1) };
    await preview.send({ ...message, scene, pins: [] });
    assert.equal(await preview.page.locator('.piece').count(), 1);
    assert.equal(await preview.page.locator('.pin').count(), 0);
    assert.equal(await preview.page.locator('#summary').getByText('No problems').isVisible(), true);
  });

  it('and ignores messages for another spec or of another shape', async () => {
    await preview.open();
    await preview.page.evaluate(() => {
      window.postMessage({ type: 'scene', source: 'file:///other.tag.yaml' }, '*');
      window.postMessage('draw', '*');
    });
    await preview.send({ type: 'highlight', source: 'file:///other.tag.yaml', ids: ['back/outer'], follow: false });
    await preview.send({ type: 'highlight', source, ids: ['name/outer'], follow: false });
    await preview.page.locator('.part[data-id="name/outer"].lit').waitFor({ state: 'attached' });
    assert.equal(await preview.page.locator('.lit').count(), 1);
  });

  it('and writes text from the spec as text', async () => {
    const message = sceneMessage();
    const hostile = '<img src=x onerror="window.caught = true"><b>bold</b>';
    const pieces = message.scene!.pieces.map((piece) => ({ ...piece, title: hostile }));
    const pins = message.pins.map((pin) => ({ ...pin, message: hostile }));
    await preview.open({}, { ...message, scene: { ...message.scene!, pieces, title: hostile }, pins });
    assert.equal(await preview.page.locator('img, b').count(), 0);
    assert.equal(await preview.page.locator('#issues .message').first().textContent(), hostile);
  });
});
