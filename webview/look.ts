/** Which of the finished looks a material has. The names are only looked at to choose a colour. */

const looks: readonly (readonly [look: string, words: RegExp])[] = [
  ['clear', /acryl|plexi|perspex|pmma/i],
  ['paper', /paper|card|board(?!.*ply)/i],
  ['leather', /leather|felt|cork/i],
  ['dark', /walnut|wenge|mahogany|sapele/i],
  ['red', /cherry|alder|cedar|beech/i],
  ['tan', /oak|bamboo|mdf|hdf|ash|teak/i],
];

/** A class for the stage; light wood, the commonest stock, where nothing else is known. */
export function lookOf(material: string | undefined): string {
  const found = looks.find(([, words]) => material !== undefined && words.test(material));
  return `look-${found?.[0] ?? 'light'}`;
}

export const allLooks: readonly string[] = [...looks.map(([look]) => `look-${look}`), 'look-light'];
