/** Icons drawn with a few strokes: severities, operations and layers. Each differs in shape as well as in colour. */

import type { Severity } from '../../src/protocol/preview.ts';
import { svg } from './dom.ts';
import type { Layer } from '../preview/state.ts';

export function severityIcon(severity: Severity): SVGSVGElement {
  const icon = svg('svg', { class: 'severity', viewBox: '0 0 16 16', 'aria-hidden': 'true' });
  setSeverity(icon, severity);
  return icon;
}

const severityShapes: Readonly<Record<Severity, readonly [outline: string, sign: string]>> = {
  error: ['M5.2 1.5h5.6l3.7 3.7v5.6l-3.7 3.7H5.2L1.5 10.8V5.2z', 'M5.5 5.5l5 5M10.5 5.5l-5 5'],
  warning: ['M8 1.6 15 14.4H1z', 'M8 6v4M8 12v.6'],
  info: ['M8 1.5a6.5 6.5 0 1 1 0 13a6.5 6.5 0 1 1 0-13z', 'M8 7.2v4.2M8 4.4v.8'],
};

export function setSeverity(icon: SVGSVGElement, severity: Severity): void {
  if (icon.dataset['severity'] === severity) return;
  icon.dataset['severity'] = severity;
  const [outline, sign] = severityShapes[severity];
  icon.replaceChildren(svg('path', { class: 'outline', d: outline }), svg('path', { class: 'sign', d: sign }));
}

/** Sample of the line or fill that a layer is drawn with. */
export function swatch(layer: Layer): SVGSVGElement {
  const icon = svg('svg', { class: `swatch op-${layer}`, viewBox: '0 0 20 12', 'aria-hidden': 'true' });
  icon.append(...swatchStrokes[layer].map((d) => svg('path', { d })));
  return icon;
}

const swatchStrokes: Readonly<Record<Layer, readonly string[]>> = {
  'cut-outer': ['M1 6h18'],
  'cut-inner': ['M1 6h18'],
  score: ['M1 6h18'],
  engrave: ['M1.5 1.5h17v9h-17z', 'M3 10 9 2M8 10 14 2M13 10l4-5.5'],
  finish: ['M1.5 1.5h17v9h-17z', 'M2 4.5c5 2 10-2 16 0M2 8c5 2 10-2 16 0'],
  beam: ['M1 6h18', 'M10 6m-2.5 0a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0 -5 0z'],
  warnings: ['M10 1 16.5 11.5h-13z', 'M10 5v3M10 9.6v.4'],
  grid: ['M1 3.5h18M1 8.5h18M5 1v10M10 1v10M15 1v10'],
  dimensions: ['M1.5 1.5v9M18.5 1.5v9M2 6h16M5 3.5 2 6l3 2.5M15 3.5 18 6l-3 2.5'],
};

export function tickIcon(): SVGSVGElement {
  const mark = svg('path', { d: 'M3 8.5l3.2 3.2L13 4.8' });
  return svg('svg', { class: 'icon', viewBox: '0 0 16 16', 'aria-hidden': 'true' }, mark);
}

/** Icon of a button that opens an explanation. */
export function aboutIcon(): SVGSVGElement {
  const strokes = svg('path', { d: 'M8 1.8a6.2 6.2 0 1 1 0 12.4a6.2 6.2 0 1 1 0-12.4zM8 7.2v4M8 4.6v.4' });
  return svg('svg', { class: 'icon', viewBox: '0 0 16 16', 'aria-hidden': 'true' }, strokes);
}

export function eyeIcon(): SVGSVGElement {
  return svg(
    'svg',
    { class: 'icon eye', viewBox: '0 0 16 16', 'aria-hidden': 'true' },
    svg('path', { d: 'M1 8c2-3.4 4.3-5 7-5s5 1.6 7 5c-2 3.4-4.3 5-7 5s-5-1.6-7-5z' }),
    svg('path', { class: 'pupil', d: 'M8 5.8a2.2 2.2 0 1 1 0 4.4a2.2 2.2 0 1 1 0-4.4z' }),
    svg('path', { class: 'slash', d: 'M2.5 14 13.5 2' }),
  );
}

export function wrenchIcon(): SVGSVGElement {
  return svg(
    'svg',
    { class: 'icon', viewBox: '0 0 16 16', 'aria-hidden': 'true' },
    svg('path', {
      d: 'M9.2 6.8 3.4 12.6a1.2 1.2 0 0 0 1.7 1.7l5.8-5.8a3.6 3.6 0 0 0 4.3-4.9l-2.3 2.3-2-.5-.5-2 2.3-2.3a3.6 3.6 0 0 0-4.9 4.3z',
    }),
  );
}
