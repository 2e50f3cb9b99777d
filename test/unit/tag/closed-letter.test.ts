/** Letters that a ring at the end of a line makes others of: by eye, in the faces named. */

import assert from 'node:assert/strict';
import { union } from '../../../src/geometry/clipper.ts';
import { boundsOf } from '../../../src/geometry/measure.ts';
import type { Point, Region } from '../../../src/geometry/types.ts';
import { hardToRead } from '../../../src/checks/hard-to-read.ts';
import { closesLetter } from '../../../src/tag/hanger/closed-letter.ts';
import { lineEnd, scaledEnd } from '../../../src/tag/hanger/stems.ts';
import { packagedFont } from '../../fonts/font-files.ts';
import { make, newEngine, specOf } from '../support/engine.ts';
import { box } from '../support/shapes.ts';

const files = [
  ['quicksand', 'latin'],
  ['amiri', 'arabic'],
  ['parisienne', 'latin'],
  ['kaushan-script', 'latin'],
] as const;
const fonts = files.map(
  async ([slug, subset]) => [`${slug}.woff`, new Uint8Array(await packagedFont(slug, subset, 400))] as const,
);
const engine = newEngine(Object.fromEntries(await Promise.all(fonts)));

const head = ['stock: {thickness: 3 mm, kerf: 0.16 mm, min_web: 1.5 mm}', 'tie: {twine: 1.5 mm}'];

async function readAs(text: string, font: string, at: string): Promise<readonly string[]> {
  const file = files.some(([slug]) => slug === font) ? `${font}.woff` : font;
  const shape = `name: {text: "${text}", font: ${file}, height: 24 mm, overlap: auto}`;
  const { pieces, issues } = await make(specOf([shape], `body: [name], hanger: {ring: {at: ${at}}}`, head), engine);
  const { readAs: all = [] } = pieces[0]!.hangers[0]!;
  const isTold = issues.some(({ code }) => code === 'hole-blocked');
  if (all.some((each) => ['hook', 'loop of a waw'].includes(each))) assert.ok(isTold, 'it is said');
  return all;
}

/** What a ring of radius 3 mm at a place makes of the only letter of a line, which stands on the baseline. */
function closed(text: string, region: Region, at: Point, factor = 1): readonly string[] {
  const scaled = scaledEnd(lineEnd(region, -1), factor);
  const ends = [scaled, scaledEnd(lineEnd(region, 1), factor)] as const;
  return closesLetter({ letters: [{ text, region, box: boundsOf(region)! }], ends, baseline: 0 }, at, 3, factor);
}

/** 20 mm high: a stem at the left with an arm to the right at its top, and the same upside down. */
const arm = [box(0, 0, 4, 20), box(0, 16, 12, 20)];
const foot = [box(0, 0, 4, 20), box(0, 0, 12, 4)];

describe('A ring at the end of a line', () => {
  it('closes the bay of a digit under its arm or over its foot, and no bay of a letter', () => {
    assert.deepEqual(closed('7', union([arm]), { x: 7, y: 10 }), ['digit']);
    assert.deepEqual(closed('2', union([foot]), { x: 7, y: 10 }), ['digit']);
    assert.deepEqual(closed('T', union([arm]), { x: 7, y: 10 }), []);
  });

  it('closes none with its middle beyond the arm, above it, on the other side, or too far off', () => {
    for (const at of [
      { x: 12.5, y: 10 },
      { x: 7, y: 22 },
      { x: -3, y: 10 },
      { x: 16, y: 10 },
    ])
      assert.deepEqual(closed('7', union([arm]), at), [], JSON.stringify(at));
  });

  it('is seen in letters that are scaled as it is itself', () => {
    assert.deepEqual(closed('7', union([arm]), { x: 14, y: 20 }, 2), ['digit']);
    assert.deepEqual(closed('7', union([arm]), { x: 26, y: 20 }, 2), []);
  });

  it('closes the room under a Hebrew roof', () => {
    const resh = union([[box(8, 0, 12, 20)], [box(0, 16, 12, 20)]]);
    assert.deepEqual(closed('ר', resh, { x: 5, y: 10 }), ['roof']);
    assert.deepEqual(closed('ר', resh, { x: -1, y: 10 }), []);
  });

  it('goes to no bay of a digit by itself: 2027, 1947', async () => {
    for (const text of ['2027', '1947']) assert.ok(!(await readAs(text, 'quicksand', 'auto')).includes('digit'), text);
  });

  it('is an “o” on the hook of a J that stands on the line, and not beside a bare stem', async () => {
    assert.ok((await readAs('Jon', 'quicksand', 'left')).includes('hook'));
    for (const text of ['Ion', 'Lon', 'Con'])
      assert.ok(!(await readAs(text, 'quicksand', 'left')).includes('hook'), text);
  });

  it('is the loop of a letter on the line of Arabic ones, and none over it', async () => {
    for (const text of ['نور', 'دار'])
      assert.ok((await readAs(text, 'amiri', 'right')).includes('loop of a waw'), text);
    assert.ok(!(await readAs('ا', 'amiri', 'top')).includes('loop of a waw'));
    assert.ok(!(await readAs('on', 'quicksand', 'right')).includes('loop of a waw'));
  });
});

describe('The dots of a ü', () => {
  const said = async (text: string, font: string): Promise<string[]> => {
    const shape = `name: {text: ${text}, font: ${font}, x_height: 12 mm, overlap: auto}`;
    const made = await make(specOf([shape], 'body: [name], parts: many', head), engine);
    return hardToRead(made.report.tag!).map(({ message }) => message);
  };

  it('on the two stems of it read as “ii” in a script, and that is said', async () => {
    assert.match(
      (await said('Jürgen', 'parisienne.woff')).join(),
      /dots of the “ü” stand on its two stems, which reads as “ii”/,
    );
  });

  it('are read in an upright face, and where they are as near each other as the font has them', async () => {
    for (const [text, font] of [
      ['Jürgen', 'quicksand.woff'],
      ['Jürgen', 'Pacifico'],
      ['Jürgen', 'kaushan-script.woff'],
      ['Köthe', 'parisienne.woff'],
    ] as const)
      assert.deepEqual(await said(text, font), [], `${text}, ${font}`);
  });
});
