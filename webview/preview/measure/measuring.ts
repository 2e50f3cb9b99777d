/** Rulers with their grid, the ruler tool, and the measures that arrive after a drawing. */

import type { MeasuresMessage, SceneMessage } from '../../../src/protocol/preview.ts';
import type { Arranged } from '../scene/arrange.ts';
import type { Defs } from '../scene/defs.ts';
import { byId, setAttribute } from '../../common/dom.ts';
import { RulerTool, type RulerHost } from './ruler-tool.ts';
import { Rulers } from './rulers.ts';
import type { XY } from '../../common/camera/viewport.ts';

export class Measuring {
  readonly rulers: Rulers;
  readonly tool: RulerTool;
  private measures: MeasuresMessage | undefined;

  constructor(
    stage: HTMLElement,
    private readonly defs: Defs,
    private readonly host: Omit<RulerHost, 'toggled'>,
  ) {
    this.rulers = new Rulers(stage);
    const button = byId('measure');
    this.tool = new RulerTool(stage, {
      ...host,
      toggled: (isOn) => {
        setAttribute(button, 'aria-pressed', `${isOn}`);
      },
    });
    button.addEventListener('click', () => {
      this.tool.toggle();
    });
  }

  receive(measures: MeasuresMessage): void {
    this.measures = measures;
  }

  /** Empty for measures of an older drawing, and during a trial. */
  of({ version, trying }: SceneMessage): Pick<MeasuresMessage, 'walls' | 'cutPaths'> {
    const isOf = this.measures?.version === version && !trying;
    return isOf ? this.measures! : { walls: [], cutPaths: [] };
  }

  follow(arranged: Arranged): void {
    const [view, stage, units] = [this.host.view(), this.host.size(), this.host.units()];
    const zero: XY = [arranged.bounds[0], arranged.bounds[1]];
    this.defs.follow(view, stage, zero, units);
    this.rulers.follow(zero, units, view, stage);
    this.tool.follow(view, stage);
  }
}
