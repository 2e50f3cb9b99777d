import assert from 'node:assert/strict';
import { fixAll } from '../../../src/fixes/fix-all.ts';
import { findFixes, withEdits } from '../../../src/fixes/find-fixes.ts';
import { area } from '../../../src/geometry/measure.ts';
import type { IssueCode } from '../../../src/core/issue-kinds.ts';
import { assertNear, newEngine, report, specOf } from '../support/engine.ts';
import { unionAreaByJts } from '../support/reference.ts';
import { disc } from '../support/shapes.ts';

const engine = newEngine();

/** The first fix of the one issue of that kind, and the spec that it makes. */
async function fixOf(spec: string, code: IssueCode) {
  const made = await report(spec, engine);
  const [issue, ...more] = made.issues.filter((each) => each.code === code);
  assert.ok(issue && more.length === 0, made.issues.map(({ message }) => message).join('\n'));
  const [fix] = await findFixes(engine, made, issue, { locate: () => undefined });
  return { issue, fix, text: fix && withEdits(spec, fix.edits) };
}

describe('Letters that another shape of their body covers', () => {
  const named = (more: string, text = 'Melissa') => [
    `name: {text: ${text}, font: Pacifico, width: 90, overlap: 0.6, grow: 0.3}`,
    more,
  ];

  it('are cleared by moving it off them, no further than they need', async () => {
    const spec = specOf(
      named('heart: {heart: 22, place: {right_of: name}, nudge: {left: 9}}'),
      'body: [name, heart], hanger: {ring: {on: name, at: left}}',
    );
    const { issue, fix, text } = await fixOf(spec, 'hard-to-read');
    assert.match(issue.message, /“heart” covers/);
    assert.match(fix!.title, /^Move “heart” off the letters: 1 mm right/);
    const { issues } = await report(text!, engine);
    assert.deepEqual(
      issues.filter(({ code }) => ['hard-to-read', 'loose-part', 'weak-bridge'].includes(code)),
      [],
    );
  });

  it('are cleared of a stick that goes in less deep, or is narrower', async () => {
    const cases = [
      ['width: 34, overlap: 0.6, grow: 0.3', 'towards: right, width: 8, lap: 8'],
      ['width: 50, overlap: 0.6, grow: 0.7', 'towards: up, width: 4, lap: 8'],
    ] as const;
    const titles = await Promise.all(
      cases.map(async ([name, stick]) => {
        const shapes = [
          `name: {text: Fennel, font: Pacifico, ${name}}`,
          `sign: {stick: {carries: name, length: 50, ${stick}}}`,
        ];
        return (await fixOf(specOf(shapes, 'body: [name, sign]'), 'hard-to-read')).fix?.title;
      }),
    );
    assert.match(titles[0]!, /^Let “sign” end less far inside: lap \d/);
    assert.match(titles[1]!, /^Make “sign” narrower: width \d/);
  });

  it('have no such fix where a tail goes through whatever lies below', async () => {
    const spec = specOf(
      named('bar: {rectangle: [84, 12], place: {on: name, at: bottom}, nudge: {up: 6}}', 'Borage'),
      'body: [name, bar], hanger: {ring: {on: name, at: left}}',
    );
    const { issue, fix } = await fixOf(spec, 'hard-to-read');
    assert.match(issue.message, /“bar” covers .*“g”/);
    assert.doesNotMatch(fix?.title ?? '', /bar/);
  });
});

