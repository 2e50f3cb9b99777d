import assert from 'node:assert/strict';
import { Progress } from '../../../src/cli/progress.ts';
import type { Output } from '../../../src/cli/progress.ts';

/** A terminal of one line: carriage return and “erase line” (ECMA-48, EL 2) are all it knows. */
class Terminal implements Output {
  readonly isTTY: boolean;
  readonly columns = 30;
  all = '';
  readonly lines = [''];

  constructor(isTTY = true) {
    this.isTTY = isTTY;
  }

  write(text: string): boolean {
    this.all += text;
    for (const [index, line] of text.split('\n').entries()) {
      if (index > 0) this.lines.push('');
      const [before, ...others] = line.split('\r\u001b[2K');
      this.lines.push((others.length === 0 ? this.lines.pop()! : '') + (others.at(-1) ?? before!));
      if (others.length > 0) this.lines.splice(-2, 1);
    }
    return true;
  }
}

describe('How far a command is', () => {
  it('stands in one line of a terminal, no longer than that, and goes once there is something to print', () => {
    const terminal = new Terminal();
    const out: Output = { write: (text) => terminal.write(text) };
    const progress = new Progress(false, terminal, [out]);
    progress.tell('tags', 'making tag 1 of 3');
    assert.deepEqual(terminal.lines, ['making tag 1 of 3']);
    progress.tell('ply3', 'laying out ply3, which has a name that is long');
    assert.deepEqual(terminal.lines, ['laying out ply3, which has a ']);
    out.write('cut/a.svg\n');
    assert.deepEqual(terminal.lines, ['cut/a.svg', '']);
    progress.tell('files', 'writing sheet 1 of 2');
    terminal.write('a.tag.yaml: Pieces: 3\n');
    progress.tell('others', 'writing sheet 2 of 2');
    progress.end();
    out.write('done\n');
    assert.deepEqual(terminal.lines, ['cut/a.svg', 'a.tag.yaml: Pieces: 3', 'done', '']);
  });

  it('is told line by line where that is asked for, each step at once and its figures now and then', () => {
    const file = new Terminal(false);
    const progress = new Progress(true, file, []);
    for (let done = 1; done <= 3; done++) progress.tell('tags', `making tag ${done} of 3`);
    progress.tell('ply3', 'laying out ply3');
    progress.end();
    assert.equal(file.all, 'making tag 1 of 3\nlaying out ply3\n');
  });

  it('is not told to a file otherwise', () => {
    const file = new Terminal(false);
    const progress = new Progress(false, file, []);
    progress.tell('tags', 'making tag 1 of 3');
    progress.end();
    assert.equal(file.all, '');
  });
});
