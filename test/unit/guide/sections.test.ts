import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { hoverAt } from '../../../src/language/hover/hover.ts';
import { referenceSectionOf } from '../../../src/language/reference-sections.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import type { YamlPath } from '../../../src/core/issue.ts';
import { samples } from '../language/marked.ts';

const reference = readFileSync(join(import.meta.dirname, '../../../src/guide/reference.md'), 'utf8');
const sections = [...reference.matchAll(/^## (.*)$/gm)].map(([, heading]) =>
  heading!.replaceAll('`', '').toLowerCase().replaceAll(' ', '-'),
);

function pathsIn(value: unknown, path: YamlPath = []): YamlPath[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => {
    const here = [...path, Array.isArray(value) ? Number(key) : key];
    return [...(Array.isArray(value) ? [] : [here]), ...pathsIn(inner, here)];
  });
}

describe('The sections of the reference', () => {
  it('are there for every key of every sample, but for the columns of a table', () => {
    const paths = samples.flatMap(({ text }) => pathsIn(new SpecSource(text).value));
    assert.ok(paths.length > 200);
    for (const path of paths) {
      const section = referenceSectionOf(path);
      if (section === undefined) assert.equal(path[0], 'batch', path.join('.'));
      else assert.ok(sections.includes(section), `${path.join('.')}: ${section}`);
    }
  });

  it('are those of the group that a key opens, else of the one it stands in', () => {
    for (const [path, section] of [
      [['title'], 'the-spec'],
      [['stock'], 'stock'],
      [['stock', 'kerf'], 'kerf-by-operation'],
      [['stock', 'min_web'], 'stock'],
      [['shapes', 'plate'], 'shape'],
      [['shapes', 'plate', 'radius'], 'shape'],
      [['pieces', 'tag', 'body'], 'piece'],
      [['pieces', 'tag', 'parts'], 'piece'],
      [['pieces', 'tag', 'hanger', 'ring', 'wall'], 'ring'],
      [['pieces', 'tag', 'hanger', 0, 'hole', 'inset'], 'hole'],
      // Told once for all hangers.
      [['pieces', 'tag', 'hanger', 'ring', 'at'], 'hanger'],
      [['pieces', 'tag', 'hanger', 0, 'slot', 'count'], 'hanger'],
      [['hangers', 'cord', 'keyhole', 'nudge'], 'hanger'],
      [['nothing'], undefined],
    ] as const)
      assert.equal(referenceSectionOf(path), section, path.join('.'));
  });

  it('go with the hover over a key, and with no other word', () => {
    const text = 'tagwright: 1\ntie: {twine: 2 mm}\npieces:\n  tag: {body: [{ellipse: 30 mm}]}\n';
    const source = new SpecSource(text);
    assert.equal(hoverAt(source, text.indexOf('twine') + 1, undefined, [])?.section, 'tie');
    assert.equal(hoverAt(source, text.indexOf('2 mm') + 1, undefined, [])?.section, undefined);
  });
});