describe('A cut name on something solid', () => {
  const name = (text: string, width: number, more = '') =>
    `name: {text: ${text}, font: Pacifico, width: ${width}, overlap: auto, grow: auto, place: {on: big}${more}}`;
  const cases = [
    [
      'a large initial',
      ['big: {text: S, font: Alfa Slab One, height: 70}', name('Sabine', 70)],
      'body: [big, name], hanger: {ring: top}',
    ],
    ['a plate', ['big: {heart: 70}', name('Sabine', 50)], 'body: [name, big], hanger: {hole: top}'],
    [
      'a plate with a border',
      ['big: {heart: 70}', 'edge: {border: big}', name('Sabine', 40)],
      'body: [name, big], engrave: edge, hanger: {hole: top}',
    ],
  ] as const;
  for (const [what, shapes, piece] of cases) {
    it(`is engraved there, or cut as a layer of its own: ${what}`, async () => {
      const spec = specOf(shapes, piece);
      const { issue, fix, text } = await fixOf(spec, 'hard-to-read');
      assert.equal(issue.severity, 'warning');
      assert.match(issue.message, /\. Engraved there, or cut as a layer of its own and glued on, it would be seen\.$/);
      assert.match(
        fix!.title,
        /^(Engrave “name” on “big”: engrave |Cut “name” as a layer of its own and glue it on: glue_to tag)/,
      );
      assert.equal(fix!.isChoice, true);
      const made = await report(text!, engine);
      assert.deepEqual(made.issues, []);
      const on = made.tag!.pieces.map(({ id, marks }) => [id, marks.length]);
      const glued = [
        ['tag', 0],
        ['letters', 0],
      ];
      assert.deepEqual(on, fix!.title.startsWith('Cut') ? glued : [['tag', what.endsWith('border') ? 2 : 1]]);
    });
  }

  it('is not made so unasked', async () => {
    const spec = specOf(cases[0][1], cases[0][2]);
    const { made } = await fixAll(engine, spec, { locate: () => undefined });
    assert.deepEqual(made, []);
  });

  it('stays where it carries the hanger', async () => {
    const spec = specOf(cases[0][1], 'body: [big, name], hanger: {ring: {on: name, at: left}}');
    const { fix } = await fixOf(spec, 'hard-to-read');
    assert.doesNotMatch(fix?.title ?? '', /Engrave|glue/);
  });
});

describe('A speck between shapes', () => {
  const discs = [
    'a: {circle: 20}',
    'b: {circle: 20, nudge: {right: 17.6}}',
    'c: {circle: 20, nudge: {right: 8.8, up: 15}}',
    'd: {circle: 8, nudge: {right: 8.8, up: 24}}',
  ];

  for (const [style, body] of [
    ['a list in one line', 'body: [a, b, d, c], hanger: {ring: top}'],
    ['a list of lines', 'body:\n      - a\n      - d\n      - b\n      - c\n    hanger: {ring: top}'],
  ] as const) {
    it(`is filled by uniting them in ${style}, and nothing else changes`, async () => {
      const spec = style === 'a list in one line' ? specOf(discs, body) : blockSpec(discs, body);
      const { issue, fix, text } = await fixOf(spec, 'speck');
      assert.match(issue.message, /It lies between “a”, “b” and “c”/);
      assert.match(fix!.title, /^Unite “a”, “b” and “c” without the specks between them: tidy 0\.\d+ mm/);
      const [before, after] = [await report(spec, engine), await report(text!, engine)];
      assert.deepEqual(after.issues, []);
      const bodies = [before, after].map(({ tag }) => tag!.pieces[0]!.body);
      assert.equal(bodies[1]!.length, 1, 'no hole is left');
      // Discs by jsts, with the hole between them: less than the square round it.
      const drawn = unionAreaByJts([[disc(0, 0, 10)], [disc(17.6, 0, 10)], [disc(8.8, 15, 10)], [disc(8.8, 24, 4)]]);
      assertNear(area(bodies[0]!), drawn, 0.05);
      assert.ok(area(bodies[1]!) > area(bodies[0]!) && area(bodies[1]!) < area(bodies[0]!) + issue.width! ** 2);
    });
  }
});

function blockSpec(shapes: readonly string[], piece: string): string {
  return `tagwright: 1\nshapes:\n${shapes.map((shape) => `  ${shape}\n`).join('')}pieces:\n  tag:\n    ${piece}\n`;
}
