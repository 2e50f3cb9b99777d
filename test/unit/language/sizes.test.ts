import assert from 'node:assert/strict';
import { hintsOf } from '../../../src/language/hover/hints.ts';
import { lensesOf } from '../../../src/language/navigation/lenses.ts';
import { stateOf } from '../../../src/language/hover/tag-state.ts';
import { report } from '../support/engine.ts';
import { samples } from './marked.ts';

async function hintsIn(text: string): Promise<string[]> {
  const made = await report(text);
  assert.ok(made.tag, made.issues.map(({ message }) => message).join('\n'));
  return hintsOf(made, made.source).map(({ offset, text: hint }) => {
    const line = text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset);
    return `${line.trim()} «${hint}»`;
  });
}

describe('Sizes that follow from what is written', () => {
  it('stand behind the side that is given, in proportion', async () => {
    // An ellipse of 60 × 30 made 40 wide is 20 high, and made 40 high is 80 wide.
    const text = `tagwright: 1
tie: {twine: 3 mm}
shapes:
  a: {ellipse: [60 mm, 30 mm], width: 40 mm}
  b: {ellipse: [60 mm, 30 mm], height: 40 mm}
  c: {ellipse: [60 mm, 30 mm], width: 40 mm, height: 40 mm}
  d: {ellipse: [60 mm, 30 mm]}
  e: {around: d, by: 5 mm}
  f: {rectangle: [20 mm, 10 mm], fit: {in: d, margin: 0}}
pieces:
  t: {body: [d], hanger: {hole: {at: top}}}
  u: {body: [b], hanger: {hole: {at: top, diameter: 4 mm}}}
`;
    const hints = await hintsIn(text);
    assert.deepEqual(hints.slice(0, 3), [
      'a: {ellipse: [60 mm, 30 mm], width: 40 mm «× 20 mm»',
      'b: {ellipse: [60 mm, 30 mm], height: 40 mm «× 80 mm»',
      'e: {around: d, by: 5 mm «= 70.0 × 40.0 mm»',
    ]);
    // The largest 2 : 1 rectangle in an ellipse with the half axes 30 and 15 has the half sides 30/√2 and 15/√2.
    assert.equal(hints[3], 'f: {rectangle: [20 mm, 10 mm], fit: {in: d, margin: 0} «= 42.4 × 21.2 mm»');
    // Two strands of twine go through twice its diameter.
    assert.equal(hints[4], 't: {body: [d], hanger: {hole: {at: top} «opening 6 mm»');
    assert.equal(hints.length, 5);
  });

  it('are in the units of the spec', async () => {
    const text = 'tagwright: 1\nunits: in\nshapes:\n  a: {ellipse: [4, 2], width: 3}\npieces:\n  t: {body: [a]}\n';
    assert.deepEqual(await hintsIn(text), ['a: {ellipse: [4, 2], width: 3 «× 1.5 in»']);
  });

  it('go when their place in the text has gone', async () => {
    const text = 'tagwright: 1\nshapes:\n  a: {ellipse: [40, 20], width: 30}\npieces:\n  t: {body: [a]}\n';
    const made = await report(text);
    const later = await report(text.replace(', width: 30', ''));
    assert.deepEqual(hintsOf(made, later.source), []);
  });
});

describe('The line above a piece', () => {
  it('tells its finished size, its parts and its problems', async () => {
    const { text } = samples.find(({ title }) => title.startsWith('4'))!;
    const made = await report(text);
    const [back, letters] = lensesOf(made, made.source);
    assert.equal(text.slice(back!.range.start, back!.range.end), 'back');
    assert.match(back!.text, /^\d+\.\d × \d+\.\d mm · 1 part · no problems$/);
    // F, e, n, n, e, l.
    assert.match(letters!.text, /^80\.0 × \d+\.\d mm · 6 parts · /);
    assert.equal(letters!.size, letters!.text.split(' · ')[0]);
    const weak = samples.find(({ title }) => title.startsWith('7'))!;
    const bad = await report(weak.text);
    const errors = bad.issues.filter(({ severity }) => severity === 'error').length;
    assert.match(lensesOf(bad, bad.source)[0]!.text, new RegExp(` · ${errors} errors? · \\d+ warnings?$`));
  });

  it('names no problems of an earlier text where the present one has errors', async () => {
    const text = 'tagwright: 1\nshapes:\n  a: {ellipse: 30 mm}\npieces:\n  t: {body: [a]}\n';
    const now = await report(text.replace('30 mm', '3o mm'));
    const [lens] = lensesOf(await report(text), now.source, now.issues);
    assert.equal(lens!.text, '30.0 × 30.0 mm · 1 part · out of date: 1 error');
  });

  it('goes with its piece', async () => {
    const text = 'tagwright: 1\nshapes:\n  a: {ellipse: 30}\npieces:\n  t: {body: [a]}\n';
    const made = await report(text);
    assert.deepEqual(lensesOf(made, (await report(text.replace('  t:', '  u:'))).source), []);
  });
});

describe('The opening of a hanger', () => {
  it('is told behind it in its short form too', async () => {
    const hints = (hanger: string) =>
      hintsIn(
        `tagwright: 1\ntie: {twine: 2 mm}\npieces:\n  t:\n    body: [{rectangle: [60, 30]}]\n    hanger: ${hanger}\n`,
      );
    assert.deepEqual(await hints('{hole: {at: left}}'), ['hanger: {hole: {at: left} «opening 4 mm»']);
    assert.deepEqual(await hints('{hole: left}'), ['hanger: {hole: left «opening 4 mm»']);
    assert.deepEqual(await hints('{hole: {diameter: 5 mm}}'), []);
  });
});

describe('How a tag is', () => {
  it('is its size while all is well, and its problems once there are any', async () => {
    const well = await report('tagwright: 1\npieces:\n  t: {body: [{ellipse: [40, 30]}]}\n');
    assert.deepEqual(stateOf(well.issues, well.tag, false), {
      kind: 'ok',
      short: '40.0 × 30.0 mm',
      long: '40.0 × 30.0 mm, no problems',
    });
    const apart = await report('tagwright: 1\npieces:\n  t: {body: [{ellipse: 9}, {ellipse: 9, nudge: {up: 40}}]}\n');
    assert.deepEqual(stateOf(apart.issues, apart.tag, false), { kind: 'error', short: '1 problem', long: '1 error' });
    const two = await report('tagwright: 1\npieces:\n  t: {body: [{ellipse: 9}]}\n  u: {body: [{ellipse: 9}]}\n');
    assert.equal(stateOf(two.issues, two.tag, false).short, '2 pieces');
  });

  it('is out of date while the text cannot be made, and nothing before it ever could', async () => {
    const well = await report('tagwright: 1\npieces:\n  t: {body: [{ellipse: 9}]}\n');
    const broken = await report('tagwright: 1\npieces:\n  t: {body: [{elipse: 9}]}\n');
    assert.equal(stateOf(broken.issues, well.tag, true).short, 'Out of date');
    assert.equal(stateOf(broken.issues, { ...well.tag!, pieces: [] }, true).kind, 'error');
    assert.equal(stateOf(broken.issues, undefined, false).kind, 'error');
    assert.equal(stateOf([], undefined, false).kind, 'nothing');
    const checking = stateOf(well.issues, well.tag, false, 39);
    assert.equal(checking.short, 'Checking 39 more');
    assert.match(checking.long, /no problems; 39 other tags being checked/);
  });
});
