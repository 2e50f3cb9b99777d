/** Messages in place of the drawing or over it: that there is none yet, or that it is out of date. */

import type { SceneMessage } from '../../../src/protocol/preview.ts';
import type { ScenePin } from '../../../src/protocol/scene.ts';
import { byId, setText } from '../../common/dom.ts';

export class Notices {
  private readonly banner = byId('banner');
  private readonly bannerText = this.banner.querySelector('span')!;
  private readonly bannerButton = this.banner.querySelector('button')!;
  private readonly empty = byId('empty');
  private readonly emptyButton = this.empty.querySelector('button')!;
  private problem: ScenePin | undefined;

  constructor(reveal: (offset: number, focus: boolean) => void) {
    for (const button of [this.bannerButton, this.emptyButton]) {
      button.addEventListener('click', () => {
        if (this.problem) reveal(this.problem.source, true);
      });
    }
  }

  show({ scene, stale, pins }: SceneMessage): void {
    this.problem = pins.find((pin) => pin.severity === 'error') ?? pins[0];
    const line = this.problem?.line;
    const isOld = stale && isDrawn(scene);
    document.body.classList.toggle('is-stale', isOld);

    this.banner.hidden = !isOld;
    setText(this.bannerText, 'Out of date: the spec has a problem');
    setText(this.bannerButton, line === undefined ? '' : `line ${line}`);
    this.bannerButton.hidden = line === undefined;

    this.empty.hidden = isDrawn(scene);
    this.emptyButton.hidden = !this.problem;
    setText(this.emptyButton, this.problem ? `Line ${this.problem.line}: ${this.problem.message}` : '');
  }
}

/** Whether there is anything to see: a spec without pieces makes an empty drawing. */
export function isDrawn(scene: SceneMessage['scene']): boolean {
  return scene !== undefined && scene.pieces.length + scene.ghosts.length > 0;
}
