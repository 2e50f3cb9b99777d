/**
 * The selection and its change in progress. The host tries the change while it grows, and writes it into the text once
 * it is made; what is drawn in between is a trial, which may lag behind the pointer.
 */

import type { HandChange, SceneGrip } from '../../../src/protocol/scene.ts';
import type { SceneMessage, ToHost } from '../../../src/protocol/preview.ts';
import type { Axis } from './growth.ts';
import { changeText, isNothing } from './drag-steps.ts';
import { restText, type SnapLine } from './snapping.ts';
import type { XY } from '../../common/camera/viewport.ts';

export interface DragHost {
  drawn(): SceneMessage | undefined;
  send(message: ToHost): void;
  say(text: string): void;
  /** A change begins: the drawing must not move under the pointer. */
  hold(): void;
  /** The selection was cleared. */
  release(): void;
  /** Selection or change must be redrawn. */
  changed(): void;
  /** Size of the selection in mm, as drawn now. */
  sizeOf(axis: Axis): number | undefined;
}

/** Longest wait for a trial, in ms. */
const patienceMs = 400;

export class DragController {
  private id: string | undefined;
  /** The change in progress, relative to the text. */
  private change: HandChange | undefined;
  /** The change as far as the drawing shows it. */
  private tried: HandChange | undefined;
  /** Time of the request for a trial that is not on the screen yet. */
  private askedAt: number | undefined;
  private isMaking = false;
  /** A change that arrived while the previous one was being written. */
  private next: { readonly change: HandChange; isMade: boolean } | undefined;
  private snapped: readonly SnapLine[] = [];
  /** Why what the user last tried cannot be done. */
  private refusal: string | undefined;

  constructor(private readonly host: DragHost) {}

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

  /** Lead of the change over the drawing, in mm, y down. */
  get shift(): XY {
    if (this.change?.kind !== 'move') return [0, 0];
    const { right = 0, up = 0 } = this.tried?.kind === 'move' ? this.tried : {};
    return [this.change.right - right, up - this.change.up];
  }

  /** The same of a change of size: how much larger than drawn it is to be. */
  get growth(): { readonly axis: Axis; readonly by: number } | undefined {
    const { change, tried } = this;
    if (change?.kind !== 'size') return undefined;
    const { axis } = change;
    return { axis, by: change.by - (tried?.kind === 'size' && tried.axis === axis ? tried.by : 0) };
  }

  /** Description of the change in progress; `undefined` if there is none. */
  get words(): string | undefined {
    const { change } = this;
    if (change) return [this.textOf(change), ...restText(this.snapped)].join(' · ');
    return this.refusal;
  }

  select(id: string | undefined): void {
    if (id === this.id) return;
    if (this.isChanging) this.make();
    this.id = id;
    const { grip } = this;
    this.refusal = grip && !grip.moves && grip.axes.length === 0 ? sizedBy(grip) : undefined;
    if (grip) this.host.say(`${grip.label} selected. ${keysFor(grip)} Escape lets go.`);
    else this.host.release();
    this.host.changed();
  }

  /** Says why the selection cannot be moved, or why its size cannot be changed. */
  explain(what: HandChange['kind']): void {
    const { grip } = this;
    if (!grip || this.change) return;
    this.refusal = what === 'move' ? nothingToMove(grip) : sizedBy(grip);
    this.host.say(`${this.refusal}.`);
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
    this.refusal = undefined;
    this.change = change;
    this.snapped = lines;
    this.ask();
    this.host.changed();
  }

  /** The last message received has been painted. */
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

  /** Whether to draw the message: a trial of a change that was dropped is not. */
  receive({ trying }: SceneMessage): boolean {
    if (trying) {
      if (!this.change || trying.grip !== this.id) return false;
      this.tried = trying.change;
      return true;
    }
    // The present text, with the change made or without it.
    this.forget();
    return true;
  }

  /** Continues with a change that waited until the message was drawn. */
  goOn(): void {
    const { next } = this;
    if (!next || this.isMaking) return;
    this.next = undefined;
    this.try(next.change);
    if (next.isMade) this.make();
  }

  /** One trial at a time, and the next only once it is on the screen, so that a slow computer has time to paint. */
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

  /** The drawing may lag behind, so the resulting size is the drawn one plus the rest of the change. */
  private textOf(change: HandChange): string {
    const { units } = this.host.drawn()!.scene!;
    if (change.kind === 'move') return changeText(change, units);
    const drawn = this.host.sizeOf(change.axis);
    return changeText(change, units, drawn === undefined ? undefined : drawn + this.growth!.by);
  }

  private send(type: 'try-change' | 'make-change', change: HandChange): void {
    const { source, version } = this.host.drawn()!;
    this.host.send({ type, source, version, grip: this.id!, change });
  }
}

function keysFor(grip: SceneGrip): string {
  const { moves, axes } = grip;
  const sizes = axes.length > 0;
  if (moves)
    return `Arrow keys move it, with Shift by larger steps${sizes ? ', with Control they change its size' : ''}.`;
  if (!sizes) return `${sizedBy(grip)}.`;
  return 'Everything else moves with it, so there is nothing to move; with Control the arrow keys change its size.';
}

function sizedBy({ label, sizedBy: by }: SceneGrip): string {
  return `${label}: ${by}`;
}

function nothingToMove({ label }: SceneGrip): string {
  return `Everything else moves with ${label}: moving it would change nothing`;
}
