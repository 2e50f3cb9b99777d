import assert from 'node:assert/strict';
import { highlightedIds } from '../../../src/scene/highlighted.ts';
import { parseSpec } from '../../../src/spec/parse.ts';

const spec = `tagwright: 1
shapes:
  word: {text: Dill, font: Nunito, width: 40 mm}
  letters: {from: word, grow: 0.5 mm}
  backing: {around: letters, by: 7 mm}
  window: {rectangle: [3 mm, 3 mm]}
pieces:
  back:
    body: [backing]
    cut: [window]
    score: [{from: letters, grow: -0.5 mm}]
    hanger: {ring: {on: backing, at: left}}
  name:
    body: [letters]
    parts: many
    glue_to: back
`;

describe('What the cursor lights up', () => {
  const { model, source, issues } = parseSpec(spec);

  /** With the cursor on the first character of the text. */
  function highlightedIn(text: string): string[] {
    assert.ok(model, JSON.stringify(issues));
    const offset = spec.indexOf(text);
    assert.ok(offset >= 0, text);
    return highlightedIds(model, source.pathAt(offset));
  }

  it('is everything made of a shape, through other shapes too', () => {
    const both = ['back/mark-0', 'name/body-0', 'name/holes-0'];
    assert.deepEqual(highlightedIn('Dill'), both);
    assert.deepEqual(highlightedIn('0.5 mm}\n  backing'), both);
  });

  it('is what runs around a shape where the shape itself is not to be seen', () => {
    const hidden = parseSpec(
      `tagwright: 1
shapes:
  word: {text: Dill, font: Nunito, width: 40 mm}
  backing: {around: word, by: 7 mm}
pieces:
  back: {body: [backing]}
`,
    );
    assert.deepEqual(highlightedIds(hidden.model!, ['shapes', 'word', 'text']), ['back/body-0', 'back/holes-0']);
  });

  it('is the area of a panel that is on no piece', () => {
    const { model } = parseSpec(`tagwright: 1
shapes:
  plate: {rectangle: [90, 50]}
  panel: {rectangle: [60, 20], place: plate}
  name: {text: Tarragon, fit: {in: panel}}
pieces:
  tag: {body: [plate], engrave: [name]}
`);
    assert.deepEqual(highlightedIds(model!, ['shapes', 'panel', 'rectangle']), ['tag/mark-0/area']);
  });

  it('is only what stands on the shape, not what the shape stands on', () => {
    assert.deepEqual(highlightedIn('7 mm'), ['back/body-0', 'back/holes-0']);
  });

  it('is the entry of a piece that it stands in', () => {
    assert.deepEqual(highlightedIn('backing]'), ['back/body-0', 'back/holes-0']);
    assert.deepEqual(highlightedIn('window]'), ['back/cut-0']);
    assert.deepEqual(highlightedIn('-0.5'), ['back/mark-0']);
  });

  it('is the ring and its hole inside a hanger', () => {
    assert.deepEqual(highlightedIn('left}'), ['back/hanger-0', 'back/hanger-hole-0']);
  });

  it('is the whole piece elsewhere in it', () => {
    assert.deepEqual(highlightedIn('many'), ['name/outer', 'name/body-0']);
  });

  it('is nothing outside shapes and pieces', () => {
    assert.deepEqual(highlightedIn('tagwright'), []);
  });
});
