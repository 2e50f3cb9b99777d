import assert from 'node:assert/strict';
import {
  definitionIn,
  definingFile,
  nameAt,
  placesOf,
  renaming,
  reasonAgainst,
} from '../../../src/language/navigation/find-names.ts';
import { coloursIn, colourText } from '../../../src/language/colours.ts';
import { nameTokens } from '../../../src/language/navigation/name-tokens.ts';
import { linksIn } from '../../../src/language/navigation/links.ts';
import type { SpecSymbol } from '../../../src/language/navigation/symbols.ts';
import { symbolsOf } from '../../../src/language/navigation/symbols.ts';
import { withEdits } from '../../../src/fixes/find-fixes.ts';
import { parseSpec } from '../../../src/spec/parse.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { loadUses } from '../../../src/spec/files/used-files.ts';
import { samples } from './marked.ts';

/** Every place in which a shape can be named. */
const spec = `tagwright: 1
shapes:
  neck: {rectangle: [26 mm, 18 mm]}
  body: {rectangle: [84 mm, 40 mm]}
  plate: {stack: {shapes: [neck, "body"]}}
  copy: {from: body}
  edge: {around: body, by: 3 mm}
  all: {union: [body, {difference: [neck, body]}]}
  word: {text: body, font: body.ttf, fit: {in: body}}
  note:
    ellipse: 9 mm
    place: {on: plate, part: body}   # body
pieces:
  body: {body: [body], cut: [body], hanger: {hole: {on: body}}}
  lid: {body: [body], glue_to: body}
`;

const source = new SpecSource(spec);
const at = (word: string, within = word): number => spec.indexOf(within) + within.indexOf(word);

