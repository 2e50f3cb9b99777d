import assert from 'node:assert/strict';
import type { Severities } from '../../../src/engine/severity.ts';
import { acceptComments } from '../../../src/spec/accept-comments.ts';
import { newEngine, placeOf } from '../support/engine.ts';

const engine = newEngine();

function report(text: string, severities: Severities = {}) {
  return engine.compute(text, { locate: () => undefined, severities });
}

/** Two discs of 20 mm, 16 mm apart: a neck of 12 mm (exact), where 13 mm are wanted. */
function weak(shape = '', line = ''): string {
  return `tagwright: 1
stock: {min_web: 13 mm}
shapes:
  a: {ellipse: 20}
${line}  b: {ellipse: 20, nudge: {right: 16}}${shape}
pieces:
  tag: {body: [a, b]}
`;
}

function append(lines: string[], index: number, text: string): void {
  lines[index] = `${lines[index]!}${text}`;
}

const codesOf = async (text: string, severities?: Severities) =>
  (await report(text, severities)).issues.map(({ code, severity }) => `${code} ${severity}`);

/** On which line the neck is reported, so that the tests below accept it there. */
async function weakLine(): Promise<number> {
  const found = await report(weak());
  return placeOf(found, found.issues[0]!).line;
}

describe('Accepting a finding', () => {
  it('still knows the names that codes had in the version before, and says the new ones', async () => {
    const spec = `tagwright: 1
sheet: {size: [30 mm, 30 mm]}
shapes: {plate: {rectangle: [60 mm, 20 mm]}}
pieces:
  tag: {body: [plate]}
`;
    const found = await report(spec);
    assert.deepEqual(await codesOf(spec), ['exceeds-sheet error']);
    const { line } = placeOf(found, found.issues[0]!);
    const lines = spec.split('\n');
    append(lines, line - 1, '   # accept too-large: cut on the large bed');
    const accepted = await report(lines.join('\n'));
    assert.deepEqual(
      accepted.accepted.map(({ code }) => code),
      ['exceeds-sheet'],
    );
    assert.deepEqual(
      accepted.issues.map(({ code, message, suggestions }) => [code, message, suggestions]),
      [['odd-comment', '“too-large” is now called “exceeds-sheet”.', ['exceeds-sheet']]],
    );
  });

  it('takes a comment on its line with a reason, which is kept', async () => {
    const line = await weakLine();
    const lines = weak().split('\n');
    append(lines, line - 1, '   # accept weak-bridge: it is glued on a board');
    const { issues, accepted } = await report(lines.join('\n'));
    assert.deepEqual(issues, []);
    assert.deepEqual(
      accepted.map(({ code, reason }) => [code, reason]),
      [['weak-bridge', 'it is glued on a board']],
    );
  });

  it('takes a comment on the line before as well, blank lines and other comments between', async () => {
    const line = await weakLine();
    const lines = weak().split('\n');
    lines.splice(line - 1, 0, '  # accept weak-bridge: for the window only', '', '  # of the seed library');
    assert.deepEqual((await report(lines.join('\n'))).issues, []);
  });

  it('speaks of one line and of the codes it names', async () => {
    const line = await weakLine();
    const other = weak().split('\n');
    append(other, line === 4 ? 4 : 3, ' # accept weak-bridge: wrong line');
    assert.deepEqual(
      await codesOf(other.join('\n')),
      line === 4 ? ['weak-bridge warning', 'odd-comment info'] : ['odd-comment info', 'weak-bridge warning'],
    );
    const wrong = weak().split('\n');
    append(wrong, line - 1, ' # accept thin-stroke: another fault');
    assert.deepEqual((await codesOf(wrong.join('\n'))).sort(), ['odd-comment info', 'weak-bridge warning']);
    const both = weak().split('\n');
    append(both, line - 1, ' # accept thin-stroke, weak-bridge: both');
    assert.deepEqual(await codesOf(both.join('\n')), ['odd-comment info']);
  });

  it('wants a reason, a code, and one that exists', async () => {
    const line = await weakLine();
    for (const [comment, at, suggestion] of [
      ['# accept weak-bridge', '# accept weak-bridge', undefined],
      ['# accept weak-bridge:  ', '# accept weak-bridge:  '.trimEnd(), undefined],
      ['# accept: all of it', '# accept: all of it', undefined],
      ['# accept weak-brigde: a slip', 'weak-brigde', 'weak-bridge'],
      ['# accept unknown-key: never', 'unknown-key', undefined],
    ] as const) {
      const lines = weak().split('\n');
      append(lines, line - 1, ` ${comment}`);
      const found = await report(lines.join('\n'));
      assert.ok(
        found.issues.some(({ code }) => code === 'weak-bridge'),
        `${comment} accepts nothing`,
      );
      const odd = found.issues.find(({ code }) => code === 'odd-comment');
      assert.ok(odd, comment);
      assert.equal(placeOf(found, odd).text.trimEnd(), at);
      assert.deepEqual(odd.suggestions?.[0], suggestion);
    }
  });

  it('is told to be idle once nothing is there to accept, and not while the tag cannot be made', async () => {
    const idle = weak()
      .replace('13 mm', '2 mm')
      .replace('a: {ellipse: 20}', 'a: {ellipse: 20} # accept weak-bridge: why not');
    assert.deepEqual(await codesOf(idle), ['odd-comment info']);
    assert.ok(!(await codesOf(idle.replace('right: 16', 'rihgt: 16'))).includes('odd-comment info'));
  });

  it('is not asked for by a # in a text', () => {
    const text = 'a: {text: "# accept weak-bridge: no"}\nb: "x # accept speck: no"\nc: |\n  # accept speck: no\n';
    assert.deepEqual(acceptComments(text), []);
  });

  it('finds the comments where they stand, whatever the line ends and the style', () => {
    for (const end of ['\n', '\r\n']) {
      const text = [
        'a: [1, # accept speck: one',
        '  2]',
        '# accept gap-closes, speck: two',
        '',
        'b: &x {c: 1} # accept speck',
        '---',
        '? d',
        ': e # accept speck: four',
        '',
      ].join(end);
      const found = acceptComments(text);
      assert.deepEqual(
        found.map(({ range, codes, reason }) => [
          text.slice(range.start, range.end),
          codes.map(({ range: at }) => text.slice(at.start, at.end)),
          reason,
        ]),
        [
          ['# accept speck: one', ['speck'], 'one'],
          ['# accept gap-closes, speck: two', ['gap-closes', 'speck'], 'two'],
          ['# accept speck', ['speck'], ''],
          ['# accept speck: four', ['speck'], 'four'],
        ],
      );
      assert.equal(text.slice(found[1]!.line, found[1]!.line + 1), 'b');
    }
  });
});

