import assert from 'node:assert/strict';
import type { Memento, Uri } from 'vscode';
import { PreviewMemory } from '../../../src/preview/memory.ts';

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
const kept = { arrangement: 'apart', hiddenLayers: ['score'], hiddenPieces: [], dockOpen: false };

describe('What previews remember', () => {
  it('is how each file was looked at, also in the next window', () => {
    const files = memento();
    const memory = new PreviewMemory(files, memento());
    assert.equal(memory.kept(uri('dill')), undefined);
    memory.keep(uri('dill'), kept);
    memory.keep(uri('rue'), { ...kept, dockOpen: true });
    const later = new PreviewMemory(files, memento());
    assert.deepEqual(later.kept(uri('dill')), kept);
    assert.equal(later.kept(uri('rue'))?.dockOpen, true);
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

  it('is nothing where what was kept is of another kind', () => {
    const files = memento({ 'preview.kept': { 'file:///bench/dill': { hiddenLayers: 'all' } } });
    const memory = new PreviewMemory(files, memento({ 'preview.devicePixelsPerMm': 'many' }));
    assert.equal(memory.kept(uri('dill')), undefined);
    assert.equal(memory.screen, undefined);
  });
});
