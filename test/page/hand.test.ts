import assert from 'node:assert/strict';
import type { HandChange } from '../../src/protocol/scene.ts';
import type { ToHost } from '../../src/protocol/preview.ts';
import { sceneMessage, source } from './scenes.ts';
import { messagesOf } from './spec-scenes.ts';
import { usePreview } from './use-preview.ts';

describe('The preview’s page changes the tag by hand', () => {
  const preview = usePreview();

  const changes = async (type: ToHost['type']) => {
    const found = (await preview.messages()).filter((message) => message.type === type);
    return found as { readonly grip: string; readonly change: HandChange; readonly version: number }[];
  };

  /** Screen coordinates of the middle of an element. */
  const middle = async (selector: string): Promise<[number, number]> => {
    const { x, y, width, height } = (await preview.page.locator(selector).first().boundingBox())!;
    return [x + width / 2, y + height / 2];
  };

  const scale = async () => Number(/scale\(([\d.]+)\)/.exec(await preview.transform())![1]);

  const band = '.part[data-id="back/mark-0"] .line';
  const backing = '.shape[data-id="back/body-0"]';

  /** Presses on it and moves by so many mm, right and down. */
  const pull = async (selector: string, dx: number, dy: number, at: readonly [number, number] = [0, 0]) => {
    const [x, y] = await middle(selector);
    const px = await scale();
    const { mouse } = preview.page;
    await mouse.move(x + at[0], y + at[1]);
    await mouse.down();
    await mouse.move(x + at[0] + (dx * px) / 2, y + at[1] + (dy * px) / 2);
    await mouse.move(x + at[0] + dx * px, y + at[1] + dy * px);
  };

  it('by dragging what lies on the body: tried on the way, written once at the end', async () => {
    await preview.open();
    const before = await preview.transform();
    await pull(band, 7, 3);
    assert.equal((await changes('try-change')).length, 1, 'the next one waits until that is seen');
    const trying = { grip: 'band', change: (await changes('try-change'))[0]!.change };
    await preview.send({ ...sceneMessage(), trying });
    await preview.page.waitForFunction(
      () => window.recorded.messages.filter(({ type }) => type === 'try-change').length === 2,
    );
    assert.deepEqual((await changes('try-change'))[1]!.change, { kind: 'move', right: 7, up: -3 });
    await preview.page.mouse.up();
    const made = await changes('make-change');
    assert.equal(made.length, 1);
    assert.equal(made[0]!.grip, 'band');
    assert.deepEqual(made[0]!.change, { kind: 'move', right: 7, up: -3 });
    assert.equal(await preview.transform(), before, 'the view stays');
    assert.ok(!(await preview.messages()).some(({ type }) => type === 'reveal'), 'the drag is no click');
    assert.match((await preview.page.locator('#announcer').textContent())!, /band: right 7\.0 mm, down 3\.0 mm/);
  });

  it('but pans at the only shape of a body, until that is taken hold of by a click', async () => {
    await preview.open();
    const corner = [280, -100] as const;
    await pull(backing, 5, 5, corner);
    await preview.page.mouse.up();
    assert.equal((await changes('try-change')).length, 0);
    await preview.page.keyboard.press('0');
    await preview.transform();
    const [x, y] = await middle(backing);
    await preview.page.mouse.click(x + corner[0], y + corner[1]);
    await preview.page.locator('.frame').waitFor();
    await pull(backing, 5, 9, corner);
    await preview.page.mouse.up();
    assert.deepEqual((await changes('make-change'))[0]?.change, { kind: 'move', right: 5, up: -9 });
  });

  it('and the drawing stays under the hand, though the list of problems opens below', async () => {
    await preview.open({ height: 420, pausesHeld: true }, { ...sceneMessage(), pins: [] });
    const before = await preview.transform();
    await pull(band, 7, 3);
    await preview.page.mouse.up();
    await preview.send(sceneMessage(2));
    await preview.elapse();
    await preview.transform();
    assert.equal(await preview.page.locator('#dock').isVisible(), true);
    assert.equal(await preview.transform(), before);
  });

  it('and shows at once where the hand is, and what the engine makes of it when that comes', async () => {
    await preview.open();
    const [x] = await middle(band);
    const px = await scale();
    await pull(band, 10, 4);
    await preview.transform();
    const ghost = async () => (await middle('.selection path'))[0];
    assert.ok(Math.abs((await ghost()) - x - 10 * px) < 1);
    const { scene, ...rest } = sceneMessage();
    const moved = scene!.pieces.map((piece) => ({
      ...piece,
      parts: piece.parts.map((part) => (part.id === 'back/mark-0' ? { ...part, data: 'M30 -4h40v4h-40Z' } : part)),
    }));
    await preview.send({
      ...{ ...rest, version: 1, scene: { ...scene!, pieces: moved } },
      trying: { grip: 'band', change: { kind: 'move', right: 10, up: -4 } },
    });
    assert.ok(Math.abs((await middle(band))[0] - x - 10 * px) < 1, 'the trial is drawn');
    assert.ok(Math.abs((await ghost()) - x - 10 * px) < 1, 'the outline lies on it');
    await preview.page.mouse.up();
    await preview.send(sceneMessage(2));
    assert.ok(Math.abs((await ghost()) - x) < 1);
  });

  it('until Escape, which leaves everything as it was', async () => {
    await preview.open();
    await pull(band, 10, 4);
    await preview.page.keyboard.press('Escape');
    await preview.page.mouse.up();
    assert.equal((await changes('make-change')).length, 0);
    assert.deepEqual((await preview.messages()).at(-1), { type: 'drop-change', source });
    const { scene, ...rest } = sceneMessage();
    const trying = { grip: 'band', change: { kind: 'move', right: 10, up: -4 } } as const;
    await preview.page.evaluate(
      (data) => {
        window.postMessage(data, '*');
      },
      { ...rest, scene: { ...scene!, title: 'too late' }, trying },
    );
    await preview.transform();
    assert.doesNotMatch((await preview.page.locator('#drawing').getAttribute('aria-label'))!, /too late/);
  });

  it('coming to rest on the middle of the piece, with a line through it, unless Alt is held', async () => {
    await preview.open();
    // The opening is 35 mm left of the middle of the backing, which is 80 mm wide.
    await pull('.part[data-id="back/hanger-hole-0"] .line', 34.8, 0);
    await preview.transform();
    assert.match((await preview.page.locator('.guide').getAttribute('d'))!, /^M[\d.]+ 0V/);
    assert.match((await preview.page.locator('.words').textContent())!, /right 35\.0 mm · middle/);
    await preview.page.keyboard.down('Alt');
    const [x, y] = await middle('.words');
    await preview.page.mouse.move(x, y);
    await preview.transform();
    assert.equal(await preview.page.locator('.guide').getAttribute('d'), '');
    await preview.page.keyboard.up('Alt');
    await preview.page.mouse.up();
  });

  it('by a handle: the size follows it on the far side as well, as most shapes grow about their middle', async () => {
    await preview.open();
    await preview.page.locator('#stage').focus();
    await preview.page.keyboard.press('s');
    await preview.transform();
    assert.equal(await preview.page.locator('.handle:visible').count(), 2);
    await pull('.handle[data-axis=width]', 3, 0);
    await preview.page.mouse.up();
    const [made] = await changes('make-change');
    assert.deepEqual([made!.grip, made!.change], ['backing', { kind: 'size', axis: 'width', by: 6 }]);
  });

  it('and tells to what size that leads, as far as the hand is, though the drawing may lag behind', async () => {
    await preview.open();
    await preview.page.locator('#stage').focus();
    await preview.page.keyboard.press('s');
    await preview.transform();
    await pull('.handle[data-axis=width]', 3, 0);
    await preview.transform();
    const words = () => preview.page.locator('.words').textContent();
    assert.equal(await words(), 'width 86.0 mm (+ 6.0 mm)', 'the backing is 80 mm wide');
    const change = { kind: 'size', axis: 'width', by: 6 } as const;
    await preview.send({ ...sceneMessage(1, 86), trying: { grip: 'backing', change } });
    await preview.transform();
    assert.equal(await words(), 'width 86.0 mm (+ 6.0 mm)', 'of which nothing is counted twice');
    await preview.page.mouse.up();
    assert.equal(await preview.page.locator('#announcer').textContent(), 'backing: width 86.0 mm (+ 6.0 mm).');
  });

  it('and the frame goes with the hand, ahead of the drawing, on the sides that the last trial shows to grow', async () => {
    await preview.open();
    await preview.page.locator('#stage').focus();
    await preview.page.keyboard.press('s');
    await preview.transform();
    const px = await scale();
    const sides = async (selector: string) => {
      const { x, width } = (await preview.page.locator(selector).first().boundingBox())!;
      return [x, x + width] as const;
    };
    const [left, right] = await sides('.frame');
    const outline = await sides('.selection path');
    const goneBy = async (what: string, low: number, high: number) => {
      await preview.transform();
      const [[l, r], [p, q]] = [await sides('.frame'), await sides('.selection path')];
      const gone = [(left - l) / px, (r - right) / px, (outline[0] - p) / px, (q - outline[1]) / px];
      for (const [index, mm] of [low, high, low, high].entries())
        assert.ok(Math.abs(gone[index]! - mm) < 0.15, `${what}: ${gone.join(' ')}`);
    };
    await pull('.handle[data-axis=width]', 3, 0);
    await goneBy('before any trial', 3, 3);
    // By now the drawing is 86 mm wide, and has grown to the right alone.
    const [x, y] = await middle('.handle[data-axis=width]');
    const change = { kind: 'size', axis: 'width', by: 6 } as const;
    await preview.send({ ...sceneMessage(1, 86), trying: { grip: 'backing', change } });
    await goneBy('of a trial', 0, 6);
    await preview.page.mouse.move(x + 2 * px, y);
    await goneBy('ahead of a trial', 0, 5);
    await preview.page.keyboard.press('Escape');
    await preview.send(sceneMessage(2));
    await goneBy('put back', 0, 0);
  });

  it('but not where all the rest would go along: then dragging pans, and the arrow keys say why', async () => {
    const { scene, ...rest } = sceneMessage();
    const grips = scene!.grips.map((grip) => (grip.id === 'backing' ? { ...grip, moves: false } : grip));
    await preview.open({}, { ...rest, scene: { ...scene!, grips } });
    const corner = [280, -100] as const;
    const [x, y] = await middle(backing);
    await preview.page.mouse.click(x + corner[0], y + corner[1]);
    await preview.page.locator('.frame').waitFor();
    assert.equal(await preview.page.locator(`${backing}.movable`).count(), 0);
    const before = await preview.transform();
    await pull(backing, 5, 9, corner);
    await preview.page.mouse.up();
    assert.notEqual(await preview.transform(), before);
    await preview.page.locator('#stage').focus();
    await preview.page.keyboard.press('ArrowRight');
    const why = 'Everything else moves with backing: moving it would change nothing';
    assert.equal(await preview.page.locator('#announcer').textContent(), `${why}.`);
    await preview.transform();
    assert.equal(await preview.page.locator('.words').textContent(), why);
    assert.equal((await changes('try-change')).length + (await changes('make-change')).length, 0);
    await preview.page.keyboard.press('Control+ArrowRight');
    assert.deepEqual((await changes('try-change'))[0]?.change, { kind: 'size', axis: 'width', by: 0.1 });
  });

  it('says of what can be neither moved nor made larger why not, as soon as it is taken hold of', async () => {
    const spec = `tagwright: 1
shapes:
  cap:   {rectangle: [26 mm, 18 mm]}
  foot:  {rectangle: [84 mm, 40 mm]}
  plate: {stack: {shapes: [cap, foot], towards: down}}
pieces:
  tag: {body: [plate]}
`;
    await preview.open({}, (await messagesOf(spec)).scene);
    await preview.page.locator('#stage').focus();
    await preview.page.keyboard.press('s');
    await preview.page.locator('.frame').waitFor();
    assert.equal(await preview.page.locator('.handle:not(.hidden)').count(), 0);
    const why = 'plate: its size is that of “cap” and “foot”; change those in the text';
    await preview.transform();
    assert.equal(await preview.page.locator('.words').textContent(), why);
    assert.equal(await preview.page.locator('#announcer').textContent(), `plate selected. ${why}. Escape lets go.`);
  });

  it('by keyboard: S takes hold, arrows move finely, with Shift coarsely, and presses in a row are one change', async () => {
    await preview.open({ pausesHeld: true });
    const { keyboard } = preview.page;
    await preview.page.locator('#stage').focus();
    const before = await preview.transform();
    await keyboard.press('s');
    await keyboard.press('s');
    assert.match((await preview.page.locator('#announcer').textContent())!, /^band selected\. Arrow keys move it/);
    for (const key of ['ArrowRight', 'ArrowRight', 'Shift+ArrowUp', 'ArrowLeft']) await keyboard.press(key);
    assert.equal((await changes('make-change')).length, 0);
    await preview.elapse();
    assert.deepEqual(
      (await changes('make-change')).map(({ change }) => change),
      [{ kind: 'move', right: 0.1, up: 1 }],
    );
    assert.equal(await preview.transform(), before, 'the arrows do not pan meanwhile');
    await preview.send(sceneMessage(2));
    await keyboard.press('Escape');
    await keyboard.press('ArrowRight');
    assert.notEqual(await preview.transform(), before, 'and do again afterwards');
  });

  it('by keyboard in size too, and what is pressed while a change is written waits for it', async () => {
    await preview.open({ pausesHeld: true });
    const { keyboard } = preview.page;
    await preview.page.locator('#stage').focus();
    await keyboard.press('s');
    await keyboard.press('Control+Shift+ArrowRight');
    await keyboard.press('Control+ArrowUp');
    assert.deepEqual((await changes('make-change'))[0]?.change, { kind: 'size', axis: 'width', by: 1 });
    assert.equal((await changes('try-change')).length, 1);
    await preview.send(sceneMessage(2));
    const last = (await changes('try-change')).at(-1)!;
    assert.deepEqual([last.version, last.change], [2, { kind: 'size', axis: 'height', by: 0.1 }]);
  });

  it('and where its size cannot be changed so, it says what sets it', async () => {
    await preview.open();
    const { keyboard } = preview.page;
    await preview.page.locator('#stage').focus();
    const said = preview.page.locator('#announcer');
    while (!(await said.textContent())!.startsWith('word')) await keyboard.press('s');
    await keyboard.press('Control+ArrowUp');
    await preview.transform();
    const why = 'word: only its width is written; the rest follows';
    assert.equal(await preview.page.locator('.words').textContent(), why);
    assert.equal(await said.textContent(), `${why}.`);
    assert.equal((await changes('try-change')).length, 0);
    await preview.page.setViewportSize({ width: 260, height: 600 });
    await preview.transform();
    const words = (await preview.page.locator('.words').boundingBox())!;
    assert.ok(words.x >= 0 && words.x + words.width <= 260, 'in a narrow page it has several lines');
    assert.equal(await preview.page.locator('.words').textContent(), why);
    await keyboard.press('Control+ArrowRight');
    await preview.transform();
    assert.notEqual(await preview.page.locator('.words').textContent(), why);
  });

  it('and takes back the last change with Ctrl+Z', async () => {
    await preview.open();
    await preview.page.locator('#stage').focus();
    await preview.page.keyboard.press('Control+z');
    assert.deepEqual((await preview.messages()).at(-1), { type: 'undo', source });
    await preview.page.keyboard.press('Control+Shift+z');
    assert.deepEqual((await preview.messages()).at(-1), { type: 'redo', source });
  });

  it('by a finger as well', async () => {
    await preview.open();
    const client = await preview.page.context().newCDPSession(preview.page);
    const [x, y] = await middle(band);
    const px = await scale();
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', dx: number) =>
      client.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x: x + dx * px, y }],
      });
    await touch('touchStart', 0);
    for (const dx of [3, 6, 9]) await touch('touchMove', dx);
    await touch('touchEnd', 9);
    assert.deepEqual(
      (await changes('make-change')).map(({ change }) => change),
      [{ kind: 'move', right: 9, up: 0 }],
    );
  });

  it('and lets go where the text changes by itself', async () => {
    await preview.open();
    await pull(band, 10, 4);
    await preview.send(sceneMessage(2));
    assert.equal(await preview.page.locator('.words').textContent(), 'band');
    await preview.page.mouse.up();
    assert.equal((await changes('make-change')).length, 0);
  });
});
