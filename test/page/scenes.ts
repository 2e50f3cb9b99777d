/** A small tag drawn by hand: letters glued on a backing with a ring, and two warnings. */

import { operationColours } from '../../src/tag/operation-colours.ts';
import type { Scene, SceneGrip, ScenePart, ScenePiece, ScenePin } from '../../src/protocol/scene.ts';
import type { SceneMessage } from '../../src/protocol/preview.ts';

export const source = 'file:///bench/sorrel.tag.yaml';

const box = (x: number, y: number, width: number, height: number): string =>
  `M${x} ${y}l${width} 0 0 ${height} ${-width} 0z`;

/** `width`: of the backing, for scenes that differ by it alone. */
export function sceneMessage(version = 1, width = 80): SceneMessage {
  return {
    type: 'scene',
    source,
    version,
    fileName: 'sorrel.tag.yaml',
    scene: scene(width),
    stale: false,
    pins: pins(),
    accepted: [],
  };
}

function scene(width: number): Scene {
  return {
    title: 'Sorrel',
    units: 'mm',
    material: 'birch plywood',
    thickness: 3,
    colours: operationColours,
    pieces: [backing(width), letters()],
    ghosts: [],
    grips: grips(),
    bounds: [0, -30, width, 0],
  };
}

function grips(): SceneGrip[] {
  const grip = (id: string, parts: string[], more: Partial<SceneGrip> = {}): SceneGrip => {
    return { id, label: id, parts, free: true, moves: true, axes: [], sizedBy: '', nudge: [0, 0], ...more };
  };
  return [
    grip('backing', ['back/body-0', 'back/holes-0'], { free: false, axes: ['width', 'height'] }),
    grip('band', ['back/mark-0']),
    grip('hanger', ['back/hanger-0', 'back/hanger-hole-0'], { nudge: [1, 0] }),
    grip('word', ['name/body-0', 'name/holes-0'], {
      free: false,
      axes: ['width'],
      sizedBy: 'only its width is written; the rest follows',
    }),
  ];
}

function backing(width: number): ScenePiece {
  const outline = box(0, -30, width, 30);
  const hole = box(3, -17, 4, 4);
  return {
    id: 'back',
    title: 'Backing',
    shapes: [{ id: 'back/body-0', label: 'backing', data: outline, source: 100 }],
    parts: [
      part('back/mark-0', 'Engraving', 'engrave', box(20, -8, 40, 4), 110),
      part('back/mark-1', 'Score', 'score', box(12, -24, 56, 14), 120),
      part('back/hanger-hole-0', 'Hanger hole', 'cut-inner', hole, 130),
      part('back/outer', 'Outer cut', 'cut-outer', outline, 140),
    ],
    areas: [],
    hangers: [{ id: 'back/hanger-0', kind: 'hole', data: hole, centre: [5, -15], size: 4, length: 4, source: 130 }],
    balance: [width / 2 + 0.5, -15],
    bounds: [0, -30, width, 0],
    width,
    height: 30,
    partCount: 1,
    holeCount: 1,
    source: 90,
  };
}

function letters(): ScenePiece {
  const outline = box(12, -25, 20, 16) + box(36, -25, 32, 16);
  return {
    id: 'name',
    title: 'Letters',
    glueTo: 'back',
    shapes: [{ id: 'name/body-0', label: 'word', data: outline, source: 200 }],
    parts: [part('name/outer', 'Outer cut', 'cut-outer', outline, 210)],
    hangers: [],
    areas: [],
    balance: [41.4, -17],
    bounds: [12, -25, 68, -9],
    width: 56,
    height: 16,
    partCount: 2,
    holeCount: 0,
    source: 190,
  };
}

function part(id: string, label: string, operation: ScenePart['operation'], data: string, at: number): ScenePart {
  return { id, label, operation, data, source: at };
}

/** As the host sends them: errors first. */
function pins(): ScenePin[] {
  return [
    {
      id: 'unknown-font@shapes/word/font#0',
      code: 'unknown-font',
      severity: 'error',
      message: 'There is no such font.',
      points: [],
      line: 4,
      source: 40,
    },
    {
      id: 'weak-bridge@shapes/word#0',
      code: 'weak-bridge',
      severity: 'warning',
      message: 'The neck between two parts is 0.92 mm wide.',
      piece: 'name',
      points: [
        [32, -20],
        [32, -19.08],
      ],
      width: 0.92,
      line: 9,
      source: 205,
    },
  ];
}
