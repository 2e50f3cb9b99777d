import assert from 'node:assert/strict';
import { usePreview } from './use-preview.ts';
import type { SceneMessage } from '../../src/protocol/preview.ts';
import { sceneMessage, source } from './scenes.ts';

const withoutScene = (): SceneMessage => {
  const { scene, ...rest } = sceneMessage();
  assert.ok(scene);
  return rest;
};

/** All that is below the drawing. */
const opened = { arrangement: 'assembled', hiddenLayers: [], hiddenPieces: [], dock: 'open' };

describe('The preview’s page shows and hides', () => {
  const preview = usePreview();

  it('each layer by its button', async () => {
    await preview.open();
    const shown: Readonly<Record<string, string>> = {
      'cut-outer': '.op-cut-outer .line',
      'cut-inner': '.op-cut-inner .line',
      score: '.op-score .line',
      engrave: '.op-engrave .line',
      finish: '.finish',
      warnings: '.pin',
      dimensions: '.dimension text',
    };
    for (const [layer, selector] of Object.entries(shown)) {
      assert.equal(await preview.page.locator(selector).first().isVisible(), true, selector);
      await preview.toggleLayer(layer);
      assert.equal(await preview.page.locator(selector).first().isVisible(), false, selector);
    }
  });

  it('pieces in place or apart, at once where motion is unwanted', async () => {
    await preview.open({ reducedMotion: true });
    const letters = preview.page.locator('.shape[data-id="name/body-0"]');
    const backing = preview.page.locator('.shape[data-id="back/body-0"]');
    await preview.page.getByRole('button', { name: 'Apart' }).click();
    assert.equal(await preview.page.locator('#stage.arranging').count(), 0);
    await preview.transform();
    const [upper, lower] = [(await backing.boundingBox())!, (await letters.boundingBox())!];
    assert.ok(lower.y > upper.y + upper.height || lower.x > upper.x + upper.width);
  });

  it('the last good drawing, marked, while the spec is broken', async () => {
    await preview.open();
    const count = await preview.brand('.part');
    await preview.send({ ...sceneMessage(2), stale: true });
    assert.equal(await preview.branded('.part'), count);
    assert.match((await preview.page.locator('#banner').textContent())!, /Out of date: .*line 4/);
    await preview.send(sceneMessage(3));
    assert.equal(await preview.page.locator('#banner').isVisible(), false);
  });

  it('the place of a tiny width with a mark that hides no small word there', async () => {
    const message = sceneMessage();
    const tiny = {
      ...message.pins[1]!,
      points: [
        [32, -20],
        [32, -19.95],
      ] as const,
      width: 0.05,
    };
    await preview.open({}, { ...message, pins: [tiny] });
    await preview.transform();
    const mark = preview.page.locator('.pin-mark.slight');
    const [across, stroke] = await mark.locator('.bar').evaluate((bar: SVGPathElement) => {
      const { width, height } = bar.getBBox();
      return [Math.max(width, height), Number.parseFloat(getComputedStyle(bar).strokeWidth)] as const;
    });
    assert.ok(across + stroke < 6, `${across} and ${stroke} px`);
    await preview.send({ ...message, version: 2 });
    await preview.transform();
    assert.equal(await preview.page.locator('.pin-mark.slight').count(), 0);
  });

  it('nothing to draw yet, and never an old drawing, where there has been no piece before the spec broke', async () => {
    const message = sceneMessage();
    await preview.open({}, { ...message, stale: true, scene: { ...message.scene!, pieces: [], ghosts: [] } });
    assert.equal(await preview.page.locator('#banner').isVisible(), false);
    assert.ok(await preview.page.locator('#empty').isVisible());
  });

  it('what no piece uses yet, dashed and as text, with the way to its line, and before there is any piece', async () => {
    const message = sceneMessage();
    const label = '<b>spare</b>: no piece uses it yet';
    const ghost = { id: 'ghost/shapes/spare', label, data: 'M90 -20l30 0 0 15 -30 0z', source: 77 };
    const scene = { ...message.scene!, pieces: [], ghosts: [ghost], bounds: [90, -20, 120, -5] as const };
    await preview.open({}, { ...message, scene, pins: [] });
    assert.equal(await preview.page.locator('#empty').isVisible(), false);
    const line = preview.page.locator('.ghost .line');
    assert.equal(await line.evaluate((path) => getComputedStyle(path).strokeDasharray !== 'none'), true);
    assert.equal(await preview.page.locator('.ghost title').textContent(), label);
    await line.click();
    assert.deepEqual((await preview.messages()).at(-1), { type: 'reveal', source, offset: 77, focus: false });
    await preview.send({ ...sceneMessage(2), pins: [] });
    assert.equal(await preview.page.locator('.ghost').count(), 0);
  });

  it('that the spec is gone and, on request, another one', async () => {
    await preview.open();
    await preview.send({ type: 'gone', source, fileName: 'sage.tag.yaml', other: 'basil.tag.yaml' });
    assert.equal(await preview.page.getByRole('heading', { name: 'This tag is closed' }).isVisible(), true);
    for (const each of ['header', '#stage', 'footer'])
      assert.equal(await preview.page.locator(each).isVisible(), false, each);
    await preview.page.getByRole('button', { name: 'Show basil.tag.yaml' }).click();
    assert.deepEqual((await preview.messages()).at(-1), { type: 'show-other', source });
    await preview.send(sceneMessage(2));
    assert.equal(await preview.page.locator('#stage').isVisible(), true, 'it has come back');
    assert.equal(await preview.page.locator('#gone').isVisible(), false);
  });

  it('a friendly word where nothing could be drawn yet, with the first error', async () => {
    await preview.open({}, withoutScene());
    assert.equal(await preview.page.getByRole('heading', { name: 'Nothing to draw yet' }).isVisible(), true);
    await preview.page.locator('#empty button').click();
    assert.deepEqual((await preview.messages()).at(-1), { type: 'reveal', source, offset: 40, focus: true });
  });

  it('the width of a weak place where it is, and its message to the pointer and the keyboard', async () => {
    await preview.open();
    const pin = preview.page.locator('.pin');
    assert.equal(await pin.textContent(), '0.92 mm');
    await pin.hover();
    assert.match((await preview.page.locator('#tip').textContent())!, /0\.92 mm wide.*Line 9/);
    await preview.page.mouse.move(5, 5);
    await preview.page.locator('#tip').waitFor({ state: 'hidden' });
    await pin.focus();
    await preview.page.locator('#tip').waitFor();
  });

  it('every place of a problem, which is one row of the list and lights up as a whole', async () => {
    const message = sceneMessage();
    const pinned = message.pins.find(({ points }) => points.length > 0)!;
    const other = {
      points: [
        [10, -20],
        [10, -18.9],
      ],
      width: 1.1,
    } as const;
    await preview.open(
      {},
      { ...message, pins: message.pins.map((pin) => (pin === pinned ? { ...pin, others: [other] } : pin)) },
    );
    const pins = preview.page.locator('.pin');
    assert.deepEqual(await pins.allTextContents(), ['0.92 mm', '1.10 mm']);
    assert.equal(await preview.page.locator('#issues li').count(), message.pins.length);
    await pins.nth(1).hover();
    assert.equal(await preview.page.locator('.pin.hot').count(), 2);
    await pins.nth(1).click();
    assert.deepEqual((await preview.messages()).at(-1), { type: 'ask-fixes', source, version: 1, pin: pinned.id });
    await preview.page.keyboard.press('Escape');
    for (const text of ['0.92 mm', '1.10 mm']) {
      await preview.page.keyboard.press('n');
      assert.equal(await preview.page.locator('.pin:focus').textContent(), text);
    }
  });
});

