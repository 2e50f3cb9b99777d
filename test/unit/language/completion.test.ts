import assert from 'node:assert/strict';
import { accept, accepted, around, labels, marked, offered, samples } from './marked.ts';
import { completionsAt } from '../../../src/language/completion/complete.ts';
import { parseTable } from '../../../src/spec/files/table.ts';
import type { Table } from '../../../src/spec/files/table.ts';
import { noUses } from '../../../src/spec/files/used-files.ts';
import { noWorkspaceNames } from '../../../src/language/workspace-names.ts';

/** A spec around a line of shapes. */
const shape = (line: string, others = 'plate: {rectangle: [80 mm, 40 mm]}'): string =>
  `tagwright: 1\nshapes:\n  ${others}\n  ${line}\npieces:\n  tag: {body: [plate]}\n`;

const includes = (spec: string, ...wanted: string[]): void => {
  const all = labels(spec);
  for (const label of wanted) assert.ok(all.includes(label), `${label} is among ${all.join(', ')}`);
};
const lacks = (spec: string, ...unwanted: string[]): void => {
  const all = labels(spec);
  for (const label of unwanted) assert.ok(!all.includes(label), `${label} is not among ${all.join(', ')}`);
};

describe('The first suggestion', () => {
  it('of what to engrave is what no piece has yet, and of a material what most tags are cut from', () => {
    const spec = (piece: string) =>
      `tagwright: 1\nstock: {material: birch plywood}\nshapes:\n  plate: {rectangle: [80 mm, 40 mm]}\n  name: {text: Dill, width: 60 mm}\npieces:\n  tag: {${piece}}\n`;
    const first = (text: string) => [...offered(text)].sort((a, b) => a.rank - b.rank)[0]!.label;
    assert.equal(first(spec('body: plate, engrave: ^')), 'name');
    assert.equal(first(spec('engrave: name, body: ^')), 'plate');
    assert.match(first(spec('body: plate').replace('birch plywood', '^')), /plywood/);
  });

  it('of a size is what is measured, of a fit room to go into, and neither is the em nor the whole of a shape', () => {
    const order = (text: string) => [...offered(text)].sort((a, b) => a.rank - b.rank).map(({ label }) => label);
    const sizes = order(shape('a: {text: Sorrel, ^}'));
    assert.deepEqual(sizes.slice(0, 6), ['width', 'x_height', 'cap_height', 'height', 'fit', 'size']);
    assert.deepEqual(order(shape('a: {text: Sorrel, fit: ^}')).slice(0, 2), ['{in: plate, margin: 4 mm}', 'plate']);
  });
});

