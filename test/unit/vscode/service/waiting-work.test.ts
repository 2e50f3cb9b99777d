import assert from 'node:assert/strict';
import { WaitingWork } from '../../../../src/vscode/service/waiting-work.ts';

describe('Work that waits', () => {
  it('is done one at a time, in its order, also what is added meanwhile, and not what is dropped', async () => {
    const done: string[] = [];
    let working = 0;
    const waiting = new WaitingWork<string>(async (key, what) => {
      assert.equal(++working, 1);
      if (key === 'a') void waiting.add('d', 'late');
      await Promise.resolve();
      done.push(`${key} ${what}`);
      working--;
    });
    const all = waiting.add('a', 'one');
    void waiting.add('b', 'one');
    void waiting.add('c', 'one');
    void waiting.add('a', 'another');
    waiting.drop('b');
    await all;
    assert.deepEqual(done, ['a another', 'c one', 'd late']);
  });

  it('waits for what is urgent', async () => {
    const done: string[] = [];
    const waiting = new WaitingWork<string>(async (key) => {
      done.push(key);
      await Promise.resolve();
    });
    let finish!: () => void;
    waiting.urgent(
      new Promise<void>((resolve) => {
        finish = resolve;
      }).then(() => {
        done.push('urgent');
      }),
    );
    const all = waiting.add('a', 'one');
    setTimeout(finish, 100);
    await all;
    assert.deepEqual(done, ['urgent', 'a']);
    await waiting.nothingUrgent();
  });

  it('goes on after work that failed', async () => {
    const done: string[] = [];
    const waiting = new WaitingWork<string>((key) => {
      done.push(key);
      return key === 'a' ? Promise.reject(new Error('no')) : Promise.resolve();
    });
    await assert.rejects(waiting.add('a', 'one'), /no/);
    await waiting.add('b', 'one');
    assert.deepEqual(done, ['a', 'b']);
  });
});
