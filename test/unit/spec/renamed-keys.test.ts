import assert from 'node:assert/strict';
import { fixAll } from '../../../src/fixes/fix-all.ts';
import { newEngine, placeOf, report } from '../support/engine.ts';

const engine = newEngine();

/** What has a new name, as it was written before and as it is now. */
const old = `tagwright: 1
machine: {cut: 12 mm/s, engrave: 200 mm/s, corner: 4 mm/s, interval: 0.2 mm}
shapes:
  plate: {label: {size: [86 mm, 34 mm], cut: 10 mm}}
  dot: {ellipse: 5 mm}
pieces:
  tag:
    body: [plate]
    engrave: [dot]
    hanger:
      - ring:
          opening: 4 mm   # the twine is thick
      - hole: {at: right, opening: 4.5 mm}
  ribboned: {body: [plate], cut: [dot], hanger: {slot: {at: left, opening: 3.5 mm}}}
`;
const now = old
  .replace('corner:', 'corner_jump:')
  .replace('interval:', 'hatch:')
  .replace('cut: 10 mm', 'clip: 10 mm')
  .replace('opening: 4 mm', 'diameter: 4 mm')
  .replace('opening: 4.5', 'diameter: 4.5')
  .replace('opening: 3.5', 'width: 3.5');

describe('A key that has a new name', () => {
  it('is read under the old one as under the new: the tag is the same', async () => {
    const [before, after] = [await report(old, engine), await report(now, engine)];
    assert.deepEqual(after.issues, []);
    assert.ok(after.tag);
    assert.deepEqual(
      before.tag!.pieces.map(({ region }) => region),
      after.tag.pieces.map(({ region }) => region),
    );
    assert.deepEqual(before.tag!.machine, after.tag.machine);
  });

  it('is named once for each place, at the key itself', async () => {
    const made = await report(old, engine);
    assert.deepEqual(
      made.issues.map((issue) => [issue.code, issue.severity, placeOf(made, issue).text, placeOf(made, issue).line]),
      [
        ['renamed-key', 'info', 'corner', 2],
        ['renamed-key', 'info', 'interval', 2],
        ['renamed-key', 'info', 'cut', 4],
        ['renamed-key', 'info', 'opening', 12],
        ['renamed-key', 'info', 'opening', 13],
        ['renamed-key', 'info', 'opening', 14],
      ],
    );
  });

  it('is given its new name by a fix that changes nothing else', async () => {
    const { text, left } = await fixAll(engine, old, { locate: () => undefined });
    assert.equal(text, now);
    assert.deepEqual(left, []);
  });

  it('is unknown beside its new one, since one of the two would not count', async () => {
    const both = now
      .replace('diameter: 4 mm', 'diameter: 4 mm, opening: 5 mm')
      .replace('          diameter: 4 mm, ', '          diameter: 4 mm\n          ');
    const made = await report(both, engine);
    assert.deepEqual(
      made.issues.map(({ code }) => code),
      ['unknown-key'],
    );
  });

  it('is read where a shape is written in place, too', async () => {
    const made = await report(
      `tagwright: 1
pieces:
  tag: {body: [{label: {size: [86 mm, 34 mm], cut: 10 mm}}]}
`,
      engine,
    );
    assert.ok(made.tag);
    assert.deepEqual(
      made.issues.map((issue) => [issue.code, placeOf(made, issue).text]),
      [['renamed-key', 'cut']],
    );
  });

  it('leaves what ties, machines and shapes of those names have alone', async () => {
    const made = await report(
      `tagwright: 1
tie: ring
ties:
  ring: {twine: 2 mm, opening: 3.5 mm}
shapes:
  hole: {ellipse: 5 mm}
  plate: {rectangle: [60 mm, 30 mm]}
pieces:
  slot: {body: [plate], cut: [hole], hanger: {hole: {at: left}}}
`,
      engine,
    );
    assert.deepEqual(made.issues, []);
    assert.equal(made.tag!.pieces[0]!.hangers[0]!.openingSize, 3.5);
  });

  it('leaves the cuts of a piece called “label” alone, and the words of a shape', async () => {
    const made = await report(
      `tagwright: 1
shapes:
  plate: {rectangle: [60 mm, 30 mm]}
  dot: {ellipse: 5 mm}
pieces:
  label: {body: [plate], cut: [dot]}
  ring: {body: [plate]}
`,
      engine,
    );
    assert.deepEqual(made.issues, []);
    assert.equal(made.tag!.pieces[0]!.region.length, 2);
  });
});
