import assert from 'node:assert/strict';
import { create } from 'fontkit';
import { brotliCompressSync, constants, deflateSync } from 'node:zlib';
import { curveBounds } from '../../../src/geometry/curves.ts';
import { openFace } from '../../../src/text/font-face.ts';
import { describeFont } from '../../../src/text/font-description.ts';
import { layoutText } from '../../../src/text/text-layout.ts';
import { BadFontError } from '../../../src/text/bad-font.ts';
import { readTables, scanTables, writeSfnt } from '../../../src/text/sfnt.ts';
import { seededRandom } from '../support/shapes.ts';
import { blockFont } from '../../fonts/block-font.ts';
import { collection } from '../../fonts/collection.ts';
import { bundledFontBytes, packagedFont, packagedWoff2, variableWoff2 } from '../../fonts/font-files.ts';
import { assertWorked, worked } from '../support/effort.ts';

async function fault(bytes: Uint8Array): Promise<string> {
  try {
    await openFace({ bytes, index: 0, variations: {} });
  } catch (error) {
    assert.ok(error instanceof BadFontError, String(error));
    return error.message;
  }
  return 'is sound';
}

/** A WOFF file of one table, by the header of the W3C recommendation, saying of itself what it is told to. */
function woff(table: Uint8Array, saysLength: number): Uint8Array {
  const out = new Uint8Array(44 + 20 + table.length);
  const view = new DataView(out.buffer);
  out.set(new TextEncoder().encode('wOFF'));
  view.setUint16(12, 1);
  out.set(new TextEncoder().encode('glyf'), 44);
  view.setUint32(48, 64);
  view.setUint32(52, table.length);
  view.setUint32(56, saysLength);
  out.set(table, 64);
  return out;
}

/** A WOFF2 file of one table of the font's own naming, by the W3C recommendation, saying of itself what it is told to. */
function woff2(packed: Uint8Array, saysLength: number): Uint8Array {
  const length: number[] = [];
  for (let rest = saysLength; length.length === 0 || rest > 0; rest = Math.floor(rest / 128))
    length.unshift((rest % 128) | (length.length === 0 ? 0 : 0x80));
  const directory = [63, ...new TextEncoder().encode('zzzz'), ...length];
  const out = new Uint8Array((48 + directory.length + packed.length + 3) & ~3);
  const view = new DataView(out.buffer);
  out.set(new TextEncoder().encode('wOF2'));
  view.setUint32(4, 0x10000);
  view.setUint32(8, out.length);
  view.setUint16(12, 1);
  view.setUint32(16, saysLength);
  view.setUint32(20, packed.length);
  out.set(directory, 48);
  out.set(packed, 48 + directory.length);
  return out;
}

