/**
 * What the person has taken hold of and is changing. The change is tried by the host while it grows, and written into the text
 * once it is made; what is drawn in between is a trial, and may lag behind the hand.
 */

import type { HandChange, SceneGrip, SceneMessage, ToHost } from '../../../src/protocol/preview.ts';
import { changeText, isNothing } from './drag-steps.ts';
import type { SnapLine } from './snapping.ts';
import type { XY } from '../../common/camera/viewport.ts';

export interface HandHost {
  drawn(): SceneMessage | undefined;
  send(message: ToHost): void;
  say(text: string): void;
  /** A change begins: what is drawn must not slide away under the hand. */
  hold(): void;
  /** The hand has let go. */
  release(): void;
  /** Something about the hand is to be drawn anew. */
  changed(): void;
  /** Of what is taken hold of, in mm, as it is drawn now. */
  sizeOf(axis: 'width' | 'height'): number | undefined;
}

/** A trial that has not come back after so long, in ms, is not waited for. */
const patienceMs = 400;

export class Hand {
  private id: string | undefined;
  /** On its way, from what the text says. */
  private change: HandChange | undefined;
  /** How much of it is in what is drawn. */
  private tried: HandChange | undefined;
  /** When the trial that is not on the screen yet was asked for. */
  private askedAt: number | undefined;
  private isMaking = false;
  /** What came while the one before was being written. */
  private next: { readonly change: HandChange; isMade: boolean } | undefined;
  private snapped: readonly SnapLine[] = [];
  /** It was asked to move what cannot be moved. */
  private isRefused = false;

  constructor(private readonly host: HandHost) {}

  get grips(): readonly SceneGrip[] {
    return this.host.drawn()?.scene?.grips ?? [];
  }

  get grip(): SceneGrip | undefined {
    return this.grips.find(({ id }) => id === this.id);
  }

  get isChanging(): boolean {
    return this.change !== undefined && !this.isMaking;
  }

  get lines(): readonly SnapLine[] {
    return this.snapped;
  }

  /** How far it is ahead of what is drawn, in mm, y down. */
  get shift(): XY {
    if (this.change?.kind !== 'move') return [0, 0];
    const { right = 0, up = 0 } = this.tried?.kind === 'move' ? this.tried : {};
    return [this.change.right - right, up - this.change.up];
  }

  /** What is being changed, in words; `undefined` while nothing is. */
  get words(): string | undefined {
    const { change } = this;
    const rest = this.snapped.map(({ name }) => ` · ${name}`);
    if (change) return this.textOf(change) + [...new Set(rest)].join('');
    return this.isRefused && this.grip ? nothingToMove(this.grip) : undefined;
  }

  select(id: string | undefined): void {
    if (id === this.id) return;
    if (this.isChanging) this.make();
    this.id = id;
    this.isRefused = false;
    const { grip } = this;
    if (grip) this.host.say(`${grip.label} selected. ${keysFor(grip)} Escape lets go.`);
    else this.host.release();
    this.host.changed();
  }

  /** Why what is taken hold of cannot be moved. */
  explain(): void {
    const { grip } = this;
    if (!grip || this.change) return;
    this.isRefused = true;
    this.host.say(`${nothingToMove(grip)}.`);
    this.host.changed();
  }

  try(change: HandChange, lines: readonly SnapLine[] = []): void {
    const { grip } = this;
    if (!grip) return;
    if (this.isMaking) {
      this.next = { change, isMade: false };
      return;
    }
    if (!this.change) this.host.hold();
    this.isRefused = false;
    this.change = change;
    this.snapped = lines;
    this.ask();
    this.host.changed();
  }

  /** What was last received is on the screen. */
  shown(): void {
    this.askedAt = undefined;
    if (this.isChanging && JSON.stringify(this.change) !== JSON.stringify(this.tried)) this.ask();
  }

  make(): void {
    if (this.next) {
      this.next.isMade = true;
      return;
    }
    const { change, grip } = this;
    if (!change || this.isMaking) return;
    if (!grip || isNothing(change)) {
      this.drop();
      return;
    }
    this.isMaking = true;
    this.snapped = [];
    this.send('make-change', change);
    this.host.say(`${grip.label}: ${this.textOf(change)}.`);
    this.host.changed();
  }

  drop(): void {
    this.next = undefined;
    if (!this.isChanging) return;
    this.forget();
    this.host.send({ type: 'drop-change', source: this.host.drawn()!.source });
    this.host.changed();
  }

  /** Whether the message is to be drawn: a trial of a change that was dropped is not. */
  receive({ trying }: SceneMessage): boolean {
    if (trying) {
      if (!this.change || trying.grip !== this.id) return false;
      this.tried = trying.change;
      return true;
    }
    // The text as it is: with the change made, or without it.
    this.forget();
    return true;
  }

  /** After the message has been drawn: what waited for it goes on from there. */
  goOn(): void {
    const { next } = this;
    if (!next || this.isMaking) return;
    this.next = undefined;
    this.try(next.change);
    if (next.isMade) this.make();
  }

  /** One trial at a time, and the next once that is on the screen: a slow computer is left the time to paint. */
  private ask(): void {
    const now = performance.now();
    if (this.askedAt !== undefined && now - this.askedAt < patienceMs) return;
    this.askedAt = now;
    this.send('try-change', this.change!);
  }

  private forget(): void {
    this.askedAt = undefined;
    this.change = undefined;
    this.tried = undefined;
    this.isMaking = false;
    this.snapped = [];
  }

  /** What is drawn may lag behind: the size that it leads to is that of what is drawn and what is missing. */
  private textOf(change: HandChange): string {
    const { units } = this.host.drawn()!.scene!;
    if (change.kind === 'move') return changeText(change, units);
    const drawn = this.host.sizeOf(change.axis);
    const tried = this.tried?.kind === 'size' && this.tried.axis === change.axis ? this.tried.by : 0;
    return changeText(change, units, drawn === undefined ? undefined : drawn + change.by - tried);
  }

  private send(type: 'try-change' | 'make-change', change: HandChange): void {
    const { source, version } = this.host.drawn()!;
    this.host.send({ type, source, version, grip: this.id!, change });
  }
}

function keysFor({ moves, axes }: SceneGrip): string {
  const sizes = axes.length > 0;
  if (moves)
    return `Arrow keys move it, with Shift by larger steps${sizes ? ', with Control they change its size' : ''}.`;
  return 'Everything else moves with it, so there is nothing to move; with Control the arrow keys change its size.';
}

function nothingToMove({ label }: SceneGrip): string {
  return `Everything else moves with ${label}: moving it would change nothing`;
}
