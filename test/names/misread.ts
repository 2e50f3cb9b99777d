/**
 * Words whose letters may join into others (“rn” as “m”, “ol” as “d”, “Iv” as “N”), in eight upright faces, slid together and read by
 * tesseract.js: `npm run misread`. Of those that it reads as drawn by the font, how many it still reads, and as what it reads the others.
 */

import { drawn } from '../calibration/drawn.ts';
import { editsFrom, isSame, openReader } from '../calibration/reader.ts';
import { packagedFace } from '../fonts/faces.ts';
import { heldName, nameOf, overlapMm, xHeightMm } from './joined.ts';

const faces = [
  ...[
    'roboto',
    'roboto-slab',
    'source-serif-4',
    'playfair-display',
    'zilla-slab',
    'josefin-sans',
    'quicksand',
    'fredoka',
  ],
];

const list = `
Barn, Fern, Corn, Ernie, Thorn, Acorn, Violet, Colin, Clover, Oliver, Lola, Carol, Alice, Noel, Polly, Rolf, Iole, Ivy, Iva, Iwan, Fig, Fir,
Finn, Fiona, Till, Hill, Lily, Illinois, 1911, 2011, 2024, Sea Kale, Jean Paul, Fig Tree, Pea Lily, Rye 11, MINT, FILL, LIFE, IRIS
`;
const words = list.split(',').map((word) => word.trim());

const reader = await openReader();
let [plain, read, exact] = [0, 0, 0];
for (const slug of faces) {
  const face = await packagedFace(slug);
  const others: string[] = [];
  for (const word of words) {
    if (!(await reader.reads(word, drawn((await nameOf(face, word, 0)).region, xHeightMm)))) continue;
    plain += 1;
    const { region } = await heldName(face, word, overlapMm);
    const readings = await reader.readings(drawn(region, xHeightMm));
    if (readings.some((reading) => isSame(word, reading))) read += 1;
    else others.push(`${word} as ${[...new Set(readings)].join(', ')}`);
    if (readings.some((reading) => editsFrom(word, reading) === 0)) exact += 1;
  }
  console.log(`${slug}: ${others.join('; ') || 'all read'}`);
}
console.log(`${plain} read as drawn; slid together ${read}, letter for letter ${exact}`);
await reader.close();
