import assert from 'node:assert/strict';
import { withEdits } from '../../../src/fixes/find-fixes.ts';
import { editsOf, gripsOf } from '../../../src/scene/grips.ts';
import type { HandChange } from '../../../src/protocol/scene.ts';
import { pieceScales } from '../../../src/scene/piece-scale.ts';
import { parseSpec } from '../../../src/spec/parse.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { report } from '../support/engine.ts';

const glued = `tagwright: 1
shapes:
  word:    {text: Fennel, width: 80 mm}
  backing: {around: word, by: 7 mm}   # follows the word
  leaf:    {ellipse: [9, 4]}
pieces:
  back:
    body: [backing]
    engrave: [word]
    score: [{from: word, grow: -0.5 mm}]
    cut: [leaf]
    hanger: {ring: {on: backing, at: top}}
  letters: {body: [word, leaf], glue_to: back}
`;

function read(text: string) {
  const { source, model } = parseSpec(text);
  assert.ok(model, 'it is a spec');
  return { source, model, grips: gripsOf(model, source) };
}

function changed(text: string, label: string, change: HandChange, nth = 0): string {
  const { source, model, grips } = read(text);
  const grip = grips.filter((each) => each.label === label)[nth];
  assert.ok(grip, grips.map((each) => each.label).join(', '));
  const edits = editsOf(grip, change, source, model.units);
  assert.ok(edits);
  return withEdits(text, edits);
}

const byOne: HandChange = { kind: 'move', right: 1, up: 0 };

