/** Writes a page as an SVG element; captions are drawn as paths, so it contains no text. */

import type { CurvePath } from '../../geometry/curves.ts';
import { formatNumber } from '../job/job.ts';
import { pathOfLetters } from './page.ts';
import type { Drawing, Page } from './page.ts';

export function pageSvg({ width, height, drawings }: Page): string {
  const drawn = ({ path, fill, stroke, lineWidth, rule }: Drawing) => {
    const line = stroke === undefined ? '' : ` stroke="${stroke}" stroke-width="${formatNumber(lineWidth ?? 0.1)}"`;
    return `<path fill="${fill ?? 'none'}" fill-rule="${rule ?? 'evenodd'}"${line} d="${data(path, height)}"/>`;
  };
  const parts = drawings.map((each, index) => {
    if ('letters' in each) return drawn({ path: pathOfLetters(each), fill: each.fill, rule: 'nonzero' });
    if (!('clip' in each)) return drawn(each);
    const clip = `<clipPath id="clip${index}"><path clip-rule="evenodd" d="${data(each.clip, height)}"/></clipPath>`;
    return `${clip}<g clip-path="url(#clip${index})">${each.drawings.map(drawn).join('')}</g>`;
  });
  const size = `width="${formatNumber(width)}mm" height="${formatNumber(height)}mm" viewBox="0 0 ${formatNumber(width)} ${formatNumber(height)}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${parts.join('')}</svg>`;
}

function data(path: CurvePath, top: number): string {
  const at = (x: number, y: number) => `${formatNumber(x)} ${formatNumber(top - y)}`;
  return path
    .map((command) => {
      switch (command.type) {
        case 'M':
        case 'L':
          return `${command.type}${at(command.x, command.y)}`;
        case 'Q':
          return `Q${at(command.x1, command.y1)} ${at(command.x, command.y)}`;
        case 'C':
          return `C${at(command.x1, command.y1)} ${at(command.x2, command.y2)} ${at(command.x, command.y)}`;
        case 'Z':
          return 'Z';
      }
    })
    .join('');
}
