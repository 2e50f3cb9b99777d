import assert from 'node:assert/strict';
import type { Memento, Uri } from 'vscode';
import { PreviewMemory } from '../../../../src/vscode/preview/memory.ts';

/** A memento in memory, as plain data as the editor's. */
function memento(content: Record<string, unknown> = {}): Memento & { content: Record<string, unknown> } {
  return {
    content,
    keys: () => Object.keys(content),
    get: (key: string, instead?: unknown) => structuredClone(content[key] ?? instead),
    update: (key: string, value: unknown) => {
      content[key] = structuredClone(value);
      return Promise.resolve();
    },
  } as Memento & { content: Record<string, unknown> };
}

/** As much of a uri as is looked at. */
const uri = (name: string) => ({ toString: () => `file:///bench/${name}` }) as unknown as Uri;
const kept = { arrangement: 'apart', hiddenLayers: ['score'], hiddenPieces: [], dock: 'closed' };

describe('What previews remember', () => {
  it('is how each file was looked at, also in the next window', () => {
    const files = memento();
    const memory = new PreviewMemory(files, memento());
    assert.equal(memory.kept(uri('dill')), undefined);
    memory.keep(uri('dill'), kept);
    memory.keep(uri('rue'), { ...kept, dock: 'open' });
    const later = new PreviewMemory(files, memento());
    assert.deepEqual(later.kept(uri('dill')), kept);
    assert.equal(later.kept(uri('rue'))?.dock, 'open');
  });

  it('is the last 200 files', () => {
    const files = memento();
    const memory = new PreviewMemory(files, memento());
    for (let nth = 0; nth < 201; nth++) memory.keep(uri(`${nth}`), kept);
    memory.keep(uri('1'), kept);
    memory.keep(uri('201'), kept);
    assert.equal(Object.keys(files.content['preview.kept'] as object).length, 200);
    assert.equal(memory.kept(uri('0')), undefined);
    assert.equal(memory.kept(uri('2')), undefined);
    assert.deepEqual(memory.kept(uri('1')), kept);
  });

  it('is the screen of the machine', () => {
    const machine = memento();
    new PreviewMemory(memento(), machine).screen = 4.5;
    assert.equal(new PreviewMemory(memento(), machine).screen, 4.5);
    new PreviewMemory(memento(), machine).screen = undefined;
    assert.equal(new PreviewMemory(memento(), machine).screen, undefined);
  });

  it('is what files were made last on the machine, and which cautions were read, the last 20', () => {
    const machine = memento();
    const memory = new PreviewMemory(memento(), machine);
    assert.equal(memory.exports, 'svg');
    memory.exports = 'sheets';
    for (let nth = 0; nth < 21; nth++) memory.readCaution(`caution ${nth}`);
    memory.readCaution('caution 1');
    const later = new PreviewMemory(memento(), machine);
    assert.equal(later.exports, 'sheets');
    assert.equal(later.cautions.length, 20);
    assert.equal(later.cautions[0], 'caution 2');
    assert.equal(later.cautions.at(-1), 'caution 1');
    assert.equal(new PreviewMemory(memento(), memento({ 'preview.exports': 'all' })).exports, 'svg');
  });

  it('keeps what an earlier version kept of a file, but for what has another name now', () => {
    const { dock, ...rest } = kept;
    assert.equal(dock, 'closed');
    const files = memento({ 'preview.kept': { 'file:///bench/dill': { ...rest, dockOpen: true } } });
    assert.deepEqual(new PreviewMemory(files, memento()).kept(uri('dill')), { ...rest, dock: 'auto' });
  });

  it('is nothing where what was kept is of another kind', () => {
    const files = memento({ 'preview.kept': { 'file:///bench/dill': { hiddenLayers: 'all' } } });
    const memory = new PreviewMemory(files, memento({ 'preview.devicePixelsPerMm': 'many' }));
    assert.equal(memory.kept(uri('dill')), undefined);
    assert.equal(memory.screen, undefined);
  });
});
