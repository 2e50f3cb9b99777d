import assert from 'node:assert/strict';
import { shellHtml } from '../../../../src/vscode/preview/html.ts';
import { parseRestoredSource, parseToHost } from '../../../../src/vscode/preview/messages.ts';

const kept = { arrangement: 'apart', hiddenLayers: ['beam'], hiddenPieces: ['back'], dock: 'open' };

const byHand = {
  source: 'file:///a.tag.yaml',
  version: 2,
  grip: '["shapes","word"]',
  change: { kind: 'move', right: 1.5, up: -2 },
};

describe('A message from the page', () => {
  it('is read where it keeps to the protocol', () => {
    const messages = [
      { type: 'ready' },
      { type: 'reveal', source: 'file:///a.tag.yaml', offset: 12, focus: true },
      { type: 'export', source: 'file:///a.tag.yaml', what: 'pack' },
      { type: 'read-caution', source: 'file:///a.tag.yaml', caution: 'Try it on scrap.' },
      { type: 'ask-fixes', source: 'file:///a.tag.yaml', version: 0, pin: 'speck@shapes/a#0' },
      { type: 'make-fix', source: 'file:///a.tag.yaml', version: 3, pin: 'speck@shapes/a#0', index: 1 },
      { type: 'show-fix', source: 'file:///a.tag.yaml', version: 3, pin: 'speck@shapes/a#0', index: 0 },
      { ...byHand, type: 'try-change' },
      { ...byHand, type: 'make-change', change: { kind: 'size', axis: 'width', by: -0.1 } },
      { type: 'want-cut-paths', source: 'file:///a.tag.yaml', wanted: true },
      { type: 'keep', source: 'file:///a.tag.yaml', kept },
      { type: 'follow', source: 'file:///a.tag.yaml', follows: true },
      { type: 'screen', source: 'file:///a.tag.yaml', devicePixelsPerMm: 4.2 },
      { type: 'screen', source: 'file:///a.tag.yaml' },
      { type: 'drop-change', source: 'file:///a.tag.yaml' },
      { type: 'show-other', source: 'file:///a.tag.yaml' },
      { type: 'undo', source: 'file:///a.tag.yaml' },
    ];
    for (const message of messages) assert.deepEqual(parseToHost(message), message);
  });

  it('is dropped where it does not', () => {
    const reveal = { type: 'reveal', source: 'file:///a.tag.yaml', offset: 12, focus: true };
    const fix = { type: 'make-fix', source: 'file:///a.tag.yaml', version: 3, pin: 'speck@shapes/a#0', index: 1 };
    const wrong = [
      undefined,
      null,
      'ready',
      [],
      { type: 'run' },
      { type: 'export' },
      { type: 'export', source: 'a', what: 'everything' },
      { type: 'read-caution', source: 'a', caution: 'a'.repeat(2001) },
      { ...reveal, offset: -1 },
      { ...reveal, offset: 1.5 },
      { ...reveal, offset: '12' },
      { ...reveal, focus: undefined },
      { ...reveal, source: 3 },
      { ...byHand, type: 'try-change', change: { kind: 'move', right: Number.NaN, up: 0 } },
      { ...byHand, type: 'try-change', change: { kind: 'move', right: 1e6, up: 0 } },
      { ...byHand, type: 'make-change', change: { kind: 'size', axis: 'depth', by: 1 } },
      { ...byHand, type: 'make-change', change: { kind: 'turn', by: 1 } },
      { ...byHand, type: 'make-change', change: null },
      { ...byHand, type: 'make-change', grip: 4 },
      { type: 'undo' },
      { type: 'keep', source: 'a', kept: { ...kept, hiddenLayers: [3] } },
      { type: 'keep', source: 'a', kept: { ...kept, hiddenPieces: Array(501).fill('a') } },
      { type: 'keep', source: 'a' },
      { type: 'follow', source: 'a' },
      { type: 'screen', source: 'a', devicePixelsPerMm: 0 },
      { type: 'screen', source: 'a', devicePixelsPerMm: '4' },
      { type: 'want-cut-paths', source: 'file:///a.tag.yaml', wanted: 1 },
      { ...fix, version: '3' },
      { ...fix, pin: 4 },
      { ...fix, index: -1 },
      { ...fix, type: 'show-fix', index: 'first' },
      { ...fix, source: undefined },
      { ...fix, type: 'ask-fixes', pin: undefined },
    ];
    for (const message of wrong) assert.equal(parseToHost(message), undefined, JSON.stringify(message));
  });

  it('loses whatever is not of the protocol', () => {
    assert.deepEqual(parseToHost({ type: 'ready', html: '<b>' }), { type: 'ready' });
  });
});

describe('The state of a page before a reload', () => {
  it('gives the spec it showed, or nothing', () => {
    assert.equal(parseRestoredSource({ source: 'file:///a.tag.yaml', zoom: 2 }), 'file:///a.tag.yaml');
    for (const state of [undefined, null, 4, {}, { source: 4 }, { source: '' }]) {
      assert.equal(parseRestoredSource(state), undefined);
    }
  });
});

describe('The shell of the page', () => {
  const html = shellHtml({
    cspSource: 'https://page.invalid',
    scriptUri: 'https://page.invalid/main.js',
    styleUri: 'https://page.invalid/main.css',
    nonce: 'n0nce',
    source: 'file:///a"><script>alert(1)</script>.tag.yaml',
    remembered: '{"kept":{"hiddenPieces":["\'><script>"]}}',
  });

  it('lets nothing in but its own script and style sheet', () => {
    const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1]?.replaceAll('&#39;', "'");
    assert.equal(policy, "default-src 'none'; style-src https://page.invalid; script-src 'nonce-n0nce'");
    assert.equal(html.match(/<script/g)?.length, 1);
  });

  it('has no styles, scripts or handlers in its markup', () => {
    assert.doesNotMatch(html, /<style|\sstyle=|\son[a-z]+=/);
  });
});