describe('What can be taken hold of', () => {
  it('is each shape a piece is made of, and each hanger, with all that moves with it', () => {
    const { grips } = read(glued);
    assert.deepEqual(
      grips.map(({ label, parts, free, axes }) => [label, parts.join(' '), free, axes.join(' ')]),
      [
        ['backing', 'back/body-0 back/holes-0', false, ''],
        ['leaf', 'back/cut-0 letters/body-1 letters/holes-1', true, 'width height'],
        ['word', 'back/mark-0', true, 'width'],
        ['shape of back', 'back/mark-1', true, ''],
        ['ring of back', 'back/hanger-0 back/hanger-hole-0', true, ''],
        ['word', 'letters/body-0 letters/holes-0', true, 'width'],
      ],
    );
  });

  it('is moved where it is defined, once for all its uses', () => {
    assert.match(changed(glued, 'leaf', byOne), /leaf: {4}\{ellipse: \[9, 4\], nudge: \{right: 1 mm\}\}/);
    assert.match(changed(glued, 'ring of back', byOne), /ring: \{on: backing, at: top, nudge: \{right: 1 mm\}\}/);
    assert.match(changed(glued, 'word', byOne, 1), /word: {4}\{text: Fennel, width: 80 mm, nudge: \{right: 1 mm\}\}/);
    assert.match(changed(glued, 'shape of back', byOne), /\{from: word, grow: -0\.5 mm, nudge: \{right: 1 mm\}\}/);
  });

  it('is a hanger in its short form too, which is then written in full', () => {
    for (const [short, full] of [
      ['{hole: left}', '{hole: {at: left, nudge: {right: 1 mm}}}'],
      ['{ring: auto}', '{ring: {at: auto, nudge: {right: 1 mm}}}'],
      ['{slot: top}', '{slot: {at: top, nudge: {right: 1 mm}}}'],
      ['[{hole: left}, {hole: right}]', '[{hole: {at: left, nudge: {right: 1 mm}}}, {hole: right}]'],
    ] as const) {
      const text = glued.replace('{ring: {on: backing, at: top}}', short);
      const kind = /\w+/.exec(short)![0];
      assert.equal(changed(text, `${kind} of back`, byOne), text.replace(short, full));
    }
    const named = glued
      .replace('pieces:', 'hangers: {loop: {ring: top}}\npieces:')
      .replace('{ring: {on: backing, at: top}}', 'loop');
    assert.match(changed(named, 'ring of back', byOne), /loop: \{ring: \{at: top, nudge: \{right: 1 mm\}\}\}/);
  });

  it('is moved by itself where the body would only follow it, and then goes on from there', () => {
    const once = changed(glued, 'word', byOne);
    assert.match(once, /engrave: \[\{from: word, nudge: \{right: 1 mm\}\}\]/);
    assert.equal(once.replace('{from: word, nudge: {right: 1 mm}}', 'word'), glued);
    const { grips } = read(once);
    const grip = grips.find(({ parts }) => parts.includes('back/mark-0'))!;
    assert.equal(grip.id, read(glued).grips.find(({ parts }) => parts.includes('back/mark-0'))!.id);
    assert.deepEqual(grip.nudge, [1, 0]);
    assert.match(changed(once, 'shape of back', byOne), /engrave: \[\{from: word, nudge: \{right: 2 mm\}\}\]/);
    assert.equal(changed(glued, 'word', { kind: 'move', right: 0, up: 0 }), glued);
  });

  it('is moved by itself in a list of lines as well', () => {
    const block = `tagwright: 1
shapes:
  word: {text: Fennel, width: 80 mm}
  backing: {around: word, by: 7 mm}
pieces:
  back:
    body:
      - backing
    engrave:
      - word   # in the middle
`;
    assert.match(changed(block, 'word', byOne), /- \{from: word, nudge: \{right: 1 mm\}\} {3}# in the middle\n/);
  });

  it('changes its size where the text has it', () => {
    const wider = { kind: 'size', axis: 'width', by: 4 } as const;
    assert.match(changed(glued, 'word', wider), /text: Fennel, width: 84 mm/);
    assert.match(changed(glued, 'leaf', { ...wider, axis: 'height' }), /ellipse: \[9, 8\]/);
    const { source, model, grips } = read(glued);
    assert.equal(
      editsOf(
        grips.find(({ label }) => label === 'ring of back')!,
        wider,
        source,
        model.units,
      ),
      undefined,
    );
  });

  it('is moved by itself where its definition is in another file, and a hanger from there not at all', () => {
    const text = `tagwright: 1
use: shared.yaml
pieces: {tag: {body: [disc, disc], hanger: loop}}
`;
    const shared = 'tagwright: 1\nshapes: {disc: {ellipse: 30}}\nhangers: {loop: {ring: {at: top}}}\n';
    const file = { name: 'shared.yaml', file: 'shared.yaml', path: ['use'], source: new SpecSource(shared), uses: [] };
    const { source, model } = parseSpec(new SpecSource(text), { files: [], used: [file], issues: [] });
    assert.ok(model);
    const grips = gripsOf(model, source);
    assert.deepEqual(
      grips.map(({ label, axes }) => [label, axes.length]),
      [
        ['disc', 0],
        ['disc', 0],
      ],
    );
    const edits = editsOf(grips[1]!, byOne, source, 'mm');
    assert.match(withEdits(text, edits!), /body: \[disc, \{from: disc, nudge: \{right: 1 mm\}\}\]/);
  });

  it('is moved by less than the hand where the whole piece is drawn larger than written', async () => {
    const text =
      'tagwright: 1\nshapes: {disc: {ellipse: 30}, dot: {ellipse: 5}}\npieces: {tag: {body: [disc], cut: [dot], width: 60}}\n';
    const { tag, model, source } = await report(text);
    const scales = pieceScales(tag!, model!);
    assert.ok(Math.abs(scales.get('tag')! - 2) < 0.001);
    const grip = gripsOf(model!, source, (id) => scales.get(id)!).find(({ label }) => label === 'dot')!;
    const edits = editsOf(grip, byOne, source, 'mm')!;
    assert.match(withEdits(text, edits), /dot: \{ellipse: 5, nudge: \{right: 0\.5 mm\}\}/);
  });

  it('is one grip for a hanger that is defined once and hangs several pieces', () => {
    const { grips } = read(`tagwright: 1
hangers: {loop: {ring: {at: top}}}
shapes: {disc: {ellipse: 30}}
pieces:
  one: {body: [disc], hanger: loop}
  two: {body: [disc], hanger: loop}
`);
    assert.deepEqual(
      grips.map(({ parts }) => parts.length),
      [4, 4],
    );
  });

  it('is a panel that is on no piece by the outlines it shows for what is fitted into it or placed on it', () => {
    const text = `tagwright: 1
shapes:
  plate: {rectangle: [90, 50]}
  panel: {rectangle: [60, 20], place: plate}
  name: {text: Tarragon, fit: {in: panel}}
  dot: {circle: 3, place: {on: panel, at: left}}
pieces:
  tag: {body: [plate], engrave: [name, dot]}
`;
    const panel = read(text).grips.find(({ label }) => label === 'panel')!;
    assert.deepEqual(panel.parts, ['tag/mark-0/area', 'tag/mark-1/area']);
    assert.deepEqual([panel.free, panel.moves, panel.axes], [false, true, ['width', 'height']]);
    assert.match(
      changed(text, 'panel', byOne),
      /panel: \{rectangle: \[60, 20\], place: plate, nudge: \{right: 1 mm\}\}/,
    );
  });
});
