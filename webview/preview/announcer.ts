/** Announces changes to screen readers, in one sentence and not at every keystroke. */

import type { SceneMessage } from '../../src/protocol/preview.ts';
import { captionOf } from './scene/caption.ts';
import { isDrawn } from './scene/notices.ts';
import { counted } from '../../src/core/units.ts';

const pauseMs = 2500;

export class Announcer {
  private timer: number | undefined;
  private spoken = '';

  constructor(private readonly region: HTMLElement) {}

  /** Announces at once, in answer to an action. */
  say(text: string): void {
    window.clearTimeout(this.timer);
    this.spoken = text;
    this.region.textContent = text;
  }

  /** Announces text that has stayed for the pause, unless it was the last one announced. */
  announce(text: string): void {
    window.clearTimeout(this.timer);
    if (text === this.spoken) return;
    this.timer = window.setTimeout(() => {
      this.spoken = text;
      this.region.textContent = text;
    }, pauseMs);
  }
}

export function sceneSentence({ scene, stale, pins }: SceneMessage): string {
  const state = !isDrawn(scene) ? 'Nothing to draw yet' : stale ? 'Drawing out of date' : 'Drawing up to date';
  const pieces = scene && isDrawn(scene) ? `, ${counted(scene.pieces.length, 'piece')}` : '';
  return `${state}${pieces}, ${pins.length === 0 ? 'no problems' : counted(pins.length, 'problem')}.`;
}

/** Number of problems that are read out one by one. */
const mostSpoken = 3;

/** Description of the tag for people who cannot see the drawing: its size, its material and its problems. */
export function wholeSentence(message: SceneMessage): string {
  const { scene, pins } = message;
  if (!scene) return sceneSentence(message);
  const spokenPins = pins.slice(0, mostSpoken);
  const rest = pins.length - spokenPins.length;
  return [
    `${captionOf(scene)}.`,
    sceneSentence(message),
    ...spokenPins.map(({ severity, line, message: text }) => `${severity}, line ${line}: ${text}`),
    ...(rest > 0 ? [`And ${rest} more.`] : []),
  ].join(' ');
}
