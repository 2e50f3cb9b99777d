import assert from 'node:assert/strict';
import type { HandChange } from '../../src/protocol/scene.ts';
import { source } from './scenes.ts';
import { messagesOf } from './spec-scenes.ts';
import { usePreview } from './use-preview.ts';

const spec = `tagwright: 1
shapes:
  plate: {rectangle: [90 mm, 50 mm], radius: 5 mm}
  panel: {rectangle: [60 mm, 20 mm], place: {on: plate, at: bottom, margin: 4 mm}}
  name:  {text: Tarragon, font: Nunito, fit: {in: panel, margin: 2 mm}}
  sprig: {ellipse: [8 mm, 4 mm], place: {on: plate, at: left, margin: 6 mm}}
pieces:
  tag: {body: [plate], engrave: [name, sprig], hanger: {hole: top}}
`;

describe('The preview’s page shows what a shape was put into', () => {
  const preview = usePreview();

  const open = async () => {
    const { scene } = await messagesOf(spec);
    await preview.open({}, scene);
    return scene.scene!;
  };
  const shown = () =>
    preview.page.evaluate(() =>
      [...document.querySelectorAll<SVGElement>('.area')]
        .filter((area) => area.getClientRects().length > 0)
        .map((area) => area.dataset['id']),
    );
  const light = async (...ids: string[]) => {
    await preview.send({ type: 'highlight', source, ids, follow: false });
    await preview.transform();
  };
  const part = (id: string) => `.part[data-id="${id}"] .hit`;

  it('while the cursor stands in that shape, and not otherwise', async () => {
    await open();
    assert.deepEqual(await shown(), []);
    await light('tag/mark-0');
    assert.deepEqual(await shown(), ['tag/mark-0/area']);
    await light('tag/mark-1');
    assert.deepEqual(await shown(), ['tag/mark-1/area']);
    await light('tag/body-0', 'tag/outer');
    assert.deepEqual(await shown(), []);
  });

  it('with the room that is left of it by the margin', async () => {
    await open();
    await light('tag/mark-0');
    const widths = await preview.page.evaluate(() =>
      ['bounds', 'room'].map(
        (name) => document.querySelector<SVGGraphicsElement>(`.area.open .${name}`)!.getBBox().width,
      ),
    );
    assert.ok(Math.abs(widths[0]! - 60) < 0.02 && Math.abs(widths[1]! - 56) < 0.02, widths.join(' '));
  });

  it('while it is taken hold of; what is fitted in there still moves by the arrow keys', async () => {
    await open();
    await preview.page.locator(part('tag/mark-0')).click();
    assert.deepEqual(await shown(), ['tag/mark-0/area']);
    await preview.page.keyboard.press('ArrowUp');
    const change = (await preview.messages()).findLast(({ type }) => type === 'try-change') as { change: HandChange };
    assert.equal(change.change.kind, 'move');
    await preview.page.keyboard.press('Escape');
    await preview.page.keyboard.press('Escape');
    assert.deepEqual(await shown(), []);
  });

  it('and a panel that no piece has is itself taken hold of by its outline, dragged and sized', async () => {
    const scene = await open();
    const panel = scene.grips.find(({ label }) => label === 'panel')!;
    assert.deepEqual([panel.moves, panel.axes], [true, ['width', 'height']]);
    await light('tag/mark-0');
    const { x, y, width, height } = (await preview.page.locator('.area.open .bounds').boundingBox())!;
    const { mouse } = preview.page;
    await mouse.click(x + width / 5, y + height - 1);
    await preview.page.locator('.handle[data-axis="width"]').waitFor();
    await light();
    assert.deepEqual(await shown(), ['tag/mark-0/area'], 'it stays while it is held');
    const px = width / 60;
    await mouse.move(x + width / 5, y + height - 1);
    await mouse.down();
    await mouse.move(x + width / 5, y + height - 1 - 4 * px, { steps: 3 });
    await mouse.up();
    const made = (await preview.messages()).find(({ type }) => type === 'make-change') as {
      grip: string;
      change: HandChange;
    };
    assert.equal(made.grip, panel.id);
    assert.ok(made.change.kind === 'move' && Math.abs(made.change.up - 4) <= 0.5, JSON.stringify(made));
  });

  it('but not in the proof', async () => {
    await open();
    await light('tag/mark-0');
    await preview.page.keyboard.press('p');
    await preview.page.locator('body.proof, .proof').first().waitFor();
    assert.deepEqual(await shown(), []);
  });
});