describe('font containers', () => {
  it('give the same letters packed as WOFF and plain', async () => {
    const packed = await packagedFont('roboto');
    const plain = writeSfnt(readTables(packed));
    const lay = async (bytes: Uint8Array): Promise<unknown> =>
      layoutText(await openFace({ bytes, index: 0, variations: {} }), { text: 'Sorrel', align: 'left' });
    assert.deepEqual(await lay(packed), await lay(plain));
  });

  it('packed as WOFF2 give the glyphs, advances and outlines that fontkit reads from the same file', async () => {
    for (const bytes of [
      await packagedWoff2('roboto'),
      await packagedWoff2('source-serif-4'),
      await variableWoff2('nunito'),
    ]) {
      const face = await openFace({ bytes, index: 0, variations: {} });
      const other = create(bytes);
      const run = other.layout('Sorrel');
      const { glyphs } = layoutText(face, { text: 'Sorrel', align: 'left' });
      assert.deepEqual(
        glyphs.map(({ id, advance }) => [id, Math.round(advance * face.unitsPerEm)]),
        run.glyphs.map(({ id }, i) => [id, run.positions[i]!.xAdvance]),
      );
      for (const { id } of glyphs) {
        const ours = curveBounds(face.outline(id))!;
        const { bbox } = other.getGlyph(id);
        assert.ok(Math.abs(ours.maxY * face.unitsPerEm - bbox.maxY) <= 1, `glyph ${id}`);
        assert.ok(Math.abs(ours.minY * face.unitsPerEm - bbox.minY) <= 1, `glyph ${id}`);
      }
    }
  });

  it('packed as WOFF2 are found among installed fonts', async () => {
    const bytes = await packagedWoff2('roboto');
    const faces = await scanTables((start, end) => Promise.resolve(bytes.subarray(start, end)), new Set(['name']));
    assert.deepEqual(
      faces.map((tables) => describeFont(tables).family),
      ['Roboto'],
    );
  });

  it('packed as WOFF2 that would fill the memory are refused before they are unpacked', async () => {
    const zeros = brotliCompressSync(new Uint8Array(200_000_000), { params: { [constants.BROTLI_PARAM_QUALITY]: 1 } });
    const start = worked();
    const tooLarge = 'is larger than 30 MB once unpacked: use its TTF or OTF file instead';
    assert.equal(await fault(woff2(zeros, 200_000_000)), tooLarge);
    assert.equal(await fault(woff2(zeros, 0xffff_ffff)), tooLarge);
    // It says less than it unpacks to, and more.
    assert.equal(await fault(woff2(zeros, 1_000_000)), 'is damaged: it cannot be unpacked');
    assert.equal(await fault(woff2(zeros.subarray(0, 90), 1000)), 'is damaged: it cannot be unpacked');
    assertWorked(start, 3);
    // Others are read as before.
    assert.equal(await fault(await packagedWoff2('roboto')), 'is sound');
  });

  it('packed as WOFF2 and damaged at random either open or are refused, quickly and by a message', async () => {
    const random = seededRandom(11);
    const whole = await packagedWoff2('roboto');
    for (const part of [0.001, 0.002, 0.01, 0.5, 0.99]) {
      const message = await fault(whole.subarray(0, Math.ceil(whole.length * part)));
      assert.match(message, /is cut short|cannot be unpacked|makes no sense/, `at ${part}: ${message}`);
    }
    let refused = 0;
    for (let round = 0; round < 100; round++) {
      const bytes = Uint8Array.from(whole);
      const span = round % 2 === 0 ? 200 : bytes.length;
      for (let i = 0; i < 3; i++) bytes[Math.floor(random() * span)] = random() * 256;
      const begun = worked();
      if ((await fault(bytes)) !== 'is sound') refused++;
      assertWorked(begun, 3);
    }
    assert.ok(refused > 50, String(refused));
  });

  it('hold several faces, each found by its number', async () => {
    const bytes = collection([blockFont(), await bundledFontBytes('Alfa Slab One', 400)]);
    const first = await openFace({ bytes, index: 0, variations: {} });
    const second = await openFace({ bytes, index: 1, variations: {} });
    assert.deepEqual([first.family, second.family], ['Blocks', 'Alfa Slab One']);
    assert.notEqual(first.id, second.id);
    await assert.rejects(openFace({ bytes, index: 2, variations: {} }), /has no face number 3/);
  });

  it('are looked through without reading the outlines', async () => {
    const bytes = collection([blockFont(), await bundledFontBytes('Pacifico', 400)]);
    let total = 0;
    const read = (start: number, end: number): Promise<Uint8Array> => {
      const part = bytes.subarray(start, end);
      total += part.length;
      return Promise.resolve(part);
    };
    const faces = await scanTables(read, new Set(['name', 'OS/2']));
    assert.deepEqual(
      faces.map((tables) => describeFont(tables).family),
      ['Blocks', 'Pacifico'],
    );
    assert.ok(total < 20_000 && total < bytes.length / 10, `read ${total} of ${bytes.length} bytes`);
  });

  it('say what is wrong with a file that is no font', async () => {
    const text = (value: string): Uint8Array => new TextEncoder().encode(value);
    for (const [bytes, message] of [
      [new Uint8Array(0), 'is an empty file'],
      [text('<!DOCTYPE html><title>Not found</title>'), 'is a web page or a drawing, not a font file'],
      [text('\n <svg xmlns="http://www.w3.org/2000/svg"/>'), 'is a web page or a drawing, not a font file'],
      [text('PK\x03\x04 and so on'), 'is a ZIP archive: unpack it and use the font file inside'],
      [text('hello'), 'is not a font file (TTF, OTF, TTC, OTC, WOFF or WOFF2)'],
      [new Uint8Array(300), 'is not a font file (TTF, OTF, TTC, OTC, WOFF or WOFF2)'],
      [text('OTTO'), 'is cut short'],
      [new Uint8Array(64 * 1024 * 1024 + 1), 'is larger than 64 MB'],
    ] as const) {
      assert.equal(await fault(bytes), message);
    }
  });

  it('say so when they are cut short, wherever that is', async () => {
    for (const whole of [await packagedFont('roboto'), await bundledFontBytes('Alfa Slab One', 400), blockFont()]) {
      assert.equal(await fault(whole), 'is sound');
      for (const part of [0.001, 0.01, 0.1, 0.5, 0.9, 0.98]) {
        const message = await fault(whole.subarray(0, Math.ceil(whole.length * part)));
        assert.match(message, /is cut short|is not a font file/, `at ${part}: ${message}`);
      }
    }
  });

  it('that unpack to more than they say are given up, without unpacking them', async () => {
    const bomb = deflateSync(new Uint8Array(50_000_000));
    const start = worked();
    assert.equal(await fault(woff(bomb, bomb.length + 1)), 'is damaged: a table is longer than it says');
    assertWorked(start, 3);
    assert.equal(await fault(woff(bomb, 0xffffffff)), 'is larger than 64 MB once unpacked');
    assert.equal(await fault(woff(new Uint8Array(100), 500)), 'is damaged: it cannot be unpacked');
  });

  it('of bitmap fonts have no outlines', async () => {
    const tables = new Map([...readTables(blockFont())].filter(([tag]) => tag !== 'CFF '));
    assert.equal(await fault(writeSfnt(tables)), 'has no outlines, only pictures of its letters');
  });

  it('damaged at random either open or are refused, quickly and by a message', async () => {
    const random = seededRandom(7);
    const fonts = [
      await bundledFontBytes('Alfa Slab One', 400),
      writeSfnt(readTables(await packagedFont('source-serif-4'))),
      blockFont(),
    ];
    const outcomes = { opened: 0, refused: 0 };
    for (let round = 0; round < 150; round++) {
      const bytes = fonts[round % fonts.length]!.slice();
      // Half of the time in one small stretch, which is what it takes to get at the tables of contents.
      const start = random() * bytes.length;
      const span = round % 2 === 0 ? 500 : bytes.length;
      for (let i = 0; i < 40; i++) {
        bytes[Math.floor(start + random() * span) % bytes.length] = random() < 0.3 ? 255 : random() * 256;
      }
      const begun = worked();
      try {
        const face = await openFace({ bytes, index: 0, variations: {} });
        const { advance } = layoutText(face, { text: 'Sorrel office XÉ', align: 'left' });
        assert.ok(Number.isFinite(advance));
        outcomes.opened++;
      } catch (error) {
        assert.ok(error instanceof BadFontError, String(error));
        outcomes.refused++;
      }
      assertWorked(begun, 3);
    }
    assert.ok(outcomes.opened > 10 && outcomes.refused > 3, JSON.stringify(outcomes));
  });

  it('with blank letters have these reported as missing', async () => {
    const tables = new Map(readTables(await bundledFontBytes('Alfa Slab One', 400)));
    tables.set('glyf', new Uint8Array(tables.get('glyf')!.length));
    const face = await openFace({ bytes: writeSfnt(tables), index: 0, variations: {} });
    assert.deepEqual(layoutText(face, { text: 'a b', align: 'left' }).missing, [
      { text: 'a', index: 0 },
      { text: 'b', index: 2 },
    ]);
  });
});
