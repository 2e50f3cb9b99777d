import assert from 'node:assert/strict';
import type { ComputeOptions } from '../../../src/engine/engine.ts';
import { findFixes, withEdits } from '../../../src/fixes/find-fixes.ts';
import { wholeShapesOf } from '../../../src/tag/whole-shapes.ts';
import { area } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import { newEngine } from '../support/engine.ts';
import { unionAreaByJts } from '../support/reference.ts';

const engine = newEngine();
const options: ComputeOptions = { locate: () => undefined };

const spec = (shapes: string, body: string, at = 'left'): string =>
  `tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}\ntie: {twine: 1.5 mm}\nshapes:\n${shapes}pieces:\n  tag: {body: [${body}], hanger: {ring: {at: ${at}}}}\n`;

const withHeart = (gap: string): string =>
  spec(
    `  name: {text: Wilmette, font: Pacifico, x_height: 11 mm, overlap: auto}\n  heart: {heart: 16 mm, place: {right_of: name, gap: ${gap}}}\n`,
    'name, heart',
  );

async function loose(text: string) {
  const report = await engine.compute(text, options);
  const issue = report.issues.find(({ code }) => code === 'loose-part');
  return { report, issue, fixes: issue ? await findFixes(engine, report, issue, options) : [] };
}

describe('A shape that lies apart from the rest of its piece', () => {
  it('is named, and moved until it holds', async () => {
    const { report, issue, fixes } = await loose(withHeart('4 mm'));
    assert.match(
      issue!.message,
      /^“heart” of “tag” \(16\.0 × \d+\.\d mm, .*\) is joined to nothing and falls out\. Move it until it overlaps the rest, or keep it apart with “parts: many”\.$/,
    );
    assert.match(fixes[0]!.title, /^Move “heart” until it joins the rest: .*\d mm left \(2 parts → 1/);
    const after = await engine.compute(withEdits(report.source.text, fixes[0]!.edits), options);
    assert.ok(!after.issues.some(({ code }) => code === 'loose-part' || code === 'weak-bridge'));
    const { region, sources } = after.tag!.pieces[0]!;
    assert.equal(partsOf(region).length, 1);
    // What the two have in common, by jsts: a joint, and no more than a corner of the heart.
    const [name, heart] = sources.map((source) => source.region);
    const shared = unionAreaByJts([name!]) + unionAreaByJts([heart!]) - unionAreaByJts([name!, heart!]);
    assert.ok(shared > 0.3 && shared < 0.25 * unionAreaByJts([heart!]), `${shared} mm² in common`);
  });

  it('is called by its letters if it has any, and the one that hangs stays', async () => {
    const { issue, fixes } = await loose(
      spec(
        '  a: {text: J, font: Alfa Slab One, height: 30 mm}\n  b: {text: M, font: Alfa Slab One, height: 30 mm, place: {right_of: a, gap: 2 mm}}\n',
        'a, b',
      ),
    );
    assert.match(issue!.message, /^The “M” of “tag”/);
    assert.match(fixes[0]!.title, /^Move “b” until it joins the rest/);
  });

  it('is joined to the frame that it stands in by straps, where it is', async () => {
    const shapes = `  outer: {rectangle: [60 mm, 60 mm], radius: 7 mm}
  rim: {difference: [outer, {from: outer, grow: -5 mm}]}
  letter: {text: E, font: Alfa Slab One, height: 36 mm, place: outer}
`;
    const { report, fixes } = await loose(spec(shapes, 'rim, letter', 'top'));
    assert.equal(fixes[0]!.title.split(':')[0], 'Join “rim” and “letter” with straps');
    // What is seen of it is a corner, on the outline.
    const accented = await loose(spec(shapes.replace('E,', 'É, straps: 3 mm,'), 'rim, letter', 'top'));
    assert.match(accented.fixes[0]!.title, /with straps: 3 mm wide, at the left and the right/);
    const after = await engine.compute(withEdits(report.source.text, fixes[0]!.edits), options);
    assert.deepEqual(
      after.issues.filter(({ severity }) => severity !== 'info'),
      [],
    );
    const { region } = after.tag!.pieces[0]!;
    assert.equal(partsOf(region).length, 1);
    // A strap at either side, and what was there before.
    const added = area(region) - area(report.tag!.pieces[0]!.region);
    assert.ok(added > 2 * 3 * 8 && added < 2 * 3.5 * 16, `${added} mm²`);
  });

  it('is told from a part of a shape', async () => {
    const { report } = await loose(
      spec(
        '  name: {text: Fern, font: Nunito, weight: 800, x_height: 11 mm}\n  dot: {ellipse: 4 mm, place: {above: name}}\n',
        'name, dot',
      ),
    );
    const piece = report.tag!.pieces[0]!;
    const whole = partsOf(piece.region).map((part) => wholeShapesOf(part, piece).map(({ shape }) => shape.name));
    assert.deepEqual(
      whole.filter((names) => names.length > 0),
      [['dot']],
    );
    const { issue } = await loose(spec('  name: {text: Fern, font: Nunito, x_height: 11 mm}\n', 'name'));
    assert.doesNotMatch(issue!.message, /Move it/);
  });
});
