import assert from 'node:assert/strict';
import { freeFileName, rowFileName } from '../../../src/export/file-names.ts';

describe('The names of the files of a batch', () => {
  it('have the letters and figures of what a tag goes by, and nothing that a file system may refuse', () => {
    assert.equal(rowFileName('label', 'Sorrel'), 'label-sorrel');
    assert.equal(rowFileName('label', '  Sweet  Cicely / 2026 '), 'label-sweet-cicely-2026');
    assert.equal(rowFileName('label', 'Möhre'), 'label-möhre');
    assert.equal(rowFileName('label', 'Mo\u0308hre'), 'label-möhre', 'composed');
    assert.equal(rowFileName('label', 'زعتر'), 'label-زعتر');
    assert.equal(rowFileName('label', '../..\\C:<>|?*"'), 'label-c');
    assert.equal(rowFileName('label', '!!!'), 'label-tag');
    assert.equal(rowFileName('label', '🌱'.repeat(3)), 'label-tag');
    assert.equal(rowFileName('label', 'x'.repeat(300)), `label-${'x'.repeat(60)}`);
  });

  it('are numbered where two are alike, capitals or not', () => {
    assert.equal(freeFileName('a', new Set()), 'a');
    assert.equal(freeFileName('a-Rue', new Set(['a-rue', 'a-rue-2'])), 'a-Rue-3');
  });
});
