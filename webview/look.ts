/** How a material looks when finished. Its name is only looked at to choose colours. */

const looks: readonly (readonly [look: string, words: RegExp])[] = [
  ['acrylic', /acryl|plexi|perspex|pmma/i],
  ['paper', /paper|card|board(?!.*ply)/i],
  ['leather', /leather/i],
  ['felt', /felt/i],
  ['cork', /cork/i],
  ['dark', /walnut|wenge|mahogany|sapele/i],
  ['red', /cherry|alder|cedar|beech/i],
  ['fibre', /mdf|hdf/i],
  ['tan', /oak|bamboo|ash|teak/i],
];

/** Colours that acrylic, felt, leather, paper and the like come in. Wood is what it is. */
const tints: readonly (readonly [tint: string, words: RegExp])[] = [
  ['black', /black/i],
  ['white', /white/i],
  ['grey', /gr[ae]y|silver|smok/i],
  ['red', /red\b|ruby/i],
  ['orange', /orange|amber/i],
  ['yellow', /yellow|gold/i],
  ['green', /green/i],
  ['blue', /blue/i],
  ['purple', /purple|violet/i],
  ['pink', /pink|rose/i],
  ['brown', /brown/i],
];
const tinted: readonly string[] = ['acrylic', 'paper', 'leather', 'felt'];

/** Classes for the page; light wood, the commonest stock, where nothing else is known. */
export function lookOf(material: string | undefined): string[] {
  const name = material ?? '';
  const look = looks.find(([, words]) => words.test(name))?.[0] ?? 'light';
  const tint = tinted.includes(look) ? tints.find(([, words]) => words.test(name))?.[0] : undefined;
  return [`look-${look}`, ...(tint === undefined ? [] : [`tint-${tint}`])];
}

export const allLooks: readonly string[] = [
  'look-light',
  ...looks.map(([look]) => `look-${look}`),
  ...tints.map(([tint]) => `tint-${tint}`),
];

export function showLook(material: string | undefined): void {
  const chosen = lookOf(material);
  for (const name of allLooks) document.body.classList.toggle(name, chosen.includes(name));
}
