/** Coordinates of an SVG drawing: its viewport, boxes and scale. */

import { userUnits, type Attributes, type SvgViewport } from './svg-shapes.ts';

/**
 * Innermost first: how an inner `svg` fits its content into its box, where it or a `use` moves it, and its `transform`.
 */
export function ownTransforms(tag: string, attributes: Attributes, viewport: SvgViewport): string[] {
  const { transform } = attributes;
  const own = transform === undefined ? [] : [transform];
  if (tag !== 'use' && tag !== 'svg') return own;
  const x = userUnits(attributes['x'], viewport.width);
  const y = userUnits(attributes['y'], viewport.height);
  const into = tag === 'svg' ? viewBoxTransform(attributes, attributes, viewport) : [];
  return [...into, `translate(${x} ${y})`, ...own];
}

/** The transforms that bring a `viewBox` into the middle of a box, as is the default of `preserveAspectRatio`. */
export function viewBoxTransform({ viewBox }: Attributes, box: Attributes, viewport: SvgViewport): string[] {
  const [x = 0, y = 0, width = 0, height = 0] = numbers(viewBox);
  if (!(width > 0 && height > 0)) return [];
  const boxWidth = userUnits(box['width'] ?? '100%', viewport.width);
  const boxHeight = userUnits(box['height'] ?? '100%', viewport.height);
  const scale = Math.min(boxWidth / width, boxHeight / height);
  const [left, top] = [(boxWidth - scale * width) / 2, (boxHeight - scale * height) / 2];
  return [`translate(${-x} ${-y})`, `scale(${scale})`, `translate(${left} ${top})`];
}

function numbers(list = ''): number[] {
  return list
    .trim()
    .split(/[\s,]+/)
    .map(Number);
}

export function viewportOf(attributes: Attributes): SvgViewport {
  const [, , width = 0, height = 0] = numbers(attributes['viewBox']);
  if (width > 0 && height > 0) return { width, height, given: true };
  return { width: userUnits(attributes['width'], 0), height: userUnits(attributes['height'], 0), given: false };
}

/** CSS Values and Units: 1 in = 25.4 mm = 96 px. */
const mmPerPx = 25.4 / 96;

export function mmPerUnit(attributes: Attributes, { width, height, given }: SvgViewport): number {
  if (!given) return mmPerPx;
  const along = (written: string | undefined, units: number): number[] => {
    const px = written?.trim().endsWith('%') ? 0 : userUnits(written, 0);
    return px > 0 ? [(px * mmPerPx) / units] : [];
  };
  const scales = [...along(attributes['width'], width), ...along(attributes['height'], height)];
  return scales.length > 0 ? Math.min(...scales) : mmPerPx;
}
