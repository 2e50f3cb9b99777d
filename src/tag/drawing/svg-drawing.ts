/**
 * Reads the drawing in an SVG file as curves in mm: areas, and strokes for use as lines. Scripts are ignored, text,
 * pictures and lines are counted as left out of the areas, and nothing is ever fetched: `use` only reaches elements of
 * the same file.
 */

import { XMLParser } from 'fast-xml-parser';
import type { FillRule } from '../../geometry/clipper.ts';
import type { CurvePath } from '../../geometry/curves.ts';
import type { LeftOut } from './left-out.ts';
import { LeftOutCounter } from './svg-left-out.ts';
import type { Paint } from './svg-left-out.ts';
import { parseSvgPath } from './svg-path.ts';
import { shapeData, type Attributes, type SvgViewport } from './svg-shapes.ts';
import { parseStyleSheet, propertiesOf } from './svg-style.ts';
import type { StyleSheet } from './svg-style.ts';
import { ownTransforms, viewBoxTransform, viewportOf, mmPerUnit } from './svg-viewport.ts';

/** Larger drawings, in characters, are photographs in disguise. */
const largestDrawing = 2_000_000;
const deepest = 100;
const mostShapes = 5000;
const mostCommands = 200_000;

/** Most elements visited, counted each time `use` leads to them: keeps a few lines from becoming billions. */
const mostElements = 50_000;

/** An element as fast-xml-parser returns it with `preserveOrder`: the name of its tag is the key of its children. */
type XmlNode = Record<string, unknown> & { readonly ':@'?: Attributes };

/** A path or basic shape of the drawing; where its contours overlap, its own rule says what is inside. */
export interface DrawnShape {
  /** In mm, y up. */
  readonly curves: CurvePath;
  readonly rule: FillRule;
}

export type DrawingResult =
  | { readonly shapes: readonly DrawnShape[]; readonly lines: readonly CurvePath[]; readonly leftOut: LeftOut }
  | { readonly problem: string };

/**
 * Every path and basic shape of an SVG 1.1 document, transforms applied, y up. The scale is `width` and `height` in
 * their units over those of `viewBox`, the smaller of the two, as is the default of `preserveAspectRatio`; without
 * them, CSS pixels.
 */
export function parseSvgDrawing(svg: string): DrawingResult {
  if (svg.length > largestDrawing) return { problem: 'is larger than two million characters' };
  // Entities are not expanded: they only matter in text, and expanding them is how small files become huge.
  const parser = new XMLParser({
    preserveOrder: true,
    ignoreAttributes: false,
    attributeNamePrefix: '',
    processEntities: false,
    parseAttributeValue: false,
  });
  let nodes: XmlNode[];
  try {
    nodes = parser.parse(svg) as XmlNode[];
  } catch (error) {
    // The parser's messages are about its own functions and positions; it has its own limit on the depth of nesting.
    if (error instanceof Error && /nested/i.test(error.message)) return { problem: 'is nested too deeply' };
    return { problem: 'is damaged or cut short: save it again in your drawing program' };
  }
  const root = nodes.find((node) => tagOf(node) === 'svg');
  if (!root) return { problem: 'is not an SVG drawing' };
  try {
    return new DrawingReader(root).read();
  } catch (error) {
    if (error instanceof Refusal) return { problem: error.message };
    throw error;
  }
}

/** A reason to refuse the drawing; completes the sentence "The drawing …". */
class Refusal extends Error {}

/** Properties that an element passes on to its content. */
interface Inherited {
  /** Innermost first. */
  readonly transforms: readonly string[];
  readonly rule: FillRule;
  readonly paint: Paint;
  readonly depth: number;
}

/** Elements whose content is not drawn in place. */
const undrawn = new Set([
  ...['defs', 'symbol', 'clipPath', 'mask', 'marker', 'pattern', 'filter', 'linearGradient', 'radialGradient'],
  ...['style', 'script', 'metadata', 'title', 'desc'],
]);

class DrawingReader {
  readonly #root: XmlNode;
  readonly #scale: number;
  readonly #viewport: SvgViewport;
  readonly #named = new Map<string, XmlNode>();
  readonly #shapes: DrawnShape[] = [];
  readonly #lines: CurvePath[] = [];
  readonly #sheet: StyleSheet;
  readonly #leftOut: LeftOutCounter;
  #elements = 0;
  #commands = 0;

  constructor(root: XmlNode) {
    this.#root = root;
    const attributes = attributesOf(root);
    this.#viewport = viewportOf(attributes);
    this.#scale = mmPerUnit(attributes, this.#viewport);
    const css: string[] = [];
    this.#index(childrenOf(root), 0, css);
    this.#sheet = parseStyleSheet(css.join('\n'));
    this.#leftOut = new LeftOutCounter(this.#viewport, (id) => tagOf(this.#named.get(id) ?? {}));
  }

