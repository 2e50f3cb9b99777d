import assert from 'node:assert/strict';
import type { Scene, ScenePiece } from '../../../src/protocol/scene.ts';
import { arrange, glueChain, leadersOf, type Arrangement } from '../../../webview/preview/scene/arrange.ts';
import type { Box } from '../../../webview/common/camera/viewport.ts';
import { sceneMessage } from '../../page/scenes.ts';

function piece(id: string, bounds: Box, glueTo?: string): ScenePiece {
  const [minX, minY, maxX, maxY] = bounds;
  const { parts, shapes, hangers, balance } = sceneMessage().scene!.pieces[0]!;
  return {
    ...{ id, title: id, shapes, parts, hangers, areas: [], balance, bounds, width: maxX - minX, height: maxY - minY },
    ...{ partCount: 1, holeCount: 0, source: 0 },
    ...(glueTo !== undefined && { glueTo }),
  };
}

const sceneWith = (...pieces: ScenePiece[]): Scene => ({ ...sceneMessage().scene!, pieces });

/** The boxes of the pieces where they are drawn. */
function drawn(scene: Scene, arrangement: Arrangement): Map<string, Box> {
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

  it('lifts every layer clear of all below it, straight up', () => {
    const layers = sceneWith(
      piece('leaf', [20, 10, 30, 20], 'name'),
      piece('name', [5, 5, 75, 25], 'back'),
      piece('back', [0, 0, 80, 30]),
      piece('other', [0, 0, 80, 30]),
    );
    const boxes = drawn(layers, 'exploded');
    const order = ['back', 'name', 'leaf'].map((id) => boxes.get(id)!);
    assert.ok(order[1]![3] < order[0]![1] && order[2]![3] < order[1]![1]);
    assert.deepEqual([order[1]![0] - order[0]![0], order[2]![0] - order[0]![0]], [5, 20]);
    assert.ok(apart(boxes.get('other')!, order[0]!) && apart(boxes.get('other')!, order[2]!));
    const arranged = arrange(layers, 'exploded');
    assert.equal(leadersOf(layers, arranged).length, 4);
    assert.deepEqual(
      arranged.groups.map(({ pieces }) => pieces.map(({ id }) => id)),
      [['back'], ['other']],
    );
  });

  it('keeps in place what is held there', () => {
    const held = new Map([
      ['name', [3, 4]],
      ['back', [1, 2]],
    ] as const);
    assert.deepEqual(arrange(glued, 'apart', held).offsets, held);
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
