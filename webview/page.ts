/** The page as a whole: what was last received, what the person chose, and drawing the one in the way of the other. */

import type { SceneMessage, ScenePin, SceneWall, ToHost, ToPage } from '../src/preview/protocol.ts';
import { Announcer, sceneSentence } from './announcer.ts';
import { arrange, type Arranged, type Arrangement } from './arrange.ts';
import { Defs } from './defs.ts';
import { Dimensions } from './dimensions.ts';
import { byId, mayMove, setAttribute, setText } from './dom.ts';
import { Editing } from './editing.ts';
import { FixMenu } from './fix-menu.ts';
import { IssuesList } from './issues-list.ts';
import { LayerButtons } from './layers.ts';
import { captionOf } from './caption.ts';
import { showLook } from './look.ts';
import { Measuring } from './measuring.ts';
import { Notices } from './notices.ts';
import { PiecesList } from './pieces-list.ts';
import { PinWalk } from './pin-walk.ts';
import { Pins } from './pins.ts';
import { SceneView } from './scene-view.ts';
import { toggled, type PageState } from './state.ts';
import { Screen } from './screen.ts';
import { Sight } from './sight.ts';
import { Summary } from './summary.ts';
import { Tip } from './tip.ts';
import { Toolbar } from './toolbar.ts';
import { followPointing } from './pointing.ts';
import { steer } from './viewport-input.ts';
import { transformOf } from './viewport.ts';

export interface PageHost {
  send(message: ToHost): void;
  save(state: PageState): void;
}

/** Pixels for a millimetre from which on shadows are drawn without blur. */
const closeScale = 8;

export class Page {
  private readonly stage = byId('stage');
  private readonly drawing = byId('drawing');
  private readonly caption = byId('caption');
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
  private readonly sight = new Sight(this.stage, {
    state: () => this.state,
    keep: (viewports) => {
      this.state = { ...this.state, viewports };
      this.host.save(this.state);
    },
    arranged: () => this.arranged,
    trueScale: () => this.screen.scale,
    follow: () => {
      this.follow();
    },
  });
  private readonly say = (text: string): void => {
    this.announcer.say(text);
  };
  private readonly screen = new Screen({
    measured: (devicePixelsPerMm) => {
      const known = devicePixelsPerMm !== undefined && { devicePixelsPerMm };
      this.host.send({ type: 'screen', source: this.state.source, ...known });
      this.screen.learn(devicePixelsPerMm);
      this.sight.actualSize();
    },
  });
  private readonly measuring = new Measuring(this.stage, this.defs, {
    arranged: () => this.arranged,
    hiddenPieces: () => this.state.hiddenPieces,
    view: () => this.sight.view(),
    size: () => this.sight.stage(),
    units: () => this.received?.scene?.units ?? 'mm',
    say: this.say,
    changed: () => {
      this.sight.followSoon();
    },
  });
  private readonly menu: FixMenu;
  private readonly walk = new PinWalk(
    this.pins,
    this.sight,
    () => this.arranged,
    () => {
      const { hiddenLayers } = this.state;
      if (hiddenLayers.includes('warnings')) this.change({ hiddenLayers: toggled(hiddenLayers, 'warnings') });
    },
  );
  private readonly editing = new Editing(this.stage, this.sceneView, {
    drawn: () => this.received,
    arranged: () => this.arranged,
    view: () => this.sight.view(),
    send: (message) => {
      this.host.send(message);
    },
    say: this.say,
    hold: () => {
      this.sight.hold();
    },
    release: () => {
      this.sight.release();
      this.draw();
    },
    changed: () => {
      this.editing.draw(this.state.hiddenPieces);
      this.sight.followSoon();
    },
  });
  private wantsBeam = false;
  private received: SceneMessage | undefined;
  private arranged: Arranged | undefined;

