/** Front views of what something is glued on: where the layers go, and which score lines stay in sight. */

import { listedQuoted } from '../../core/names.ts';
import { counted } from '../../core/units.ts';
import { applyTo } from '../../geometry/affine.ts';
import { difference, union } from '../../geometry/clipper.ts';
import { transformCurves } from '../../geometry/curves.ts';
import type { CurvePath } from '../../geometry/curves.ts';
import { fitContours } from '../../geometry/fit-contours.ts';
import { boundsOf } from '../../geometry/measure.ts';
import { poleOf } from '../../geometry/pole.ts';
import type { Affine, Region } from '../../geometry/types.ts';
import { lookOfStock } from '../../look/stock-look.ts';
import { stockOf } from '../../tag/by-stock.ts';
import type { Tag } from '../../tag/tag.ts';
import { assemblySteps, beforeGluing, hiddenOn } from './assembly-steps.ts';
import type { AssemblyStep } from './assembly-steps.ts';
import type { Flow } from '../page/flow.ts';
import { section } from './job-sheet.ts';
import { curvesOf } from '../page/page.ts';

/** Largest height of a view, in mm: of the only tag, and of one among several. */
const mapMm = 75;
const smallMm = 50;

/** Between small views side by side, in mm. */
const gutterMm = 6;

const quiet = '#666666';
const sizeMm = 2.8;
const heading = 'Where the layers go';

/** Score lines that get covered, score lines that stay in sight, and layers glued on. */
const inks = { hidden: '#8a8a8a', seen: '#D55E00', layer: '#0072B2', laid: '#dce9f2' } as const;

/** Tags of one spec whose layers are alike. */
export interface AlikeTags {
  readonly tag: Tag;
  /** Absent if they have none. */
  readonly names: readonly string[];
  readonly copies: number;
}

interface View {
  readonly tag: Tag;
  readonly steps: readonly AssemblyStep[];
  /** What is seen from the front. */
  readonly under: AssemblyStep;
}

/** One below another, each with what it shows. */
export function frontViews(begin: () => Flow, tag: Tag): Flow[] {
  const steps = assemblySteps(tag);
  return section(begin, heading, (add) => {
    for (const under of undersOf(tag, steps)) {
      const [flow, view] = [add(), { tag, steps, under }];
      flow.skip(2);
      const scale = drawView(flow, view, { left: flow.left, width: flow.width, height: mapMm });
      const on = layersOn(view);
      const numbers = `${on.length === 1 ? 'layer' : 'layers'} ${on.map((each) => each.number).join(', ')}`;
      const scored = hasScores(view) ? ` ${scoresInWords}` : '';
      flow.write(
        `Layer ${under.number} from the front, ${scaleInWords(scale)}: blue is where ${numbers} ${on.length === 1 ? 'goes' : 'go'}.${scored}`,
        { size: sizeMm, fill: quiet },
      );
      flow.skip(2);
    }
  });
}

const scoresInWords = 'Score lines in orange stay in sight; those in grey disappear.';

/** Small, side by side, each with its names, and with what is said of it that does not hold for the first. */
export function viewsByName(begin: () => Flow, all: readonly AlikeTags[]): Flow[] {
  let usual: readonly string[] | undefined;
  const views = all.flatMap(({ tag, names, copies }) => {
    const steps = assemblySteps(tag);
    const unders = undersOf(tag, steps);
    const said = notesOn(tag, steps);
    const known = (usual ??= said);
    const notes = said.filter((note) => !known.includes(note));
    return unders.map((under, index) => {
      const layer = unders.length === 1 ? [] : [`layer ${under.number}`];
      const title = [...(names.length === 0 ? [] : [listedQuoted(names)]), ...layer].join(', ');
      return { tag, steps, under, title, copies, notes: index === 0 ? notes : [] };
    });
  });
  const widest = Math.max(...views.map((view) => widthOf(view)));
  const columns = [3, 2].find((count) => widest <= columnOf(begin(), count)) ?? 2;
  return section(begin, heading, (add) => {
    const intro = add();
    intro.write(
      `From the front. Blue is where the layer of that number goes.${views.some(hasScores) ? ` ${scoresInWords}` : ''}`,
      { size: sizeMm, fill: quiet },
    );
    for (let at = 0; at < views.length; at += columns) {
      // The heading never stands alone at the foot of a page.
      const flow = at === 0 ? intro : add();
      flow.skip(2);
      const [top, width] = [flow.y, columnOf(flow, columns)];
      const row = views.slice(at, at + columns);
      const scales = row.map((view, column) => {
        flow.y = top;
        return [drawView(flow, view, { left: left(flow, column), width, height: smallMm }), flow.y] as const;
      });
      const below = Math.min(...scales.map(([, y]) => y));
      const ends = row.map(({ title, copies, notes }, column) => {
        flow.y = below;
        const look = { indent: left(flow, column) - flow.left, width };
        if (title !== '') flow.write(title, { ...look, bold: true });
        const scale = scaleInWords(scales[column]![0]);
        flow.write(`${counted(copies, 'tag')}, ${scale}`, { ...look, size: sizeMm, fill: quiet });
        for (const note of notes) flow.write(note, { ...look, size: sizeMm });
        return flow.y;
      });
      flow.y = Math.min(...ends);
      flow.skip(2);
    }

    function left(flow: Flow, column: number): number {
      return flow.left + column * (columnOf(flow, columns) + gutterMm);
    }
  });
}

