import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeAllWhole } from '../../../src/export/node-write-whole.ts';

describe('Several files that are written together', () => {
  it('are all left out where a folder has the name of one', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'tagwright-whole-'));
    try {
      mkdirSync(join(folder, 'b.pdf'));
      const files = new Map(['a.svg', 'b.pdf'].map((name) => [join(folder, name), name]));
      await assert.rejects(writeAllWhole(files), /b\.pdf is a folder; nothing was written/);
      assert.deepEqual(readdirSync(folder), ['b.pdf']);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
