/** A tag as an SVG file (SVG 1.1) in real millimetres. */

import type { Region } from '../geometry/types.ts';
import { operationColours } from '../tag/operation-colours.ts';
import type { Operation, Tag } from '../tag/tag.ts';
import { planCuts } from './cut-plan.ts';

/** 0.001 mm: finer than any beam, and far finer than the hundredth that sizes are promised to. */
const decimals = 3;

/** How lines are drawn on a screen; the machine follows their middle. */
const lineWidthMm = 0.1;

const labels: Readonly<Record<Operation, string>> = {
  engrave: 'Engrave',
  score: 'Score',
  'cut-inner': 'Cut, inner',
  'cut-outer': 'Cut, outer',
};

/**
 * One group an operation, in working order, so that a sheet worked from top to bottom is engraved and scored while it is
 * whole, and every opening is cut before the outline that frees it. Same tag, same bytes. `undefined` where there is nothing
 * to cut.
 */
export function toSvg(tag: Tag): string | undefined {
  const plan = planCuts(tag);
  if (!plan) return undefined;
  const width = figure(plan.bounds.maxX);
  const height = figure(plan.bounds.maxY);
  const { kerf } = tag.stock;
  const kerfNote =
    kerf > 0
      ? `Cut lines allow for a kerf of ${figure(kerf)} mm.`
      : 'No kerf is allowed for: cut lines are the finished outline.';
  const groups = plan.steps.map(({ operation, paths }) => {
    const lines = paths.map(
      ({ piece, rings }) => `    <path data-piece="${escape(piece)}" d="${pathData(rings, plan.bounds.maxY)}"/>`,
    );
    return [
      `  <g id="${operation}" ${style(operation)}>`,
      `    <title>${labels[operation]}</title>`,
      ...lines,
      '  </g>',
    ].join('\n');
  });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `  <title>${escape(tag.title)}</title>`,
    `  <desc>Lengths in mm. ${kerfNote}</desc>`,
    ...groups,
    '</svg>',
    '',
  ].join('\n');
}

function style(operation: Operation): string {
  const colour = operationColours[operation];
  return operation === 'engrave'
    ? `fill="${colour}" fill-rule="evenodd" stroke="none"`
    : `fill="none" stroke="${colour}" stroke-width="${lineWidthMm}"`;
}

/** Rings with y turned to run down from `top`. */
function pathData(rings: Region, top: number): string {
  return rings.map((ring) => `M${ring.map(({ x, y }) => `${figure(x)} ${figure(top - y)}`).join('L')}Z`).join('');
}

function figure(value: number): string {
  const rounded = Number(value.toFixed(decimals));
  // −0 would be written as "-0" in some places and "0" in others.
  return String(rounded === 0 ? 0 : rounded);
}

/** XML 1.0: the five reserved characters, and control characters, which no XML file may hold. */
function escape(text: string): string {
  const entities: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&apos;' };
  return (
    text
      .toWellFormed()
      .replace(/[&<>"']/g, (character) => entities[character]!)
      // eslint-disable-next-line no-control-regex
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
  );
}
