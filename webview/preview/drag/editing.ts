/** Changing the tag by hand: combines the change, the selection, the pointer and the keyboard. */

import type { SceneMessage } from '../../../src/protocol/preview.ts';
import type { Arranged } from '../scene/arrange.ts';
import type { Units } from '../../../src/core/units.ts';
import { DragController, type DragHost } from './drag-controller.ts';
import { dragByKeys } from './drag-by-keys.ts';
import { dragByPointer } from './drag-by-pointer.ts';
import type { SceneView } from '../scene/scene-view.ts';
import { Selection } from './selection.ts';
import { snapLines } from './snap-lines.ts';
import type { Box, Size, Viewport } from '../../common/camera/viewport.ts';

export interface EditingHost extends Omit<DragHost, 'sizeOf'> {
  arranged(): Arranged | undefined;
  view(): Viewport;
}

export class Editing {
  readonly selection = new Selection();
  readonly drag: DragController;

  constructor(
    stage: HTMLElement,
    private readonly sceneView: SceneView,
    private readonly host: EditingHost,
  ) {
    const hold = (): void => {
      this.selection.begin();
      host.hold();
    };
    this.drag = new DragController({ ...host, hold, sizeOf: (axis) => this.selection.sizeOf(axis) });
    const units = (): Units => host.drawn()?.scene?.units ?? 'mm';
    dragByPointer(stage, this.drag, {
      units,
      scale: () => host.view().scale,
      box: () => this.selection.box(),
      lines: (grip) => {
        const [scene, arranged, box] = [host.drawn()?.scene, host.arranged(), this.selection.box()];
        return scene && arranged && box ? snapLines(scene, arranged, grip, box, (id) => sceneView.boxOf(id)) : [];
      },
    });
    dragByKeys(stage, this.drag, {
      units,
      undo: (type) => {
        const source = host.drawn()?.source;
        if (source !== undefined) host.send({ type, source });
      },
    });
  }

  /** Whether to draw the message. */
  receive(message: SceneMessage): boolean {
    return this.drag.receive(message);
  }

  draw(hidden: readonly string[]): void {
    const arranged = this.host.arranged();
    if (!arranged) return;
    this.sceneView.take(this.drag.grip?.id);
    this.selection.draw(this.drag, arranged, hidden);
  }

  /** Returns the space that its label takes. */
  follow(view: Viewport, stage: Size): Box[] {
    return this.selection.follow(view, stage);
  }
}