const columnOf = ({ width }: Flow, columns: number): number => (width - (columns - 1) * gutterMm) / columns;

/** What is said of each layer of a tag before and while it is glued. */
function notesOn(tag: Tag, steps: readonly AssemblyStep[]): string[] {
  return steps.flatMap(({ number, piece, what }) =>
    [what, ...beforeGluing(piece, tag)].map((note) => `Layer ${number}: ${note}`),
  );
}

function undersOf(tag: Tag, steps: readonly AssemblyStep[]): AssemblyStep[] {
  return steps.filter(({ piece }) => tag.pieces.some(({ glueTo }) => glueTo === piece.id));
}

function layersOn({ steps, under }: View): AssemblyStep[] {
  return steps.filter(({ piece }) => piece.glueTo === under.piece.id);
}

const hasScores = ({ under }: View): boolean => under.piece.marks.some(({ operation }) => operation === 'score');

/** A piece glued on may be larger than the one below. */
function boxOf(view: View) {
  return boundsOf([view.under, ...layersOn(view)].flatMap(({ piece }) => piece.region))!;
}

function widthOf(view: View): number {
  const { minX, maxX } = boxOf(view);
  return maxX - minX;
}

/** From the flow's line downwards, at most at true size; returns its scale. */
function drawView(
  flow: Flow,
  view: View,
  { left, width, height }: { readonly left: number; readonly width: number; readonly height: number },
): number {
  const { tag, under } = view;
  const { piece } = under;
  const on = layersOn(view);
  const box = boxOf(view);
  const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
  const scale = Math.min(1, width / wide, height / high);
  const bottom = flow.y - high * scale;
  const toPaper: Affine = { a: scale, b: 0, c: 0, d: scale, e: left - box.minX * scale, f: bottom - box.minY * scale };
  const paths = (region: Region): CurvePath => transformCurves(curvesOf(fitContours(region)), toPaper);
  const { page, faces } = flow;
  page.draw(paths(piece.region), { fill: lookOfStock(stockOf(piece, tag)).wood, stroke: '#444444', lineWidth: 0.2 });
  for (const each of on) page.draw(paths(each.piece.region), { fill: inks.laid, stroke: inks.layer, lineWidth: 0.3 });
  const scored = piece.marks.filter(({ operation }) => operation === 'score').map(({ region }) => paths(region));
  for (const path of scored) page.draw(path, { stroke: inks.hidden, lineWidth: 0.2 });
  if (scored.length > 0)
    page.clipped(
      paths(difference(piece.region, [hiddenOn(piece, tag)])),
      scored.map((path) => ({ path, stroke: inks.seen, lineWidth: 0.6 })),
    );
  for (const each of on) {
    const at = poleOf(union([each.piece.region]), 0.2);
    if (!at) continue;
    const { x, y } = applyTo(at, toPaper);
    page.caption(String(each.number), faces.bold, { x, y: y - 1.3, size: 3.6, at: 'middle', fill: inks.layer });
  }
  flow.y = bottom;
  return scale;
}

function scaleInWords(scale: number): string {
  return Math.abs(scale - 1) < 1e-9 ? 'at true size' : `at ${(100 * scale).toFixed(0)} %`;
}
