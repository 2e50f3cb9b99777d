/** Specs by the hundred, for what must hold for any tag: weak ones and sound ones, in both units. */

import { seededRandom } from './shapes.ts';
import { weakFamilies, weakSpec } from './weak-specs.ts';

/** `count` specs, the same for the same seed. */
export function manyTags(count: number, seed: number): string[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i) => {
    if (i % 3 === 0) return weakSpec(weakFamilies[(i / 3) % weakFamilies.length]!, random, i).text;
    return plainTag(random, i % 3 === 1 ? 'mm' : 'in');
  });
}

/** Areas, outlines and open lines: a name cut out, and a plate with words in single strokes and a scored border. `head`: its own lines. */
export const nameAndPlate = (head = ''): string => `tagwright: 1
stock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}
${head}shapes:
  name: {text: Sage, font: Pacifico, x_height: 9 mm, overlap: 0.6 mm}
  plate: {label: {size: [60 mm, 30 mm]}}
  words: {text: Rue, font: single line, x_height: 6 mm, place: {on: plate, at: center}}
pieces:
  name: {body: [name], hanger: {ring: {at: left, diameter: 4 mm}}}
  plate: {body: [plate], engrave: [words], score: [{from: plate, grow: -2 mm}], hanger: {hole: {on: plate, at: left}}}
`;

const names = ['Sorrel', 'Zoë', 'Bean', 'Kale & Co', 'No. 7', 'Yarrow'];

function plainTag(random: () => number, units: 'mm' | 'in'): string {
  const between = (low: number, high: number) => low + (high - low) * random();
  const one = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const length = (mm: number) => (units === 'mm' ? mm.toFixed(2) : (mm / 25.4).toFixed(3));
  const [width, height] = [between(45, 110), between(24, 60)];
  const body = one([
    `{rectangle: [${length(width)}, ${length(height)}], radius: ${length(between(0, 8))}}`,
    `{ellipse: [${length(width)}, ${length(height)}]}`,
    `{polygon: {sides: ${3 + Math.floor(6 * random())}, across: ${length(height * 1.6)}}}`,
    `{arrow: {length: ${length(width)}, width: ${length(height / 2)}, head: ${length(height)}, tail: notched, notch: ${length(5)}}}`,
  ]);
  const font = one(['Pacifico', 'Nunito', 'Alfa Slab One', 'Great Vibes']);
  const mark = one(['engrave', 'score', 'cut']);
  return [
    'tagwright: 1',
    `units: ${units}`,
    `stock: {kerf: ${one([0, 0.08, 0.16, 0.3].map(length))}, thickness: ${length(3)}}`,
    ...(random() < 0.2 ? ['output: {compensate: false}'] : []),
    'shapes:',
    `  plate: ${body}`,
    `  name: {text: "${one(names)}", font: ${font}, width: ${length(width * between(0.3, 0.6))}, rotate: ${Math.round(between(-20, 20))}, place: {on: plate}}`,
    `  dot: {ellipse: ${length(between(3, 6))}, nudge: {up: ${length(height * 0.3)}}}`,
    'pieces:',
    `  tag: {body: [plate], cut: [dot], ${mark === 'cut' ? '' : `${mark}: [name], `}hanger: {ring: {at: ${one(['left', 'top', 'auto'])}, diameter: ${length(3)}}}}`,
    ...(random() < 0.3 ? ['  word: {body: [name], parts: many, glue_to: tag}'] : []),
    '',
  ].join('\n');
}
