/** The drawing in an SVG file as curves in mm. Scripts, styles, links and text in it are ignored; nothing is ever fetched. */

import { XMLParser } from 'fast-xml-parser';
import type { CurvePath } from '../geometry/curves.ts';
import { parseSvgPath } from './svg-path.ts';

/** Larger drawings are photographs in disguise. */
const largestDrawing = 2_000_000;
const deepest = 100;
const mostShapes = 5000;

/** CSS Values and Units: 1 in = 2.54 cm = 96 px. */
const mmPer: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  px: 25.4 / 96,
  '': 25.4 / 96,
};

/** An element as fast-xml-parser gives it with `preserveOrder`: its tag's name is the key of its children. */
type XmlNode = Record<string, unknown> & { readonly ':@'?: Readonly<Record<string, string>> };

export type DrawingResult = { readonly curves: CurvePath } | { readonly problem: string };

/**
 * Every filled path and shape of an SVG 1.1 document, transforms applied, y up. Size: `width` in its unit over the width of
 * `viewBox`; without them, CSS pixels.
 */
export function parseSvgDrawing(svg: string): DrawingResult {
  if (svg.length > largestDrawing) return { problem: 'is larger than two million characters' };
  // Entities are left as they stand: they only matter in text, and unfolding them is how small files become huge.
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
    return { problem: `cannot be read: ${error instanceof Error ? error.message : String(error)}` };
  }
  const root = nodes.find((node) => 'svg' in node);
  if (!root) return { problem: 'is not an SVG drawing' };
  const shapes: { data: string; transforms: readonly string[] }[] = [];
  const tooMuch = collect(root['svg'] as XmlNode[], [], 0, shapes);
  if (tooMuch) return { problem: tooMuch };
  if (shapes.length === 0) return { problem: 'has no paths or shapes' };
  const curves = [];
  for (const { data, transforms } of shapes) {
    const result = parseSvgPath(data, mmPerUnit(root[':@'] ?? {}), transforms);
    if ('problem' in result) return { problem: `has a faulty path: ${result.problem}` };
    for (const command of result.curves) curves.push(command);
  }
  return { curves };
}

function mmPerUnit(attributes: Readonly<Record<string, string>>): number {
  const match = /^\s*([\d.]+(?:e[+-]?\d+)?)\s*(mm|cm|in|pt|pc|px|)\s*$/i.exec(attributes['width'] ?? '');
  const box = (attributes['viewBox'] ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const boxWidth = box[2];
  if (!match || !boxWidth || !(boxWidth > 0)) return match && !boxWidth ? mmPer['px']! : mmPer['']!;
  return (Number(match[1]) * mmPer[match[2]!.toLowerCase()]!) / boxWidth;
}

/** Elements whose content is not drawn where it stands. */
const undrawn = new Set([
  'defs',
  'symbol',
  'clipPath',
  'mask',
  'marker',
  'pattern',
  'text',
  'style',
  'script',
  'metadata',
  'title',
  'desc',
]);

function collect(
  nodes: readonly XmlNode[],
  transforms: readonly string[],
  depth: number,
  found: { data: string; transforms: readonly string[] }[],
): string | undefined {
  if (depth > deepest) return `is nested more than ${deepest} deep`;
  for (const node of nodes) {
    const tag = Object.keys(node).find((key) => key !== ':@');
    if (tag === undefined || undrawn.has(tag)) continue;
    const attributes = node[':@'] ?? {};
    if (attributes['display'] === 'none') continue;
    const own = attributes['transform'];
    const all = own === undefined ? transforms : [own, ...transforms];
    const data = pathData(tag, attributes);
    if (data !== undefined) found.push({ data, transforms: all });
    if (found.length > mostShapes) return `has more than ${mostShapes} shapes`;
    const children = node[tag];
    const problem = Array.isArray(children) ? collect(children as XmlNode[], all, depth + 1, found) : undefined;
    if (problem) return problem;
  }
  return undefined;
}

/** The basic shapes as paths, by the equivalents that SVG 1.1 chapter 9 gives. */
function pathData(tag: string, attributes: Readonly<Record<string, string>>): string | undefined {
  const n = (name: string) => Number.parseFloat(attributes[name] ?? '0') || 0;
  switch (tag) {
    case 'path':
      return attributes['d'];
    case 'rect': {
      const [x, y, w, h] = [n('x'), n('y'), n('width'), n('height')];
      if (w <= 0 || h <= 0) return undefined;
      const rx = Math.min(n('rx') || n('ry'), w / 2);
      const ry = Math.min(n('ry') || n('rx'), h / 2);
      if (rx <= 0 || ry <= 0) return `M${x} ${y}h${w}v${h}h${-w}z`;
      const arc = (dx: number, dy: number) => `a${rx} ${ry} 0 0 1 ${dx} ${dy}`;
      return `M${x + rx} ${y}h${w - 2 * rx}${arc(rx, ry)}v${h - 2 * ry}${arc(-rx, ry)}h${2 * rx - w}${arc(-rx, -ry)}v${2 * ry - h}${arc(rx, -ry)}z`;
    }
    case 'circle':
    case 'ellipse': {
      const rx = tag === 'circle' ? n('r') : n('rx');
      const ry = tag === 'circle' ? n('r') : n('ry');
      if (rx <= 0 || ry <= 0) return undefined;
      return `M${n('cx') + rx} ${n('cy')}a${rx} ${ry} 0 0 1 ${-2 * rx} 0a${rx} ${ry} 0 0 1 ${2 * rx} 0z`;
    }
    case 'polygon':
    case 'polyline':
      return attributes['points'] === undefined ? undefined : `M${attributes['points'].trim()}z`;
    default:
      return undefined;
  }
}
