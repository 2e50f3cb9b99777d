import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { issueCodes } from '../../../src/core/issue-kinds.ts';
import { parseSpec } from '../../../src/spec/parse.ts';
import { assertWorked, worked } from '../support/effort.ts';
import { isWhole, oneIn } from '../support/sweep.ts';

const folder = new URL('../../../samples/', import.meta.url);
/**
 * Without their comments, in most of which a text that ends or lacks something is the same YAML. The one without a number
 * has the same few lines over and over.
 */
const samples = readdirSync(folder)
  .filter((name) => /^\d.*\.tag\.yaml$/.test(name))
  .map((name) => ({ name, text: readFileSync(new URL(name, folder), 'utf8').replaceAll(/(^|\s)#.*/gm, '') }));

const codes = new Set<string>(issueCodes);

/** Reads it, and holds what is promised of any text. */
function assertReads(text: string): void {
  const { model, issues, source } = parseSpec(text);
  assert.ok(model !== undefined || issues.length > 0, `nothing is said of ${text}`);
  for (const { code, message, range } of issues) {
    assert.ok(codes.has(code), code);
    assert.ok(message.length > 0 && message.length < 500, message);
    const inText = range.start >= 0 && range.start <= range.end && range.end <= Math.max(text.length, 1);
    assert.ok(inText, `${code} at ${range.start}–${range.end} of ${text.length}:\n${text}`);
    const { line, column } = source.position(range.start);
    assert.ok(line >= 1 && column >= 1);
  }
}

describe('Half-typed specs', () => {
  it('are seven samples here at least', () => {
    assert.ok(samples.length >= 7);
  });

  for (const { name, text } of samples) {
    it(`that begin as ${name} does are read without an exception`, () => {
      for (let length = 0; length < text.length; length += isWhole ? 1 : 31) assertReads(text.slice(0, length));
    });

    it(`that lack a line of ${name} are read without an exception`, () => {
      const lines = text.split('\n');
      for (const lacking of oneIn(2, [...lines.keys()]))
        assertReads(lines.filter((_, index) => index !== lacking).join('\n'));
    });

    it(`that lack a value of ${name}, or have it twice, are read without an exception`, () => {
      const colons = [...text.matchAll(/: ?/g)].map((match) => match.index + match[0].length);
      for (const colon of oneIn(3, colons)) {
        const end = colon + text.slice(colon).search(/[,}\n]|$/);
        assertReads(text.slice(0, colon) + text.slice(end));
        assertReads(text.slice(0, end) + text.slice(colon));
        assertReads(`${text.slice(0, colon)}[[{a: !!x}]]${text.slice(end)}`);
      }
    });
  }
});

describe('Texts made to do harm', () => {
  it('as an alias bomb are refused quickly', () => {
    const levels = Array.from(
      { length: 12 },
      (_, i) => `l${i + 1}: &l${i + 1} [${Array(9).fill(`*l${i}`).join(', ')}]`,
    );
    const started = worked();
    const parsed = parseSpec(`tagwright: 1\nl0: &l0 [x]\n${levels.join('\n')}\n`);
    assertWorked(started, 2);
    assert.equal(parsed.model, undefined);
    assert.ok(parsed.issues.some((issue) => issue.code === 'yaml-syntax'));
  });

  it('as a file of ten million characters are refused without being read', () => {
    const started = worked();
    const parsed = parseSpec('a: b\n'.repeat(2_000_000));
    assertWorked(started, 2);
    assert.deepEqual(
      parsed.issues.map((issue) => issue.code),
      ['file-too-large'],
    );
  });

  const wild: readonly (readonly [string, string])[] = [
    ['an alias to itself', 'tagwright: 1\nshapes: &s {a: *s}\npieces: {t: {body: [a]}}'],
    ['a merge key', 'tagwright: 1\nshapes: {a: {<<: {rectangle: [1, 2]}}}\npieces: {t: {body: [a]}}'],
    [
      'names of JavaScript',
      'tagwright: 1\nshapes: {__proto__: {ellipse: 3}, constructor: {ellipse: 3}}\npieces: {t: {body: [toString, __proto__]}}',
    ],
    ['keys that are no text', 'tagwright: 1\n? [a, b]\n: 1\n? {c: d}\n: 2\n3: 4\npieces: {}'],
    ['a tag of another language', 'tagwright: !!js/function "x"\npieces: !!binary "aGk="'],
    ['a date and a set', 'tagwright: 2001-01-01\npieces: !!set {a, b}'],
    ['a document after another', 'tagwright: 1\n---\ntagwright: 1\n'],
    ['an unknown anchor', 'tagwright: 1\npieces: *nowhere'],
    ['half a surrogate', 'tagwright: 1\ntitle: "\ud83c"\npieces: {\udf31: {body: [a]}}'],
    ['a control character', 'tagwright: 1\ntitle: "\u0000\u0007"\npieces: {t: {body: [a]}}'],
    ['brackets by the thousand', `tagwright: 1\npieces: ${'['.repeat(2000)}`],
    ['braces by the thousand', `tagwright: 1\npieces: ${'{a: '.repeat(2000)}`],
    ['closed brackets by the thousand', `tagwright: 1\npieces: ${'['.repeat(1500)}${']'.repeat(1500)}`],
    ['shapes in shapes', `tagwright: 1\npieces: {t: {body: [${'{from: '.repeat(900)}a${'}'.repeat(900)}]}}`],
    [
      'shapes that lead on and on',
      `tagwright: 1\nshapes:\n  s0: {ellipse: 3}\n${Array.from({ length: 900 }, (_, i) => `  s${i + 1}: {from: s${i}}`)
        .reverse()
        .join('\n')}\npieces: {t: {body: [s900]}}`,
    ],
    ['open groups as keys of one another', `tagwright: 1\nshapes: ${'{'.repeat(600)}`],
    ['null everywhere', 'tagwright:\ntitle:\nunits:\nstock:\ntie:\nshapes:\npieces:\n'],
    ['lists for groups', 'tagwright: [1]\nstock: []\ntie: []\nshapes: []\npieces: []\n'],
    ['a key of ten thousand letters', `tagwright: 1\n${'k'.repeat(1000)}: 1\npieces: {t: {body: [a]}}`],
  ];
  for (const [what, text] of wild) {
    it(`with ${what} are read without an exception, and quickly`, () => {
      const started = worked();
      assertReads(text);
      assertWorked(started, 2);
    });
  }

  it('leave JavaScript’s own objects as they were', () => {
    parseSpec('tagwright: 1\nshapes: {__proto__: {polluted: 1}}\n__proto__: {polluted: 1}\npieces: {t: {body: [a]}}');
    assert.equal(({} as { polluted?: unknown }).polluted, undefined);
  });
});
