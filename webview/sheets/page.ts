/** The sheets page: the host's messages, the user's view, and the user's requests. */

import type { FromSheetsPage, SheetsScene, ToSheetsPage } from '../../src/protocol/sheets.ts';
import { byId, setText } from '../common/dom.ts';
import { steer } from '../common/camera/viewport-input.ts';
import { roving } from '../common/roving.ts';
import { SheetsLowerPanel } from './lower-panel.ts';
import { Card } from './card.ts';
import { Comparison } from './comparison.ts';
import { Controls } from './controls.ts';
import { draftOf, pinnedPlace } from './draft.ts';
import { SheetsDrawing } from './drawing.ts';
import type { PieceAt } from './drawing.ts';
import { PieceDrag } from './piece-drag.ts';
import { showEmptyState } from './empty-state.ts';
import { listenToKeys, listenToZoom } from './listening.ts';
import { Progress } from './progress.ts';
import { SheetCamera } from './camera.ts';
import type { SheetsState } from './state.ts';
import { PieceTip } from './tip.ts';
import { byHand, exporting, spokenPiece, spokenPlace } from './words.ts';

export interface SheetsPageHost {
  send(message: FromSheetsPage): void;
  save(state: SheetsState): void;
}

export class SheetsPage {
  private readonly stage = byId('stage');
  private readonly drawing: SheetsDrawing;
  private readonly camera: SheetCamera;
  private readonly lowerPanel: SheetsLowerPanel;
  private readonly card: Card;
  private readonly drag: PieceDrag;
  private readonly progress: Progress;
  private readonly controls: Controls;
  private readonly comparison = new Comparison();
  /** The layout drawn, which is the present one or the one that was kept. */
  private scene: SheetsScene | undefined;
  private now: SheetsScene | undefined;
  private keptScene: SheetsScene | undefined;
  private showsKept = false;

  constructor(
    private readonly host: SheetsPageHost,
    private state: SheetsState,
  ) {
    const element = document.querySelector<SVGElement>('#drawing')!;
    this.drawing = new SheetsDrawing(element);
    this.camera = new SheetCamera(this.stage, byId('world'), {
      kept: () => this.state.view,
      keep: (view) => {
        this.keep({ ...this.state, view });
      },
      box: () => this.drawing.arranged.bounds,
      covered: () => this.card.height,
      rested: (scale) => {
        this.drawing.seenAt(scale);
        this.placeCard();
      },
    });
    this.lowerPanel = new SheetsLowerPanel(this.state.open, {
      opened: (open) => {
        this.keep({ ...this.state, open });
      },
      show: (problem) => {
        this.host.send({ type: 'show', ...problem });
      },
    });
    this.drag = new PieceDrag(this.stage, {
      selected: () => (this.scene?.pins ? this.selected() : undefined),
      places: () => this.drawing.arranged.places,
      units: () => this.scene?.units ?? 'mm',
      scale: () => this.camera.view().scale,
      show: (draft) => {
        this.drawing.hold(draft);
        const at = draft ? { piece: { ...draft.piece, box: draft.box }, place: draft.place } : this.selected();
        if (at) this.card.move(at, this.scene!.units);
      },
      pin: (place, { piece, box, place: on }) => {
        this.announce(spokenPlace({ ...piece, box, fixed: true }, on.sheet, this.scene!.units));
        this.host.send({ type: 'pin', places: [place] });
      },
    });
    this.card = new Card({
      pins: () => this.scene?.pins ?? false,
      whyNot: () => this.whyNot(),
      pin: () => {
        this.pin();
      },
      turn: () => {
        this.drag.turn();
      },
      reveal: () => {
        this.reveal(true);
      },
      close: () => {
        this.select(undefined);
        this.stage.focus();
      },
    });
    this.progress = new Progress({
      stop: () => {
        this.host.send({ type: 'stop' });
      },
      again: () => {
        this.host.send({ type: 'again' });
      },
      pinAll: () => {
        this.pinAll();
      },
      pins: () => this.now?.pins ?? false,
    });
    this.controls = new Controls({
      gap: (stock, gap) => {
        this.host.send({ type: 'gap', stock, gap });
      },
      effort: (effort) => {
        this.host.send({ type: 'effort', effort });
      },
      pinAll: () => {
        this.pinAll();
      },
      unpinAll: () => {
        const pinned = this.pieces().filter(({ piece }) => piece.fixed);
        this.host.send({ type: 'unpin', pieces: pinned.map(({ piece }) => piece.id) });
      },
      keep: () => {
        this.host.send({ type: 'keep' });
      },
      forget: () => {
        this.host.send({ type: 'forget' });
      },
      restore: () => {
        this.host.send({ type: 'restore' });
        this.compare(false);
      },
    });
    new PieceTip(
      this.stage,
      (id) => this.scene && this.drawing.get(id),
      () => this.scene!.units,
    );
    this.listen();
  }

