import assert from 'node:assert/strict';
import { reportJson } from '../../../src/cli/report-json.ts';
import { embeddingInWords } from '../../../src/text/embedding.ts';
import { describeFont } from '../../../src/text/font-description.ts';
import { readTables } from '../../../src/text/sfnt.ts';
import { bundledFontBytes, packagedFont, variableWoff2 } from '../../fonts/font-files.ts';
import { withFsType } from '../../fonts/fs-type.ts';
import { newEngine, placeOf, report, specOf } from '../support/engine.ts';

const script = await bundledFontBytes('Pacifico', 400);
const engine = newEngine({
  'shop.ttf': withFsType(script, 0b10),
  'roboto.woff': new Uint8Array(await packagedFont('roboto')),
  'roboto-ext.woff': new Uint8Array(await packagedFont('roboto', 'latin-ext')),
  'roboto-bold-ext.woff': new Uint8Array(await packagedFont('roboto', 'latin-ext', 700)),
  'nunito.woff2': new Uint8Array(await variableWoff2('nunito')),
});

async function messages(...texts: readonly string[]): Promise<string[]> {
  const made = await report(
    specOf(
      texts.map((text, i) => `t${i}: {text: Rue, width: 40 mm, ${text}}`),
      `body: [${texts.map((_, i) => `t${i}`).join(', ')}], parts: many`,
    ),
    engine,
  );
  return made.issues
    .filter(({ code }) => code === 'other-style' || code === 'font-restricted')
    .map(
      (issue) => `${issue.severity} ${placeOf(made, issue).text}: ${issue.message} ${String(issue.suggestions ?? '')}`,
    );
}

describe('What a tag says of its fonts', () => {
  it('is which they are, with the licence that each states of itself, and where they are used', async () => {
    const { fonts } = await report(
      specOf(
        [
          'one: {text: Rue, font: Pacifico, width: 40}',
          'two: {text: Mint, font: Nunito, weight: 800, width: 40}',
          'body: {union: [one, two, {text: Dill, font: pacifico, width: 30}]}',
        ],
        'body: [body], parts: many',
      ),
    );
    assert.deepEqual(
      fonts.map(({ family, weight, italic, paths }) => ({ family, weight, italic, paths })),
      [
        {
          family: 'Pacifico',
          weight: 400,
          italic: false,
          paths: [
            ['shapes', 'one'],
            ['shapes', 'body', 'union', 2],
          ],
        },
        { family: 'Nunito', weight: 800, italic: false, paths: [['shapes', 'two']] },
      ],
    );
    for (const { licence, embedding } of fonts) {
      assert.match(licence.text!, /SIL Open Font License, Version 1\.1/);
      // As the licence gives it in these files (name 14).
      assert.match(licence.url!, /^https?:\/\/(scripts\.sil\.org\/OFL|openfontlicense\.org)$/);
      assert.equal(embedding, 'may be embedded in files, and installed from them');
    }
  });

  it('is in the command line’s JSON', async () => {
    const made = await report(specOf(['body: {text: Rue, font: shop.ttf, width: 40}']), engine);
    const { fonts } = reportJson('a.tag.yaml', made, new Map(), [made]) as {
      fonts: readonly Record<string, unknown>[];
    };
    assert.equal(fonts.length, 1);
    assert.equal(fonts[0]!['family'], 'Pacifico');
    assert.equal(fonts[0]!['embedding'], 'may not be embedded in files without its maker’s permission');
    assert.match(String(fonts[0]!['licence']), /SIL Open Font License/);
  });

  // Bits of fsType by the OpenType specification, OS/2 table; where several of bits 1 to 3 are set, the most lenient counts.
  for (const [fsType, words] of [
    [0x0000, 'may be embedded in files, and installed from them'],
    [0x0002, 'may not be embedded in files without its maker’s permission'],
    [0x0004, 'may be embedded in files that are viewed and printed, not edited'],
    [0x0006, 'may be embedded in files that are viewed and printed, not edited'],
    [0x0008, 'may be embedded in files that are viewed, printed and edited'],
    [0x000e, 'may be embedded in files that are viewed, printed and edited'],
    [0x0104, 'may be embedded in files that are viewed and printed, not edited (only whole, not in part)'],
    [
      0x0300,
      'may be embedded in files, and installed from them (only whole, not in part; only as pictures of its letters)',
    ],
    [0x0302, 'may not be embedded in files without its maker’s permission'],
  ] as const) {
    it(`puts embedding bits 0x${fsType.toString(16).padStart(4, '0')} in words`, () => {
      const { licence } = describeFont(readTables(withFsType(script, fsType)));
      assert.equal(embeddingInWords(licence), words);
    });
  }

  it('does not guess where a font has no such bits', () => {
    const tables = new Map(readTables(script));
    tables.delete('OS/2');
    assert.equal(embeddingInWords(describeFont(tables).licence), 'does not say whether it may be embedded in files');
  });

  it('is a reminder where a font is restricted, once however often it is used, and silence where it is not', async () => {
    const restricted =
      'info shop.ttf: According to its file, the font Pacifico may not be embedded in files without its maker’s permission. Cut letters contain no font, but read its licence before you sell files made with it. ';
    assert.deepEqual(await messages('font: shop.ttf', 'font: shop.ttf, weight: 400'), [restricted]);
    assert.deepEqual(await messages('font: roboto.woff', 'font: Pacifico'), []);
  });

  it('says nothing of a family that comes as several files, and tells apart by style what is of one family', async () => {
    const said = async (others: string) => {
      const { issues } = await report(
        specOf([`body: {text: Eliška, font: [roboto.woff, ${others}], width: 60}`]),
        engine,
      );
      return issues.filter(({ code }) => code === 'other-style').map(({ message }) => message);
    };
    assert.deepEqual(await said('roboto-ext.woff'), []);
    const [bold] = await said('roboto-bold-ext.woff');
    assert.match(bold!, /^Roboto has no “š”; that of Roboto Bold was used instead/);
  });

  it('names what was taken for a weight or an italic that the font lacks', async () => {
    const weight = 'info 900: Nunito has no weight 900; its 800 was used instead. 800';
    const light = 'info 300: Nunito has no weight 300; its 600 was used instead. 600';
    const italic = 'info true: Pacifico has no italic; its upright letters were used instead. false';
    assert.deepEqual(await messages('font: Nunito, weight: 900'), [weight]);
    assert.deepEqual(await messages('font: Nunito, weight: 300'), [light]);
    assert.deepEqual(await messages('font: Pacifico, italic: true'), [italic]);
    assert.deepEqual(await messages('font: roboto.woff, weight: 700'), [
      'info 700: “roboto.woff” has no weight 700; its 400 was used instead. 400',
    ]);
  });

  it('says nothing where the weight is there, is in the range of a variable font, or was not asked for', async () => {
    assert.deepEqual(await messages('font: Nunito', 'font: Nunito, weight: 600', 'font: Pacifico, italic: false'), []);
    assert.deepEqual(await messages('font: nunito.woff2', 'font: nunito.woff2, weight: 731'), []);
    assert.deepEqual(await messages('font: nunito.woff2, weight: 150'), [
      'info 150: “nunito.woff2” has no weight 150; its 200 was used instead. 200',
    ]);
  });
});
