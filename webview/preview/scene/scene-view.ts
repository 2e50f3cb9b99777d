/**
 * Draws a scene into the page's SVG and patches it: elements live as long as their ids, and attributes change only if
 * they must.
 */

import type {
  PathData,
  Scene,
  SceneArea,
  SceneGhost,
  SceneGrip,
  SceneHanger,
  ScenePart,
  ScenePiece,
  SceneShape,
} from '../../../src/protocol/scene.ts';
import type { SceneCutPath } from '../../../src/protocol/preview.ts';
import { leadersOf, type Arranged } from './arrange.ts';
import { usualThicknessMm } from '../../../src/look/stock-look.ts';
import { grainPattern, sharedGrainId } from './grain-pattern.ts';
import { showSheet } from './look.ts';
import { setAttribute, svg } from '../../common/dom.ts';
import { AreaView, GhostView } from './unmade-views.ts';
import { setTarget } from './target.ts';
import { KeyedList, type ItemView } from '../../common/keyed.ts';
import { joinedBox, moved, type Box } from '../../common/camera/viewport.ts';

export class SceneView {
  private readonly sheet = svg('g');
  private readonly leaders = svg('path', { class: 'leaders' });
  private readonly ghosts = svg('g');
  private readonly ghostList = new KeyedList<SceneGhost>(this.ghosts, () => new GhostView());
  readonly world = svg('g', { id: 'world' }, this.leaders, this.sheet, this.ghosts);
  private readonly pieces = new KeyedList<ScenePiece, PieceView>(this.sheet, () => new PieceView());
  private grips: readonly SceneGrip[] = [];
  private areas: readonly SceneArea[] = [];
  private taken: string | undefined;
  private offsets: Arranged['offsets'] = new Map();
  private shown: readonly string[] = [];
  private highlighted: ReadonlySet<string> = new Set();
  private hot: ReadonlySet<string> = new Set();

  draw(scene: Scene, arranged: Arranged, hidden: readonly string[]): void {
    this.grips = scene.grips;
    this.areas = scene.pieces.flatMap(({ areas }) => areas);
    const lines = leadersOf(scene, arranged).map(([from, to]) => `M${from.join(' ')}L${to.join(' ')}`);
    setAttribute(this.leaders, 'd', lines.join(''));
    this.world.style.setProperty('--thickness', `${scene.thickness ?? usualThicknessMm}`);
    this.pieces.patch(arranged.order);
    this.ghostList.patch(scene.ghosts);
    this.offsets = arranged.offsets;
    this.shown = arranged.order.map(({ id }) => id);
    for (const piece of arranged.order) {
      const view = this.pieces.get(piece.id)!;
      view.move(arranged.offsets.get(piece.id) ?? [0, 0]);
      view.element.classList.toggle('hidden', hidden.includes(piece.id));
      view.element.classList.toggle('on-top', piece.glueTo !== undefined);
      showSheet(view.element, piece.sheet);
    }
    this.mark();
  }

  showBeam(paths: readonly SceneCutPath[]): void {
    for (const id of this.shown) this.pieces.get(id)?.showBeam(paths.filter(({ piece }) => piece === id));
  }

  /** Highlights what is at the editor's cursor. */
  light(ids: readonly string[]): void {
    this.highlighted = new Set(ids);
    this.mark();
  }

  /** Marks the selection. */
  take(grip: string | undefined): void {
    if (grip === this.taken) return;
    this.taken = grip;
    this.mark();
  }

  /** Highlights what is under the pointer, or has the focus, in one of the lists. */
  heat(ids: readonly string[]): void {
    this.hot = new Set(ids);
    this.mark();
  }

  /** Bounds of a shape, a part or a hanger as drawn, in mm. */
  boxOf(id: string): Box | undefined {
    const element = this.world.querySelector<SVGGraphicsElement>(`[data-id="${CSS.escape(id)}"]`);
    return element ? this.boxRound(element) : undefined;
  }

  /** Bounds of what is highlighted as drawn, in mm; `undefined` if nothing is. */
  highlightedBox(): Box | undefined {
    let box: Box | undefined;
    for (const element of this.world.querySelectorAll<SVGGraphicsElement>('.lit')) {
      if (element.getClientRects().length === 0) continue;
      const own = this.boxRound(element);
      box = box ? joinedBox(box, own) : own;
    }
    return box;
  }

  private boxRound(element: SVGGraphicsElement): Box {
    const { x, y, width, height } = element.getBBox();
    const piece = element.closest<SVGElement>('.piece')?.dataset['piece'] ?? '';
    return moved([x, y, x + width, y + height], this.offsets.get(piece) ?? [0, 0]);
  }

  private mark(): void {
    const taken = this.grips.find(({ id }) => id === this.taken)?.parts ?? [];
    const isWorkedOn = (id: string): boolean => this.highlighted.has(id) || taken.includes(id);
    const open = new Set(this.areas.filter(({ id, holds }) => [id, ...holds].some(isWorkedOn)).map(({ id }) => id));
    const gripOf = new Map(this.grips.flatMap((grip) => grip.parts.map((part) => [part, grip] as const)));
    for (const element of this.world.querySelectorAll<SVGElement>('[data-id]')) {
      const id = element.dataset['id']!;
      const grip = gripOf.get(id);
      if (grip) setAttribute(element, 'data-grip', grip.id);
      else element.removeAttribute('data-grip');
      element.classList.toggle('movable', grip?.moves === true && (grip.free || grip.id === this.taken));
      element.classList.toggle('lit', this.highlighted.has(id));
      element.classList.toggle('hot', this.hot.has(id));
      element.classList.toggle('open', open.has(id));
    }
  }
}

