/**
 * The looks of finished materials: one table for the preview, whose style sheet is generated from it, and for proofs.
 * The name of a material only serves to choose colours.
 */

/** The colours of a material, as #rrggbb. */
export interface Look {
  readonly wood: string;
  /** Face of a piece that lies on another, nearer to the light. */
  readonly woodTop: string;
  /** Annual rings; absent if the material has none. */
  readonly grain?: string;
  /** The cut edge, and the line where it meets the face. */
  readonly edgeFace: string;
  readonly char: string;
  readonly burn: string;
  /** Opacity of a burnt area; 1 covers the face completely. */
  readonly burnStrength: number;
  /** The lit rim of an engraved area. */
  readonly lip: string;
}

/** Light wood, the commonest stock, is the default. */
const usual: Look = {
  wood: '#e9d2a6',
  woodTop: '#f0deb9',
  grain: '#b98d52',
  edgeFace: '#8a5c30',
  char: '#6a4323',
  burn: '#4a2a12',
  burnStrength: 0.82,
  lip: '#fff3d6',
};

type Colours = readonly [wood: string, woodTop: string, edgeFace: string, char: string, burn: string, lip: string];

function plainLook([wood, woodTop, edgeFace, char, burn, lip]: Colours, burnStrength = usual.burnStrength): Look {
  return { wood, woodTop, edgeFace, char, burn, burnStrength, lip };
}

function grainedLook(grain: string, ...colours: Colours): Look {
  return { ...plainLook(colours), grain };
}

/** Looks by name; `plain` is a sheet of which nothing is known. The beam melts acrylic cleanly: no char, a bright edge, and white engraving. */
export const looks = {
  light: usual,
  dark: grainedLook('#4b3120', '#7d573a', '#8d6545', '#3c2616', '#2e1c10', '#20120a', '#a87b56'),
  red: grainedLook('#8a4a2c', '#bd7a50', '#ca8b62', '#5f3018', '#4e2613', '#3a190b', '#e2ae88'),
  alder: grainedLook('#b98553', '#dcae7f', '#e6bf95', '#7c5029', '#664020', '#4a2a12', '#f3d8b6'),
  beech: grainedLook('#c09a72', '#ecd0b0', '#f2dcc2', '#8f6a45', '#6d4b2c', '#4c2f18', '#fbeeda'),
  tan: grainedLook('#94703f', '#cfaa74', '#dabb8a', '#68481f', '#573a1c', '#402609', '#ecd3a6'),
  fibre: plainLook(['#c3a079', '#cfae88', '#5a3c22', '#4a3019', '#3b2310', '#dcc3a3']),
  paper: plainLook(['#efe9dc', '#f7f3ea', '#b9a98c', '#8a7a63', '#7a6248', '#ffffff']),
  leather: plainLook(['#b98a5e', '#c69a70', '#5c3d24', '#4d321d', '#3f2613', '#d3ac86']),
  felt: plainLook(['#9aa3a0', '#a8b0ad', '#5f6664', '#555c5a', '#474d4b', '#b9c0be']),
  cork: plainLook(['#c99a66', '#d4a978', '#7d5630', '#6b4826', '#4a2f15', '#e0bd93']),
  plain: plainLook(['#d6d7d4', '#e0e1de', '#8f918d', '#747672', '#4c4e4b', '#f1f2ef']),
  acrylic: plainLook(['#d9ebf1', '#e4f1f6', '#8fb4c1', '#7f9aa5', '#ffffff', '#6f8b96'], 0.9),
} as const satisfies Readonly<Record<string, Look>>;

export type LookName = keyof typeof looks;

