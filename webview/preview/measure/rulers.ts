/** Rulers along the top and left of the stage, in the spec's units, from the top left corner of the drawing. */

import { setAttribute, setText, svg } from '../../common/dom.ts';
import type { Units } from '../../../src/core/units.ts';
import { KeyedList, type ItemView } from '../../common/keyed.ts';
import { rulerMarks, type RulerMark } from './ruler-marks.ts';
import { toScreen, type Size, type Viewport, type XY } from '../../common/camera/viewport.ts';

export const rulerPx = 18;

const markPx = { figure: rulerPx, half: 7, fine: 4 } as const;

export class Rulers {
  readonly element = svg('g', { class: 'rulers', 'aria-hidden': 'true' });
  private readonly across = new Ruler('across');
  private readonly down = new Ruler('down');
  private readonly unit = svg('text', { class: 'unit', x: `${rulerPx / 2}`, y: '12', 'text-anchor': 'middle' });

  constructor(stage: HTMLElement) {
    const corner = svg('rect', { class: 'strip', width: `${rulerPx}`, height: `${rulerPx}` });
    this.element.append(this.across.element, this.down.element, corner, this.unit);
    stage.addEventListener('pointermove', (event) => {
      const { left, top } = stage.getBoundingClientRect();
      this.across.point(event.clientX - left);
      this.down.point(event.clientY - top);
    });
    stage.addEventListener('pointerleave', () => {
      for (const ruler of [this.across, this.down]) ruler.point(-1);
    });
  }

  /** `zero`: where both begin, in mm. */
  follow(zero: XY, units: Units, view: Viewport, stage: Size): void {
    setText(this.unit, units);
    const [x, y] = toScreen(view, stage, zero);
    this.across.follow(x, stage.width, view.scale, units);
    this.down.follow(y, stage.height, view.scale, units);
  }
}

interface RulerFigure {
  readonly id: string;
  readonly text: string;
  readonly at: number;
}

class Ruler {
  private readonly strip = svg('rect', { class: 'strip' });
  private readonly marks = svg('path', { class: 'marks' });
  private readonly pointer = svg('path', { class: 'pointer' });
  private readonly figures = svg('g');
  readonly element = svg('g', {}, this.strip, this.marks, this.figures, this.pointer);
  private readonly list = new KeyedList<RulerFigure>(this.figures, () => new RulerFigureView(this.along));

  constructor(private readonly along: 'across' | 'down') {}

  /** `zero` and `length` in px. */
  follow(zero: number, length: number, scale: number, units: Units): void {
    const isAcross = this.along === 'across';
    setAttribute(this.strip, 'width', `${isAcross ? length : rulerPx}`);
    setAttribute(this.strip, 'height', `${isAcross ? rulerPx : length}`);
    const marks = rulerMarks((rulerPx - zero) / scale, (length - zero) / scale, scale, units);
    const px = ({ at }: RulerMark): number => Math.round(zero + at * scale) + 0.5;
    const line = (mark: RulerMark): string =>
      isAcross ? `M${px(mark)} ${rulerPx}v${-markPx[mark.rank]}` : `M${rulerPx} ${px(mark)}h${-markPx[mark.rank]}`;
    setAttribute(this.marks, 'd', marks.map(line).join(''));
    const numbered = marks.filter(({ rank }) => rank === 'figure');
    this.list.patch(numbered.map((mark) => ({ id: mark.text, text: mark.text, at: px(mark) })));
  }

  point(at: number): void {
    const d = this.along === 'across' ? `M${at} 0v${rulerPx}` : `M0 ${at}h${rulerPx}`;
    setAttribute(this.pointer, 'd', at < rulerPx ? '' : d);
  }
}

class RulerFigureView implements ItemView<RulerFigure> {
  readonly element = svg('text');

  constructor(private readonly along: 'across' | 'down') {}

  update({ text, at }: RulerFigure): void {
    setText(this.element, text);
    const place = this.along === 'across' ? `translate(${at + 3} 9)` : `translate(9 ${at - 3}) rotate(-90)`;
    setAttribute(this.element, 'transform', place);
  }
}