describe('The names of a spec', () => {
  it('are found wherever they are used, and nowhere else', () => {
    const shape = nameAt(source, at('body', 'body: {rectangle'));
    assert.ok(shape);
    assert.deepEqual([shape.kind, shape.name], ['shape', 'body']);
    // All that is left of “body” without the shape: a key, the piece and what is glued to it, words and a comment.
    const places = placesOf(source, shape);
    assert.equal(places.length, 12);
    const lines = places.map(({ range }) => spec.slice(0, range.start).split('\n').length);
    assert.deepEqual(lines, [4, 5, 6, 7, 8, 8, 9, 12, 14, 14, 14, 15]);
    const piece = nameAt(source, at('body', 'body: {body'))!;
    assert.deepEqual([piece.kind, placesOf(source, piece).length], ['piece', 2]);
  });

  it('are not seen in words, comments, keys and fonts', () => {
    for (const within of ['text: body', '# body', 'body: [body], cut', 'font: body.ttf'])
      assert.equal(
        nameAt(source, spec.indexOf(within) + within.indexOf('body') + (within.startsWith('body') ? 0 : 1))?.kind ===
          'shape',
        false,
        within,
      );
  });

  it('change together, quotes kept, and the tag with them', () => {
    const shape = nameAt(source, at('body', 'body: {rectangle'))!;
    const renamed = withEdits(spec, renaming(source, shape, 'trunk'));
    assert.match(renamed, /shapes: \[neck, "trunk"\]/);
    assert.match(renamed, /place: \{on: plate, part: trunk\} {3}# body/);
    assert.match(renamed, / {2}lid: \{body: \[trunk\], glue_to: body\}/);
    assert.match(renamed, /text: body, font: body\.ttf/);
    const read = (text: string) => parseSpec(text.replace('body.ttf', 'Nunito'));
    assert.deepEqual(read(spec).issues, []);
    assert.deepEqual(read(renamed).issues, []);
    const back = new SpecSource(renamed);
    assert.equal(withEdits(renamed, renaming(back, { kind: 'shape', name: 'trunk' }, 'body')), spec);
  });

  it('are those of the columns of a batch as well, in words and in any other value', () => {
    const text =
      'tagwright: 1\nbatch:\n  - {name: A, long: 20 mm}\n  - {name: B, "long": 30 mm}\nshapes:\n  a: {text: "{ long } by {name}", font: "{{x}}", width: "{long}"}\n';
    const held = new SpecSource(text);
    const column = nameAt(held, text.indexOf('{long}') + 2)!;
    assert.deepEqual([column.kind, column.name], ['column', 'long']);
    assert.equal(nameAt(held, text.indexOf('{long}')), undefined, 'on the brace');
    const renamed = withEdits(text, renaming(held, column, 'size'));
    assert.equal(renamed, text.replace('"long"', '"size"').replaceAll(/\blong\b/g, 'size'));
    assert.match(reasonAgainst('name', column, [held])!, /There is a column “name” already/);
    assert.match(reasonAgainst('a}', column, [held])!, /^A column starts with a letter/);
    assert.equal(reasonAgainst('länge 2', column, [held]), undefined);
    const without = new SpecSource(text.replace(/batch:[^]*?shapes/, 'shapes'));
    assert.deepEqual(placesOf(without, column), [], 'braces are just that where there is no batch');
  });

  it('are refused where they are taken or no names', () => {
    const shape = { kind: 'shape', name: 'body' } as const;
    assert.equal(reasonAgainst('trunk', shape, [source]), undefined);
    assert.equal(reasonAgainst('body', shape, [source]), undefined);
    assert.match(reasonAgainst('plate', shape, [source])!, /There is a shape “plate” already/);
    assert.equal(reasonAgainst('lid', shape, [source]), undefined, 'a piece of that name is no shape');
    for (const bad of ['', '1st', 'two words', 'ä', 'a.b', '-'])
      assert.match(
        reasonAgainst(bad, shape, [source])!,
        /^A name starts with a letter, followed by letters, digits, - and _\.$/,
      );
    // The core schema of YAML 1.2, chapter 10.3.
    for (const bad of ['true', 'False', 'null'])
      assert.match(reasonAgainst(bad, shape, [source])!, /^YAML does not read “.+” as a name\.$/);
  });

  it('are found in the files that a spec uses', async () => {
    const files: Record<string, string> = {
      'house.yaml': 'use: deep.yaml\nshapes:\n  disc: {ellipse: 9}\n',
      'deep.yaml': 'stocks:\n  ply: {thickness: 3 mm}\n',
    };
    const user = new SpecSource('tagwright: 1\nuse: house.yaml\nstock: ply\npieces:\n  t: {body: [disc]}\n');
    const uses = await loadUses(user, {
      read: (path) => (files[path] === undefined ? Promise.reject(new Error()) : Promise.resolve(files[path])),
      locate: (name) => name,
    });
    assert.equal(definingFile(uses.used, { kind: 'shape', name: 'disc' })?.name, 'house.yaml');
    assert.equal(definingFile(uses.used, { kind: 'stock', name: 'ply' })?.name, 'deep.yaml');
    assert.equal(definingFile(uses.used, { kind: 'shape', name: 'other' }), undefined);
    assert.equal(definitionIn(user, { kind: 'shape', name: 'disc' }), undefined);
    assert.equal(placesOf(user, { kind: 'stock', name: 'ply' }).length, 1);
  });

  it('are coloured in the order of the text, which editors ask for', () => {
    const names = nameTokens(source);
    assert.ok(names.length > 20);
    for (const [index, { range }] of names.entries())
      assert.ok(index === 0 || range.start >= names[index - 1]!.range.end);
    assert.deepEqual(
      names.filter(({ given }) => given).map(({ kind }) => kind),
      [...Array<string>(8).fill('shape'), 'piece', 'piece'],
    );
  });
});

describe('The outline of a spec', () => {
  it('has its sections, what is named in them, and the parts of each piece', () => {
    const { text } = samples.find(({ title }) => title.startsWith('4'))!;
    const symbols = symbolsOf(new SpecSource(text).tree);
    assert.deepEqual(
      symbols.map(({ name }) => name),
      ['tagwright', 'title', 'stock', 'tie', 'shapes', 'pieces'],
    );
    const [shapes, pieces] = symbols.slice(-2);
    assert.deepEqual(
      shapes!.children.map(({ name, detail, kind }) => [name, detail, kind]),
      [
        ['word', 'text Fennel', 'shape'],
        ['backing', 'around word', 'shape'],
      ],
    );
    assert.deepEqual(
      pieces!.children.map(({ name }) => name),
      ['back', 'letters'],
    );
    assert.deepEqual(
      pieces!.children[1]!.children.map(({ name, detail }) => `${name} ${detail}`),
      ['title Letters', 'body [word]', 'parts many', 'glue_to back'],
    );
  });

  it('keeps each name inside its range, also while the spec is half typed, as editors demand', () => {
    for (const { text } of samples) {
      for (let length = 0; length <= text.length; length += 7) {
        const check = (symbols: readonly SpecSymbol[]): void => {
          for (const { range, selection, children } of symbols) {
            assert.ok(range.start <= selection.start && selection.end <= range.end);
            assert.ok(range.end <= length);
            check(children);
          }
        };
        check(symbolsOf(new SpecSource(text.slice(0, length)).tree));
      }
    }
  });
});

describe('The files a spec names', () => {
  it('are its drawings, its font files, its table and the specs it uses', () => {
    const text =
      'use: [house.yaml]\nbatch: list.csv\nshapes:\n  a: {drawing: leaf.svg}\n  b: {text: x.svg, font: own.ttf}\n  c: {text: x, font: Nunito}\n';
    assert.deepEqual(
      linksIn(new SpecSource(text)).map(({ file, range }) => [file, text.slice(range.start, range.end)]),
      [
        ['house.yaml', 'house.yaml'],
        ['list.csv', 'list.csv'],
        ['leaf.svg', 'leaf.svg'],
        ['own.ttf', 'own.ttf'],
      ],
    );
  });
});

describe('The colours in a spec', () => {
  it('are found in output, and nowhere else', () => {
    const text =
      'title: "#00ff00"\noutput: {score: {color: "#0072B2"}, cut_outer: {color: "#fff"}, engrave: {layer: "#123456"}}\n';
    const found = coloursIn(new SpecSource(text));
    assert.deepEqual(found, [
      {
        range: { start: text.indexOf('"#0072B2"'), end: text.indexOf('"#0072B2"') + 9 },
        // 0x00, 0x72, 0xb2 of 0xff.
        colour: { red: 0, green: 114 / 255, blue: 178 / 255 },
      },
    ]);
    assert.equal(colourText(found[0]!.colour), '"#0072B2"');
  });
});
