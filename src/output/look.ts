/** How materials look on a proof: plain colours, near enough for a customer to see what was agreed. */

export interface Look {
  readonly face: string;
  /** Where the beam has darkened or frosted it. */
  readonly engraved: string;
  readonly edge: string;
}

const wood = (face: string, engraved: string): Look => ({ face, engraved, edge: '#4A2F1B' });

/** The first whose word is in the material's name. */
const looks: readonly (readonly [word: string, look: Look])[] = [
  ['walnut', wood('#8A6444', '#3E2716')],
  ['cherry', wood('#C68B5E', '#6E3F22')],
  ['maple', wood('#EBD8B4', '#8A5F37')],
  ['oak', wood('#CFAE7B', '#74502B')],
  ['basswood', wood('#EFE0BF', '#916A41')],
  ['poplar', wood('#E4D9B2', '#82663A')],
  ['acrylic', { face: '#DCE8EE', engraved: '#9FB4BF', edge: '#5F7884' }],
  ['leather', { face: '#B98557', engraved: '#5B3318', edge: '#3D2412' }],
  ['card', { face: '#F1ECE0', engraved: '#A08A6C', edge: '#8A7A62' }],
];

/** Of any other material: light plywood. */
const usual = wood('#E9D3A6', '#80552F');

export function lookOf(material: string | undefined): Look {
  const name = material?.toLowerCase() ?? '';
  return looks.find(([word]) => name.includes(word))?.[1] ?? usual;
}
