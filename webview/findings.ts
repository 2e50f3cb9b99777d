/** What is wrong with the tag, wherever the page shows it: pins on the drawing, the list below, the card with what helps. */

import type { FixesMessage, SceneMessage, ToHost } from '../src/preview/protocol.ts';
import type { Arranged } from './arrange.ts';
import { byId } from './dom.ts';
import { FixMenu } from './fix-menu.ts';
import { IssuesList } from './issues-list.ts';
import { PinWalk } from './pin-walk.ts';
import { Pins } from './pins.ts';
import { followPointing } from './pointing.ts';
import type { SceneView } from './scene-view.ts';
import type { Sight } from './sight.ts';
import { Tip } from './tip.ts';

export interface FindingsHost {
  readonly sight: Sight;
  readonly sceneView: SceneView;
  drawn(): SceneMessage | undefined;
  arranged(): Arranged | undefined;
  send(message: ToHost): void;
  say(text: string): void;
  reveal(offset: number, focus: boolean): void;
  /** They are wanted, though they may be hidden. */
  showWarnings(): void;
}

export class Findings {
  readonly pins = new Pins(byId('pins'));
  private readonly issues = new IssuesList(byId('issues'), byId('accepted'));
  private readonly menu: FixMenu;
  private readonly walk: PinWalk;
  private patched: SceneMessage | undefined;

  constructor(private readonly host: FindingsHost) {
    const { sight, sceneView } = host;
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
      reveal: ({ source }) => {
        reveal(source, true);
      },
      zoomTo: ({ id }) => {
        this.walk.zoomTo(id);
      },
    });
    const pointed = { sceneView, pins: this.pins, tip: new Tip(byId('tip')), menu: this.menu };
    const pinOf = (id: string) => host.drawn()?.pins.find((pin) => pin.id === id);
    followPointing(pointed, reveal, pinOf, (row) => {
      host.send({ type: 'show-row', source: host.drawn()!.source, row });
    });
  }

  patch(message: SceneMessage, hidden: readonly string[]): void {
    const { scene, pins, accepted, trying } = message;
    this.issues.patch(pins, accepted);
    this.pins.patch(scene ? pins : [], hidden, scene?.units ?? 'mm');
    // What helps is asked for anew only where there is something new.
    if (!trying && message !== this.patched) this.menu.follow(pins);
    this.patched = message;
  }

  showFixes(message: FixesMessage): void {
    if (message.version === this.host.drawn()?.version) this.menu.show(message);
  }
}
