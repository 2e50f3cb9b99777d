/** The page as a whole: draws what was last received in the way that the user chose. */

import type { SceneMessage, SceneWall, ToHost, ToPage } from '../../src/protocol/preview.ts';
import type { ScenePin } from '../../src/protocol/scene.ts';
import { Announcer, sceneSentence, wholeSentence } from './announcer.ts';
import { arrange, type Arranged, type Arrangement } from './scene/arrange.ts';
import { BatchStrip } from './panels/batch.ts';
import { LowerPanel } from './panels/lower-panel.ts';
import { captionOf } from './scene/caption.ts';
import { Callouts } from './measure/callouts.ts';
import { Choices } from './choices.ts';
import { Defs } from './scene/defs.ts';
import { Dimensions } from './measure/dimensions.ts';
import { byId, allowsMotion, afterPaint, setAttribute, setText } from '../common/dom.ts';
import { Editing } from './drag/editing.ts';
import { Exports } from './panels/exports.ts';
import { ProblemsView } from './problems/problems-view.ts';
import type { Units } from '../../src/core/units.ts';
import { GoneNotice } from './scene/gone.ts';
import { KeysHelp } from './panels/keys-help.ts';
import { showLook } from './scene/look.ts';
import { Measuring } from './measure/measuring.ts';
import { Notices } from './scene/notices.ts';
import type { Remembered } from './remembered.ts';
import { SceneView } from './scene/scene-view.ts';
import type { Layer, PageState } from './state.ts';
import { Screen } from './camera/true-size.ts';
import { Camera } from './camera/camera.ts';
import { Toolbar } from './panels/toolbar.ts';
import { steer } from '../common/camera/viewport-input.ts';
import { transformOf } from '../common/camera/viewport.ts';

export interface PageHost {
  send(message: ToHost): void;
  save(state: PageState): void;
}

/** Scale in pixels per mm from which shadows are drawn without blur. */
const closeScale = 8;

