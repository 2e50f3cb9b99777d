import assert from 'node:assert/strict';
import { sceneMessage } from '../../page/scenes.ts';
import { arrange } from '../../../webview/preview/scene/arrange.ts';
import { added, changeText, roundedToStep } from '../../../webview/preview/drag/drag-steps.ts';
import { cross, restText, snap } from '../../../webview/preview/drag/snapping.ts';
import { snapLines } from '../../../webview/preview/drag/snap-lines.ts';
import type { Box } from '../../../webview/common/camera/viewport.ts';

describe('A thing that is moved', () => {
  it('comes to rest on the nearest line within reach, in each direction by itself', () => {
    const lines = [...cross([10, 20], 'middle'), ...cross([10.6, 40], 'balance')];
    const at = snap([10.5, 20.2], lines, 0.75);
    assert.deepEqual(
      at.by.map((mm) => Math.round(mm * 1000) / 1000),
      [0.1, -0.2],
    );
    assert.deepEqual(
      at.lines.map(({ along, name }) => [along, name]),
      [
        ['x', 'balance'],
        ['y', 'middle'],
      ],
    );
    assert.deepEqual(snap([10.5, 20.2], lines, -1), { by: [0, 0], lines: [] });
  });

  it('finds the middle and balance of the rest of its piece, and where it began', () => {
    const scene = sceneMessage().scene!;
    const boxes: Record<string, Box> = { 'back/body-0': [0, -30, 80, 0], 'name/body-0': [12, -25, 68, -9] };
    const lines = (id: string, box: Box) => {
      const grip = scene.grips.find((each) => each.id === id)!;
      return snapLines(scene, arrange(scene, 'assembled'), grip, box, (shape) => boxes[shape]).map(
        ({ along, at, name }) => `${name} ${along} ${at}`,
      );
    };
    // Its hanger was nudged 1 mm to the right.
    assert.deepEqual(lines('hanger', [3, -17, 7, -13]), [
      ...['middle x 40', 'middle y -15', 'balance x 40.5', 'balance y -15'],
      ...['start x 4', 'start y -15'],
    ]);
    // All there is of its piece: what counts is what it is glued on.
    assert.deepEqual(lines('word', [12, -25, 68, -9]).slice(0, 2), ['middle x 40', 'middle y -15']);
  });

  it('goes in steps that are round in the units of the spec', () => {
    assert.equal(roundedToStep(3.14159, 'mm'), 3.1);
    assert.equal(roundedToStep(-0.04, 'mm'), 0);
    // 0.005 in = 0.127 mm.
    assert.equal(roundedToStep(0.2, 'in'), 0.254);
  });

  it('is told in words', () => {
    assert.equal(changeText({ kind: 'move', right: -2, up: 0.5 }, 'mm'), 'left 2.0 mm, up 0.5 mm');
    assert.equal(changeText({ kind: 'move', right: 0, up: 0 }, 'mm'), 'where it was');
    assert.equal(changeText({ kind: 'size', axis: 'height', by: -25.4 }, 'in'), 'height − 1 in');
    const [upright, level] = cross([4, -15], 'start');
    assert.deepEqual(restText([level!]), ['level with where it began']);
    assert.deepEqual(restText([upright!]), ['in line with where it began']);
    assert.deepEqual(restText([upright!, level!]), ['where it began']);
    assert.deepEqual(restText([...cross([0, 0], 'middle')]), ['middle']);
  });

  it('adds up press by press, but not what is of another kind', () => {
    const right = { kind: 'move', right: 0.1, up: 0 } as const;
    const wider = { kind: 'size', axis: 'width', by: 1 } as const;
    assert.deepEqual(added(added(right, right), right), { kind: 'move', right: 0.3, up: 0 });
    assert.equal(added(right, wider), wider);
    assert.equal(added({ ...wider, axis: 'height' }, wider), wider);
  });
});
