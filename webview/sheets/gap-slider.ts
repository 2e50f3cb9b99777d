/**
 * A slider for a gap, in the unit of the text. It shows the gap as it is, round or not; keys and the pointer go to
 * round figures from there, which the browser's own steps cannot.
 */

import { mmPer, shortLength, type Units } from '../../src/core/units.ts';
import { html, setAttribute, setText } from '../common/dom.ts';

/** Of keys and of the pointer, in the unit itself; our own judgement. */
const steps: Readonly<Record<Units, number>> = { mm: 0.5, in: 0.01 };
/** Keys that are pressed one after the other are one change, or each would begin another layout. */
const pauseMs = 400;
/** Steps by each key, as browsers have them. */
const keySteps: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
  PageUp: 10,
  PageDown: -10,
};

export class GapSlider {
  private readonly output = html('output');
  private readonly input = html('input', { type: 'range', min: '0', step: 'any' });
  private waiting: ReturnType<typeof setTimeout> | undefined;
  readonly element: HTMLElement;

  constructor(
    stock: string,
    private readonly units: Units,
    private readonly changed: (mm: number) => void,
  ) {
    const name = html('span', {}, stock === '' ? 'Gap' : `Gap on ${stock}`);
    this.element = html('label', { title: 'Material left between two pieces' }, name, this.input, this.output);
    this.input.addEventListener('input', () => {
      this.set(nearestRound(this.input.valueAsNumber, steps[units]));
    });
    this.input.addEventListener('change', () => {
      this.tell();
    });
    this.input.addEventListener('blur', () => {
      if (this.waiting !== undefined) this.tell();
    });
    this.input.addEventListener('keydown', (event) => {
      this.onKey(event);
    });
  }

  /** In mm. What is being changed by keys stays. */
  show(gap: number, most: number): void {
    if (this.waiting !== undefined) return;
    setAttribute(this.input, 'max', tidy(most / mmPer[this.units]));
    this.set(gap / mmPer[this.units]);
  }

  private set(value: number): void {
    this.input.value = tidy(value);
    const text = shortLength(this.input.valueAsNumber * mmPer[this.units], this.units);
    setText(this.output, text);
    setAttribute(this.input, 'aria-valuetext', text);
  }

  private onKey(event: KeyboardEvent): void {
    const by = keySteps[event.key];
    const end = event.key === 'Home' ? 0 : event.key === 'End' ? Number(this.input.max) : undefined;
    if ((by === undefined && end === undefined) || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    this.set(end ?? roundBeyond(this.input.valueAsNumber, by!, steps[this.units]));
    clearTimeout(this.waiting);
    this.waiting = setTimeout(() => {
      this.tell();
    }, pauseMs);
  }

  private tell(): void {
    clearTimeout(this.waiting);
    this.waiting = undefined;
    this.changed(Number(tidy(this.input.valueAsNumber * mmPer[this.units])));
  }
}

/** The next round value, or so many further, in the direction. */
function roundBeyond(value: number, by: number, step: number): number {
  const slack = by > 0 ? 1e-6 : -1e-6;
  const passed = by > 0 ? Math.floor(value / step + slack) : Math.ceil(value / step + slack);
  return Math.max(0, (passed + by) * step);
}

function nearestRound(value: number, step: number): number {
  return Math.round(value / step) * step;
}

/** Fine enough for either unit, and free of the noise of floating point. */
function tidy(value: number): string {
  return String(Number(value.toFixed(4)));
}
