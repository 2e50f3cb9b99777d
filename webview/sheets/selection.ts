/** The piece that is selected, with its card beside it, and those that the cursor in the text lights up. */

import type { Units } from '../../src/core/units.ts';
import type { Card } from './card.ts';
import type { SheetCamera } from './camera.ts';
import type { PieceAt, SheetsDrawing } from './drawing.ts';
import { spokenPiece } from './words.ts';

/** What shows it. */
export interface SelectionShown {
  readonly stage: HTMLElement;
  readonly drawing: SheetsDrawing;
  readonly camera: SheetCamera;
  readonly card: Card;
}

export interface SelectionHost {
  /** Id of the selected piece, which may not be there any more. */
  selected(): string | undefined;
  keep(id: string | undefined): void;
  /** Whether the user has chosen what is in view. */
  hasOwnView(): boolean;
  units(): Units;
  announce(words: string): void;
  /** Shows its place in the text. */
  reveal(piece: string, focus: boolean): void;
}

export class Selection {
  constructor(
    private readonly shown: SelectionShown,
    private readonly host: SelectionHost,
  ) {}

  get piece(): PieceAt | undefined {
    const id = this.host.selected();
    return id === undefined ? undefined : this.shown.drawing.get(id);
  }

  /** `byHand`: the user selected it, so the highlight of the editor's cursor ends. */
  select(id: string | undefined, byHand = true): void {
    const { drawing, stage, card } = this.shown;
    const piece = id === undefined ? undefined : drawing.get(id);
    this.host.keep(piece?.piece.id);
    if (byHand) drawing.light([]);
    const element = drawing.select(piece?.piece.id);
    if (element === undefined) stage.removeAttribute('aria-activedescendant');
    else stage.setAttribute('aria-activedescendant', element);
    card.show(piece, this.host.units());
    this.placeCard();
  }

  /** Selects the next or previous piece, counted from the selected one or from the index `from`. */
  step(by: 1 | -1, from?: number): void {
    const { drawing, camera } = this.shown;
    const { ids } = drawing;
    if (ids.length === 0) return;
    const at = from ?? ids.indexOf(this.host.selected() ?? '');
    const start = at < 0 && by < 0 ? 0 : at;
    const id = ids[(start + by + ids.length) % ids.length]!;
    this.select(id);
    const piece = drawing.get(id)!;
    camera.show(drawing.boxOf(piece));
    this.host.announce(spokenPiece(piece.piece, this.host.units()));
    this.reveal(false);
  }

  /** The card is higher in a narrow page, and never lies on the piece that it tells of. */
  placeCard(): void {
    const { drawing, camera, card } = this.shown;
    const before = card.height;
    this.measureCard();
    if (card.height !== before && !this.host.hasOwnView()) camera.follow();
    const at = this.piece;
    if (at) card.keepOff(camera.bottomOf(drawing.boxOf(at)));
  }

  /** By any piece: what the card says of one takes as much room as of another. */
  measureCard(): void {
    const { drawing, card } = this.shown;
    const [first] = drawing.ids;
    card.measure(first === undefined ? undefined : drawing.get(first), this.host.units());
  }

  reveal(focus: boolean): void {
    const id = this.host.selected();
    if (id !== undefined) this.host.reveal(id, focus);
  }

  light(ids: readonly string[]): void {
    const { drawing, camera } = this.shown;
    drawing.light(ids);
    const shown = ids.flatMap((id) => drawing.get(id) ?? []);
    const isSeen = shown.some((piece) => camera.sees(drawing.boxOf(piece)));
    if (shown[0] && !isSeen) camera.show(drawing.boxOf(shown[0]));
  }
}