  receive(message: ToSheetsPage): void {
    switch (message.type) {
      case 'light':
        this.light(message.pieces);
        break;
      case 'busy':
        this.progress.show('busy');
        break;
      case 'kept':
        this.drawing.addShapes(message.shapes);
        this.keptScene = message.scene;
        byId('compare').hidden = !message.scene;
        this.compare(this.showsKept);
        break;
      case 'sheets':
        this.drawing.addShapes(message.shapes);
        this.now = message.scene;
        document.body.dataset['shows'] = 'sheets';
        this.progress.show(message.state);
        this.compare(this.showsKept);
        break;
      case 'waiting':
      case 'nothing':
      case 'sizes':
        this.progress.show('done');
        document.body.dataset['shows'] = message.type;
        showEmptyState(message, (size) => {
          this.host.send({ type: 'size', ...size });
        });
        break;
    }
  }

  /** Shows one layout or the other. The kept one cannot be changed by hand. */
  private compare(showsKept: boolean): void {
    this.showsKept = showsKept && this.keptScene !== undefined;
    const scene = this.showsKept ? { ...this.keptScene!, pins: false } : this.now;
    for (const button of byId('compare').querySelectorAll('button'))
      button.setAttribute('aria-pressed', `${(button.dataset['shown'] === 'kept') === this.showsKept}`);
    if (!scene) return;
    const differences = this.comparison.show(this.keptScene?.figures ?? [], this.now?.figures ?? []);
    if (differences !== '') this.announce(differences);
    byId('export').title = this.showsKept ? exporting.kept : exporting.now;
    this.scene = scene;
    this.drag.forget();
    this.drawing.draw(scene);
    setText(byId('title'), scene.title);
    setText(byId('by-hand'), this.whyNot() ?? byHand.moved);
    this.lowerPanel.patch(scene);
    this.controls.show(scene, this.keptScene !== undefined, this.showsKept);
    this.card.measure(this.pieces()[0], scene.units);
    this.drawing.seenAt(this.camera.view().scale);
    this.camera.follow();
    this.select(this.state.selected, false);
  }

  private pieces(): PieceAt[] {
    return this.drawing.ids.map((id) => this.drawing.get(id)!);
  }

  private selected(): PieceAt | undefined {
    return this.state.selected === undefined ? undefined : this.drawing.get(this.state.selected);
  }

  private pinAll(): void {
    const free = this.pieces().filter(({ piece }) => !piece.fixed);
    this.host.send({ type: 'pin', places: free.map(({ piece, place }) => pinnedPlace(draftOf(piece, place))) });
  }

  private keep(state: SheetsState): void {
    this.state = state;
    this.host.save(state);
  }