describe('Severities', () => {
  it('raise, lower and silence a kind of finding', async () => {
    assert.deepEqual(await codesOf(weak()), ['weak-bridge warning']);
    assert.deepEqual(await codesOf(weak(), { 'weak-bridge': 'error' }), ['weak-bridge error']);
    assert.deepEqual(await codesOf(weak(), { 'weak-bridge': 'info' }), ['weak-bridge info']);
    assert.deepEqual(await codesOf(weak(), { 'weak-bridge': 'off' }), []);
    assert.deepEqual(await codesOf(weak(), { 'thin-stroke': 'off' }), ['weak-bridge warning']);
  });

  it('make light of a kind, not of its graver form', async () => {
    const open =
      'tagwright: 1\nshapes: {a: {rectangle: [40, 20]}}\npieces: {t: {body: [a], hanger: {hole: {at: {up: 10}}}}}\n';
    assert.deepEqual(await codesOf(open), ['hole-near-edge error']);
    for (const level of ['warning', 'info', 'off'] as const) {
      assert.deepEqual(await codesOf(open, { 'hole-near-edge': level }), ['hole-near-edge error']);
    }
  });

  it('cannot hide what the tag would be cut without', async () => {
    const unknown = weak().replace(
      'a: {ellipse: 20}',
      'a: {text: Sage, font: Nowhere, width: 20} # accept unknown-font: it is at the bench',
    );
    assert.ok((await codesOf(unknown, { 'unknown-font': 'off' })).includes('unknown-font error'));
  });

  it('cannot hide why there is no tag', async () => {
    const broken = weak().replace('right: 16', 'rihgt: 16');
    assert.deepEqual(await codesOf(broken, { 'unknown-key': 'off' }), ['unknown-key error']);
    assert.deepEqual(await codesOf(broken, { 'unknown-key': 'warning' }), ['unknown-key warning']);
  });
});
