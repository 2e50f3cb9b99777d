import assert from 'node:assert/strict';
import { sceneOf } from '../../../src/scene/scene.ts';
import { ringsOf } from '../../../webview/preview/scene/outline-points.ts';
import { report } from '../support/engine.ts';

/** Widths of what the areas of a tag show, in mm: target and room. */
async function areasOf(shapes: string, piece: string) {
  const { tag } = await report(
    `tagwright: 1\nshapes: {plate: {rectangle: [80, 40]}, ${shapes}}\npieces: {tag: {body: [plate], ${piece}}}\n`,
  );
  const width = (data?: string) => {
    const xs = ringsOf(data ?? '', [0, 0])
      .flat()
      .map(([x]) => x);
    return xs.length === 0 ? undefined : Math.round((Math.max(...xs) - Math.min(...xs)) * 100) / 100;
  };
  const { areas } = sceneOf(tag!, () => 0).pieces[0]!;
  return areas.map(({ label, holds, data, room }) => [label, holds.join(' '), width(data), width(room)]);
}

describe('The areas of a scene', () => {
  it('are what shapes are fitted into, with their room, and what they are placed on', async () => {
    const shapes =
      'panel: {rectangle: [50, 20]}, name: {text: Dill, fit: {in: panel, margin: 3}}, dot: {circle: 4, place: {on: plate, at: left, margin: 5}}';
    assert.deepEqual(await areasOf(shapes, 'engrave: [name], cut: [dot]'), [
      ['“dot” is placed on “plate”', 'tag/cut-0', 80, undefined],
      ['“name” fits into “panel”', 'tag/mark-0', 50, 44],
    ]);
  });

  it('are as large as the piece where the whole of it has a size, less the margin as it is written', async () => {
    const shapes = 'panel: {rectangle: [50, 20]}, name: {text: Dill, fit: {in: panel, margin: 3}}';
    assert.deepEqual(await areasOf(shapes, 'engrave: [name], width: 160'), [
      ['“name” fits into “panel”', 'tag/mark-0', 100, 94],
    ]);
  });

  it('are none for what stands by itself or beside something', async () => {
    const shapes = 'bar: {rectangle: [9, 2]}, dot: {circle: 4, place: {below: bar}}';
    assert.deepEqual(await areasOf(shapes, 'engrave: [bar, dot]'), []);
  });
});