describe('Completion of keys', () => {
  it('knows which keys go with the generator that is there', () => {
    const rectangle = shape('a: {rectangle: [30 mm, 20 mm], ^}');
    includes(rectangle, 'radius', 'grow', 'width', 'place', 'nudge');
    lacks(rectangle, 'rectangle', 'text', 'font', 'by', 'holes', 'ellipse');
    const text = shape('a: {text: Sorrel, width: 30 mm, ^}');
    includes(text, 'font', 'weight', 'align', 'letter_spacing');
    lacks(text, 'radius', 'width', 'fit', 'text');
  });

  it('puts first what the shape still needs', () => {
    const first = [...offered(shape('a: {text: Sorrel, ^}'))].sort((a, b) => a.rank - b.rank);
    const needed = first.slice(0, 6).map(({ label }) => label);
    assert.deepEqual(needed.sort(), ['cap_height', 'fit', 'height', 'size', 'width', 'x_height']);
    assert.ok(first.slice(6).every(({ rank }) => rank > first[5]!.rank));
  });

  it('brings along what a generator is no use without', () => {
    assert.match(accepted(shape('a: {^}'), 'around'), /a: \{around: plate, by: 6 mm\}/);
    assert.match(accepted(shape('a: {^}'), 'text'), /a: \{text: Sorrel, font: Pacifico, width: 60 mm\}/);
    assert.match(accepted(shape('a:\n    ^'), 'text'), /a:\n {4}text: Sorrel\n {4}font: Pacifico\n {4}width: 60 mm\n/);
    assert.match(accepted(shape('a: {width: 9 mm, ^}'), 'text'), /\{width: 9 mm, text: Sorrel, font: Pacifico\}/);
  });

  it('brings along what is measured of a stock, and its two keys', () => {
    const stock = (inner: string) => shape('a: {ellipse: 30 mm}').replace('shapes:', `stock: {${inner}}\nshapes:`);
    assert.match(
      accepted(stock('thickness: 3 mm, ^'), 'measured'),
      /thickness: 3 mm, measured: \{breaks_at: 42 N, neck: 2\.0 mm\}/,
    );
    includes(stock('measured: {^}'), 'breaks_at', 'neck');
  });

  it('takes a length that goes with the rest where its example does not', () => {
    // A radius is at most half the shorter side.
    assert.match(accepted(shape('a: {rectangle: [3 mm, 4 mm], ^}'), 'radius'), /radius: 1 mm/);
    assert.match(accepted(shape('a: {arrow: {length: 200 mm, width: 50 mm, ^}}'), 'shaft'), /shaft: 20 mm/);
  });

  it('works in flow and block style, before other keys and after them, in closed and open brackets', () => {
    for (const line of [
      'a: {^}',
      'a: {ellipse: 30 mm, ^}',
      'a: {ellipse: 30 mm,^}',
      'a: {^ ellipse: 30 mm}',
      'a: {ellipse: 30 mm, ^',
      'a: {ellipse: 30 mm, gr^}',
      'a:\n    ellipse: 30 mm\n    ^',
      'a:\n    ^\n    ellipse: 30 mm',
      'a:\n    ellipse: 30 mm\n    gr^\n    rotate: 3',
      'a: {ellipse: 30 mm,\n      ^\n      rotate: 3}',
    ])
      includes(shape(line), 'grow');
  });

  it('replaces a key that has its value by one that can have it, and leaves the value', () => {
    assert.match(accepted(shape('a: {ellipse: 30 mm, gro^w: 1 mm}'), 'tidy'), /\{ellipse: 30 mm, tidy: 1 mm\}/);
    lacks(shape('a: {ellipse: 30 mm, gro^w: 1 mm}'), 'rotate', 'mirror', 'text');
  });

  it('offers no second tie, and no second kind of hanger', () => {
    assert.deepEqual(labels('tagwright: 1\ntie: {^}\n'), ['twine', 'ribbon', 'split_ring']);
    assert.deepEqual(labels('tagwright: 1\ntie: {twine: 2 mm, ^}\n'), ['opening']);
  });

  it('is silent in comments, in strings that go on, and where a comma is missing', () => {
    for (const line of ['a: {text: x} # ^', 'a: {text: x}^', 'a: {text: "So^', 'a:\n    text: |\n      So^rrel'])
      assert.deepEqual(labels(shape(line)), [], line);
  });

  it('is silent where the indentation fits nothing', () => {
    assert.deepEqual(labels('tagwright: 1\nshapes:\n ^\n  a: {ellipse: 3 mm}\n'), []);
  });

  it('writes inches in a spec in inches', () => {
    assert.match(accepted('tagwright: 1\nunits: in\nstock: {^}\n', 'thickness'), /thickness: 0\.125 in/);
    // Round ones, not 60 × 30 mm to the nearest sixteenth.
    const inInches = (line: string) => shape(line).replace('tagwright: 1', 'tagwright: 1\nunits: in');
    assert.match(accepted(inInches('a: {^}'), 'house'), /house: \[2\.5 in, 1\.25 in\]/);
    assert.match(accepted(inInches('a: {text: x, ^}'), 'width'), /width: 2\.5 in/);
    assert.match(accepted('tagwright: 1\nunits: in\n^\n', 'pieces'), /ellipse: 1\.25 in/);
  });
});

