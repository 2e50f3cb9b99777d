import assert from 'node:assert/strict';
import type { TagResult } from '../../../../src/vscode/service/results.ts';
import type { EditTrial } from '../../../../src/vscode/service/trial.ts';
import type { TextEdit } from '../../../../src/core/issue.ts';
import { gripsOf } from '../../../../src/scene/grips.ts';
import { HandChanges } from '../../../../src/vscode/preview/hand-changes.ts';
import type { ChangeByHand } from '../../../../src/protocol/preview.ts';
import { parseSpec } from '../../../../src/spec/parse.ts';

const text = 'tagwright: 1\nshapes: {disc: {ellipse: 30}}\npieces: {tag: {body: [disc], hanger: {hole: {}}}}\n';
const { source, model } = parseSpec(text);
const hanger = gripsOf(model!, source).at(-1)!.id;

/** As much of a result as is looked at. */
const tag = { pieces: [] };
const result = { version: 4, stale: false, tag, model, report: { source } } as unknown as TagResult;

const move = (right: number, more: Partial<ChangeByHand> = {}): ChangeByHand => {
  return { source: 'a', version: 4, grip: hanger, change: { kind: 'move', right, up: 0 }, ...more };
};

/** Trials that end when they are told to, and a view that writes down what it is shown. */
function setUp() {
  const running: { edits: readonly TextEdit[]; end: () => void; signal: AbortSignal }[] = [];
  const made: (readonly TextEdit[])[] = [];
  const shown: string[] = [];
  const trial = {
    of: (_: TagResult, edits: readonly TextEdit[], signal: AbortSignal) =>
      new Promise<TagResult>((resolve, reject) => {
        signal.addEventListener('abort', () => {
          reject(signal.reason as Error);
        });
        running.push({
          edits,
          signal,
          end: () => {
            resolve(result);
          },
        });
      }),
    make: (_: TagResult, edits: readonly TextEdit[]) => {
      made.push(edits);
      return Promise.resolve(true);
    },
  };
  const hand = new HandChanges(trial as unknown as EditTrial, {
    showTrial: (_, { change }) => shown.push(change.kind === 'move' ? `trial ${change.right}` : change.kind),
    showText: () => shown.push('text'),
  });
  return { hand, running, made, shown };
}

/** Until what is waiting has had its turn. */
const turn = () => new Promise((resolve) => setImmediate(resolve));

describe('Changes by hand', () => {
  it('are tried one at a time, and of those that wait only the last', async () => {
    const { hand, running, shown } = setUp();
    for (const right of [1, 2, 3]) hand.try(result, move(right));
    await turn();
    assert.equal(running.length, 1);
    running[0]!.end();
    await turn();
    assert.equal(running.length, 2);
    running[1]!.end();
    await turn();
    assert.deepEqual(shown, ['trial 1', 'trial 3']);
  });

  it('are written once they are made, and what was still being tried is not shown any more', async () => {
    const { hand, running, made, shown } = setUp();
    hand.try(result, move(1));
    await hand.make(result, move(2));
    running[0]!.end();
    await turn();
    assert.ok(running[0]!.signal.aborted);
    assert.deepEqual(shown, []);
    assert.deepEqual(
      made.map((edits) => edits.map((edit) => edit.text)),
      [['nudge: {right: 2 mm}']],
    );
  });

  it('show the text as it is when they are dropped, come to nothing or are of an older text', async () => {
    const { hand, made, shown } = setUp();
    hand.try(result, move(1));
    hand.drop();
    await hand.make(result, move(0));
    await hand.make(result, move(1, { version: 3 }));
    await hand.make(result, move(1, { grip: '["shapes","other"]' }));
    await hand.make({ ...result, stale: true }, move(1));
    assert.deepEqual(shown, ['text', 'text', 'text', 'text', 'text']);
    assert.deepEqual(made, []);
  });
});
