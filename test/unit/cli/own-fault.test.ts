import assert from 'node:assert/strict';
import { check } from '../../../src/cli/check.ts';
import { RowWorker } from '../../../src/cli/row-work.ts';
import { newEngine } from '../support/engine.ts';

const text = 'tagwright: 1\nshapes:\n  a: {text: Ash, font: ./ash.woff, x_height: 9}\npieces:\n  tag: {body: [a]}\n';
const locate = () => {
  throw new TypeError('nothing is there');
};

describe('A fault of the program itself', () => {
  it('in one file does not keep the others from being checked', async () => {
    const { log, error } = console;
    const said: string[] = [];
    console.log = console.error = (line: string) => said.push(line);
    try {
      const others = { locate: () => undefined };
      const plain = 'tagwright: 1\nshapes:\n  a: {rectangle: [40, 20]}\npieces:\n  tag: {body: [a]}\n';
      const specs = [
        { file: 'one.tag.yaml', text, options: { locate } },
        { file: 'two.tag.yaml', text: plain, options: others },
      ];
      assert.equal(await check(specs, { json: false, strict: false, withFixes: false }), 1);
    } finally {
      Object.assign(console, { log, error });
    }
    assert.equal(said.length, 2);
    assert.match(
      said[0]!,
      /^one\.tag\.yaml: Tagwright failed on this tag \(nothing is there\)\. The fault is in the program/,
    );
    assert.equal(said[1], 'two.tag.yaml: no problems');
  });

  it('is an error of the tag alone where many are made', async () => {
    const engine = newEngine();
    engine.compute = () => Promise.reject(new TypeError('nothing is there'));
    const worker = new RowWorker({ file: 'one.tag.yaml', text, severities: {}, wish: { what: 'issues' } }, engine);
    const { row, issues } = await worker.make({ row: 3 });
    assert.equal(row, 3);
    assert.deepEqual(
      issues.map(({ severity, message }) => [severity, message.slice(0, 28)]),
      [['error', 'Tagwright failed on this tag']],
    );
  });
});