describe('Completion of values', () => {
  it('offers the words of the schema, with the default marked', () => {
    const corners = offered(shape('a: {ellipse: 30 mm, corners: ^}'));
    assert.deepEqual(
      corners.map(({ label, detail }) => [label, detail]),
      [
        ['round', 'default'],
        ['miter', undefined],
        ['bevel', undefined],
      ],
    );
    includes('tagwright: 1\npieces:\n  t: {body: [{ellipse: 9}], hanger: {ring: {at: ^}}}\n', 'auto', 'top-left');
    includes(shape('a: {ellipse: 30 mm, grow: ^}'), 'auto');
  });

  it('offers shapes, but none that would be made from itself', () => {
    const spec = 'tagwright: 1\nshapes:\n  a: {ellipse: 9}\n  b: {from: ^}\n  c: {from: b}\n  d: {union: [c, a]}\n';
    includes(spec, 'a');
    lacks(spec, 'b', 'c', 'd');
  });

  it('offers the members of the stack that is named beside it', () => {
    const spec = shape(
      'name: {ellipse: 9, place: {on: both, part: ^}}',
      'plate: {ellipse: 9}\n  both: {stack: {shapes: [plate]}}',
    );
    assert.deepEqual(labels(spec), ['plate']);
  });

  it('offers the other pieces to be glued to', () => {
    const spec = 'tagwright: 1\npieces:\n  a: {body: [{ellipse: 9}]}\n  b: {body: [{ellipse: 9}], glue_to: ^}\n';
    assert.deepEqual(labels(spec), ['a']);
  });

  it('offers fonts with a note, in quotes where YAML needs them or has them', () => {
    const spec = shape('a: {text: x, width: 9 mm, font: ^}');
    assert.equal(offered(spec).find(({ label }) => label === 'Pacifico')?.detail, 'bundled');
    assert.match(accepted(spec, 'Odd: font, #1'), /font: "Odd: font, #1"\}/);
    assert.match(accepted(spec, 'fonts/mine, own.ttf'), /font: "fonts\/mine, own\.ttf"\}/);
    assert.match(accepted(shape(`a: {text: x, width: 9 mm, font: 'Pa^'}`), 'Pacifico'), /font: 'Pacifico'\}/);
    assert.match(accepted(shape('a: {text: x, width: 9 mm, font: Odd f^ont}'), 'Pacifico'), /font: Pacifico\}/);
    lacks(spec, 'leaf.svg');
  });

  it('offers single strokes for a line as well, where nothing thickens the letters', () => {
    includes(shape('a: {lines: [{text: x, font: ^}], width: 9 mm}'), 'single line');
    lacks(shape('a: {lines: [{text: x, font: ^}], width: 9 mm, grow: 1 mm}'), 'single line');
    lacks(shape('a: {lines: [{text: x, font: ^, weight: 800}], width: 9 mm}'), 'single line');
  });

  it('offers the weights that the font has', () => {
    assert.deepEqual(labels(shape('a: {text: x, width: 9 mm, font: Nunito, weight: ^}')), ['600', '800']);
  });

  it('offers units after a number', () => {
    assert.deepEqual(labels(shape('a: {ellipse: 30 mm, tidy: 1.5^}')), [
      '1.5 mm',
      '1.5 cm',
      '1.5 in',
      '1.5 pt',
      '1.5 px',
    ]);
    assert.match(accepted(shape('a: {ellipse: 30 mm, grow: 1/4 ^}'), '1/4 in'), /grow: 1\/4 in\}/);
    assert.match(accepted(shape('a: {rectangle: [30 mm, 20^]}'), '20 mm'), /\[30 mm, 20 mm\]/);
  });

  it('puts a space behind a colon that has none', () => {
    assert.match(accepted(shape('a:\n    ellipse: 30 mm\n    corners:^'), 'miter'), /corners: miter/);
  });

  it('offers drawings beside the spec, and materials of which something is known', () => {
    assert.deepEqual(labels(shape('a: {drawing: ^}')), ['leaf.svg']);
    includes('tagwright: 1\nstock: {material: ^}\n', 'birch plywood', 'black walnut');
  });

  it('offers tables beside the spec, and the columns of a batch in texts and titles', () => {
    includes('tagwright: 1\nbatch: ^\n', 'seedlings.csv');
    lacks('tagwright: 1\nbatch: ^\n', 'leaf.svg');
    const text = (batch: string, line: string) => shape(line).replace('shapes:', `batch: ${batch}\nshapes:`);
    assert.match(accepted(text('[Sorrel]', 'a: {text: ^, width: 9 mm}'), '{name}'), /\{text: "\{name\}", width/);
    assert.match(accepted(text('[Sorrel]', 'a: {text: "{na^", width: 9 mm}'), '{name}'), /\{text: "\{name\}", width/);
    const columns = '[{plant: Sorrel, sown: March}, {plant: Borage, pot: 3}]';
    includes(text(columns, 'a: {text: ^, width: 9 mm}'), '{plant}', 'Sorrel');
    // Borage has no such cell, but it is the first row that counts while one writes.
    includes(text(columns, 'a: {text: ^, width: 9 mm}'), '{sown}');
    const cells = '[{plant: Sorrel, long: 20 mm}]';
    includes(text(cells, 'a: {text: X, width: ^}'), '{long}');
    lacks(text(cells, 'a: {text: X, width: ^}'), '{plant}');
    lacks(text(cells, 'a: {from: ^, width: 3}'), '{long}');
    includes(text(columns, 'b: {ellipse: 9}').replace('tagwright: 1', 'tagwright: 1\ntitle: ^'), '{plant}');
    lacks(shape('a: {text: ^, width: 9 mm}'), '{name}');
  });

  it('offers names of the table that the batch does not leave out yet, as the words of the spec name its rows', () => {
    const table = parseTable('bed,plant\n1,Sorrel\n2,Sea Kale\n3,007\n1,Rue\n') as Table;
    const uses = { ...noUses, table: { ...table, name: 'a.csv', file: '/a.csv' } };
    const inTable = (batch: string) => {
      const spec = `tagwright: 1\nbatch: {table: a.csv${batch}}\nshapes: {w: {text: "{plant}", font: Nunito, width: 30}}\npieces: {t: {body: [w]}}\n`;
      const { text, offset } = marked(spec);
      const found = completionsAt(text, offset, { ...around, uses });
      return { names: found.map(({ label }) => label), text, found };
    };
    assert.deepEqual(inTable(', without: [^]').names, ['Sorrel', 'Sea Kale', '007', 'Rue']);
    assert.deepEqual(inTable(', without: [Sea Kale, ^]').names, ['Sorrel', '007', 'Rue']);
    assert.deepEqual(inTable(', without: [Sea Kale, R^]').names, ['Sorrel', '007', 'Rue']);
    assert.ok(inTable(', without: ^').names.includes('Sea Kale'));
    const { text, found } = inTable(', without: [^]');
    assert.match(accept(text, found[2]!), /without: \["007"\]/);
    const key = inTable(', ^');
    assert.match(
      accept(
        key.text,
        key.found.find(({ label }) => label === 'without')!,
      ),
      /without: \[Sorrel\]/,
    );
  });

  it('offers shapes or whole shapes in lists, between brackets and behind dashes', () => {
    includes('tagwright: 1\nshapes:\n  a: {ellipse: 9}\npieces:\n  t: {body: [^]}\n', 'a', '{text …}');
    includes('tagwright: 1\nshapes:\n  a: {ellipse: 9}\npieces:\n  t: {body: [a, ^\n', 'a');
    const dashes = 'tagwright: 1\nshapes:\n  a: {ellipse: 9}\npieces:\n  t:\n    body:\n      - ^\n';
    includes(dashes, 'a', 'from');
    assert.match(accepted(dashes, 'around'), /- around: a\n {8}by: 6 mm\n/);
  });
});

