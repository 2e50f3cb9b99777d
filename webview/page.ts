/** The page as a whole: what was last received, what the person chose, and drawing the one in the way of the other. */

import type { SceneMessage, ToHost, ToPage } from '../src/preview/protocol.ts';
import { Announcer, sceneSentence } from './announcer.ts';
import { arrange, type Arranged, type Arrangement } from './arrange.ts';
import { Defs } from './defs.ts';
import { Dimensions } from './dimensions.ts';
import { byId, mayMove, setAttribute } from './dom.ts';
import { Editing } from './editing.ts';
import { FixMenu } from './fix-menu.ts';
import { IssuesList } from './issues-list.ts';
import { LayerButtons } from './layers.ts';
import { allLooks, lookOf } from './look.ts';
import { Notices } from './notices.ts';
import { PiecesList } from './pieces-list.ts';
import { PinWalk } from './pin-walk.ts';
import { Pins } from './pins.ts';
import { SceneView } from './scene-view.ts';
import { toggled, type PageState } from './state.ts';
import { Summary } from './summary.ts';
import { Tip } from './tip.ts';
import { Toolbar } from './toolbar.ts';
import { followPointing } from './pointing.ts';
import { steer, type Steered } from './viewport-input.ts';
import { actualScale, fitted, showing, transformOf, zoomedAt, type Size, type Viewport } from './viewport.ts';

export interface PageHost {
  send(message: ToHost): void;
  save(state: PageState): void;
}

/** Pixels for a millimetre from which on shadows are drawn without blur. */
const closeScale = 8;

export class Page {
  private readonly stage = byId('stage');
  private readonly drawing = byId('drawing');
  private readonly defs = new Defs();
  private readonly sceneView = new SceneView();
  private readonly dimensions = new Dimensions();
  private readonly pins = new Pins(byId('pins'));
  private readonly summary = new Summary(byId('summary'));
  private readonly issues = new IssuesList(byId('issues'));
  private readonly pieces = new PiecesList(byId('pieces'), (id) => {
    this.change({ hiddenPieces: toggled(this.state.hiddenPieces, id) });
  });
  private readonly layers = new LayerButtons(byId('layers'), this.stage, (layer) => {
    this.change({ hiddenLayers: toggled(this.state.hiddenLayers, layer) });
  });
  private readonly announcer = new Announcer(byId('announcer'));
  private readonly notices: Notices;
  private readonly toolbar: Toolbar;
  private readonly steered: Steered = {
    view: () => this.view(),
    stage: () => this.size,
    box: () => this.arranged?.bounds ?? [0, 0, 0, 0],
    setView: (view, atOnce) => {
      this.setView(view, atOnce);
    },
    fit: () => {
      this.setView(undefined);
    },
    actualSize: () => {
      const centre = [this.size.width / 2, this.size.height / 2] as const;
      this.setView(zoomedAt(this.view(), this.size, centre, actualScale / this.view().scale));
    },
  };
  private readonly menu: FixMenu;
  private readonly walk = new PinWalk(
    this.pins,
    this.steered,
    () => this.arranged,
    () => {
      const { hiddenLayers } = this.state;
      if (hiddenLayers.includes('warnings')) this.change({ hiddenLayers: toggled(hiddenLayers, 'warnings') });
    },
  );
  private readonly editing = new Editing(this.stage, this.sceneView, {
    drawn: () => this.received,
    arranged: () => this.arranged,
    view: () => this.view(),
    send: (message) => {
      this.host.send(message);
    },
    say: (text) => {
      this.announcer.say(text);
    },
    hold: () => {
      this.held ??= this.arranged && { view: this.view(), offsets: this.arranged.offsets };
    },
    release: () => {
      this.held = undefined;
      this.draw();
    },
    changed: () => {
      this.editing.draw(this.state.hiddenPieces);
      this.followSoon();
    },
  });
  /** Where everything stays while the hand changes something, though it would be fitted or laid out anew. */
  private held: { readonly view: Viewport; readonly offsets: Arranged['offsets'] } | undefined;
  private received: SceneMessage | undefined;
  private arranged: Arranged | undefined;
  private size: Size;
  private frame = 0;

  constructor(
    private readonly host: PageHost,
    private state: PageState,
  ) {
    this.sceneView.world.append(this.editing.selection.world);
    this.drawing.append(
      this.defs.element,
      this.defs.backdrop,
      this.sceneView.world,
      this.dimensions.element,
      this.pins.marks,
      this.editing.selection.overlay,
    );
    this.size = { width: this.stage.clientWidth, height: this.stage.clientHeight };
    const reveal = (offset: number, focus: boolean): void => {
      host.send({ type: 'reveal', source: state.source, offset, focus });
    };
    this.notices = new Notices(reveal);
    this.toolbar = new Toolbar(this.steered, {
      arrange: (arrangement) => {
        this.rearrange(arrangement);
      },
      exportSvg: () => {
        host.send({ type: 'export', source: state.source });
      },
    });
    this.menu = new FixMenu({
      ask: ({ id: pin }) => {
        host.send({ type: 'ask-fixes', source: state.source, version: this.received!.version, pin });
      },
      make: ({ id: pin }, index, title) => {
        host.send({ type: 'make-fix', source: state.source, version: this.received!.version, pin, index });
        this.announcer.say(title);
      },
      reveal: ({ source }) => {
        reveal(source, true);
      },
      zoomTo: ({ id }) => {
        this.walk.zoomTo(id);
      },
    });
    steer(this.stage, this.steered);
    const pointed = { sceneView: this.sceneView, pins: this.pins, tip: new Tip(byId('tip')), menu: this.menu };
    followPointing(pointed, reveal, (id) => this.received?.pins.find((pin) => pin.id === id));
    byId('summary').addEventListener('click', () => {
      this.change({ dockOpen: !this.state.dockOpen });
    });
    new ResizeObserver(() => {
      this.size = { width: this.stage.clientWidth, height: this.stage.clientHeight };
      this.follow();
    }).observe(this.stage);
    this.showChoices();
  }

