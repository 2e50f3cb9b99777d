/** The sheets page: the host's messages, the user's view, and the user's requests. */

import type { FromSheetsPage, SheetsScene, ToSheetsPage } from '../../src/protocol/sheets.ts';
import { byId, setText } from '../common/dom.ts';
import { steer } from '../common/camera/viewport-input.ts';
import { roving } from '../common/roving.ts';
import { SheetsLowerPanel } from './lower-panel.ts';
import { Card } from './card.ts';
import { Controls } from './controls.ts';
import { draftOf, pinnedPlace } from './draft.ts';
import { SheetsDrawing } from './drawing.ts';
import type { PieceAt } from './drawing.ts';
import { PieceDrag } from './piece-drag.ts';
import { showEmptyState } from './empty-state.ts';
import { listenToKeys, listenToZoom } from './listening.ts';
import { Progress } from './progress.ts';
import { SheetCamera } from './camera.ts';
import { Selection } from './selection.ts';
import type { SheetsState } from './state.ts';
import { PieceTip } from './tip.ts';
import { TwoLayouts } from './two-layouts.ts';
import { byHand, spokenPlace } from './words.ts';

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
  private readonly selection: Selection;
  private readonly drag: PieceDrag;
  private readonly progress: Progress;
  private readonly controls: Controls;
  private readonly layouts = new TwoLayouts();
  /** The layout drawn. */
  private scene: SheetsScene | undefined;

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
        this.selection.placeCard();
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
      selected: () => (this.scene?.pins ? this.selection.piece : undefined),
      places: () => this.drawing.arranged.places,
      units: () => this.scene?.units ?? 'mm',
      scale: () => this.camera.view().scale,
      show: (draft) => {
        this.drawing.hold(draft);
        const at = draft ? { piece: { ...draft.piece, box: draft.box }, place: draft.place } : this.selection.piece;
        if (at) this.card.move(at, this.scene!.units);
      },
      pin: (place, { piece, box, place: on }) => {
        this.announce(spokenPlace({ ...piece, box, fixed: true }, on.sheet, this.scene!.units));
        this.host.send({ type: 'pin', places: [place] });
      },
    });
    this.card = new Card({
      pins: () => this.scene?.pins ?? false,
      whyNot: () => this.layouts.whyNot(),
      pin: () => {
        this.pin();
      },
      turn: () => {
        this.drag.turn();
      },
      reveal: () => {
        this.selection.reveal(true);
      },
      close: () => {
        this.selection.select(undefined);
        this.stage.focus();
      },
    });
    const { stage, drawing, camera, card } = this;
    this.selection = new Selection(
      { stage, drawing, camera, card },
      {
        selected: () => this.state.selected,
        keep: (selected) => {
          this.keep({ ...this.state, selected });
        },
        hasOwnView: () => this.state.view !== undefined,
        units: () => this.scene?.units ?? 'mm',
        announce: (words) => {
          this.announce(words);
        },
        reveal: (piece, focus) => {
          this.host.send({ type: 'reveal', piece, focus });
        },
      },
    );
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
      pins: () => this.layouts.present?.pins ?? false,
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
        this.selection.light(message.pieces);
        break;
      case 'busy':
        this.progress.show('busy');
        break;
      case 'kept':
        this.drawing.addShapes(message.shapes);
        this.layouts.setKept(message.scene);
        this.compare(this.layouts.isKeptDrawn);
        break;
      case 'sheets':
        this.drawing.addShapes(message.shapes);
        this.layouts.setPresent(message.scene);
        document.body.dataset['shows'] = 'sheets';
        this.progress.show(message.state);
        this.compare(this.layouts.isKeptDrawn);
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

  /** Shows one layout or the other. */
  private compare(showsKept: boolean): void {
    const differences = this.layouts.choose(showsKept);
    const scene = this.layouts.drawn;
    if (!scene) return;
    if (differences !== '') this.announce(differences);
    this.scene = scene;
    this.drag.forget();
    this.drawing.draw(scene);
    setText(byId('title'), scene.title);
    setText(byId('by-hand'), this.layouts.whyNot() ?? byHand.moved);
    this.lowerPanel.patch(scene);
    this.controls.show(scene, this.layouts.hasKept, this.layouts.isKeptDrawn);
    this.selection.measureCard();
    this.drawing.seenAt(this.camera.view().scale);
    this.camera.follow();
    this.selection.select(this.state.selected, false);
  }

  private pieces(): PieceAt[] {
    return this.drawing.ids.map((id) => this.drawing.get(id)!);
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
      this.selection.select(id);
      if (id !== undefined) this.selection.reveal(false);
    });
    stage.addEventListener('dblclick', () => {
      this.selection.reveal(true);
    });
    listenToKeys(stage, {
      undo: (step) => {
        this.host.send({ type: 'undo', step });
      },
      step: (by, from) => {
        this.selection.step(by, from);
      },
      reveal: () => {
        this.selection.reveal(true);
      },
      pin: () => {
        this.pin();
      },
      turn: (quarters) => {
        if (this.scene?.pins) this.drag.turn(quarters);
        else this.tellWhyNot();
      },
      clear: () => {
        this.selection.select(undefined);
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

  /** Pins the piece where it lies, or unpins it. */
  private pin(): void {
    const at = this.selection.piece;
    if (!this.scene?.pins) this.tellWhyNot();
    if (!at || !this.scene?.pins) return;
    const fixed = !at.piece.fixed;
    this.announce(spokenPlace({ ...at.piece, fixed }, at.place.sheet, this.scene.units));
    if (fixed) this.host.send({ type: 'pin', places: [pinnedPlace(draftOf(at.piece, at.place))] });
    else this.host.send({ type: 'unpin', pieces: [at.piece.id] });
  }

  private tellWhyNot(): void {
    this.announce(this.layouts.whyNot() ?? '');
  }

  private announce(words: string): void {
    setText(byId('announcer'), words);
  }
}
