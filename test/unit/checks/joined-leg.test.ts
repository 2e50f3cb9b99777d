import assert from 'node:assert/strict';
import { packagedFont } from '../../fonts/font-files.ts';
import { make, newEngine, specOf } from '../support/engine.ts';

const engine = newEngine({ 'ruhl.woff': new Uint8Array(await packagedFont('frank-ruhl-libre', 'hebrew', 700)) });

async function told(text: string, more: string, piece = 'body: [name], parts: many'): Promise<string[]> {
  const spec = specOf(
    [`plate: {rectangle: [90 mm, 40 mm]}`, `name: {text: ${text}, font: ruhl.woff, height: 24 mm${more}}`],
    piece,
  );
  const { issues } = await make(spec, engine);
  return issues.filter(({ code }) => code === 'hard-to-read').map(({ severity, message }) => `${severity}: ${message}`);
}

/** The two letters differ in nothing but that gap: Unicode, “Hebrew” (U+0590–05FF), he U+05D4 and het U+05D7. */
describe('The gap above the left leg of a Hebrew he', () => {
  const joined =
    'info: “שרה” may be hard to read: the left leg of “ה” is joined to its roof, as that of “ח” is. Engraved, or glued to a backing, it keeps its gap.';

  it('is told of where letters that slide close it, or growth does', async () => {
    assert.deepEqual(await told('שרה', ', overlap: auto'), [joined]);
    assert.deepEqual(await told('שרה', ', grow: 2 mm'), [joined]);
  });

  it('is left in peace where it is open, engraved, or of no he', async () => {
    assert.deepEqual(await told('שרה', ', grow: 1 mm'), []);
    assert.deepEqual(await told('שרה', '', 'body: [plate], engrave: [name]'), []);
    assert.deepEqual(await told('שרח', ', overlap: auto'), []);
  });
});