/** The number of piece views made so far, for ids of their own. */
let pieceViews = 0;

class PieceView implements ItemView<ScenePiece> {
  /** Shadow of a piece seen close up, where a blur would slow down each step of a pan. */
  private readonly shade = svg('path', { class: 'shade' });
  /** Cut edge, as seen from slightly above. */
  private readonly edge = svg('path', { class: 'edge' });
  private readonly solid = svg('path', { class: 'solid' });
  private readonly grain = svg('path', { class: 'grain' });
  private readonly ownId = `piece${pieceViews++}`;
  private readonly ownGrain = svg('defs');
  private readonly gloss = svg('path', { class: 'gloss', fill: 'url(#gloss)' });
  private readonly shapes = svg('g');
  private readonly shapeList = new KeyedList<SceneShape>(this.shapes, () => new ShapeView());
  private readonly hangers = svg('g');
  private readonly hangerList = new KeyedList<SceneHanger>(this.hangers, () => new HangerView());
  private readonly parts = svg('g');
  private readonly partList = new KeyedList<ScenePart>(this.parts, () => new PartView());
  private readonly areas = svg('g');
  private readonly areaList = new KeyedList<SceneArea>(this.areas, () => new AreaView());
  private readonly beam = svg('g', { class: 'beam' });
  private readonly beamList = new KeyedList<SceneCutPath & { readonly id: string }>(this.beam, () => new BeamView());
  readonly element = svg(
    'g',
    { class: 'piece' },
    this.ownGrain,
    svg('g', { class: 'finish' }, this.shade, this.edge, this.solid, this.grain, this.gloss),
    this.shapes,
    this.hangers,
    this.parts,
    this.areas,
    this.beam,
  );

  update(piece: ScenePiece): void {
    setAttribute(this.element, 'data-piece', piece.id);
    // Glued pieces show another part of the sheet.
    this.showGrain(piece);
    const solid = materialData(piece);
    for (const path of [this.shade, this.edge, this.solid, this.grain, this.gloss]) setAttribute(path, 'd', solid);
    this.shapeList.patch(piece.shapes);
    this.partList.patch(piece.parts);
    this.hangerList.patch(piece.hangers);
    this.areaList.patch(piece.areas);
  }

  /** A piece of another stock has a pattern of its own, as patterns take their colour from where they stand. */
  private showGrain({ glueTo, sheet, hasUprightGrain }: ScenePiece): void {
    const kind = { isOnTop: glueTo !== undefined, isUpright: hasUprightGrain === true };
    const id = sheet ? `${this.ownId}-${sharedGrainId(kind)}` : sharedGrainId(kind);
    if (sheet && this.ownGrain.firstElementChild?.id !== id) this.ownGrain.replaceChildren(grainPattern(id, kind));
    if (!sheet) this.ownGrain.replaceChildren();
    setAttribute(this.grain, 'fill', `url(#${id})`);
  }

  showBeam(paths: readonly SceneCutPath[]): void {
    this.beamList.patch(paths.map((path, index) => ({ ...path, id: `${index}` })));
  }

  move([dx, dy]: readonly [number, number]): void {
    const translate = `${dx}px ${dy}px`;
    if (this.element.style.translate !== translate) this.element.style.translate = translate;
  }
}

/** The path of the beam's middle, and the full width of the kerf. */
class BeamView implements ItemView<SceneCutPath> {
  private readonly kerf = svg('path', { class: 'kerf' });
  private readonly middle = svg('path', { class: 'middle' });
  readonly element = svg('g', {}, this.kerf, this.middle);

  update({ data, kerf }: SceneCutPath): void {
    for (const path of [this.kerf, this.middle]) setAttribute(path, 'd', data);
    setAttribute(this.kerf, 'stroke-width', `${kerf}`);
  }
}

/** Invisible until it is highlighted. */
class HangerView implements ItemView<SceneHanger> {
  readonly element = svg('path', { class: 'hanger' });

  update(hanger: SceneHanger): void {
    setAttribute(this.element, 'd', hanger.data);
    setTarget(this.element, hanger);
  }
}

/** Invisible until it is highlighted. */
class ShapeView implements ItemView<SceneShape> {
  readonly element = svg('path', { class: 'shape' });

  update(shape: SceneShape): void {
    setAttribute(this.element, 'd', shape.data);
    setTarget(this.element, shape);
  }
}

class PartView implements ItemView<ScenePart> {
  private readonly paths = ['lip', 'burn', 'halo', 'line', 'hit'].map((name) => svg('path', { class: name }));
  readonly element = svg('g', {}, ...this.paths);

  update(part: ScenePart): void {
    if (this.element.dataset['operation'] !== part.operation) {
      this.element.dataset['operation'] = part.operation;
      this.element.setAttribute('class', `part op-${part.operation}`);
      // As an attribute: in a style sheet, the reference would be resolved against the sheet's own file.
      this.paths[3]!.setAttribute('fill', part.operation === 'engrave' ? 'url(#hatch)' : 'none');
    }
    for (const path of this.paths) setAttribute(path, 'd', part.data);
    setTarget(this.element, part);
  }
}

/** Cuts bound the material: filled by the even-odd rule, they give the finished piece. */
function materialData({ parts }: ScenePiece): PathData {
  const cuts = parts.filter(({ operation }) => operation === 'cut-outer' || operation === 'cut-inner');
  return cuts.map(({ data }) => data).join('');
}
