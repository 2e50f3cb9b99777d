/** Everything that making a tag needs besides its model: loaded files, the cache, and checkpoints. */

import type { Finding } from '../core/issue.ts';
import type { CurvePath } from '../geometry/curves.ts';
import type { Shape, TextGenerator } from '../spec/model/shape-model.ts';
import type { FontFace } from '../text/font-face.ts';
import type { Checkpoint, StageCache } from './cache.ts';
import type { LeftOut } from './drawing/left-out.ts';
import type { DrawnShape } from './drawing/svg-drawing.ts';

export interface LoadedDrawing {
  /** Changes whenever the content of the file does. */
  readonly id: string;
  readonly shapes: readonly DrawnShape[];
  /** Its strokes, for use as lines. */
  readonly lines: readonly CurvePath[];
  /** Content that is not used, counted. */
  readonly leftOut: LeftOut;
}

/** Identifies a shape among the tags of a batch. */
export function sizeKey({ path }: Pick<Shape, 'path'>): string {
  return path.join('/');
}

export interface Resources {
  readonly cache: StageCache;
  /** Narrowest width of material to rely on, in mm. */
  readonly minWeb: number;
  /** `undefined` if it could not be loaded, which has been reported. */
  font(text: TextGenerator): FontFace | undefined;
  drawing(file: string): LoadedDrawing | undefined;
  /** Largest scale of each fitted shape over its natural size, as on the other tags of its batch; by `sizeKey`. */
  readonly sameSizes?: ReadonlyMap<string, number>;
  report(finding: Finding): void;
  /** Awaited between stages, and within the long ones. */
  readonly checkpoint: Checkpoint;
}
