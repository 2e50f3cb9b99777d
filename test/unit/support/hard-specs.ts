/** Tags that papers must bear: layers, long words, many words, other scripts, very large and very small, all that a spec can say. */

const workshop =
  'stock: {material: walnut, thickness: 3 mm, kerf: {outer: 0.2, inner: 0.16, engrave: 0.1}, min_web: 2 mm, price: {amount: 4.2, per: sheet, currency: EUR}}\n' +
  'sheet: {size: [600 mm, 400 mm], copies: 12}\n' +
  'machine: {cut: 12 mm/s, score: 60 mm/s, engrave: 250 mm/s, passes: {cut: 2}}\n' +
  'output: {tabs: {count: 2, width: 0.5 mm}, cut_outer: {layer: Last of all}}\n';

const glued = (word: string): string =>
  `tagwright: 1\ntitle: ${word} in three layers\n${workshop}tie: {ribbon: 6 mm}\nshapes:\n` +
  '  base: {rectangle: [90, 50], radius: 8}\n  mat: {rectangle: [76, 36], radius: 4}\n' +
  `  word: {text: ${word}, font: Nunito, weight: 900, width: 60 mm}\n` +
  'pieces:\n  base: {title: Base, body: [base], score: [{from: mat, grow: -0.5}], hanger: {slot: {at: top, length: 8 mm}}}\n' +
  '  mat: {title: Mat, body: [mat], glue_to: base}\n' +
  '  word: {title: Name, body: [word], parts: many, glue_to: mat}\n';

export const hardSpecs: Readonly<Record<string, string>> = {
  'three layers, with all that a workshop can say': glued('Ulla'),
  'a tag that is weak in several ways':
    'tagwright: 1\ntitle: Thin\ntie: {twine: 3 mm}\nshapes: {word: {text: filigree, font: Great Vibes, width: 60 mm}}\n' +
    'pieces: {tag: {body: [word], hanger: {ring: {on: word, at: left, diameter: 2 mm}}}}\n',
  '300 mm wide':
    'tagwright: 1\ntitle: Shed sign\nstock: {material: oak, thickness: 6 mm, kerf: 0}\nshapes:\n  plate: {rectangle: [300, 60], radius: 10}\n' +
    '  word: {text: SEED LIBRARY, font: Nunito, weight: 800, width: 250 mm}\n' +
    'pieces: {sign: {body: [plate], engrave: [word], hanger: [{hole: {at: top-left, diameter: 5}}, {hole: {at: top-right, diameter: 5}}]}}\n',
  '15 mm wide':
    'tagwright: 1\ntitle: Bead\nstock: {material: maple, thickness: 2 mm, kerf: 0}\nshapes:\n  disc: {ellipse: 15}\n  word: {text: "7", font: Nunito, weight: 800, height: 6 mm}\n' +
    'pieces: {bead: {body: [disc], engrave: [word], hanger: {hole: {at: top, diameter: 2, inset: 1.5}}}}\n',
  'inches, in acrylic':
    'tagwright: 1\ntitle: Key tag\nunits: in\nstock: {material: frosted acrylic, thickness: 1/8 in, kerf: 0.008}\nshapes:\n  plate: {rectangle: [3, 1.25], radius: 0.25}\n' +
    '  word: {text: Greenhouse, font: Pacifico, width: 2}\n' +
    'pieces: {tag: {body: [plate], engrave: [word], hanger: {hole: {at: left, diameter: 0.2}}}}\n',
  'a long name, and words that have no blank':
    `tagwright: 1\ntitle: A title that says everything about the tag and then goes on to say it all again, so that nobody can miss it\n` +
    'shapes:\n  plate: {rectangle: [150, 40]}\n  a: {text: "Llanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogoch", font: Nunito, width: 140 mm}\n' +
    'pieces: {tag: {body: [plate], engrave: [a]}}\n',
  'accents and signs':
    'tagwright: 1\ntitle: Žluťoučký\nshapes:\n  plate: {rectangle: [90, 40]}\n  a: {text: "Zoë & Ægir\\nŽluťoučký kůň", font: Nunito, width: 70 mm}\n' +
    'pieces: {tag: {body: [plate], engrave: [a]}}\n',
  'many texts on one plate':
    'tagwright: 1\ntitle: Sowing times\nshapes:\n  plate: {rectangle: [100, 90]}\n' +
    ['Peas', 'Beans', 'Kale', 'Leek', 'Chard', 'Dill', 'Rue', 'Sorrel']
      .map((word, i) => `  t${i}: {text: ${word}, font: Nunito, height: 6 mm, nudge: {up: ${36 - i * 10} mm}}\n`)
      .join('') +
    'pieces: {tag: {body: [plate], engrave: [t0, t1, t2, t3, t4, t5, t6, t7]}}\n',
  'three tags that hang by themselves':
    'tagwright: 1\ntitle: Set of three\ntie: {twine: 2 mm}\nshapes:\n  disc: {ellipse: 40}\n  square: {rectangle: [36, 36]}\n  heart: {heart: 40}\n' +
    'pieces:\n  a: {title: Moon, body: [disc], hanger: {hole: {at: top}}}\n  b: {title: Field, body: [square], hanger: {hole: {at: top}}}\n  c: {title: Shed, body: [heart], hanger: {hole: {at: top}}}\n',
  'no words at all': 'tagwright: 1\ntitle: Plain\nshapes: {disc: {ellipse: 50}}\npieces: {tag: {body: [disc]}}\n',
};
