/** Opened fonts for tests, each opened once. */

import { FontLibrary } from '../../src/text/font-library.ts';
import { openFace, type FontFace } from '../../src/text/font-face.ts';
import { packagedFont, packagedFontFiles } from './font-files.ts';

const library = new FontLibrary(packagedFontFiles());

export async function bundledFace(family: string, weight = 400): Promise<FontFace> {
  const answer = await library.load({ family, weight, italic: false });
  if ('problem' in answer) throw new Error(answer.problem.message);
  return answer.face;
}

/** A font of a test package, such as `packagedFace('roboto')`. */
export async function packagedFace(slug: string, subset = 'latin', weight = 400): Promise<FontFace> {
  return openFace({ bytes: await packagedFont(slug, subset, weight), index: 0, variations: {} });
}

/** Fifty words and names that fonts for Western Europe can write (Basic Latin and Latin-1). */
export const latinWords = [
  ...['Sorrel', 'Borage', 'Chervil', 'Lovage', 'Fennel', 'Yarrow', 'Quinoa', 'Jostaberry', 'Zucchini', 'Kohlrabi'],
  ...['Waffle bean', 'Office pea', 'fjord lily', 'AVATAR', 'To Wyn', 'Flax & Rye', 'No. 17', 'Sweet pea!', 'ffi fi fl'],
  ...[
    'Angelica',
    'marigold',
    'Thyme, wild',
    'Hyssop',
    'Périgord',
    'Grünkohl',
    'Möhre',
    'Æbler',
    'Åse',
    'Ørjan',
    'Niño',
  ],
  ...['François', 'Zoë', 'Ágnes', 'Håkon', 'Sláinte', 'Straße', 'Ýmir', 'Théo', 'Señorita', 'naïve', 'Björk', 'crème'],
  ...['Tomato 2026', 'Rye-grass', 'Love', 'Wiesel', 'Yew', 'Kale (red)', 'Pak choi', 'Fava “giant”'],
];

/** Names and words of a seed library, with accents that Europe's names have. */
export const words = [
  ...['Sorrel', 'Borage', 'Chervil', 'Lovage', 'Fennel', 'Yarrow', 'Quinoa', 'Jostaberry', 'Zucchini', 'Kohlrabi'],
  ...['Waffle bean', 'Office pea', 'fjord lily', 'AVATAR', 'To Wyn', 'Flax & Rye', 'No. 17', 'Sweet pea!', 'ffi fi fl'],
  ...['Łucja', 'Małgorzata', 'Zoë', 'Jiří', 'Ágnes', 'Kőszeg', 'Săndulescu', 'Žofie', 'Åse', 'Ņina', 'Šárka'],
  ...['Wiesław', 'Bożena', 'Ştefan', 'Çağla', 'Đorđe', 'François', 'Håkon', 'Ørjan', 'Niño', 'Uğur', 'Sláinte'],
  ...['Miloš', 'Rūta', 'Ģirts', 'Jürgen', 'Straße', 'Œuf', 'Æbler', 'Ýmir', 'Ďábel', 'Ťava'],
];
