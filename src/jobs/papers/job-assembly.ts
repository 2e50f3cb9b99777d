/** Assembly sheets of a job: how the layers of each spec go together, and where those of each different tag go. */

import { counted } from '../../core/units.ts';
import { isLayered, pagesOfAssemblies } from '../../export/bench/assembly-sheet.ts';
import type { Tools } from '../../export/job/job.ts';
import type { Page } from '../../export/page/page.ts';
import type { AlikeTags } from '../../export/bench/placement-maps.ts';
import { area, boundsOf, perimeter } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { Tag } from '../../tag/tag.ts';
import { madeName } from './by-order.ts';
import type { LaidOutJob } from '../job.ts';
import type { JobTag } from '../orders/work.ts';
import { groupedBy } from '../../core/grouped.ts';

/** Empty if nothing is glued. */
export async function jobAssembly(
  { pieces: { tags }, model: { units } }: LaidOutJob,
  tools: Pick<Tools, 'captions'>,
): Promise<Page[]> {
  const layered = tags.filter(({ tag }) => isLayered(tag));
  const sheets = [...new Set(layered.map(({ spec }) => spec))].map((spec) => {
    const own = layered.filter((tag) => tag.spec === spec);
    const alike = byLayers(own);
    const [{ tag, names }] = alike as [AlikeTags];
    const count = own.reduce((sum, { copies }) => sum + copies, 0);
    const of = alike.length === 1 && names.length === 1 ? `, “${names[0]}”` : '';
    return { tag: { ...tag, title: `${madeName(own[0]!)}: ${counted(count, 'tag')}${of}` }, issues: [], alike };
  });
  return sheets.length === 0 ? [] : pagesOfAssemblies(sheets, units, tools);
}

/** In the order in which they first come. */
function byLayers(tags: readonly JobTag[]): AlikeTags[] {
  return [...groupedBy(tags, ({ tag }) => layersKey(tag)).values()].map((own) => ({
    tag: own[0]!.tag,
    names: [...new Set(own.map(({ label }) => label))].filter((label) => label !== ''),
    copies: own.reduce((sum, { copies }) => sum + copies, 0),
  }));
}

/** The same for tags that are assembled alike: what is engraved may differ. Measures are shorter than outlines. */
function layersKey({ pieces }: Tag): string {
  return JSON.stringify(
    pieces.map(({ id, title, region, marks }) => {
      const scored = marks.filter(({ operation }) => operation === 'score').map((mark) => measuresOf(mark.region));
      return [id, title, measuresOf(region), scored];
    }),
  );
}

function measuresOf(region: Region): readonly unknown[] {
  return [area(region).toFixed(2), perimeter(region).toFixed(2), boundsOf(region)];
}
