import assert from 'node:assert/strict';
import { usePreview } from './use-preview.ts';
import { sceneMessage, source } from './scenes.ts';

const pin = 'weak-bridge@shapes/word#0';
const titles = ['Thicken “word”: grow 0.30 mm'];
const accept = 'Accept this weak-bridge with a reason';

describe('The preview’s page offers what helps', () => {
  const preview = usePreview();
  const answer = { type: 'fixes', source, version: 1, pin, titles, accept } as const;
  const lastMessage = async (): Promise<unknown> => (await preview.messages()).at(-1);
  const items = () => preview.page.locator('#fix-menu [role=menuitem]').allTextContents();

  it('at a pin, asked for only when it is wanted, and makes the one that is chosen', async () => {
    await preview.open();
    assert.ok(!(await preview.messages()).some(({ type }) => type === 'ask-fixes'));
    await preview.page.locator('.pin').click();
    assert.deepEqual(await lastMessage(), { type: 'ask-fixes', source, version: 1, pin });
    assert.deepEqual(await items(), ['Looking for fixes…', 'Go to line 9', 'Zoom in on it']);
    await preview.send(answer);
    await preview.page.getByText(titles[0]!).click();
    assert.deepEqual(await lastMessage(), { type: 'make-fix', source, version: 1, pin, index: 0 });
    assert.equal(await preview.page.locator('#fix-menu').isVisible(), false);
    assert.equal(await preview.page.locator('#announcer').textContent(), titles[0]);
  });

  it('with the keyboard: N to the pin, F for the fixes, arrows among them, Escape back', async () => {
    await preview.open();
    await preview.page.locator('#stage').focus();
    await preview.page.keyboard.press('n');
    assert.equal(await preview.page.locator('.pin:focus').count(), 1);
    await preview.page.keyboard.press('f');
    await preview.send(answer);
    await preview.page.getByText(accept).waitFor();
    const focused = () => preview.page.locator('#fix-menu :focus').textContent();
    assert.equal(await focused(), titles[0]);
    await preview.page.keyboard.press('ArrowDown');
    assert.equal(await focused(), accept);
    await preview.page.keyboard.press('End');
    assert.equal(await focused(), 'Zoom in on it');
    await preview.page.keyboard.press('Escape');
    assert.equal(await preview.page.locator('#fix-menu').isVisible(), false);
    assert.equal(await preview.page.locator('.pin:focus').count(), 1);
  });

  it('at a row of the list, also for what has no place on the drawing', async () => {
    await preview.open();
    await preview.page.getByRole('button', { name: 'Show fixes for: There is no such font.' }).click();
    await preview.send({ type: 'fixes', source, version: 1, pin: 'unknown-font@shapes/word/font#0', titles: [] });
    await preview.page.getByText('No automatic fix found.').waitFor();
    assert.deepEqual((await items()).slice(1), ['Go to line 4']);
    await preview.page.getByText('Go to line 4').click();
    assert.deepEqual(await lastMessage(), { type: 'reveal', source, offset: 40, focus: true });
  });

  it('and says that there is none where a problem can only be accepted, with no strip for what one would change', async () => {
    await preview.open();
    await preview.page.locator('.pin').click();
    await preview.send({ ...answer, titles: [] });
    await preview.page.getByText('No automatic fix found.').waitFor();
    assert.deepEqual((await items()).slice(0, 2), ['No automatic fix found.', accept]);
    assert.equal(await preview.page.locator('.outcome-words').isVisible(), false);
    await preview.page.getByText(accept).click();
    assert.deepEqual(await lastMessage(), { type: 'make-fix', source, version: 1, pin, index: 0 });
  });

  it('with what is in the way of one that would help most tags of a batch', async () => {
    await preview.open();
    await preview.page.locator('.pin').click();
    const inTheWay = '“grow 0.35 mm” would do for 25 of 30 names, but spoils 11. '.repeat(6).trim();
    await preview.send({ ...answer, titles: [], inTheWay });
    await preview.page.getByText(accept).waitFor();
    assert.deepEqual((await items()).slice(0, 2), [inTheWay, accept]);
    const [menu, view] = [await preview.page.locator('#fix-menu').boundingBox(), preview.page.viewportSize()];
    assert.ok(menu!.x >= 0 && menu!.x + menu!.width <= view!.width, 'a long one is broken into lines');
  });

  it('and shows what each would make of the tag while it has the focus or the pointer, with what changes', async () => {
    await preview.open();
    const { keyboard } = preview.page;
    await preview.page.locator('#stage').focus();
    await keyboard.press('n');
    await keyboard.press('f');
    await preview.send({ ...answer, titles: [titles[0]!, 'Engrave it: by 6 mm'] });
    await preview.page.getByText(accept).waitFor();
    const ghosts = preview.page.locator('.outcome .ghost-line');
    assert.deepEqual(await lastMessage(), { type: 'show-fix', source, version: 1, pin, index: 0 });
    const back = { id: 'back', title: 'Backing', solid: 'M-1 -31l82 0 0 32 -82 0z', marks: 'M20 -8l40 0 0 4z' };
    const name = { id: 'name', title: 'Letters', glueTo: 'back', solid: 'M12 -25l56 0 0 16z', marks: '' };
    const pieces = [
      { ...back, bounds: [-1, -31, 81, 1] as const },
      { ...name, bounds: [12, -25, 68, -9] as const },
    ];
    await preview.send({ type: 'outcome', source, version: 1, pin, index: 0, pieces });
    await ghosts.first().waitFor({ state: 'attached' });
    await preview.transform();
    const words = 'Backing: 80.0 × 30.0 mm → 82.0 × 32.0 mm';
    assert.equal(await preview.page.locator('#fix-menu .outcome-words').textContent(), words);
    assert.equal(await preview.page.locator('#announcer').textContent(), `With this fix: ${words}.`);
    const dimensionTexts = await preview.page.locator('.dimension text').allTextContents();
    assert.deepEqual(dimensionTexts.slice(0, 2), ['80.0 → 82.0 mm', '30.0 → 32.0 mm']);
    // Where it would be: 1 mm beyond the backing all round.
    const [ghost, now] = await Promise.all([
      preview.page.locator('.outcome .ghost-fill').first().boundingBox(),
      preview.page.locator('.shape[data-id="back/body-0"]').boundingBox(),
    ]);
    assert.ok(Math.abs(ghost!.width / now!.width - 82 / 80) < 0.001);
    assert.ok(ghost!.x < now!.x && ghost!.y < now!.y);
    assert.equal(await preview.page.evaluate(() => document.getAnimations().length), 0, 'nothing moves');

    await keyboard.press('ArrowDown');
    assert.equal(await ghosts.count(), 0, 'that of another is gone at once');
    assert.deepEqual(await lastMessage(), { type: 'show-fix', source, version: 1, pin, index: 1 });
    await preview.send({ type: 'outcome', source, version: 1, pin, index: 0, pieces });
    await preview.transform();
    assert.equal(await ghosts.count(), 0, 'and an answer that comes too late is not shown');
    await preview.page.getByText(titles[0]!).hover();
    assert.deepEqual(await lastMessage(), { type: 'show-fix', source, version: 1, pin, index: 0 });
    await preview.send({ type: 'outcome', source, version: 1, pin, index: 0, pieces: pieces.slice(0, 1) });
    await ghosts.first().waitFor({ state: 'attached' });
    await preview.page.getByText(`${words} · Letters: gone`).waitFor();
    await keyboard.press('Escape');
    assert.equal(await ghosts.count(), 0);
    await preview.transform();
    assert.deepEqual((await preview.page.locator('.dimension text').allTextContents())[0], '80.0 mm');
    assert.ok(!(await preview.messages()).some(({ type }) => type === 'make-fix'));
  });

  it('for the text as it is: a change asks again, and an answer for the old text is not shown', async () => {
    await preview.open();
    await preview.page.locator('.pin').click();
    await preview.send(answer);
    await preview.page.getByText(titles[0]!).waitFor();
    await preview.send(sceneMessage(2));
    await preview.send(answer);
    assert.deepEqual(await lastMessage(), { type: 'ask-fixes', source, version: 2, pin });
    assert.equal((await items())[0], 'Looking for fixes…');
    await preview.send({ ...sceneMessage(3), pins: [] });
    assert.equal(await preview.page.locator('#fix-menu').isVisible(), false);
  });

  it('and keeps the keyboard on the page when the pin it was on is mended', async () => {
    await preview.open();
    await preview.page.keyboard.press('n');
    await preview.send({ ...sceneMessage(2), pins: [] });
    assert.equal(await preview.page.locator('#stage:focus').count(), 1);
  });

  it('as text, whatever it says', async () => {
    await preview.open();
    await preview.page.locator('.pin').click();
    await preview.send({ ...answer, titles: ['<img src=x>'] });
    await preview.page.getByText('<img src=x>').waitFor();
    assert.equal(await preview.page.locator('img').count(), 0);
  });
});

describe('The preview’s page walks through problems', () => {
  const preview = usePreview();

  it('showing those that are hidden or out of view', async () => {
    await preview.open();
    await preview.toggleLayer('warnings');
    await preview.page.locator('#stage').focus();
    for (let press = 0; press < 30; press++) await preview.page.keyboard.press('ArrowLeft');
    await preview.transform();
    await preview.page.keyboard.press('n');
    assert.equal(await preview.page.locator('.pin:focus').isVisible(), true);
    assert.equal(await preview.page.locator('[data-layer=warnings]').getAttribute('aria-pressed'), 'true');
  });

  it('and zooms in on one: 12 mm round it fill the stage', async () => {
    await preview.open();
    const before = await preview.transform();
    await preview.page.keyboard.press('n');
    await preview.page.keyboard.press('z');
    const after = await preview.transform();
    const scale = (transform: string) => Number(/scale\(([\d.]+)\)/.exec(transform)![1]);
    assert.ok(scale(after) > 2 * scale(before), `${before} → ${after}`);
  });
});
