/** Outcome of a fix, drawn over the present tag before it is applied, with the changes of size in words. */

import type { OutcomeMessage, OutcomePiece } from '../../../src/protocol/preview.ts';
import type { Scene } from '../../../src/protocol/scene.ts';
import type { Arranged } from './arrange.ts';
import { setAttribute, svg } from '../../common/dom.ts';
import { lengthText } from '../../../src/core/units.ts';
import { isSameLength } from '../../common/format.ts';
import type { Units } from '../../../src/core/units.ts';
import { KeyedList, type ItemView } from '../../common/keyed.ts';
import type { XY } from '../../common/camera/viewport.ts';

interface OutcomeAt extends OutcomePiece {
  readonly at: XY;
}

export class Outcome {
  /** In mm, among the pieces. */
  readonly element = svg('g', { class: 'outcome', 'aria-hidden': 'true' });
  private readonly list = new KeyedList<OutcomeAt>(this.element, () => new OutcomeView());

  show({ pieces }: OutcomeMessage, { offsets }: Arranged, hidden: readonly string[]): void {
    const placeOf = ({ id, glueTo }: OutcomePiece): XY => offsets.get(id) ?? offsets.get(glueTo ?? '') ?? [0, 0];
    const shown = pieces.filter(({ id }) => !hidden.includes(id));
    this.list.patch(shown.map((piece) => ({ ...piece, at: placeOf(piece) })));
  }

  hide(): void {
    this.list.patch([]);
  }
}

class OutcomeView implements ItemView<OutcomeAt> {
  private readonly fill = svg('path', { class: 'ghost-fill' });
  private readonly casing = svg('path', { class: 'ghost-casing' });
  private readonly line = svg('path', { class: 'ghost-line' });
  readonly element = svg('g', {}, this.fill, this.casing, this.line);

  update({ solid, marks, at: [x, y] }: OutcomeAt): void {
    setAttribute(this.fill, 'd', solid);
    for (const path of [this.casing, this.line]) setAttribute(path, 'd', solid + marks);
    this.element.style.translate = `${x}px ${y}px`;
  }
}

/** "94.0 × 32.7 mm → 95.2 × 33.9 mm", with the name of the piece if there are several; or "same size". */
export function sizeChange(scene: Scene, pieces: readonly OutcomePiece[]): string {
  const { units } = scene;
  const changes = pieces.flatMap(({ id, title, bounds }) => {
    const before = scene.pieces.find((piece) => piece.id === id);
    const [width, height] = [bounds[2] - bounds[0], bounds[3] - bounds[1]];
    const name = scene.pieces.length > 1 || pieces.length > 1 ? `${title}: ` : '';
    if (!before) return [`${name}new, ${crossed(width, height, units)}`];
    if (isSameLength(before.width, width, units) && isSameLength(before.height, height, units)) return [];
    return [`${name}${crossed(before.width, before.height, units)} → ${crossed(width, height, units)}`];
  });
  const gone = scene.pieces.filter(({ id }) => !pieces.some((piece) => piece.id === id));
  const all = [...changes, ...gone.map(({ title }) => `${title}: gone`)];
  return all.length > 0 ? all.join(' · ') : 'same size';
}

function crossed(width: number, height: number, units: Units): string {
  const [first] = lengthText(width, units).split(' ');
  return `${first!} × ${lengthText(height, units)}`;
}
