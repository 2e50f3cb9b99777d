/** Writes a tag as an SVG file (SVG 1.1) in real millimetres. */

import { errorNote, formatNumber, kerfNote } from './job/job.ts';
import type { Job } from './job/job.ts';
import { operationNames, styleOf } from './page/styles.ts';
import type { Style } from './page/styles.ts';
import { svgPath } from './svg-path.ts';
import type { Operation } from '../tag/tag.ts';

/**
 * One group for each operation, in working order: a sheet worked from top to bottom is engraved and scored while it is
 * whole, and every opening is cut before the outline that frees it. The same tag gives the same bytes.
 */
export function toSvg(job: Job): string {
  const { tag, plan } = job;
  const width = formatNumber(plan.bounds.maxX);
  const height = formatNumber(plan.bounds.maxY);
  const warning = errorNote(job);
  const groups = plan.steps.map(({ operation, layer, paths }) => {
    const style = styleOf(tag, operation, layer);
    const lines = paths.map(
      ({ piece, contours, alongLines }) =>
        `    <path data-piece="${escape(piece)}"${alongLines ? ` ${asLine(style)}` : ''} d="${svgPath(contours, plan.bounds.maxY)}"/>`,
    );
    return [
      `  <g id="${operation}${layer ? `-${layer.index + 1}` : ''}" ${styleAttributes(operation, style)}>`,
      `    <title>${escape(style.layer === operation ? operationNames[operation] : style.layer)}</title>`,
      ...lines,
      '  </g>',
    ].join('\n');
  });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `  <title>${escape(tag.title)}</title>`,
    `  <desc>${escape([...(warning ? [warning] : []), 'Lengths in mm.', kerfNote(tag, 'mm')].join(' '))}</desc>`,
    ...groups,
    '</svg>',
    '',
  ].join('\n');
}

function styleAttributes(operation: Operation, style: Style): string {
  return operation === 'engrave' ? `fill="${style.color}" fill-rule="evenodd" stroke="none"` : asLine(style);
}

function asLine({ color, lineWidth }: Style): string {
  return `fill="none" stroke="${color}" stroke-width="${formatNumber(lineWidth)}"`;
}

/**
 * Escapes text for XML 1.0: the five reserved characters, and control characters, which XML does not allow, are
 * dropped.
 */
export function escape(text: string): string {
  const entities: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&apos;' };
  return (
    text
      .toWellFormed()
      .replace(/[&<>"']/g, (character) => entities[character]!)
      // oxlint-disable-next-line no-control-regex
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
  );
}
