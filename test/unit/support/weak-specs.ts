/** Specs that are weak on purpose, in many styles of YAML, each line with a comment that a fix must leave alone. */

export interface WeakSpec {
  readonly name: string;
  readonly text: string;
}

type Random = () => number;

interface Parts {
  readonly head?: readonly string[];
  /** Name and keys of each shape; the keys in flow style. */
  readonly shapes: readonly (readonly [name: string, keys: readonly string[]])[];
  readonly pieces: readonly (readonly [id: string, keys: readonly string[]])[];
}

const words = ['Sorrel', 'Mint', 'Dill', 'Chives', 'Basil', 'Leek', 'Kale', 'Thyme', 'Lovage', 'Fennel'];

/** What is weak about a tag, with figures drawn at random. */
const families: Readonly<Record<string, (random: Random) => Parts>> = {
  'two discs that hardly overlap': (random) => ({
    shapes: [
      ['left', ['ellipse: 20']],
      ['right', ['ellipse: 20', `nudge: {right: ${(19.95 + 0.04 * random()).toFixed(3)}}`]],
    ],
    pieces: [['tag', ['body: [left, right]']]],
  }),
  'a name grown until it is a blob': (random) => ({
    shapes: [
      ['plate', ['rectangle: [120, 50]', 'radius: 6']],
      [
        'name',
        [
          `text: ${['Gwen', 'Beate', 'Rosa'][Math.floor(3 * random())]!}`,
          'font: Pacifico',
          `x_height: ${(13 + random()).toFixed(1)}`,
          `grow: ${(2 + random()).toFixed(2)}`,
          'place: {on: plate}',
        ],
      ],
    ],
    pieces: [['tag', ['body: [plate]', 'engrave: [name]']]],
  }),
  'a bar too thin between two plates': (random) => ({
    shapes: [
      ['bar', [`rectangle: [30, ${(0.3 + 0.45 * random()).toFixed(2)}]`]],
      ['plate', ['rectangle: [14, 10]', 'nudge: {left: 14}']],
      ['other', ['rectangle: [14, 12]', 'nudge: {right: 14}']],
    ],
    pieces: [['tag', ['body: [plate, bar, other]']]],
  }),
  'an opening too near the edge of a plate': (random) => ({
    shapes: [
      ['plate', ['rectangle: [60, 30]', 'radius: 4']],
      ['window', ['ellipse: 12', `nudge: {up: ${(8 + 0.9 * random()).toFixed(2)}}`]],
    ],
    pieces: [['tag', ['body: [plate]', 'cut: [window]']]],
  }),
  'a ring that hardly touches': (random) => ({
    head: ['tie: {twine: 1.5}'],
    shapes: [['plate', ['rectangle: [50, 20]', 'radius: 8']]],
    pieces: [['tag', ['body: [plate]', `hanger: {ring: {at: left, sink: ${(-1.72 - 0.05 * random()).toFixed(3)}}}`]]],
  }),
  'a ring with a thin wall': (random) => ({
    head: ['tie: {twine: 1.5}'],
    shapes: [['plate', ['rectangle: [50, 24]']]],
    pieces: [['tag', ['body: [plate]', `hanger: {ring: {at: top, wall: ${(0.3 + 0.45 * random()).toFixed(2)}}}`]]],
  }),
  'a hole too near the edge': (random) => ({
    head: ['tie: {twine: 2}'],
    shapes: [['plate', ['rectangle: [50, 30]']]],
    pieces: [['tag', ['body: [plate]', `hanger: {hole: {at: left, inset: ${(0.3 + random()).toFixed(2)}}}`]]],
  }),
  'a hole put too near the edge by a point': (random) => ({
    head: ['tie: {twine: 2}'],
    shapes: [['plate', ['rectangle: [50, 30]']]],
    pieces: [['tag', ['body: [plate]', `hanger: {hole: {at: {left: ${(22 + 0.8 * random()).toFixed(2)}}}}`]]],
  }),
  'a hole beside the balance': (random) => ({
    head: ['tie: {twine: 1.5}'],
    shapes: [
      ['plate', ['rectangle: [50, 30]', 'radius: 4']],
      ['tab', ['rectangle: [14, 20]', 'nudge: {right: 30}']],
    ],
    pieces: [
      ['tag', ['body: [plate, tab]', `hanger: {hole: {at: {up: 9, left: ${(3.5 + 1.3 * random()).toFixed(1)}}}}`]],
    ],
  }),
  'a hole that falls into a window': (random) => ({
    head: ['tie: {twine: 1.5}'],
    shapes: [
      ['plate', ['rectangle: [60, 40]']],
      ['window', ['ellipse: [16, 10]', `nudge: {up: ${(10 + 3 * random()).toFixed(1)}}`]],
    ],
    pieces: [['tag', ['body: [plate]', 'cut: [window]', 'hanger: {hole: {at: top}}']]],
  }),
  'a hole beside a glued leaf': (random) => ({
    head: ['tie: {twine: 2}'],
    shapes: [
      ['plate', ['rectangle: [60, 40]']],
      ['leaf', ['ellipse: [30, 12]', `nudge: {up: ${(6.95 + 0.5 * random()).toFixed(2)}}`]],
    ],
    pieces: [
      ['back', ['body: [plate]', 'hanger: {hole: {at: top, diameter: 4}}']],
      ['front', ['body: [leaf]', 'glue_to: back']],
    ],
  }),
  'a hole that the twine does not pass': (random) => ({
    head: [`tie: {twine: ${(2 + random()).toFixed(1)}}`],
    shapes: [['plate', ['rectangle: [50, 30]']]],
    pieces: [['tag', ['body: [plate]', 'hanger: {hole: {at: top, diameter: 2.8}}']]],
  }),
  'a slot that the ribbon does not pass': (random) => ({
    head: [`tie: {ribbon: ${(8 + 4 * random()).toFixed(1)}}`],
    shapes: [['plate', ['rectangle: [50, 30]']]],
    pieces: [['tag', ['body: [plate]', 'hanger: {slot: {at: top, length: 7}}']]],
  }),
  'a hole under the engraving': (random) => ({
    head: ['tie: {twine: 2}'],
    shapes: [
      ['plate', ['rectangle: [60, 30]']],
      ['leaf', ['ellipse: [20, 3]', `nudge: {up: ${(7.5 + 0.5 * random()).toFixed(1)}}`]],
    ],
    pieces: [['tag', ['body: [plate]', 'engrave: [leaf]', 'hanger: {hole: {at: top}}']]],
  }),
  'shoulders that poke out': (random) => ({
    shapes: [
      ['neck', ['rectangle: [24, 18]', 'radius: 6']],
      ['plate', ['rectangle: [70, 36]', 'radius: 6']],
      ['whole', [`stack: {shapes: [neck, plate], lap: ${(1 + 3 * random()).toFixed(1)}}`]],
    ],
    pieces: [['tag', ['body: [whole]']]],
  }),
  'a placement line that shows': (random) => ({
    shapes: [
      ['plate', ['rectangle: [60, 40]']],
      ['badge', ['ellipse: [30, 20]']],
    ],
    pieces: [
      [
        'back',
        [
          'body: [plate]',
          random() < 0.5 ? 'score: [badge]' : `score: [{from: badge, grow: ${(0.9 * random()).toFixed(2)}}]`,
        ],
      ],
      ['front', ['body: [badge]', 'glue_to: back']],
    ],
  }),
  'engraving beyond the edge': (random) => ({
    shapes: [
      ['plate', ['rectangle: [60, 30]']],
      ['leaf', ['ellipse: [30, 12]', `width: ${(40 + 30 * random()).toFixed(1)}`, 'nudge: {right: 12}']],
    ],
    pieces: [['tag', ['body: [plate]', 'engrave: [leaf]']]],
  }),
  'a word cut beyond the edge': (random) => ({
    shapes: [
      ['plate', ['rectangle: [60, 24]']],
      [
        'word',
        [
          'text: NITS',
          'font: Nunito',
          'weight: 800',
          'height: 12',
          `nudge: {right: ${(16 + 8 * random()).toFixed(1)}}`,
        ],
      ],
    ],
    pieces: [['tag', ['body: [plate]', 'cut: [word]']]],
  }),
  'a window cut beside the plate': (random) => ({
    shapes: [
      ['plate', ['rectangle: [60, 24]']],
      ['window', ['ellipse: [12, 9]', `nudge: {up: ${(20 + 10 * random()).toFixed(1)}}`]],
    ],
    pieces: [['tag', ['body: [plate]', 'cut: [window]']]],
  }),
  'a shape centred by its box': (random) => ({
    shapes: [
      ['plate', ['rectangle: [60, 40]']],
      ['drop', [`path: "M0 0 L30 ${(8 + 6 * random()).toFixed(1)} L0 20 Z"`, 'place: {on: plate, by: box}']],
    ],
    pieces: [['tag', ['body: [plate]', 'engrave: [drop]']]],
  }),
  'a piece larger than its sheet': (random) => ({
    head: ['sheet: {size: [100, 60], margin: 5}'],
    shapes: [['plate', ['rectangle: [80, 30]', `width: ${(130 + 60 * random()).toFixed(0)}`]]],
    pieces: [['tag', ['body: [plate]']]],
  }),
  'letters cut through a plate': (random) => ({
    shapes: [
      ['plate', ['rectangle: [60, 26]']],
      [
        'letters',
        [`text: ${['Bo', 'Dao', 'Rep', 'OQ'][Math.floor(4 * random())]!}`, 'font: Nunito', 'weight: 800', 'height: 14'],
      ],
    ],
    pieces: [['tag', ['body: [plate]', 'cut: [letters]']]],
  }),
  'a dot that falls out': (random) => ({
    shapes: [['word', ['text: i', 'font: Nunito', 'weight: 800', `height: ${(20 + 20 * random()).toFixed(0)}`]]],
    pieces: [['tag', ['body: [word]']]],
  }),
  'thin script': (random) => ({
    shapes: [
      [
        'word',
        [
          `text: ${words[Math.floor(words.length * random())]!}`,
          'font: Pacifico',
          `width: ${(22 + 8 * random()).toFixed(0)}`,
        ],
      ],
    ],
    pieces: [['tag', ['body: [word]', 'parts: many']]],
  }),
  'letters nearer to each other than the kerf': (random) => ({
    shapes: [
      ['plate', ['rectangle: [70, 24]']],
      [
        'word',
        [
          'text: IHI',
          'font: Nunito',
          'weight: 800',
          'size: 16',
          `letter_spacing: ${(-2.24 + 0.1 * random()).toFixed(3)}`,
        ],
      ],
    ],
    pieces: [
      ['back', ['body: [plate]']],
      ['front', ['body: [word]', 'glue_to: back', 'parts: many']],
    ],
  }),
  'a slit that closes': (random) => ({
    shapes: [
      ['plate', ['rectangle: [50, 24]']],
      ['slit', [`rectangle: [20, ${(0.03 + 0.1 * random()).toFixed(3)}]`]],
    ],
    pieces: [['tag', ['body: [plate]', 'cut: [slit]']]],
  }),
  'pin-holes in a plate': (random) => ({
    shapes: [
      ['sheet', ['rectangle: [50, 24]']],
      ['pin', [`ellipse: ${(0.3 + 0.4 * random()).toFixed(2)}`]],
      ['pins', ['union: [pin, {from: pin, nudge: {right: 8}}]']],
      ['plate', ['difference: [sheet, pins]']],
    ],
    pieces: [['tag', ['body: [plate]']]],
  }),
  'engraved lines finer than the beam': (random) => ({
    shapes: [
      ['plate', ['rectangle: [60, 24]']],
      ['line', [`rectangle: [40, ${(0.05 + 0.1 * random()).toFixed(3)}]`]],
    ],
    pieces: [['tag', ['body: [plate]', 'engrave: [line]']]],
  }),
  'a name engraved across a leaf': (random) => ({
    shapes: [
      ['plate', ['rectangle: [90, 50]']],
      ['leaf', ['ellipse: [30, 14]', `nudge: {up: ${(3 + 4 * random()).toFixed(1)}}`]],
      ['name', [`text: ${words[Math.floor(words.length * random())]!}`, 'font: Pacifico', 'width: 44']],
    ],
    pieces: [['tag', ['body: [plate]', 'engrave: [leaf, name]']]],
  }),
  'a name engraved in an engraved field': (random) => ({
    shapes: [
      ['plate', ['rectangle: [90, 50]']],
      ['field', [`rectangle: [${(60 + 20 * random()).toFixed(0)}, 30]`]],
      ['name', [`text: ${words[Math.floor(words.length * random())]!}`, 'font: Nunito', 'weight: 800', 'width: 44']],
    ],
    pieces: [['tag', ['body: [plate]', 'engrave: [field, name]']]],
  }),
  'a score line through a name': (random) => ({
    shapes: [
      ['plate', ['rectangle: [90, 50]']],
      ['line', ['rectangle: [70, 30]', `nudge: {up: ${(13 + 3 * random()).toFixed(1)}}`]],
      ['name', [`text: ${words[Math.floor(words.length * random())]!}`, 'font: Pacifico', 'width: 44']],
    ],
    pieces: [['tag', ['body: [plate]', 'engrave: [name]', 'score: [line]']]],
  }),
  'a glued piece over the edge': (random) => ({
    shapes: [
      ['plate', ['rectangle: [60, 30]']],
      ['badge', ['ellipse: [24, 12]', 'width: 24', `nudge: {right: ${(19 + 8 * random()).toFixed(1)}}`]],
    ],
    pieces: [
      ['back', ['body: [plate]']],
      ['front', ['body: [badge]', 'glue_to: back']],
    ],
  }),
  'a glued piece beside its backing': (random) => ({
    shapes: [
      ['plate', ['rectangle: [60, 30]']],
      ['badge', ['ellipse: [20, 12]', `nudge: {right: ${(42 + 8 * random()).toFixed(1)}}`]],
    ],
    pieces: [
      ['back', ['body: [plate]']],
      ['front', ['body: [badge]', 'glue_to: back']],
    ],
  }),
  'two glued pieces on one another': (random) => ({
    shapes: [
      ['plate', ['rectangle: [90, 40]']],
      ['leaf', ['ellipse: [36, 16]', 'nudge: {left: 14}']],
      ['flower', ['scallops: {across: 16, lobes: 7}', `nudge: {right: ${(6 + 4 * random()).toFixed(1)}}`]],
    ],
    pieces: [
      ['back', ['body: [plate]']],
      ['leaf', ['body: [leaf]', 'glue_to: back']],
      ['flower', ['body: [flower]', 'glue_to: back']],
    ],
  }),
  'a glued piece over half a word': (random) => ({
    shapes: [
      ['plate', ['rectangle: [90, 50]']],
      ['word', ['text: harvest', 'font: Nunito', 'weight: 600', 'width: 50', 'nudge: {down: 14}']],
      ['badge', ['ellipse: 22', `nudge: {right: 24, down: ${(3 + 3 * random()).toFixed(1)}}`]],
    ],
    pieces: [
      ['back', ['body: [plate]', 'engrave: [word]']],
      ['front', ['body: [badge]', 'glue_to: back']],
    ],
  }),
  'a star with needles': (random) => ({
    shapes: [['star', [`path: "M0 -40 L${(3 + 2 * random()).toFixed(1)} -5 L30 0 L5 5 L0 40 L-5 5 L-30 0 L-5 -5 Z"`]]],
    pieces: [['tag', ['body: [star]']]],
  }),
  'an arrow as sharp as a needle': (random) => ({
    shapes: [['arrow', [`arrow: {length: 100, width: 20, shaft: 14, tip: ${(12 + 4 * random()).toFixed(1)}}`]]],
    pieces: [['tag', ['body: [arrow]']]],
  }),
  'a code whose modules are too small': (random) => ({
    shapes: [
      ['plate', ['rectangle: [60, 40]']],
      [
        'link',
        ['code: https://example.org/dill', `size: ${(12 + 2 * random()).toFixed(1)}`, 'place: {on: plate, by: box}'],
      ],
    ],
    pieces: [['tag', ['body: [plate]', 'engrave: [link]']]],
  }),
  'letters of glued lettering that fall apart': (random) => ({
    shapes: [
      ['plate', ['rectangle: [60, 20]']],
      ['word', [`text: ${['Il', 'Tu', 'Ha'][Math.floor(3 * random())]!}`, 'font: Nunito', 'weight: 800', 'height: 12']],
    ],
    pieces: [
      ['back', ['body: [plate]']],
      ['front', ['body: [word]', 'glue_to: back']],
    ],
  }),
  'single lines that are too small for the beam': (random) => ({
    shapes: [
      ['plate', ['rectangle: [80, 30]', 'radius: 3']],
      [
        'note',
        [
          'text: sown in May',
          'font: single line',
          `x_height: ${(0.85 + 0.2 * random()).toFixed(2)}`,
          'place: {on: plate}',
        ],
      ],
    ],
    pieces: [['tag', ['body: [plate]', 'score: [note]']]],
  }),
};

