import assert from 'node:assert/strict';
import { parseToPage } from '../../../webview/preview/messages.ts';
import { sceneMessage } from '../../page/scenes.ts';

/** The message with one value replaced, however deep. */
function altered(path: readonly (string | number)[], value: unknown): unknown {
  const copy = structuredClone(sceneMessage()) as unknown as Record<string | number, unknown>;
  let at = copy;
  for (const step of path.slice(0, -1)) at = at[step] as Record<string | number, unknown>;
  at[path.at(-1)!] = value;
  return copy;
}

const load = { piece: 'tag', headline: 'Load unknown', lines: ['A line'], caution: 'An estimate', rule: 'Try it' };
const wall = {
  piece: 'tag',
  points: [
    [1, 2],
    [1, 4],
  ],
  width: 2,
};
const path = { piece: 'tag', kerf: 0.2, data: 'M0 0L1 0L1 1Z' };
const takes = { type: 'takes', source: 's', version: 1, facts: [{ name: 'Cut', value: '160.6 mm' }] };
const measures = { type: 'measures', source: 's', version: 1, loads: [load], walls: [wall], cutPaths: [path] };
const fixes = { type: 'fixes', source: 's', version: 1, pin: 'speck@shapes/a#0', titles: ['Drop it'] };
const ghost = { id: 'tag', title: 'Tag', solid: 'M0 0l1 0 0 1z', marks: '', bounds: [0, 0, 1, 1] };
const outcome = { type: 'outcome', source: 's', version: 1, pin: 'speck@shapes/a#0', index: 0, pieces: [ghost] };

describe('A message to the page', () => {
  it('is read where it keeps to the protocol', () => {
    const message = sceneMessage();
    assert.equal(parseToPage(message), message);
    const trial = { ...message, trying: { grip: 'word', change: { kind: 'size', axis: 'width', by: 1 } } };
    assert.equal(parseToPage(trial), trial);
    const { scene, ...without } = message;
    assert.ok(scene);
    assert.equal(parseToPage(without), without);
    const highlight = { type: 'highlight', source: 's', ids: ['a'], follow: false };
    assert.equal(parseToPage(highlight), highlight);
    assert.equal(parseToPage(measures), measures);
    assert.equal(parseToPage(takes), takes);
    assert.equal(parseToPage(fixes), fixes);
    assert.equal(parseToPage(outcome), outcome);
    const screen = { type: 'screen', source: 's', devicePixelsPerMm: 4.2 };
    assert.equal(parseToPage(screen), screen);
    const covered = { type: 'covered', source: 's', rows: 9 };
    assert.equal(parseToPage(covered), covered);
    assert.equal(parseToPage({ ...covered, rows: 'yes' }), undefined);
    const unknown = { type: 'screen', source: 's' };
    assert.equal(parseToPage(unknown), unknown);
    assert.equal(parseToPage({ ...screen, devicePixelsPerMm: -1 }), undefined);
    const picture = { size: { width: 9, height: 9 }, paths: [{ use: 'material', data: 'M0 0L1 0Z' }] };
    const tag = { picture, width: 80, height: 30, problems: 0, isHardToRead: false, isTall: false };
    const batch = {
      type: 'batch',
      source: 's',
      version: 1,
      tags: [tag, { problems: 1, isHardToRead: false, isTall: false }],
    };
    assert.equal(parseToPage(batch), batch);
    for (const part of [{ width: '80' }, { problems: undefined }, { picture: { ...picture, paths: [{}] } }]) {
      assert.equal(parseToPage({ ...batch, tags: [{ ...tag, ...part }] }), undefined);
    }
  });

  it('is dropped where a part of it is missing or of another kind', () => {
    const wrong: [readonly (string | number)[], unknown][] = [
      [['type'], 'draw'],
      [['source'], undefined],
      [['version'], '3'],
      [['pins'], undefined],
      [['pins', 0, 'severity'], 'fatal'],
      [['accepted'], undefined],
      [['accepted'], [{ id: 'a', code: 'speck', message: 'A speck.', line: 3, source: 9 }]],
      [['pins', 0, 'points'], [[1]]],
      [['trying'], { grip: 'word', change: { kind: 'move', right: '1', up: 0 } }],
      [['trying'], { grip: 4, change: { kind: 'move', right: 1, up: 0 } }],
      [['scene', 'grips'], undefined],
      [['scene', 'grips', 0, 'parts'], [1]],
      [['scene', 'grips', 0, 'axes'], ['depth']],
      [['scene', 'pieces', 0, 'balance'], [1]],
      [['scene', 'thickness'], '3'],
      [['scene', 'units'], 'ft'],
      [
        ['scene', 'bounds'],
        [0, 0, 1],
      ],
      [
        ['scene', 'bounds'],
        [0, 0, 1, Number.NaN],
      ],
      [['scene', 'pieces', 0, 'parts', 0, 'data'], null],
      [['scene', 'pieces', 0, 'shapes'], {}],
    ];
    for (const [path, value] of wrong) {
      assert.equal(parseToPage(altered(path, value)), undefined, path.join('.'));
    }
    for (const data of [undefined, null, 'scene', 4, []]) assert.equal(parseToPage(data), undefined);
    assert.equal(parseToPage({ type: 'highlight', source: 's', ids: [1], follow: false }), undefined);
    for (const part of [{ headline: 4 }, { lines: [4] }, { caution: undefined }, { piece: null }]) {
      assert.equal(parseToPage({ ...measures, loads: [{ ...load, ...part }] }), undefined);
    }
    for (const part of [{ points: [[1, 2]] }, { width: '2' }, { piece: 1 }]) {
      assert.equal(parseToPage({ ...measures, walls: [{ ...wall, ...part }] }), undefined);
    }
    assert.equal(parseToPage({ ...measures, cutPaths: [{ ...path, data: 3 }] }), undefined);
    assert.equal(parseToPage({ ...measures, cutPaths: [{ ...path, kerf: undefined }] }), undefined);
    assert.equal(parseToPage({ ...measures, walls: undefined }), undefined);
    assert.equal(parseToPage({ ...takes, facts: [{ name: 'Cut', value: 4 }] }), undefined);
    assert.equal(parseToPage({ ...takes, version: undefined }), undefined);
    for (const part of [{ version: '1' }, { pin: 3 }, { titles: 'Drop it' }, { titles: [1] }]) {
      assert.equal(parseToPage({ ...fixes, ...part }), undefined);
    }
    for (const part of [
      { index: '0' },
      { pieces: [{ ...ghost, solid: 1 }] },
      { pieces: [{ ...ghost, bounds: [0] }] },
    ]) {
      assert.equal(parseToPage({ ...outcome, ...part }), undefined);
    }
  });
});