  read(): DrawingResult {
    const properties = propertiesOf('svg', attributesOf(this.#root), this.#sheet);
    const paint = this.#leftOut.paintOf(properties, { fill: 'black', stroke: 'none', strokeWidth: '1' });
    this.#children(this.#root, { transforms: [], rule: 'nonzero', paint, depth: 0 });
    const leftOut = this.#leftOut.counted();
    if (this.#shapes.length > 0 || this.#lines.length > 0) return { shapes: this.#shapes, lines: this.#lines, leftOut };
    return { problem: 'has no paths or shapes' };
  }

  /** Indexes elements by their ids, and collects style sheets in `css`. */
  #index(nodes: readonly XmlNode[], depth: number, css: string[]): void {
    if (depth > deepest) throw new Refusal(`is nested more than ${deepest} deep`);
    for (const node of nodes) {
      const { id } = attributesOf(node);
      if (id !== undefined && !this.#named.has(id)) this.#named.set(id, node);
      if (tagOf(node) === 'style') css.push(...childrenOf(node).map(textOf));
      this.#index(childrenOf(node), depth + 1, css);
    }
  }

  #children(node: XmlNode, inherited: Inherited): void {
    for (const child of childrenOf(node)) this.#element(child, inherited);
  }

  #element(node: XmlNode, inherited: Inherited): void {
    if (++this.#elements > mostElements) throw new Refusal(`has more than ${mostElements} elements`);
    if (inherited.depth > deepest) throw new Refusal(`is nested more than ${deepest} deep`);
    const tag = tagOf(node);
    if (tag === undefined || undrawn.has(tag)) return;
    const attributes = attributesOf(node);
    const property = propertiesOf(tag, attributes, this.#sheet);
    if (property('display') === 'none') return;
    const isHidden = property('visibility') === 'hidden';
    if (this.#leftOut.isLeftOut(tag, isHidden)) return;
    this.#leftOut.effects(property);
    const ruled = property('fill-rule');
    const own: Inherited = {
      transforms: [...ownTransforms(tag, attributes, this.#viewport), ...inherited.transforms],
      rule: ruled === 'evenodd' || ruled === 'nonzero' ? ruled : inherited.rule,
      paint: this.#leftOut.paintOf(property, inherited.paint),
      depth: inherited.depth + 1,
    };
    if (tag === 'use') {
      const target = this.#named.get((attributes['href'] ?? attributes['xlink:href'] ?? '').replace(/^#/, ''));
      // A symbol is only drawn through `use`, in the box given there.
      if (target && tagOf(target) === 'symbol') {
        const into = viewBoxTransform(attributesOf(target), attributes, this.#viewport);
        this.#children(target, { ...own, transforms: [...into, ...own.transforms] });
      } else if (target) this.#element(target, own);
      else this.#leftOut.count('copy');
      return;
    }
    const data = isHidden ? undefined : shapeData(tag, attributes, this.#viewport);
    if (data !== undefined) this.#shape(data, own);
    this.#children(node, own);
  }

  #shape(data: string, { transforms, rule, paint }: Inherited): void {
    if (this.#shapes.length >= mostShapes) throw new Refusal(`has more than ${mostShapes} shapes`);
    const result = parseSvgPath(data, this.#scale, transforms);
    if ('problem' in result) throw new Refusal(`has a faulty path: ${result.problem}`);
    this.#commands += result.curves.length;
    if (this.#commands > mostCommands) throw new Refusal(`has more than ${mostCommands} lines and curves`);
    if (this.#leftOut.isStroked(paint)) this.#lines.push(result.curves);
    const curves = this.#leftOut.filled(result.curves, paint, transforms);
    if (curves.length > 0) this.#shapes.push({ curves, rule });
  }
}

/** The element's name, without the prefix that some programs write. */
function tagOf(node: XmlNode): string | undefined {
  return Object.keys(node)
    .find((key) => key !== ':@')
    ?.replace(/^svg:/, '');
}

function textOf(node: XmlNode): string {
  const text = node['#text'];
  return typeof text === 'string' ? text : '';
}

function attributesOf(node: XmlNode): Attributes {
  return node[':@'] ?? {};
}

function childrenOf(node: XmlNode): readonly XmlNode[] {
  const key = Object.keys(node).find((each) => each !== ':@');
  const children = key === undefined ? undefined : node[key];
  return Array.isArray(children) ? (children as XmlNode[]) : [];
}
