/** What making a tag needs beside its model: loaded files, the cache, and leave to go on. */

import type { Finding } from '../core/issue.ts';
import type { CurvePath } from '../geometry/curves.ts';
import type { Shape, TextGenerator } from '../spec/model.ts';
import type { FontFace } from '../text/font-face.ts';
import type { Checkpoint, StageCache } from './cache.ts';
import type { LeftOut } from './left-out.ts';
import type { DrawnShape } from './svg-drawing.ts';

export interface LoadedDrawing {
  /** Changes whenever the file's content does. */
  readonly id: string;
  readonly shapes: readonly DrawnShape[];
  /** Its strokes, for whoever wants lines. */
  readonly lines: readonly CurvePath[];
  /** What else the file has. */
  readonly leftOut: LeftOut;
}

/** Names a shape among those of the tags of a batch. */
export function sizeKey({ path }: Pick<Shape, 'path'>): string {
  return path.join('/');
}

export interface Resources {
  readonly cache: StageCache;
  /** Narrowest width of material that may be relied on, in mm. */
  readonly minWeb: number;
  /** `undefined`: could not be had, which has been reported. */
  font(text: TextGenerator): FontFace | undefined;
  drawing(file: string): LoadedDrawing | undefined;
  /** How many times its natural size a fitted shape is at the most, so that it is as large as on the other tags of its batch. */
  readonly sameSizes?: ReadonlyMap<string, number>;
  report(finding: Finding): void;
  /** Awaited between stages, and within the long ones. */
  readonly checkpoint: Checkpoint;
}
