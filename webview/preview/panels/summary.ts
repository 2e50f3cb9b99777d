/** Summary line at the foot of the page: size, number of pieces, problems. A press opens and closes the panel. */

import type { SceneMessage, Severity } from '../../../src/protocol/preview.ts';
import { arrange } from '../scene/arrange.ts';
import { html, setAttribute, setText, svg } from '../../common/dom.ts';
import { counted } from '../../../src/core/units.ts';
import { partsText, bothSizes } from '../../common/format.ts';
import { severityIcon, tickIcon } from '../../common/icons.ts';

const severities: readonly Severity[] = ['error', 'warning', 'info'];

export class Summary {
  private readonly size = html('span', { class: 'size' });
  /** Each of them is wholly there or, for want of room, not at all. The size in the other unit comes last. */
  private readonly facts = html('span', { class: 'facts' });
  private readonly well = html('span', { class: 'counter well' }, tickIcon(), html('span', {}, 'No problems'));
  private readonly checking = html('span', { class: 'counter well' });
  private readonly counters = severities.map((severity) => {
    const number = html('span');
    return { severity, number, element: html('span', { class: 'counter' }, severityIcon(severity), number) };
  });

  constructor(
    private readonly button: HTMLElement,
    toggle: () => void,
  ) {
    const chevron = svg('svg', { class: 'icon chevron', viewBox: '0 0 16 16', 'aria-hidden': 'true' });
    chevron.append(svg('path', { d: 'M4 6l4 4 4-4' }));
    button.append(
      chevron,
      this.size,
      this.facts,
      html('span', { class: 'counters' }, this.well, this.checking, ...this.counters.map(({ element }) => element)),
    );
    // Until something has been drawn, the number of problems is unknown.
    for (const element of [this.well, this.checking, ...this.counters.map((each) => each.element)])
      element.hidden = true;
    button.addEventListener('click', toggle);
  }

  /** `open`: everything is shown in the panel. */
  showOpen(open: boolean): void {
    setAttribute(this.button, 'aria-expanded', `${open}`);
    setAttribute(this.button, 'title', open ? 'Fold to one line' : 'Show pieces and job estimate');
  }

  patch({ scene, pins, stale, toCheck = 0 }: SceneMessage): void {
    const isWell = pins.length === 0 && !stale && scene !== undefined;
    this.well.hidden = !isWell || toCheck > 0;
    this.checking.hidden = !isWell || toCheck === 0;
    setText(this.checking, `Checking ${toCheck} more`);
    const [size = '', ...other] = scene ? overallSize(scene).split(/ (?=\()/) : ['No drawing'];
    setText(this.size, size);
    const counts = scene ? totals(scene) : [];
    this.facts.replaceChildren(
      ...counts.map((fact) => html('span', {}, fact)),
      ...other.map((size) => html('span', {}, size.slice(1, -1))),
    );
    for (const { severity, number, element } of this.counters) {
      const count = pins.filter((pin) => pin.severity === severity).length;
      element.hidden = count === 0;
      setText(number, `${count}`);
      setAttribute(element, 'aria-label', severity === 'info' ? `${count} info` : counted(count, severity));
    }
  }
}

type DrawnScene = NonNullable<SceneMessage['scene']>;

/** Size of what hangs together; separate tags have their own sizes in the list. */
function overallSize(scene: DrawnScene): string {
  const groups = arrange(scene, 'assembled').groups;
  const [minX, minY, maxX, maxY] = groups[0]?.bounds ?? [0, 0, 0, 0];
  return groups.length === 1 ? bothSizes(maxX - minX, maxY - minY, scene.units) : `${groups.length} separate tags`;
}

function totals({ pieces }: DrawnScene): string[] {
  const sum = (of: 'partCount' | 'holeCount'): number => pieces.reduce((total, piece) => total + piece[of], 0);
  const parts = partsText({ partCount: sum('partCount'), holeCount: sum('holeCount') }).split(' · ');
  return [...(pieces.length === 1 ? [] : [counted(pieces.length, 'piece')]), ...parts];
}
