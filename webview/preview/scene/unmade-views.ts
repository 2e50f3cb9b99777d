/**
 * Drawn elements that are not made: shapes without a piece, and areas that other shapes are fitted into or placed on.
 */

import type { SceneArea, SceneGhost } from '../../../src/protocol/scene.ts';
import { setAttribute, setText, svg } from '../../common/dom.ts';
import type { ItemView } from '../../common/keyed.ts';
import { setTarget } from './target.ts';

export class GhostView implements ItemView<SceneGhost> {
  private readonly label = svg('title');
  /** Visible on dark stock as well. */
  private readonly halo = svg('path', { class: 'halo' });
  private readonly line = svg('path', { class: 'line' });
  readonly element = svg('g', { class: 'ghost' }, this.label, this.halo, this.line);

  update(ghost: SceneGhost): void {
    for (const path of [this.halo, this.line]) setAttribute(path, 'd', ghost.data);
    setText(this.label, ghost.label);
    setTarget(this.element, ghost);
  }
}

/** Invisible until a shape on it is worked on. */
export class AreaView implements ItemView<SceneArea> {
  private readonly label = svg('title');
  private readonly room = svg('path', { class: 'room' });
  private readonly casing = svg('path', { class: 'casing' });
  private readonly line = svg('path', { class: 'bounds' });
  /** Pointer target, wider than the line. */
  private readonly hold = svg('path', { class: 'hold' });
  readonly element = svg('g', { class: 'area' }, this.room, this.casing, this.line, this.hold);

  constructor() {
    this.hold.append(this.label);
  }

  update(area: SceneArea): void {
    setAttribute(this.room, 'd', area.room ?? '');
    for (const path of [this.casing, this.line, this.hold]) setAttribute(path, 'd', area.data);
    setText(this.label, area.label);
    setTarget(this.element, area);
  }
}
