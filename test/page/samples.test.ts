/** The page of the list of samples in a browser without an editor, under its real policy. */

import assert from 'node:assert/strict';
import type { Page } from 'playwright-core';
import { samplesHtml } from '../../src/vscode/samples/samples-html.ts';
import type { FromSamplesPage, ToSamplesPage } from '../../src/protocol/samples.ts';
import { bundledPage, delivered, openHosted } from './hosted-page.ts';
import type { Theme } from './themes.ts';

const origin = 'http://samples.invalid';

const cards = [
  { fileName: '1.tag.yaml', title: 'Jar initial', purpose: 'One heavy letter' },
  { fileName: '2.tag.yaml', title: '<img src=x onerror=alert(1)>', purpose: '<b>joined</b> script' },
  { fileName: '3.tag.yaml', title: 'Bed marker', purpose: 'An arrow that points along the bed' },
];

describe('The list of samples', () => {
  let page: Page;
  let errors: readonly string[];

  afterEach(() => page.close());

  async function open(theme: Theme = 'light', state?: unknown): Promise<void> {
    const sources = { cspSource: origin, scriptUri: `${origin}/samples.js`, styleUri: `${origin}/samples.css` };
    const files = await bundledPage('webview/samples/samples.ts', 'webview/samples/samples.css');
    const content = { origin, shell: samplesHtml(sources), files };
    ({ page, errors } = await openHosted(content, { theme, width: 280, height: 600, state }));
    assert.deepEqual(await messages(), [{ type: 'ready' }]);
    await send({ type: 'samples', samples: cards });
  }

  const messages = (): Promise<FromSamplesPage[]> => page.evaluate(() => window.recorded.messages as FromSamplesPage[]);

  const send = (message: ToSamplesPage): Promise<void> => delivered(page, message);

  it('shows each with its title and line, as text whatever they are, under its policy', async () => {
    await open();
    assert.deepEqual(
      await page.locator('.title').allTextContents(),
      cards.map(({ title }) => title),
    );
    assert.deepEqual(
      await page.locator('.purpose').allTextContents(),
      cards.map(({ purpose }) => purpose),
    );
    assert.equal(await page.locator('main img, main b').count(), 0);
    assert.deepEqual(errors, []);
  });

  it('draws the pictures as they come', async () => {
    await open();
    const paths = [
      { use: 'material', data: 'M2 2L70 2L70 40L2 40Z' },
      { use: 'engrave', data: 'M10 10L20 10L20 20L10 20Z' },
    ] as const;
    const look = { face: '#8A6444', edge: '#4A2F1B', engraved: '#3E2716' };
    const size = { width: 100, height: 42 };
    await send({ type: 'picture', fileName: '3.tag.yaml', picture: { size, paths, look } });
    await page.locator('li').nth(2).locator('path.engrave').waitFor();
    const width = await page
      .locator('li')
      .nth(2)
      .locator('path.material')
      .evaluate((path) => {
        const { width: own } = (path as SVGPathElement).getBBox();
        return own * (path as SVGPathElement).getScreenCTM()!.a;
      });
    // As wide as its frame, which has 100 px.
    assert.ok(Math.abs(width - 68) < 0.5, String(width));
    assert.equal(await page.locator('li').nth(0).locator('.picture path').count(), 0);
    const fills = await page
      .locator('li .picture path')
      .evaluateAll((all) => all.map((path) => getComputedStyle(path).fill));
    assert.deepEqual(fills, ['rgb(138, 100, 68)', 'rgb(62, 39, 22)'], 'in the colours of its stock');
  });

  it('is sifted by words in any order, says when nothing is left, and keeps that while it is hidden', async () => {
    await open();
    await page.locator('#filter').fill('bed Arrow');
    assert.deepEqual(await page.locator('li:visible .title').allTextContents(), ['Bed marker']);
    await page.locator('#filter').fill('nothing like it');
    assert.equal(await page.locator('li:visible').count(), 0);
    assert.ok(await page.locator('#none').isVisible());
    const state = await page.evaluate(() => window.recorded.state);
    await page.close();
    await open('light', state);
    assert.equal(await page.locator('#filter').inputValue(), 'nothing like it');
    assert.equal(await page.locator('li:visible').count(), 0);
  });

  it('opens and inserts by mouse and by keyboard', async () => {
    await open();
    await page.locator('.open').nth(0).click();
    await page.locator('#filter').focus();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    const insert = page.locator('.insert').nth(0);
    assert.ok(await insert.evaluate((button) => button === document.activeElement));
    await page.keyboard.press('Enter');
    assert.deepEqual((await messages()).slice(1), [
      { type: 'open', fileName: '1.tag.yaml' },
      { type: 'insert', fileName: '1.tag.yaml' },
    ]);
  });

  it('covers no words when something is pointed at, and cuts none off', async () => {
    await open();
    for (let nth = 0; nth < cards.length; nth++) {
      const item = page.locator('li').nth(nth);
      const before = await item.locator('.text').boundingBox();
      await item.hover();
      assert.deepEqual(await item.locator('.text').boundingBox(), before);
      const button = (await item.locator('.insert').boundingBox())!;
      assert.ok(button.x >= before!.x + before!.width, 'beside the words');
      assert.ok(button.width >= 24 && button.height >= 24, 'WCAG 2.2, 2.5.8');
      const cut = await item
        .locator('.text > span')
        .evaluateAll(
          (lines) => lines.filter((line) => line.scrollWidth > line.clientWidth && line.clientWidth > 0).length,
        );
      assert.equal(cut, 0);
      assert.equal(await item.locator('.open').getAttribute('title'), null, 'what is said in full needs no tooltip');
    }
  });

  for (const theme of ['light', 'dark', 'high-contrast', 'high-contrast-light'] as const) {
    it(`can be read in the ${theme} theme, with nothing cut off and every button named`, async () => {
      await open(theme);
      const shown = await page.locator('button').evaluateAll((buttons) =>
        buttons.map((button) => ({
          name: button.getAttribute('aria-label') ?? button.textContent,
          right: button.getBoundingClientRect().right,
        })),
      );
      assert.ok(shown.every(({ name, right }) => name.trim() !== '' && right <= 280));
      assert.deepEqual(errors, []);
    });
  }
});