export const weakFamilies = Object.keys(families);

/** The n-th spec of a family in one of the styles a person may write in. */
export function weakSpec(family: string, random: Random, style: number): WeakSpec {
  const parts = families[family]!(random);
  const lines: string[] = ['# The tag of a seed library.', 'tagwright: 1'];
  const remark = () => (style % 3 === 2 ? '' : `   # remark ${lines.length}`);
  const put = (text: string) => lines.push(text + remark());
  put(
    style % 2 === 0
      ? 'stock: {thickness: 3, kerf: 0.16, min_web: 1.5}'
      : 'stock: {\'thickness\': 3, "kerf": 0.16 mm, min_web: 1.5 mm}',
  );
  for (const line of parts.head ?? []) put(line);
  putGroup('shapes', parts.shapes);
  lines.push('', '# What is cut.');
  putGroup('pieces', parts.pieces);
  const end = style % 5 === 4 ? '\r\n' : '\n';
  return { name: `${family}, style ${style}`, text: lines.join(end) + end };

  function putGroup(key: string, members: Parts['shapes']): void {
    put(`${key}:`);
    for (const [name, keys] of members) {
      if (style % 2 === 0) put(`  ${name}: {${keys.join(', ')}}`);
      else {
        put(`  ${name}:`);
        for (const each of keys) put(`    ${each}`);
      }
    }
  }
}
