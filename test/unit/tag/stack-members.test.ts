import assert from 'node:assert/strict';
import { boundsOf } from '../../../src/geometry/measure.ts';
import { assertNear, make, newEngine, report } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';

/** Exact: abutted without a lap, the whole is 40 high, so its cap reaches from 10 to 20 and its plate from −20 to 10. */
const stacked = [
  'cap: {rectangle: [20, 10]}',
  'plate: {rectangle: [60, 30]}',
  'whole: {stack: {shapes: [cap, plate], lap: 0}}',
];

function spec(shapes: readonly string[], pieces: readonly string[]): string {
  const below = (lines: readonly string[]) => lines.map((line) => `  ${line}`);
  return ['tagwright: 1', 'shapes:', ...below(shapes), 'pieces:', ...below(pieces), ''].join('\n');
}

const holeOf = ({ pieces }: Made) => pieces[0]!.hangers[0]!.centre;

function middleOfMark({ pieces }: Made) {
  const box = boundsOf(pieces[0]!.marks[0]!.region)!;
  return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2, width: box.maxX - box.minX };
}

describe('A hanger on a member of a stack', () => {
  const hole = 'hanger: {hole: {on: cap, at: {up: 0}, diameter: 3}}';

  it('is on the member where the stack has put it', async () => {
    const made = await make(spec(stacked, [`tag: {body: [whole], ${hole}}`]));
    assertNear(holeOf(made).x, 0, 1e-6);
    assertNear(holeOf(made).y, 15, 1e-6);
  });

  it('goes along with a stack that is turned, moved, combined, copied or a member itself', async () => {
    for (const [more, body, x, y] of [
      [['moved: {from: whole, rotate: 90, nudge: {right: 7}}'], 'moved', 22, 0],
      [['dot: {ellipse: 4}', 'both: {union: [whole, dot], nudge: {up: 3}}'], 'both', 0, 18],
      [['dot: {ellipse: 4}', 'holed: {difference: [whole, dot]}'], 'holed', 0, 15],
      // Exact: below a bar of 8, the whole ends 4 higher and its middle is 4 lower than the bar’s stack.
      [['bar: {rectangle: [30, 8]}', 'more: {stack: {shapes: [bar, whole], lap: 0}}'], 'more', 0, 11],
      [['big: {from: whole, width: 120}'], 'big', 0, 30],
    ] as const) {
      const made = await make(spec([...stacked, ...more], [`tag: {body: [${body}], ${hole}}`]));
      assertNear(holeOf(made).x, x, 1e-6, body);
      assertNear(holeOf(made).y, y, 1e-6, body);
    }
  });

  it('is found in a stack that is written in the body', async () => {
    const made = await make(
      spec(stacked.slice(0, 2), [`tag: {body: [{stack: {shapes: [cap, plate], lap: 0}}], ${hole}}`]),
    );
    assertNear(holeOf(made).y, 15, 1e-6);
  });

  it('is scaled with a piece that has a size', async () => {
    const made = await make(spec(stacked, [`tag: {body: [whole], width: 120, ${hole}}`]));
    assertNear(holeOf(made).y, 30, 0.01);
  });

  it('is on the shape by itself where that is a body too, or where the body has no such stack', async () => {
    for (const body of ['whole, cap', 'plate']) {
      const made = await make(spec(stacked, [`tag: {body: [${body}], ${hole}}`]));
      assertNear(holeOf(made).y, 0, 1e-6, body);
    }
  });

  it('may be defined once for pieces with different stacks', async () => {
    const made = await make(
      [
        'tagwright: 1',
        'shapes:',
        ...stacked.map((line) => `  ${line}`),
        '  other: {stack: {shapes: [plate, cap], lap: 0}}',
        'hangers: {hung: {hole: {on: cap, at: {up: 0}}}}',
        'pieces:',
        '  one: {body: [whole], hanger: hung}',
        '  two: {body: [other], hanger: hung}',
        '',
      ].join('\n'),
    );
    assert.deepEqual(
      made.pieces.map(({ hangers }) => Math.round(hangers[0]!.centre.y)),
      [15, -15],
    );
  });

  it('is a problem where the body has two such stacks', async () => {
    const shapes = [...stacked, 'other: {stack: {shapes: [plate, cap]}}'];
    const { issues, source } = await report(spec(shapes, [`tag: {body: [whole, other], ${hole}}`]));
    assert.deepEqual(
      issues.map(({ code, severity }) => `${code} ${severity}`),
      ['bad-value error'],
    );
    assert.match(issues[0]!.message, /“cap” is a member of more than one stack in this body.*“cap2: \{from: cap\}”/);
    assert.match(source.text.slice(issues[0]!.range.start), /^\{hole/);
  });
});

describe('A shape placed on, or fitted into, a member of a stack', () => {
  it('goes to the member where the stack has put it, as with “part”', async () => {
    for (const place of ['place: {on: cap}', 'place: {on: whole, part: cap}']) {
      const made = await make(
        spec([...stacked, `dot: {ellipse: 4, ${place}}`], ['tag: {body: [whole], engrave: [dot]}']),
      );
      assertNear(middleOfMark(made).y, 15, 1e-6, place);
    }
    for (const fit of ['fit: {in: cap, margin: 1}', 'fit: {in: whole, part: cap, margin: 1}']) {
      const made = await make(
        spec([...stacked, `dot: {ellipse: 4, ${fit}}`], ['tag: {body: [whole], engrave: [dot]}']),
      );
      assertNear(middleOfMark(made).y, 15, 1e-6, fit);
      assertNear(middleOfMark(made).width, 8, 0.01, fit);
    }
  });

  it('whatever the order of the text, and in a stack written in the body', async () => {
    const [cap, plate, whole] = stacked as [string, string, string];
    const dot = 'dot: {ellipse: 4, place: {on: cap}}';
    for (const [shapes, body] of [
      [[dot, whole, plate, cap], 'whole'],
      [[dot, plate, cap], '{stack: {shapes: [cap, plate], lap: 0}}'],
    ] as const) {
      const made = await make(spec(shapes, [`tag: {body: [${body}], engrave: [dot]}`]));
      assertNear(middleOfMark(made).y, 15, 1e-6);
    }
  });

  it('is found in a used file', async () => {
    const engine = newEngine({ 'house.yaml': spec(stacked, []).replace('pieces:\n', '') });
    const text = 'tagwright: 1\nuse: [house.yaml]\nshapes:\n  dot: {ellipse: 4, place: {on: cap}}\n';
    const made = await make(`${text}pieces:\n  tag: {body: [whole], engrave: [dot]}\n`, engine);
    assertNear(middleOfMark(made).y, 15, 1e-6);
  });

  it('stays on the shape by itself where that is a body too', async () => {
    const made = await make(
      spec(
        [...stacked, 'dot: {ellipse: 4, place: {on: plate}}'],
        ['tag: {body: [plate], engrave: [dot]}', 'other: {body: [whole]}'],
      ),
    );
    assertNear(middleOfMark(made).y, 0, 1e-6);
  });

  it('stays on the shape by itself where the stack is made from what is placed', async () => {
    // Placed on the cap by itself, at its right: 4 wide, so its middle is at 10 − 2.
    const shapes = [
      'cap: {rectangle: [20, 10]}',
      'dot: {ellipse: 4, place: {on: cap, at: right}}',
      'plate: {union: [{rectangle: [60, 30]}, dot]}',
      'whole: {stack: {shapes: [cap, plate], lap: 0}}',
    ];
    const made = await make(spec(shapes, ['tag: {body: [whole], engrave: [dot]}']));
    assertNear(middleOfMark(made).x, 8, 1e-6);
    assertNear(middleOfMark(made).y, 0, 1e-6);
  });

  it('is a problem at the name where two stacks have it, which “part” solves', async () => {
    const shapes = (place: string) => [
      ...stacked,
      'other: {stack: {shapes: [plate, cap], lap: 0}}',
      `dot: {ellipse: 4, ${place}}`,
    ];
    const { issues, source } = await report(spec(shapes('place: {on: cap}'), ['tag: {body: [whole], engrave: [dot]}']));
    assert.equal(issues.length, 1);
    const [{ code, message, range }] = issues as [(typeof issues)[number]];
    assert.equal(code, 'bad-value');
    assert.equal(
      message,
      '“cap” is a member of more than one stack: “whole” and “other”. Say where: {on: whole, part: cap}.',
    );
    assert.equal(source.text.slice(range.start, range.end), 'cap');
    const made = await make(spec(shapes('place: {on: other, part: cap}'), ['tag: {body: [other], engrave: [dot]}']));
    assertNear(middleOfMark(made).y, -15, 1e-6);
  });
});
