import assert from 'node:assert/strict';
import { approvalText, approvedTag } from '../../../src/tag/approval/approval-text.ts';
import { labelOf } from '../../../src/spec/batch/batch.ts';
import type { Issue } from '../../../src/core/issue.ts';
import { jobPages } from '../../../src/export/bench/job-sheet.ts';
import { jobOf } from '../../../src/export/job/job.ts';
import { newEngine, report } from '../support/engine.ts';
import { tools } from '../support/tools.ts';

const file = 'plate.approved.json';

const spec = (shapes: string, piece: string, head = ''): string => `tagwright: 1
approved: ${file}
${head}stock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm, min_web: 1.5 mm}
shapes:
  ${shapes}
pieces:
  tag: {${piece}}
`;
const plate = (width = 60, height = 30): string => `plate: {rectangle: [${width} mm, ${height} mm]}`;
/** A hole of 6 mm that lies to the right of the middle by so much. */
const holed = (x: number): string =>
  spec(`${plate()}\n  dot: {ellipse: 6 mm, nudge: {right: ${x} mm}}`, 'body: [plate], cut: [dot]');

/** The record of all tags of a spec, as they are now. */
async function recordOf(text: string, rows = 1, note = ''): Promise<string> {
  const engine = newEngine({ [file]: '' });
  const tags = [];
  for (let row = 0; row < rows; row++) {
    const made = await engine.compute(text, { row, locate: (relative) => `/specs/${relative}` });
    tags.push(approvedTag(made.tag!, labelOf(made)));
  }
  return approvalText({ on: '2026-03-14', note, tags });
}

async function issuesOf(text: string, record: string, row = 0): Promise<readonly Issue[]> {
  const engine = newEngine({ [file]: record });
  const { issues } = await engine.compute(text, { row, locate: (relative) => `/specs/${relative}` });
  return issues.filter(({ code }) => code === 'not-as-approved' || code === 'bad-file');
}

/** What is said of a spec whose record was made of another. */
async function saidOf(text: string, approved: string): Promise<string[]> {
  return (await issuesOf(text, await recordOf(approved))).map(({ message }) => message);
}

