/** Ink that is read on a face: black or white, whichever stands out more (WCAG 2.2, relative luminance and contrast). */

import { channels } from './channels.ts';

const black = '#222222';
const white = '#ffffff';

/** Colours as #rrggbb. */
export function inkOn(face: string): string {
  return contrast(face, black) >= contrast(face, white) ? black : white;
}

function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

function luminance(colour: string): number {
  const [red, green, blue] = channels(colour).map((value) => {
    const share = value / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
