/** Everything below the drawing: a caution that must be read, the summary line, and the panel that it opens. */

import type { MeasuresMessage, SceneMessage, EstimateMessage } from '../../../src/protocol/preview.ts';
import { Cautions } from './cautions.ts';
import { Dock, choiceAfterPress } from './dock.ts';
import { byId } from '../../common/dom.ts';
import { PiecesList } from './pieces-list.ts';
import type { DockChoice, PageState } from '../state.ts';
import { Summary } from './summary.ts';
import { EstimateView } from './estimate.ts';

export interface LowerPanelHost {
  /** The user's view choices. */
  state(): PageState;
  choose(dock: DockChoice): void;
  togglePiece(id: string): void;
  cautionRead(caution: string): void;
}

export class LowerPanel {
  readonly cautions: Cautions;
  private readonly summary: Summary;
  private readonly pieces: PiecesList;
  private readonly estimate = new EstimateView();
  private readonly dock: Dock;
  private problems = 0;

  /** `read`: cautions that were read on this machine. */
  constructor(
    private readonly host: LowerPanelHost,
    read: readonly string[],
  ) {
    this.cautions = new Cautions(read, {
      confirmed: (caution) => {
        host.cautionRead(caution);
      },
    });
    this.summary = new Summary(byId('summary'), () => {
      host.choose(choiceAfterPress(host.state().dock, this.problems));
    });
    this.pieces = new PiecesList(byId('pieces'), (id) => {
      host.togglePiece(id);
    });
    this.dock = new Dock((isOpen) => {
      this.summary.showOpen(isOpen);
    });
  }

  patch(message: SceneMessage): void {
    const { hiddenPieces, dock } = this.host.state();
    this.problems = message.pins.length;
    this.summary.patch(message);
    this.pieces.patch(message.scene, hiddenPieces);
    this.dock.patch(dock, message);
  }

  showMeasures({ loads }: MeasuresMessage): void {
    this.pieces.showLoads(loads);
    this.cautions.patch(loads);
    this.dock.settleSoon();
  }

  showEstimate(message: EstimateMessage): void {
    this.estimate.show(message);
    this.dock.settleSoon();
  }
}