export class PreviewPage {
  private readonly stage = byId('stage');
  private readonly drawing = byId('drawing');
  private readonly caption = byId('caption');
  private readonly defs = new Defs();
  private readonly sceneView = new SceneView();
  private readonly dimensions = new Dimensions();
  private readonly lowerPanel: LowerPanel;
  private readonly exports: Exports;
  private readonly choices: Choices;
  private readonly announcer = new Announcer(byId('announcer'));
  private readonly notices: Notices;
  private readonly gone: GoneNotice;
  private readonly toolbar: Toolbar;
  private readonly batch: BatchStrip;
  private readonly camera = new Camera(this.stage, {
    state: () => this.choices.now,
    keep: (viewports) => {
      this.choices.keepViewports(viewports);
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
  private readonly send = (message: ToHost): void => {
    this.host.send(message);
  };
  private readonly screen = new Screen({
    measured: (devicePixelsPerMm) => {
      const known = devicePixelsPerMm !== undefined && { devicePixelsPerMm };
      this.send({ type: 'screen', source: this.choices.now.source, ...known });
      this.screen.setScreenScale(devicePixelsPerMm);
      this.camera.actualSize();
    },
  });
  private readonly measuring = new Measuring(this.stage, this.defs, {
    arranged: () => this.arranged,
    hiddenPieces: () => this.choices.now.hiddenPieces,
    view: () => this.camera.view(),
    size: () => this.camera.stage(),
    units: () => this.units(),
    say: this.say,
    changed: () => {
      this.camera.followSoon();
    },
  });
  private readonly findings: ProblemsView;
  private readonly callouts: Callouts;
  private readonly editing = new Editing(this.stage, this.sceneView, {
    drawn: () => this.received,
    arranged: () => this.arranged,
    view: () => this.camera.view(),
    send: this.send,
    say: this.say,
    hold: () => {
      this.camera.hold();
    },
    release: () => {
      this.camera.release();
      this.draw();
    },
    changed: () => {
      this.editing.draw(this.choices.now.hiddenPieces);
      this.camera.followSoon();
    },
  });
  private received: SceneMessage | undefined;
  private arranged: Arranged | undefined;

  constructor(
    private readonly host: PageHost,
    state: PageState,
    { devicePixelsPerMm, exports, cautions }: Remembered,
  ) {
    this.screen.setScreenScale(devicePixelsPerMm);
    this.choices = new Choices(this.stage, state, {
      send: this.send,
      save: (changed) => {
        host.save(changed);
      },
      changed: () => {
        this.draw();
      },
    });
    const reveal = (offset: number, focus: boolean): void => {
      this.send({ type: 'reveal', source: state.source, offset, focus });
    };
    this.notices = new Notices(reveal);
    this.gone = new GoneNotice(() => {
      this.send({ type: 'show-other', source: state.source });
    });
    this.findings = new ProblemsView({
      sight: this.camera,
      sceneView: this.sceneView,
      drawn: () => this.received,
      arranged: () => this.arranged,
      send: this.send,
      say: this.say,
      reveal,
      hiddenPieces: () => this.choices.now.hiddenPieces,
      measureOutcome: (outcome) => {
        this.dimensions.showOutcome(outcome?.pieces);
        this.camera.followSoon();
      },
      showWarnings: () => {
        if (this.choices.isHidden('warnings')) this.choices.toggleLayer('warnings');
      },
    });
    const keys = new KeysHelp();
    this.callouts = new Callouts(
      this.dimensions,
      this.findings.pins,
      () => this.editing.drag.isChanging || this.stage.matches('.dragging'),
    );
    this.toolbar = new Toolbar(this.camera, {
      arrange: (arrangement) => {
        this.rearrange(arrangement);
      },
      toggleFollow: () => {
        this.choices.toggleFollow();
      },
      toggleProof: () => {
        this.choices.toggleProof();
      },
      follows: () => this.choices.now.follows,
      measureScreen: () => {
        this.screen.ask();
      },
      showKeys: () => {
        keys.show();
      },
    });
    this.lowerPanel = new LowerPanel(
      {
        state: () => this.choices.now,
        choose: (dock) => {
          this.choices.change({ dock });
        },
        togglePiece: (id) => {
          this.choices.togglePiece(id);
        },
        cautionRead: (caution) => {
          this.send({ type: 'read-caution', source: state.source, caution });
        },
      },
      cautions,
    );
    this.exports = new Exports(exports, {
      caution: () => this.lowerPanel.cautions.now,
      make: (what) => {
        this.send({ type: 'export', source: state.source, what });
      },
    });
    this.batch = new BatchStrip((row) => {
      this.send({ type: 'show-row', source: state.source, row });
    });
    this.sceneView.world.append(this.editing.selection.world);
    this.drawing.append(
      this.defs.element,
      this.defs.backdrop,
      this.sceneView.world,
      this.dimensions.element,
      this.findings.pins.marks,
      this.editing.selection.overlay,
      this.measuring.tool.element,
      this.measuring.rulers.element,
    );
    steer(this.stage, this.camera);
  }

  receive(message: ToPage): void {
    if (message.source !== this.choices.now.source) return;
    switch (message.type) {
      case 'scene':
        if (!this.editing.receive(message)) return;
        if (this.received?.batch && this.received.batch.row !== message.batch?.row) this.camera.stepped();
        this.received = message;
        this.gone.hide();
        this.keepingFocus(() => {
          this.draw();
        });
        if (message.trying) {
          afterPaint(() => {
            this.editing.drag.shown();
          });
          return;
        }
        this.announcer.announce(sceneSentence(message));
        this.editing.drag.goOn();
        return;
      case 'measures':
        // Measures of an older drawing arrive too late.
        if (message.version !== this.received?.version) return;
        this.lowerPanel.showMeasures(message);
        this.measuring.receive(message);
        this.draw();
        return;
      case 'takes':
        if (message.version === this.received?.version) this.lowerPanel.showEstimate(message);
        return;
      case 'batch':
        if (message.version === this.received?.version) this.batch.describe(message, this.units());
        return;
      case 'screen':
        this.screen.setScreenScale(message.devicePixelsPerMm);
        this.camera.followSoon();
        return;
      case 'covered':
        this.camera.cover(message.rows);
        return;
      case 'fixes':
        this.findings.showFixes(message);
        return;
      case 'outcome':
        this.findings.showOutcome(message);
        return;
      case 'gone':
        this.editing.drag.drop();
        this.say(this.gone.show(message));
        return;
      case 'highlight':
        this.sceneView.light(message.ids);
        if (message.follow) this.showHighlighted();
        return;
      default:
        message satisfies never;
    }
  }

  /** The element with the focus may disappear; the focus then moves to the stage rather than being lost. */
  private keepingFocus(patch: () => void): void {
    const held = document.activeElement;
    patch();
    if (held && !held.checkVisibility() && document.hasFocus()) this.stage.focus();
  }

  private draw(): void {
    const message = this.received;
    if (!message) return;
    const { scene, pins, version } = message;
    this.notices.show(message);
    this.batch.patch(message);
    this.arranged = scene && arrange(scene, this.choices.now.arrangement, this.camera.heldOffsets);
    if (scene && this.arranged) {
      this.sceneView.draw(scene, this.arranged, this.choices.now.hiddenPieces);
      this.editing.draw(this.choices.now.hiddenPieces);
      const { walls, cutPaths } = this.measuring.of(message);
      this.sceneView.showBeam(cutPaths);
      this.dimensions.showWalls(walls.filter((wall) => !pins.some((pin) => isOf(pin, wall))));
      for (const [operation, colour] of Object.entries(scene.colours)) {
        document.body.style.setProperty(`--op-${operation}`, colour);
      }
      showLook(scene);
      this.caption.hidden = !this.choices.now.proof;
      setText(this.caption, captionOf(scene));
      setText(byId('title'), scene.title);
      setAttribute(this.drawing, 'aria-label', wholeSentence(message));
    }
    this.findings.patch(message, this.choices.now.hiddenPieces);
    this.toolbar.patch(this.choices.now.arrangement, scene?.pieces ?? []);
    this.exports.enable((scene?.pieces.length ?? 0) > 0);
    this.lowerPanel.patch(message);
    this.follow();
    setAttribute(this.drawing, 'data-version', `${version}`);
  }

  /** Moves everything to match the view. */
  private follow(): void {
    const size = this.camera.stage();
    if (!this.arranged || size.width === 0) return;
    const { units } = this.received!.scene!;
    const view = this.camera.view();
    this.sceneView.world.style.transform = transformOf(view, size);
    this.stage.classList.toggle('close', view.scale > closeScale);
    const { hiddenPieces } = this.choices.now;
    const isHidden = (layer: Layer): boolean => this.choices.isHidden(layer);
    const taken = this.editing.follow(view, size);
    this.callouts.follow({ arranged: this.arranged, hiddenPieces, units, view, stage: size, taken, isHidden });
    this.measuring.follow(this.arranged);
    this.toolbar.showZoom(view.scale, this.screen.scale);
  }

  private units(): Units {
    return this.received?.scene?.units ?? 'mm';
  }

  private rearrange(arrangement: Arrangement): void {
    if (arrangement === this.choices.now.arrangement) return;
    this.camera.release();
    this.stage.classList.toggle('arranging', allowsMotion());
    this.choices.change({ arrangement });
    window.setTimeout(() => {
      this.stage.classList.remove('arranging');
    }, 400);
  }

  private showHighlighted(): void {
    const box = this.sceneView.highlightedBox();
    if (box && this.arranged) this.camera.show(box);
  }
}

/** Whether a pin already shows the width of this wall. */
function isOf({ piece, width, others = [] }: ScenePin, wall: SceneWall): boolean {
  const widths = [width, ...others.map((place) => place.width)];
  return piece === wall.piece && widths.some((each) => each !== undefined && Math.abs(each - wall.width) < 0.02);
}
