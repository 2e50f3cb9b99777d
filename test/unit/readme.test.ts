import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';

describe('The README', () => {
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');

  it('begins with whom it is for, and then the two commands', () => {
    assert.match(readme, /^# Tagwright\n\nYou have one laser and many small orders/);
    const commands = [...readme.matchAll(/^```sh\n(.*)\n```$/gm)].map(([, command]) => command);
    assert.deepEqual(commands, ['npm start', 'npm test', 'npm run package']);
  });

  it('is read in a few minutes', () => {
    assert.ok(readme.split('\n').length < 170);
  });

  it('has the cautions, and the way to the rest of them', () => {
    for (const words of ['**Never leave a running job alone.**', '**Extract the fumes.**', '**Never cut** PVC'])
      assert.ok(readme.includes(words), words);
    assert.ok(readme.includes('(src/guide/before-you-cut.md)') || readme.includes(']: src/guide/before-you-cut.md'));
  });
});