/** The changes that a colour makes to a look, by its name. */
export const tints = {
  black: {
    wood: '#26282b',
    woodTop: '#313438',
    edgeFace: '#0f1011',
    char: '#08090a',
    burn: '#8d8f92',
    lip: '#4c5055',
  },
  white: {
    wood: '#f4f4f1',
    woodTop: '#fbfbf9',
    edgeFace: '#c6c6c0',
    char: '#a9a9a3',
    burn: '#c9c9c4',
    lip: '#ffffff',
  },
  grey: { wood: '#a7abaf', woodTop: '#b4b8bc', edgeFace: '#6d7175', char: '#5d6165' },
  red: { wood: '#c8323a', woodTop: '#d24750', edgeFace: '#7c151b', char: '#6d1218' },
  orange: { wood: '#e58a2b', woodTop: '#ec9c48', edgeFace: '#9a5510', char: '#8a4b0d' },
  yellow: { wood: '#e8c341', woodTop: '#eecf60', edgeFace: '#9b7c13', char: '#8a6d0f' },
  green: { wood: '#3f8f5b', woodTop: '#519e6c', edgeFace: '#1d5231', char: '#184629' },
  blue: { wood: '#3a6fb0', woodTop: '#4e80bd', edgeFace: '#1b3f6b', char: '#17365c' },
  purple: { wood: '#7b539f', woodTop: '#8b66ac', edgeFace: '#462a60', char: '#3b2352' },
  pink: { wood: '#df8fab', woodTop: '#e6a2ba', edgeFace: '#9c4f6a', char: '#8b445d' },
  brown: { wood: '#9a6d44', woodTop: '#a87c54', edgeFace: '#573818', char: '#4a2f13' },
} as const satisfies Readonly<Record<string, Partial<Look>>>;

export type TintName = keyof typeof tints;

/** The first that matches counts. */
const lookWords: readonly (readonly [look: LookName, words: RegExp])[] = [
  ['acrylic', /acryl|plexi|perspex|pmma/i],
  ['fibre', /hardboard|fib(re|er) ?board/i],
  ['paper', /paper|card|board(?!.*ply)/i],
  ['leather', /leather/i],
  ['felt', /felt/i],
  ['cork', /cork/i],
  ['dark', /walnut|wenge|mahogany|sapele/i],
  ['red', /cherry|cedar/i],
  ['alder', /alder/i],
  ['beech', /beech/i],
  ['fibre', /mdf|hdf/i],
  ['tan', /oak|bamboo|\bash\b|ashwood|teak/i],
  [
    'light',
    /wood|timber|veneer|ply\b|multiplex|triplay|baltic|birch|poplar|aspen|maple|\blime\b|linden|tilia|\bpine\b/i,
  ],
  [
    'light',
    /spruce|\bfir\b|larch|balsa|willow|\belm\b|hornbeam|\bpear\b|\bplum\b|\bapple\b|sycamore|chestnut|hickory/i,
  ],
  ['light', /hazel|paulownia|okoum|gaboon|hemlock|obeche|ayous|holz|birke|pappel|ahorn|linde|kiefer|fichte/i],
  [
    'light',
    /\bbois\b|contreplaqu|peuplier|bouleau|madera|contrachapado|abedul|chopo|\blegno\b|compensato|betulla|pioppo/i,
  ],
];

/** Colours of acrylic, felt, leather, paper and the like. Wood keeps its own colour. */
const tintWords: readonly (readonly [tint: TintName, words: RegExp])[] = [
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
const tinted: readonly LookName[] = ['acrylic', 'paper', 'leather', 'felt', 'plain'];

/** Where no material is named, that of the commonest stock. */
export function lookNames(material = ''): { readonly look: LookName; readonly tint?: TintName } {
  const unknown = material.trim() === '' ? 'light' : 'plain';
  const look = lookWords.find(([, words]) => words.test(material))?.[0] ?? unknown;
  const tint = tinted.includes(look) ? tintWords.find(([, words]) => words.test(material))?.[0] : undefined;
  return { look, ...(tint === undefined ? {} : { tint }) };
}

export function lookOf(material?: string): Look {
  const { look, tint } = lookNames(material);
  return { ...looks[look], ...(tint === undefined ? {} : tints[tint]) };
}