describe('Completion of whole things', () => {
  it('offers a new shape of each kind under the name that is being typed', () => {
    assert.match(
      accepted('tagwright: 1\nshapes:\n  lid^\n', 'lid: text …'),
      / {2}lid: \{text: Sorrel, font: Pacifico, width: 60 mm\}/,
    );
    assert.equal(
      offered('tagwright: 1\nshapes:\n  lid^\n').find(({ label }) => label === 'lid: text …')?.filter,
      'lid',
    );
    const second = 'tagwright: 1\nshapes:\n  word: {ellipse: 9}\n  ^\n';
    assert.match(accepted(second, 'text …'), / {2}word2: \{text/);
  });

  it('offers a new piece with each kind of hanger', () => {
    const spec = 'tagwright: 1\nshapes:\n  plate: {ellipse: 30 mm}\npieces:\n  ^\n';
    assert.match(
      accepted(spec, 'piece with a hole …'),
      / {2}tag:\n {4}body: \[plate\]\n {4}hanger: \{hole: \{at: top\}\}\n/,
    );
  });

  it('offers every sample where there is nothing yet, and none where there is something', () => {
    includes('^', ...samples.map(({ title }) => title), 'tagwright');
    lacks('tagwright: 1\n^', ...samples.map(({ title }) => title));
    for (const { title, text } of samples) assert.equal(accepted('^', title), text);
  });

  it('offers the sections that are missing', () => {
    assert.match(accepted('tagwright: 1\n^', 'pieces'), /^pieces:\n {2}tag: \{body: \[\{ellipse: 30 mm\}\]\}$/m);
    lacks('tagwright: 1\npieces:\n  t: {body: [{ellipse: 9}]}\n^', 'pieces', 'tagwright');
  });

  it('come in the order of work: whole tags in an empty file, then title, stock, tie, shapes, pieces, and the rest', () => {
    const samples = [
      { title: 'Round', purpose: 'a token', text: 'tagwright: 1\npieces: {t: {body: [{ellipse: 20}]}}\n' },
    ];
    const around = { ...noWorkspaceNames, samples, files: ['kilns.csv'] };
    const inOrder = (text: string, at: number) =>
      [...completionsAt(text, at, around)].sort((a, b) => a.rank - b.rank).map(({ label }) => label);
    assert.deepEqual(inOrder('', 0).slice(0, 7), ['Round', 'tagwright', 'title', 'stock', 'tie', 'shapes', 'pieces']);
    const started = 'tagwright: 1\nsh';
    const labels = inOrder(started, started.length);
    assert.ok(labels.indexOf('shapes') < labels.indexOf('sheet'));
    // A column that is in use already is no reason to withhold the batch, whose first value is the table in the folder.
    const used = 'tagwright: 1\n\nshapes: {w: {text: "Table {table}", width: 30}}\npieces: {t: {body: [w]}}\n';
    const batch = completionsAt(used, 13, around).find(({ label }) => label === 'batch');
    assert.match(batch?.snippet ?? '', /kilns\.csv/);
    const without = completionsAt(used, 13, { ...around, files: [] }).find(({ label }) => label === 'batch');
    assert.match(without?.snippet ?? '', /^batch: \[/);
  });
});
