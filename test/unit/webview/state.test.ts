import assert from 'node:assert/strict';
import { initialState, parseState, toggled, type PageState } from '../../../webview/preview/state.ts';

const source = 'file:///bench/sorrel.tag.yaml';

describe('What a page remembers', () => {
  it('comes back as it was kept', () => {
    const kept: PageState = {
      source,
      arrangement: 'apart',
      viewports: { apart: { x: 1, y: -2, scale: 3 } },
      hiddenLayers: ['score', 'finish'],
      hiddenPieces: ['back'],
      dock: 'closed',
      proof: true,
      follows: true,
    };
    assert.deepEqual(parseState(structuredClone(kept), source), kept);
  });

  it('is nothing for another spec, and for none', () => {
    const kept = { ...initialState('file:///other.tag.yaml'), arrangement: 'apart' };
    for (const other of [kept, undefined, null, 'x', 3]) assert.equal(parseState(other, source), undefined);
    assert.deepEqual(parseState({ source }, source), initialState(source));
  });

  it('loses only what does not fit', () => {
    const state = parseState(
      {
        source,
        arrangement: 'upside down',
        viewports: {
          apart: { x: 1, y: 2, scale: 0 },
          assembled: { x: 1, y: 2, scale: 5 },
          other: { x: 1, y: 1, scale: 1 },
        },
        hiddenLayers: ['score', 'everything'],
        hiddenPieces: ['back', 4],
        dock: 'no',
      },
      source,
    );
    assert.deepEqual(state, {
      source,
      arrangement: 'assembled',
      viewports: { assembled: { x: 1, y: 2, scale: 5 } },
      hiddenLayers: ['score'],
      hiddenPieces: ['back'],
      dock: 'auto',
      proof: false,
      follows: false,
    });
  });

  it('turns a member of a list on and off', () => {
    assert.deepEqual(toggled(['a'], 'b'), ['a', 'b']);
    assert.deepEqual(toggled(['a', 'b'], 'a'), ['b']);
  });
});