  private listen(): void {
    const { stage } = this;
    stage.addEventListener('click', ({ target }) => {
      const id = (target as Element).closest<SVGElement>('.piece')?.dataset['piece'];
      this.select(id);
      if (id !== undefined) this.reveal(false);
    });
    stage.addEventListener('dblclick', () => {
      this.reveal(true);
    });
    listenToKeys(stage, {
      undo: (step) => {
        this.host.send({ type: 'undo', step });
      },
      step: (by, from) => {
        this.step(by, from);
      },
      reveal: () => {
        this.reveal(true);
      },
      pin: () => {
        this.pin();
      },
      turn: (quarters) => {
        if (this.scene?.pins) this.drag.turn(quarters);
        else this.tellWhyNot();
      },
      clear: () => {
        this.select(undefined);
      },
    });
    steer(stage, this.camera);
    listenToZoom(this.camera);
    for (const button of byId('compare').querySelectorAll('button')) {
      button.addEventListener('click', () => {
        this.compare(button.dataset['shown'] === 'kept');
      });
    }
    byId('export').addEventListener('click', () => {
      this.host.send({ type: 'export' });
    });
    roving(byId('tools'));
  }

  /** Selects the next or previous piece, counted from the selected one or from the index `from`. */
  private step(by: 1 | -1, from?: number): void {
    const { ids } = this.drawing;
    if (ids.length === 0) return;
    const at = from ?? ids.indexOf(this.state.selected ?? '');
    const start = at < 0 && by < 0 ? 0 : at;
    const id = ids[(start + by + ids.length) % ids.length]!;
    this.select(id);
    const piece = this.drawing.get(id)!;
    this.camera.show(this.drawing.boxOf(piece));
    this.announce(spokenPiece(piece.piece, this.scene!.units));
    this.reveal(false);
  }

  /** `byHand`: the user selected it, so the highlight of the editor's cursor ends. */
  private select(id: string | undefined, byHand = true): void {
    const piece = id === undefined ? undefined : this.drawing.get(id);
    this.keep({ ...this.state, selected: piece?.piece.id });
    if (byHand) this.drawing.light([]);
    const element = this.drawing.select(piece?.piece.id);
    if (element === undefined) this.stage.removeAttribute('aria-activedescendant');
    else this.stage.setAttribute('aria-activedescendant', element);
    this.card.show(piece, this.scene?.units ?? 'mm');
    this.placeCard();
  }

  /** It is higher in a narrow page, and never lies on the piece that it tells of. */
  private placeCard(): void {
    const before = this.card.height;
    this.card.measure(this.pieces()[0], this.scene?.units ?? 'mm');
    if (this.card.height !== before && !this.state.view) this.camera.follow();
    const at = this.selected();
    if (at) this.card.keepOff(this.camera.bottomOf(this.drawing.boxOf(at)));
  }

  /** Pins the piece where it lies, or unpins it. */
  private pin(): void {
    const at = this.selected();
    if (!this.scene?.pins) this.tellWhyNot();
    if (!at || !this.scene?.pins) return;
    const fixed = !at.piece.fixed;
    this.announce(spokenPlace({ ...at.piece, fixed }, at.place.sheet, this.scene.units));
    if (fixed) this.host.send({ type: 'pin', places: [pinnedPlace(draftOf(at.piece, at.place))] });
    else this.host.send({ type: 'unpin', pieces: [at.piece.id] });
  }

  private whyNot(): string | undefined {
    if (!this.scene || this.scene.pins) return undefined;
    return this.keptScene?.pins && this.showsKept ? byHand.kept : byHand.inJobs;
  }

  private tellWhyNot(): void {
    this.announce(this.whyNot() ?? '');
  }

  private announce(words: string): void {
    setText(byId('announcer'), words);
  }

  private reveal(focus: boolean): void {
    const { selected } = this.state;
    if (selected !== undefined) this.host.send({ type: 'reveal', piece: selected, focus });
  }

  private light(ids: readonly string[]): void {
    this.drawing.light(ids);
    const shown = ids.flatMap((id) => this.drawing.get(id) ?? []);
    const isSeen = shown.some((piece) => this.camera.sees(this.drawing.boxOf(piece)));
    if (shown[0] && !isSeen) this.camera.show(this.drawing.boxOf(shown[0]));
  }
}