  constructor(
    private readonly host: PageHost,
    private state: PageState,
    devicePixelsPerMm: number | undefined,
  ) {
    this.screen.learn(devicePixelsPerMm);
    this.sceneView.world.append(this.editing.selection.world);
    this.drawing.append(
      this.defs.element,
      this.defs.backdrop,
      this.sceneView.world,
      this.dimensions.element,
      this.pins.marks,
      this.editing.selection.overlay,
      this.measuring.tool.element,
      this.measuring.rulers.element,
    );
    const reveal = (offset: number, focus: boolean): void => {
      host.send({ type: 'reveal', source: state.source, offset, focus });
    };
    this.notices = new Notices(reveal);
    this.toolbar = new Toolbar(this.sight, {
      arrange: (arrangement) => {
        this.rearrange(arrangement);
      },
      toggleProof: () => {
        this.change({ proof: !this.state.proof });
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
    steer(this.stage, this.sight);
    const pointed = { sceneView: this.sceneView, pins: this.pins, tip: new Tip(byId('tip')), menu: this.menu };
    followPointing(pointed, reveal, (id) => this.received?.pins.find((pin) => pin.id === id));
    byId('summary').addEventListener('click', () => {
      this.change({ dockOpen: !this.state.dockOpen });
    });
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
      case 'measures':
        // Those of an older drawing come too late.
        if (message.version !== this.received?.version) return;
        this.pieces.showLoads(message.loads);
        this.measuring.receive(message);
        this.draw();
        return;
      case 'screen':
        this.screen.learn(message.devicePixelsPerMm);
        this.sight.followSoon();
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
    const { source, arrangement, hiddenLayers, hiddenPieces, dockOpen } = this.state;
    this.host.send({ type: 'keep', source, kept: { arrangement, hiddenLayers, hiddenPieces, dockOpen } });
    this.showChoices();
    this.draw();
  }

  private showChoices(): void {
    this.wantBeam();
    this.layers.show(this.state.hiddenLayers);
    this.stage.classList.toggle('proof', this.state.proof);
    setAttribute(byId('proof'), 'aria-pressed', `${this.state.proof}`);
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
    this.arranged = scene && arrange(scene, this.state.arrangement, this.sight.heldOffsets);
    if (scene && this.arranged) {
      this.sceneView.draw(scene, this.arranged, this.state.hiddenPieces);
      this.editing.draw(this.state.hiddenPieces);
      const { walls, cutPaths } = this.measuring.of(message);
      this.sceneView.showBeam(cutPaths, scene.kerf);
      this.dimensions.showWalls(walls.filter((wall) => !pins.some((pin) => isOf(pin, wall))));
      for (const [operation, colour] of Object.entries(scene.colours)) {
        document.body.style.setProperty(`--op-${operation}`, colour);
      }
      showLook(scene.material);
      this.caption.hidden = !this.state.proof;
      setText(this.caption, captionOf(scene));
      setAttribute(this.drawing, 'aria-label', `${scene.title}: ${sceneSentence(message)}`);
    }
    this.pins.patch(scene ? pins : [], this.state.hiddenPieces, scene?.units ?? 'mm');
    this.toolbar.patch(this.state.arrangement, scene?.pieces ?? []);
    this.follow();
    setAttribute(this.drawing, 'data-version', `${version}`);
  }

  /** Puts everything where the sight says. */
  private follow(): void {
    const size = this.sight.stage();
    if (!this.arranged || size.width === 0) return;
    const { units } = this.received!.scene!;
    const view = this.sight.view();
    this.sceneView.world.style.transform = transformOf(view, size);
    this.stage.classList.toggle('close', view.scale > closeScale);
    const room = this.dimensions.follow(this.arranged, this.state.hiddenPieces, units, view, size);
    this.pins.follow(this.arranged, view, size, this.state.hiddenLayers.includes('dimensions') ? [] : room);
    this.editing.follow(view, size);
    this.measuring.follow(this.arranged);
    this.toolbar.showZoom(view.scale, this.screen.scale);
  }

  private rearrange(arrangement: Arrangement): void {
    if (arrangement === this.state.arrangement) return;
    this.sight.release();
    this.stage.classList.toggle('arranging', mayMove());
    this.change({ arrangement });
    window.setTimeout(() => {
      this.stage.classList.remove('arranging');
    }, 400);
  }

  private showLit(): void {
    const box = this.sceneView.litBox();
    if (box && this.arranged) this.sight.show(box);
  }

  private wantBeam(): void {
    const wanted = !this.state.hiddenLayers.includes('beam');
    if (wanted === this.wantsBeam) return;
    this.wantsBeam = wanted;
    this.host.send({ type: 'want-cut-paths', source: this.state.source, wanted });
  }
}

/** A weak place that is pinned has its width told already. */
function isOf({ piece, width }: ScenePin, wall: SceneWall): boolean {
  return piece === wall.piece && width !== undefined && Math.abs(width - wall.width) < 0.02;
}