describe('The preview’s page tells what a piece bears', () => {
  const preview = usePreview();
  const load = {
    piece: 'back',
    headline: 'Bears a short pull of about 14 N <b>(1.4 kg)</b>',
    lines: ['Left hanging for ten years: about 8.7 N.'],
    caution: 'An estimate from published averages.',
    rule: 'Try it on <i>scrap</i>.',
  };

  it('with its caution and its reasons when asked for, and as text whatever it says', async () => {
    await preview.open({ remembered: { kept: opened } });
    const row = preview.page.locator('#pieces > li').first();
    assert.equal(await row.locator('.load').isVisible(), false);
    await preview.send({ type: 'measures', source, version: 1, loads: [load], walls: [], cutPaths: [] });
    assert.equal((await row.locator('summary').textContent())!.trim(), load.headline);
    assert.equal(await row.locator('.caution').isVisible(), false);
    assert.equal(await row.getByText('ten years').isVisible(), false);
    await row.locator('summary').focus();
    await preview.page.keyboard.press('Enter');
    assert.equal(await row.getByText('ten years').isVisible(), true);
    assert.equal(await row.locator('.caution').isVisible(), true);
    assert.equal(await preview.page.locator('.load:visible').count(), 1, 'the other piece has no hanger');
  });

  it('of the drawing that is shown, and not of an older one', async () => {
    await preview.open({ remembered: { kept: opened } }, sceneMessage(5));
    await preview.send({ type: 'measures', source, version: 4, loads: [load], walls: [], cutPaths: [] });
    assert.equal(await preview.page.locator('.load:visible').count(), 0);
  });
});

