import assert from 'node:assert/strict';
import type { Scene, ScenePiece } from '../../../src/preview/protocol.ts';
import { arrange, glueChain } from '../../../webview/arrange.ts';
import type { Box } from '../../../webview/viewport.ts';
import { sceneMessage } from '../../page/scenes.ts';

function piece(id: string, bounds: Box, glueTo?: string): ScenePiece {
  const [minX, minY, maxX, maxY] = bounds;
  const { parts, shapes, solid, hangers, balance } = sceneMessage().scene!.pieces[0]!;
  return {
    ...{ id, title: id, solid, shapes, parts, hangers, balance, bounds, width: maxX - minX, height: maxY - minY },
    ...{ partCount: 1, holeCount: 0, source: 0 },
    ...(glueTo !== undefined && { glueTo }),
  };
}

const sceneWith = (...pieces: ScenePiece[]): Scene => ({ ...sceneMessage().scene!, pieces });

/** The boxes of the pieces where they are drawn. */
function drawn(scene: Scene, arrangement: 'assembled' | 'apart'): Map<string, Box> {
  const { offsets } = arrange(scene, arrangement);
  return new Map(
    scene.pieces.map(({ id, bounds }) => {
      const [dx, dy] = offsets.get(id)!;
      return [id, [bounds[0] + dx, bounds[1] + dy, bounds[2] + dx, bounds[3] + dy]];
    }),
  );
}

const apart = (a: Box, b: Box): boolean => a[2] <= b[0] || b[2] <= a[0] || a[3] <= b[1] || b[3] <= a[1];

describe('The arrangement of pieces', () => {
  const glued = sceneWith(piece('name', [5, 5, 75, 25], 'back'), piece('back', [0, 0, 80, 30]));

  it('leaves an assembly in place', () => {
    assert.deepEqual(
      [...arrange(glued, 'assembled').offsets.values()],
      [
        [0, 0],
        [0, 0],
      ],
    );
  });

  it('draws what is glued on after what it is glued to', () => {
    assert.deepEqual(
      arrange(glued, 'assembled').order.map(({ id }) => id),
      ['back', 'name'],
    );
  });

  it('takes pieces apart without one touching another', () => {
    const boxes = drawn(glued, 'apart');
    assert.ok(apart(boxes.get('name')!, boxes.get('back')!));
  });

  it('sets separate tags side by side even when assembled: they share no coordinates', () => {
    const tags = ['a', 'b', 'c', 'd', 'e'].map((id) => piece(id, [0, 0, 80, 30]));
    const boxes = [...drawn(sceneWith(...tags), 'assembled').values()];
    boxes.forEach((box, index) => {
      for (const other of boxes.slice(index + 1)) assert.ok(apart(box, other));
    });
  });

  it('covers in its bounds what it draws', () => {
    const { bounds } = arrange(glued, 'apart');
    for (const box of drawn(glued, 'apart').values()) {
      assert.ok(box[0] >= bounds[0] && box[1] >= bounds[1] && box[2] <= bounds[2] && box[3] <= bounds[3]);
    }
  });

  it('ends where pieces are glued in a circle', () => {
    const scene = sceneWith(piece('a', [0, 0, 1, 1], 'b'), piece('b', [0, 0, 1, 1], 'a'));
    assert.deepEqual(
      glueChain(scene, scene.pieces[0]!).map(({ id }) => id),
      ['b'],
    );
    assert.equal(arrange(scene, 'assembled').order.length, 2);
  });

  it('manages without any piece', () => {
    assert.deepEqual(arrange(sceneWith(), 'apart').groups, []);
  });
});
