/** The basic shapes of SVG as path data, by the equivalents that SVG 1.1 chapter 9 gives. */

export type Attributes = Readonly<Record<string, string>>;

/** The size that percentages refer to. */
export interface SvgViewport {
  readonly width: number;
  readonly height: number;
  /** Whether it comes from a `viewBox`. */
  readonly given: boolean;
}

/** CSS Values and Units: 1 in = 2.54 cm = 6 pc = 72 pt = 96 px; an em is 16 px by default. */
const pxPer: Readonly<Record<string, number>> = {
  '': 1,
  px: 1,
  pt: 96 / 72,
  pc: 16,
  mm: 96 / 25.4,
  cm: 96 / 2.54,
  in: 96,
  em: 16,
  ex: 8,
};

/** A length in user units; 0 if there is none, or it cannot be read. */
export function userUnits(written: string | undefined, whole: number): number {
  const match = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z]*|%)\s*$/i.exec(written ?? '');
  if (!match) return 0;
  const [, figure, unit = ''] = match;
  const scale = unit === '%' ? whole / 100 : (pxPer[unit.toLowerCase()] ?? 0);
  return Number(figure) * scale;
}

/** `undefined` for an element that draws nothing itself, and for a shape without a size. */
export function shapeData(tag: string, attributes: Attributes, viewport: SvgViewport): string | undefined {
  const diagonal = Math.hypot(viewport.width, viewport.height) / Math.SQRT2;
  const along = (name: string) => userUnits(attributes[name], viewport.width);
  const down = (name: string) => userUnits(attributes[name], viewport.height);
  switch (tag) {
    case 'path':
      return attributes['d'];
    case 'rect': {
      const [x, y, w, h] = [along('x'), down('y'), along('width'), down('height')];
      if (w <= 0 || h <= 0) return undefined;
      const rx = Math.min(along('rx') || down('ry'), w / 2);
      const ry = Math.min(down('ry') || along('rx'), h / 2);
      if (rx <= 0 || ry <= 0) return `M${x} ${y}h${w}v${h}h${-w}z`;
      const arc = (dx: number, dy: number) => `a${rx} ${ry} 0 0 1 ${dx} ${dy}`;
      return `M${x + rx} ${y}h${w - 2 * rx}${arc(rx, ry)}v${h - 2 * ry}${arc(-rx, ry)}h${2 * rx - w}${arc(-rx, -ry)}v${2 * ry - h}${arc(rx, -ry)}z`;
    }
    case 'line':
      return `M${along('x1')} ${down('y1')}L${along('x2')} ${down('y2')}`;
    case 'circle': {
      const r = userUnits(attributes['r'], diagonal);
      return ellipseData(along('cx'), down('cy'), r, r);
    }
    case 'ellipse':
      return ellipseData(along('cx'), down('cy'), along('rx'), down('ry'));
    case 'polygon':
    case 'polyline': {
      const points = attributes['points']?.trim();
      return points ? `M${points}${tag === 'polygon' ? 'z' : ''}` : undefined;
    }
    default:
      return undefined;
  }
}

/** An ellipse of eight arcs: as cubic Béziers they are off by 0.000004 of the radius, quarters by 0.0003. */
function ellipseData(cx: number, cy: number, rx: number, ry: number): string | undefined {
  if (rx <= 0 || ry <= 0) return undefined;
  const at = (eighth: number): string =>
    `${cx + rx * Math.cos((eighth * Math.PI) / 4)} ${cy + ry * Math.sin((eighth * Math.PI) / 4)}`;
  const arcs = [1, 2, 3, 4, 5, 6, 7, 8].map((eighth) => `A${rx} ${ry} 0 0 1 ${at(eighth)}`);
  return `M${at(0)}${arcs.join('')}z`;
}
