/** Recognises styles that people write after the name of a family: “Nunito Bold”. */

export interface StyledName {
  readonly family: string;
  readonly weight?: number;
  readonly italic?: true;
}

/** Names of weights in the OpenType specification (OS/2, usWeightClass), and other names in use for them. */
const weights: readonly (readonly [RegExp, number])[] = [
  [/ (?:thin|hairline)$/i, 100],
  [/ (?:extra|ultra)[ -]?light$/i, 200],
  [/ light$/i, 300],
  [/ (?:regular|normal|book)$/i, 400],
  [/ medium$/i, 500],
  [/ (?:semi|demi)[ -]?bold$/i, 600],
  [/ (?:extra|ultra)[ -]?bold$/i, 800],
  [/ bold$/i, 700],
  [/ (?:black|heavy)$/i, 900],
];

/** The family and style in a name; `undefined` if the name does not end in a style. */
export function styleInName(name: string): StyledName | undefined {
  const upright = name.trim().replace(/ (?:italic|oblique)$/i, '');
  const found = weights.find(([words]) => words.test(upright));
  const family = found ? upright.replace(found[0], '') : upright;
  if (family === name.trim() || family === '') return undefined;
  return { family, ...(found ? { weight: found[1] } : {}), ...(upright === name.trim() ? {} : { italic: true }) };
}
