/** Problems of the tag wherever the page shows them: pins on the drawing, the list below, the card with fixes. */

import type { FixesMessage, OutcomeMessage, SceneMessage, ToHost } from '../../../src/protocol/preview.ts';
import type { Arranged } from '../scene/arrange.ts';
import { byId } from '../../common/dom.ts';
import { FixMenu } from './fix-menu.ts';
import { Outcome, sizeChange } from '../scene/outcome.ts';
import { ProblemList } from './problem-list.ts';
import { PinWalk } from './pin-walk.ts';
import { Pins } from './pins.ts';
import { followPointing } from './pointing.ts';
import type { SceneView } from '../scene/scene-view.ts';
import type { Camera } from '../camera/camera.ts';
import { PinTip } from './tip.ts';
import { moved, toScreen } from '../../common/camera/viewport.ts';

export interface ProblemsHost {
  readonly sight: Camera;
  readonly sceneView: SceneView;
  drawn(): SceneMessage | undefined;
  arranged(): Arranged | undefined;
  send(message: ToHost): void;
  say(text: string): void;
  reveal(offset: number, focus: boolean): void;
  /** Makes warnings visible if they are hidden. */
  showWarnings(): void;
  hiddenPieces(): readonly string[];
  /** Shows the sizes of a fix's outcome; `undefined` ends that. */
  measureOutcome(outcome: OutcomeMessage | undefined): void;
}

export class ProblemsView {
  readonly pins = new Pins(byId('pins'));
  private readonly outcome = new Outcome();
  private wanted: { readonly pin: string; readonly index: number } | undefined;
  private readonly issues = new ProblemList(byId('issues'), byId('accepted'));
  private readonly menu: FixMenu;
  private readonly walk: PinWalk;
  private patched: SceneMessage | undefined;

  constructor(private readonly host: ProblemsHost) {
    const { sight, sceneView } = host;
    sceneView.world.append(this.outcome.element);
    const reveal = (offset: number, focus: boolean): void => {
      host.reveal(offset, focus);
    };
    this.walk = new PinWalk(
      this.pins,
      sight,
      () => host.arranged(),
      () => {
        host.showWarnings();
      },
    );
    this.menu = new FixMenu({
      ask: ({ id: pin }) => {
        const { source, version } = host.drawn()!;
        host.send({ type: 'ask-fixes', source, version, pin });
      },
      make: ({ id: pin }, index, title) => {
        const { source, version } = host.drawn()!;
        host.send({ type: 'make-fix', source, version, pin, index });
        host.say(title);
      },
      show: ({ id: pin }, index) => {
        this.wanted = index === undefined ? undefined : { pin, index };
        this.outcome.hide();
        host.measureOutcome(undefined);
        const { source, version } = host.drawn()!;
        if (index !== undefined) host.send({ type: 'show-fix', source, version, pin, index });
      },
      watched: () => {
        const box = host.arranged()?.bounds;
        if (!box) return undefined;
        const [view, stage] = [sight.view(), sight.stage()];
        const { left, top } = byId('stage').getBoundingClientRect();
        const [from, to] = [toScreen(view, stage, [box[0], box[1]]), toScreen(view, stage, [box[2], box[3]])];
        return moved([...from, ...to], [left, top]);
      },
      reveal: ({ source }) => {
        reveal(source, true);
      },
      zoomTo: ({ id }) => {
        this.walk.zoomTo(id);
      },
    });
    const pointed = { sceneView, pins: this.pins, tip: new PinTip(byId('tip')), menu: this.menu };
    const pinOf = (id: string) => host.drawn()?.pins.find((pin) => pin.id === id);
    followPointing(pointed, reveal, pinOf, (row) => {
      host.send({ type: 'show-row', source: host.drawn()!.source, row });
    });
  }

  patch(message: SceneMessage, hidden: readonly string[]): void {
    const { scene, pins, accepted, trying } = message;
    this.issues.patch(pins, accepted);
    this.pins.patch(scene ? pins : [], hidden, scene?.units ?? 'mm');
    // Fixes are requested again only if the text has changed.
    if (!trying && message !== this.patched) this.menu.follow(pins);
    this.patched = message;
  }

  /** Only if it is still wanted and belongs to the present text. */
  showOutcome(message: OutcomeMessage): void {
    const { pin, index, version, pieces } = message;
    const [drawn, arranged] = [this.host.drawn(), this.host.arranged()];
    if (this.wanted?.pin !== pin || this.wanted.index !== index || drawn?.version !== version) return;
    if (!drawn.scene || !arranged) return;
    this.outcome.show(message, arranged, this.host.hiddenPieces());
    this.host.measureOutcome(message);
    const words = sizeChange(drawn.scene, pieces);
    if (this.menu.describe(index, words)) this.host.say(`With this fix: ${words}.`);
  }

  showFixes(message: FixesMessage): void {
    if (message.version === this.host.drawn()?.version) this.menu.show(message);
  }
}
