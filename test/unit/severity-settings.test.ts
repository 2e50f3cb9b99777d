import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { settingPrefix, severitySettings } from '../../src/dev/severity-settings.ts';
import { issueCodes } from '../../src/core/issue-kinds.ts';

interface Manifest {
  contributes: { configuration: { properties: Record<string, unknown> }[] };
}

describe('The settings of problems', () => {
  const manifest = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as Manifest;
  const properties = Object.assign(
    {},
    ...manifest.contributes.configuration.map((group) => group.properties),
  ) as object;
  const contributed = Object.fromEntries(Object.entries(properties).filter(([key]) => key.startsWith(settingPrefix)));

  it('are one for each code, as the table of codes has it', () => {
    assert.deepEqual(contributed, severitySettings());
    assert.equal(Object.keys(contributed).length, issueCodes.length);
  });
});