describe('The preview’s page tells what the tag takes', () => {
  const preview = usePreview();
  const facts = [
    { name: 'Cut', value: '160.6 mm' },
    { name: 'Material cost', value: '0.04 <b>seeds</b>' },
  ];
  const estimateTexts = async (): Promise<string[]> => preview.page.locator('#takes dl > div').allInnerTexts();

  it('fact by fact and as text, until those of the next drawing come', async () => {
    await preview.open({ remembered: { kept: opened } });
    assert.equal(await preview.page.locator('#takes').isVisible(), false);
    await preview.send({ type: 'takes', source, version: 1, facts });
    await preview.page.locator('#takes').waitFor();
    assert.deepEqual(
      (await estimateTexts()).map((text) => text.split('\n')),
      facts.map(({ name, value }) => [name, value]),
    );
    await preview.send(sceneMessage(2));
    assert.equal((await estimateTexts()).length, 2);
    await preview.send({ type: 'takes', source, version: 1, facts: [] });
    assert.equal((await estimateTexts()).length, 2, 'those of an older drawing come too late');
    await preview.send({ type: 'takes', source, version: 2, facts: facts.slice(0, 1) });
    await preview.page.locator('#takes dl > div:only-child').waitFor();
  });
});

describe('The preview’s page leads to the spec', () => {
  const preview = usePreview();

  const revealed = async (): Promise<unknown> => (await preview.messages()).at(-1);

  it('by a click on a part, which leaves the keyboard here', async () => {
    await preview.open();
    // The middle of the first letter, which is a shape of the upper piece.
    const box = (await preview.page.locator('.shape[data-id="name/body-0"]').boundingBox())!;
    await preview.page.mouse.click(box.x + box.width * 0.15, box.y + box.height / 2);
    assert.deepEqual(await revealed(), { type: 'reveal', source, offset: 200, focus: false });
  });

  it('by Enter on a part in the list, which goes there', async () => {
    await preview.open({ remembered: { kept: opened } });
    await preview.page.getByRole('button', { name: 'Engraving' }).focus();
    assert.equal(await preview.page.locator('.part.hot').getAttribute('data-id'), 'back/mark-0');
    await preview.page.keyboard.press('Enter');
    assert.deepEqual(await revealed(), { type: 'reveal', source, offset: 110, focus: true });
  });

  it('by a click on a problem, and not by a drag', async () => {
    await preview.open();
    await preview.page.locator('#issues [data-offset]').nth(1).click();
    assert.deepEqual(await revealed(), { type: 'reveal', source, offset: 205, focus: false });
    const count = (await preview.messages()).length;
    const box = (await preview.page.locator('.shape[data-id="name/body-0"]').boundingBox())!;
    await preview.page.mouse.move(box.x + 20, box.y + 20);
    await preview.page.mouse.down();
    await preview.page.mouse.move(box.x + 60, box.y + 40, { steps: 4 });
    await preview.page.mouse.up();
    assert.equal((await preview.messages()).length, count);
  });
});