describe('A tag that a customer approved', () => {
  it('is left in peace while it looks the same, wherever it lies and however it is cut', async () => {
    const named = spec(
      `${plate()}\n  name: {text: Zoë, font: Nunito, weight: 800, x_height: 7 mm, place: {on: plate}}`,
      'body: [plate], engrave: [name], hanger: {hole: {at: left, diameter: 4 mm}}',
    );
    assert.deepEqual(await saidOf(named, named), []);
    const otherwise = named
      .replace('kerf: 0.16 mm', 'kerf: 0.25 mm')
      .replace('30 mm]}', '30 mm], nudge: {right: 7 mm, down: 3 mm}}')
      .replace('shapes:', 'sheet: {size: [300 mm, 200 mm], margin: 5 mm}\nshapes:');
    assert.deepEqual(await saidOf(otherwise, named), []);
  });

  it('is reported at the line of its record with what has changed', async () => {
    const text = spec(plate(64, 30), 'body: [plate]');
    const issues = await issuesOf(text, await recordOf(spec(plate(60, 30), 'body: [plate]')));
    assert.deepEqual(
      issues.map(({ severity, path, piece, message }) => [severity, path, piece, message]),
      [
        [
          'warning',
          ['approved'],
          'tag',
          'Not as approved on 2026-03-14: its width is 64 mm instead of 60 mm; its outline differs.',
        ],
      ],
    );
    const thick = spec(plate(), 'body: [plate]').replace('3 mm', '6 mm');
    assert.deepEqual(await saidOf(thick, spec(plate(), 'body: [plate]')), [
      'Not as approved on 2026-03-14: it is cut from birch plywood, 6 mm instead of birch plywood, 3 mm.',
    ]);
    // All of it larger is said once.
    assert.deepEqual(await saidOf(spec(plate(90, 45), 'body: [plate]'), spec(plate(60, 30), 'body: [plate]')), [
      'Not as approved on 2026-03-14: its width is 90 mm instead of 60 mm; its height is 45 mm instead of 30 mm.',
    ]);
  });

  it('may differ by 0.05 mm and no more: of a disc moved by d, the crescent is d wide at most', async () => {
    const record = await recordOf(holed(0));
    assert.deepEqual(await issuesOf(holed(0.035), record), []);
    const [issue] = await issuesOf(holed(0.07), record);
    assert.equal(issue!.message, 'Not as approved on 2026-03-14: its outline differs.');
    // The crescents on both sides are pointed out, at the edge of the hole, 3 mm from its middle.
    const points = issue!.places!.flatMap((place) => place.points);
    assert.ok(points.some(({ x }) => x > 2) && points.some(({ x }) => x < -2));
    for (const { x, y } of points) assert.ok(Math.abs(Math.hypot(x - 0.035, y) - 3) < 0.06, `${x}, ${y}`);
  });

  it('may be wider or higher by 0.1 mm, and no more', async () => {
    const record = await recordOf(spec(plate(60), 'body: [plate]'));
    assert.deepEqual(await issuesOf(spec(plate(60.09), 'body: [plate]'), record), []);
    const [issue] = await issuesOf(spec(plate(60.12), 'body: [plate]'), record);
    assert.match(issue!.message, /its width is 60\.12 mm instead of 60 mm/);
  });

  it('says which words have changed, been added or gone', async () => {
    const engraved = (words: string): string =>
      spec(
        `${plate()}\n  name: {text: "${words}", font: Nunito, x_height: 5 mm, place: {on: plate}}`,
        'body: [plate], engrave: [name]',
      );
    assert.deepEqual(await saidOf(engraved('René'), engraved('Renè')), [
      'Not as approved on 2026-03-14: it says “René” instead of “Renè”.',
    ]);
    const bare = spec(plate(), 'body: [plate]');
    assert.deepEqual(await saidOf(engraved('Rue'), bare), ['Not as approved on 2026-03-14: “Rue” has been added.']);
    assert.deepEqual(await saidOf(bare, engraved('Rue')), ['Not as approved on 2026-03-14: “Rue” is gone.']);
    // The same words in another weight.
    const bold = engraved('Rue').replace('Nunito', 'Nunito, weight: 800');
    assert.deepEqual(await saidOf(bold, engraved('Rue')), ['Not as approved on 2026-03-14: its engraving differs.']);
  });

  it('says what it hangs on now, once for the tag', async () => {
    const hung = (tie: string, hanger = 'hanger: {hole: {at: left, diameter: 4 mm}}'): string =>
      spec(plate(), `body: [plate], ${hanger}`, tie && `tie: {${tie}}\n`);
    const twine = hung('twine: 1.5 mm');
    assert.deepEqual(await saidOf(twine, twine), []);
    for (const [now, was, says] of [
      ['twine: 2 mm', 'twine: 1.5 mm', 'twine 2 mm thick instead of twine 1.5 mm thick'],
      ['ribbon: 6 mm', 'twine: 1.5 mm', 'ribbon 6 mm wide instead of twine 1.5 mm thick'],
      ['split_ring: 20 mm', 'ribbon: 6 mm', 'a split ring 20 mm across instead of ribbon 6 mm wide'],
      ['', 'twine: 1.5 mm', 'what is not named instead of twine 1.5 mm thick'],
      ['twine: 1.5 mm', '', 'twine 1.5 mm thick instead of what is not named'],
    ] as const)
      assert.deepEqual(await saidOf(hung(now), hung(was)), [`Not as approved on 2026-03-14: it hangs on ${says}.`]);
    // How wide a hole the maker measured for it is not seen.
    assert.deepEqual(await saidOf(hung('twine: 1.5 mm, opening: 3 mm'), twine), []);
    // What does not hang, or hangs on a nail, may name any; a record from before ties were kept says nothing of them.
    assert.deepEqual(await saidOf(hung('twine: 2 mm', ''), hung('twine: 1.5 mm', '')), []);
    const nailed = (tie: string): string => hung(tie, 'hanger: {keyhole: {at: top}}');
    assert.deepEqual(await saidOf(nailed('twine: 2 mm'), nailed('twine: 1.5 mm')), []);
    const record: Record<string, unknown> = JSON.parse(await recordOf(twine)) as Record<string, unknown>;
    const older = JSON.stringify(record, (key, value: unknown) => (key === 'hangs_on' ? undefined : value));
    assert.ok(JSON.stringify(record).includes('hangs_on') && !older.includes('hangs_on'));
    assert.deepEqual(await issuesOf(hung('twine: 2 mm'), older), []);
  });

  it('says which pieces have come or gone', async () => {
    const two = `${spec(plate(), 'body: [plate]')}  cap: {title: Cap, body: [{ellipse: 10 mm}], glue_to: tag}\n`;
    const one = spec(plate(), 'body: [plate]');
    assert.deepEqual(await saidOf(two, one), ['Not as approved on 2026-03-14: “Cap” has been added.']);
    assert.deepEqual(await saidOf(one, two), ['Not as approved on 2026-03-14: “Cap” is gone.']);
  });

  it('is in a batch the one of that name', async () => {
    const listed = (names: string): string =>
      spec(
        `${plate()}\n  name: {text: "{name}", font: Nunito, x_height: 5 mm, place: {on: plate}}`,
        'body: [plate], engrave: [name]',
        `batch: [${names}]\n`,
      );
    const record = await recordOf(listed('Sorrel, Rue'), 2);
    assert.deepEqual(await issuesOf(listed('Rue, Sorrel'), record), []);
    const [issue] = await issuesOf(listed('Rue, Dill'), record, 1);
    assert.equal(issue!.message, '“Dill” is not among the tags that were approved on 2026-03-14.');
    const [alone] = await issuesOf(spec(plate(), 'body: [plate]'), record);
    assert.equal(alone!.message, 'This tag is not among the tags that were approved on 2026-03-14.');
  });

  it('can be made though its record is damaged or lacking, which is said', async () => {
    const text = spec(plate(), 'body: [plate]');
    const good = await recordOf(text);
    for (const bad of [
      '',
      '{',
      '[]',
      good.replace('"tagwright_approval": 1', '"tagwright_approval": 2'),
      good.replace(/"M[^"]*"/, '"<svg>"'),
    ]) {
      const [issue, ...others] = await issuesOf(text, bad);
      assert.deepEqual([issue!.code, issue!.severity, others], ['bad-file', 'warning', []]);
      assert.match(issue!.message, /is no record of an approval, or is damaged: record the approval once more\.$/);
    }
    const made = await report(text, newEngine({ 'plat.approved.json': good }));
    assert.ok(made.tag);
    assert.deepEqual(
      made.issues.map(({ severity, message }) => `${severity}: ${message}`),
      [`warning: The record of approval “${file}” cannot be found or read. Did you mean “plat.approved.json”?`],
    );
  });

  it('is on its job sheet as approved, and as changed once it is', async () => {
    const text = spec(plate(), 'body: [plate]');
    const record = await recordOf(text, 1, 'order 101, by e-mail');
    const words = async (of: string): Promise<string> => {
      const [page] = await jobPages(jobOf(await report(of, newEngine({ [file]: record })))!, tools);
      return page!.words.map((each) => each.text).join(' ');
    };
    assert.match(await words(text), /Approved on 2026-03-14: order 101, by e-mail\./);
    assert.match(await words(text.replace('60 mm', '64 mm')), /by e-mail\. Changed since then: see below\./);
  });
});