  receive(message: ToPage): void {
    if (message.source !== this.state.source) return;
    switch (message.type) {
      case 'scene':
        if (!this.editing.receive(message)) return;
        this.received = message;
        this.keepingFocus(() => {
          this.draw();
          if (!message.trying) this.menu.follow(message.pins);
        });
        if (message.trying) return;
        this.announcer.announce(sceneSentence(message));
        this.editing.hand.goOn();
        return;
      case 'loads':
        // One of an older drawing comes too late.
        if (message.version === this.received?.version) this.pieces.showLoads(message.loads);
        return;
      case 'fixes':
        if (message.version === this.received?.version) this.menu.show(message);
        return;
      case 'highlight':
        this.sceneView.light(message.ids);
        if (message.follow) this.showLit();
        return;
      default:
        message satisfies never;
    }
  }

  /** What had the focus may be gone afterwards; the keyboard must not be lost with it. */
  private keepingFocus(patch: () => void): void {
    const held = document.activeElement;
    patch();
    if (held && !held.checkVisibility() && document.hasFocus()) this.stage.focus();
  }

  private change(changes: Partial<PageState>): void {
    this.state = { ...this.state, ...changes };
    this.host.save(this.state);
    this.showChoices();
    this.draw();
  }

  private showChoices(): void {
    this.layers.show(this.state.hiddenLayers);
    byId('dock').hidden = !this.state.dockOpen;
  }

  private draw(): void {
    const message = this.received;
    if (!message) return;
    const { scene, pins, version } = message;
    this.notices.show(message);
    this.summary.patch(message, this.state.dockOpen);
    this.issues.patch(pins);
    this.pieces.patch(scene, this.state.hiddenPieces);
    this.arranged = scene && arrange(scene, this.state.arrangement, this.held?.offsets);
    if (scene && this.arranged) {
      this.sceneView.draw(this.arranged, this.state.hiddenPieces, scene.grips);
      this.editing.draw(this.state.hiddenPieces);
      for (const [operation, colour] of Object.entries(scene.colours)) {
        document.body.style.setProperty(`--op-${operation}`, colour);
      }
      for (const look of allLooks) document.body.classList.toggle(look, look === lookOf(scene.material));
      setAttribute(this.drawing, 'aria-label', `${scene.title}: ${sceneSentence(message)}`);
    }
    this.pins.patch(scene ? pins : [], this.state.hiddenPieces, scene?.units ?? 'mm');
    this.toolbar.patch(this.state.arrangement, scene?.pieces.length ?? 0);
    this.follow();
    setAttribute(this.drawing, 'data-version', `${version}`);
  }

  /** Puts everything where the viewport says. */
  private follow(): void {
    if (!this.arranged || this.size.width === 0) return;
    const { units } = this.received!.scene!;
    const view = this.view();
    this.sceneView.world.style.transform = transformOf(view, this.size);
    this.stage.classList.toggle('close', view.scale > closeScale);
    this.defs.follow(view, this.size);
    const room = this.dimensions.follow(this.arranged, this.state.hiddenPieces, units, view, this.size);
    this.pins.follow(this.arranged, view, this.size, this.state.hiddenLayers.includes('dimensions') ? [] : room);
    this.editing.follow(view, this.size);
    this.toolbar.showZoom(view.scale);
  }

  /** Where the person went, else everything that is shown. */
  private view(): Viewport {
    const chosen = this.state.viewports[this.state.arrangement] ?? this.held?.view;
    return chosen ?? fitted(this.arranged?.bounds ?? [0, 0, 0, 0], this.size);
  }

  /** `undefined`: fit, and go on fitting. */
  private setView(view: Viewport | undefined, atOnce = false): void {
    const viewports: Partial<Record<Arrangement, Viewport>> = { ...this.state.viewports };
    this.held = view && this.held;
    if (view) viewports[this.state.arrangement] = view;
    else Reflect.deleteProperty(viewports, this.state.arrangement);
    this.state = { ...this.state, viewports };
    this.host.save(this.state);
    if (atOnce) this.follow();
    else this.followSoon();
  }

  /** A fast pointer reports several times a frame. */
  private followSoon(): void {
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => {
      this.follow();
    });
  }

  private rearrange(arrangement: Arrangement): void {
    if (arrangement === this.state.arrangement) return;
    this.held = undefined;
    this.stage.classList.toggle('arranging', mayMove());
    this.change({ arrangement });
    window.setTimeout(() => {
      this.stage.classList.remove('arranging');
    }, 400);
  }

  private showLit(): void {
    const box = this.sceneView.litBox();
    if (!box || !this.arranged) return;
    const before = this.view();
    const after = showing(before, this.size, box);
    if (after !== before) this.setView(after);
  }
}
