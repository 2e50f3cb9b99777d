import assert from 'node:assert/strict';
import { boundsOf } from '../../../src/geometry/measure.ts';
import type { Bounds } from '../../../src/geometry/types.ts';
import type { Report } from '../../../src/engine/engine.ts';
import { withEdits } from '../../../src/fixes/find-fixes.ts';
import { editsOf, gripsOf, type Grip } from '../../../src/scene/grips.ts';
import { pieceScales } from '../../../src/scene/piece-scale.ts';
import { report } from '../support/engine.ts';
import { samples } from '../support/samples.ts';

const others: Readonly<Record<string, string>> = {
  'a plate with a name that stays where it is': `
shapes:
  plate: {rectangle: [60, 24]}
  name: {text: Sorrel, width: 40}
pieces:
  tag: {body: [plate], engrave: [name], hanger: {hole: {at: left}}}`,
  'a plate with a name on it': `
shapes:
  plate: {rectangle: [60, 24]}
  name: {text: Sorrel, width: 40, place: {on: plate}}
pieces:
  tag: {body: [plate], engrave: [name]}`,
  'letters on a backing of their own': `
shapes:
  plate: {rectangle: [70, 24]}
  word: {text: Fennel, width: 50}
pieces:
  back: {body: [plate]}
  letters: {body: [word], parts: many, glue_to: back}`,
  'two tags that have nothing to do with each other': `
shapes:
  one: {rectangle: [30, 20]}
  two: {ellipse: [30, 20]}
pieces:
  a: {body: [one]}
  b: {body: [two]}`,
  'a body of two shapes, of which one carries the other': `
shapes:
  plate: {rectangle: [60, 24]}
  knob: {ellipse: [10, 10], place: {on: plate, at: top}}
pieces:
  tag: {body: [plate, knob]}`,
};

/** Boxes of all that is made of each set of glued pieces, from the lower left corner of the set's first piece. */
function laidOut({ tag }: Report): number[][] {
  const sets = new Map<string, Bounds[]>();
  for (const { id, glueTo, region, marks, sources, hangers } of tag!.pieces) {
    const set = glueTo ?? id;
    const holes = hangers.map(({ opening }) => ({ region: opening }));
    const all = [
      region,
      ...[...marks, ...holes, ...sources.filter(({ use }) => use === 'cut')].map((each) => each.region),
    ].map((each) => boundsOf(each)!);
    sets.set(set, [...(sets.get(set) ?? []), ...all]);
  }
  return [...sets.values()].map((all) => {
    const { minX: x, minY: y } = all[0]!;
    return all.flatMap(({ minX, minY, maxX, maxY }) => [minX - x, minY - y, maxX - x, maxY - y]);
  });
}

async function gripsOfText(text: string): Promise<{ made: Report; grips: Grip[] }> {
  const made = await report(text);
  assert.ok(made.tag && made.model, made.issues.map(({ message }) => message).join('\n'));
  const scales = pieceScales(made.tag, made.model);
  return { made, grips: gripsOf(made.model, made.source, (piece) => scales.get(piece) ?? 1) };
}

describe('Moving by hand', function () {
  this.timeout(180_000);

  it('is offered for what it makes a difference to, and for nothing else', async () => {
    const texts = [
      ...samples.map(({ name, text }) => [name, text] as const),
      ...Object.entries(others).map(([name, text]) => [name, `tagwright: 1\n${text.trimStart()}\n`] as const),
    ];
    const seen = { moves: 0, stays: 0 };
    for (const [name, text] of texts) {
      const { made, grips } = await gripsOfText(text);
      const before = laidOut(made);
      for (const grip of grips) {
        const edits = editsOf(grip, { kind: 'move', right: 0.7, up: 0.4 }, made.source, made.model!.units);
        const after = laidOut(await report(withEdits(text, edits!)));
        const furthest = Math.max(
          ...after.flatMap((set, nth) => set.map((at, which) => Math.abs(at - before[nth]![which]!))),
        );
        // What is sized as a whole is sized within a hair.
        if (grip.moves) assert.ok(furthest > 0.1, `${name}: ${grip.label} by ${furthest}`);
        else assert.ok(furthest < 0.02, `${name}: ${grip.label} by ${furthest}`);
        seen[grip.moves ? 'moves' : 'stays']++;
      }
    }
    assert.ok(seen.moves > 10 && seen.stays > 5, JSON.stringify(seen));
  });

  it('is not offered for the only body of a tag, nor begun by dragging it', async () => {
    const { grips } = await gripsOfText(`tagwright: 1\n${others['a plate with a name on it']!.trimStart()}\n`);
    assert.deepEqual(
      grips.map(({ label, moves, free }) => [label, moves, free]),
      [
        ['plate', false, false],
        ['name', true, true],
      ],
    );
  });
});
