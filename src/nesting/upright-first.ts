/**
 * Pieces lie on sheets as they were drawn, where turning them gains nothing that anyone would notice: whoever looks at
 * the sheet reads the names on it, and whoever unloads it sees at once which is which.
 */

import { area, boundsOf } from '../geometry/measure.ts';
import type { Nester } from './best-of.ts';
import type { Layout, PartToNest, SheetRoom } from './layout.ts';

/** Turning is worth it where it saves a sheet, or as much of one: of what is left, that is another strip of names (our own judgement). */
const worthOfSheet = 0.1;

/** A nester that turns pieces only where that is worth it; one that does not fit as it was drawn may be turned anyhow. */
export function uprightFirst(nest: Nester): Nester {
  return async (parts, room, checkpoint, effort, options = {}) => {
    const asDrawn = parts.map((part) => (fitsAsDrawn(part, room) ? notTurned(part) : part));
    const upright = await nest(asDrawn, room, checkpoint, effort, options);
    if (parts.every(({ turns }, index) => turns === asDrawn[index]!.turns) || !maySave(upright, parts, room))
      return upright;
    const { onBetter: _, ...others } = options;
    const turned = await nest(parts, room, checkpoint, effort, others);
    return saves(turned, upright) ? lastUpright(turned) : upright;

    /** What is left for the last sheet has room to lie upright, more often than not. */
    async function lastUpright(layout: Layout): Promise<Layout> {
      const last = layout.sheets - 1;
      const on = layout.placements.filter(({ sheet }) => sheet === last);
      if (last < (options.fixed?.length ?? 0) || on.length === parts.length) return layout;
      const again = await nest(
        on.map(({ part }) => asDrawn[part]!),
        room,
        checkpoint,
        effort,
      );
      if (again.sheets > 1) return layout;
      const moved = again.placements.map((placement) => ({
        ...placement,
        part: on[placement.part]!.part,
        sheet: last,
      }));
      const placements = [...layout.placements.filter(({ sheet }) => sheet !== last), ...moved];
      return { ...layout, placements: placements.sort((p, q) => p.part - q.part), used: last + again.used };
    }
  };
}

/** Its region is still made only when it is asked for. */
function notTurned(part: PartToNest): PartToNest {
  return {
    get region() {
      return part.region;
    },
    turns: 'none',
  };
}

function saves(turned: Layout, upright: Layout): boolean {
  return turned.sheets < upright.sheets || turned.used <= upright.used - worthOfSheet;
}

/** Whether a layout that filled its sheets wholly would be enough of a gain. */
function maySave({ sheets, used }: Layout, parts: readonly PartToNest[], room: SheetRoom): boolean {
  const { width, height, margin } = room;
  const filled =
    parts.reduce((sum, { region }) => sum + area(region), 0) / ((width - 2 * margin) * (height - 2 * margin));
  return sheets > Math.max(1, Math.ceil(filled)) || used - filled >= worthOfSheet;
}

function fitsAsDrawn({ region }: PartToNest, { width, height, margin }: SheetRoom): boolean {
  const { minX, minY, maxX, maxY } = boundsOf(region) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  return maxX - minX <= width - 2 * margin && maxY - minY <= height - 2 * margin;
}
