import assert from 'node:assert/strict';
import { mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bundledFonts } from '../../../src/text/bundled-fonts.ts';
import type { FontFace } from '../../../src/text/font-face.ts';
import type { FontFiles } from '../../../src/text/font-files.ts';
import { FontLibrary, type FontProblem, type FontQuery } from '../../../src/text/font-library.ts';
import { layoutText } from '../../../src/text/text-layout.ts';
import { nodeFontFiles } from '../../../src/text/node-font-files.ts';
import { blockFont } from '../../fonts/block-font.ts';
import { collection } from '../../fonts/collection.ts';
import {
  bundledFontBytes,
  packagedFont,
  packagedFontFiles,
  variableFont,
  variableWoff2,
} from '../../fonts/font-files.ts';

/** The bundled fonts and the files given, as if those were installed. */
function computerWith(installed: Readonly<Record<string, Uint8Array>>): FontFiles & { readonly reads: string[] } {
  const reads: string[] = [];
  return {
    ...packagedFontFiles(),
    reads,
    systemFonts: () => Promise.resolve(Object.keys(installed)),
    read: (path, stretch) => {
      reads.push(path);
      const bytes = installed[path];
      if (!bytes) return Promise.reject(new Error(`no ${path}`));
      return Promise.resolve(bytes.subarray(stretch?.start ?? 0, stretch?.end));
    },
  };
}

async function face(library: FontLibrary, query: FontQuery): Promise<FontFace> {
  const answer = await library.load(query);
  assert.ok('face' in answer, JSON.stringify(answer));
  return answer.face;
}

async function problem(library: FontLibrary, query: FontQuery): Promise<FontProblem> {
  const answer = await library.load(query);
  assert.ok('problem' in answer);
  return answer.problem;
}

const file = (path: string): FontQuery => ({ file: path, weight: 400, italic: false });

const regular = (family: string): FontQuery => ({ family, weight: 400, italic: false });

describe('the font library', () => {
  it('opens each bundled face, under the Open Font License and free to embed', async () => {
    const library = new FontLibrary(packagedFontFiles());
    for (const { family, faces, package: name, licence } of bundledFonts) {
      const text = await readFile(new URL(`../../../node_modules/${name}/${licence}`, import.meta.url), 'utf8');
      assert.match(text, /SIL OPEN FONT LICENSE Version 1\.1/);
      for (const { weight, italic } of faces) {
        const opened = await face(library, { family, weight, italic });
        assert.deepEqual([opened.family, opened.weight, opened.italic], [family, weight, italic]);
        assert.match(opened.licence.text!, /SIL Open Font License, Version 1\.1/);
        assert.equal(opened.licence.embedding, 'installable');
        // Letters of the languages of Europe that are written in Latin script.
        const { missing } = layoutText(opened, { text: 'ĄČĎĘĞĦĮĶŁŃŐŘŠŤŪŹ ąčďęğħįķłńőřšťūź ßœæøðþ', align: 'left' });
        assert.deepEqual(missing, []);
      }
    }
  });

  it('finds a family whatever its case, and its nearest weight', async () => {
    const library = new FontLibrary(packagedFontFiles());
    assert.equal((await face(library, { family: ' NUNITO ', weight: 400, italic: false })).weight, 600);
    assert.equal((await face(library, { family: 'nunito', weight: 750, italic: true })).weight, 800);
  });

  it('opens the same font once, by name or by content', async () => {
    const bytes = await bundledFontBytes('Pacifico', 400);
    const library = new FontLibrary(computerWith({ 'here/a.ttf': bytes, 'there/b.ttf': bytes.slice() }));
    const bundled = await face(library, regular('Pacifico'));
    assert.equal(await face(library, regular('pacifico')), bundled);
    assert.equal(await face(library, file('here/a.ttf')), bundled);
    assert.equal(await face(library, file('there/b.ttf')), bundled);
  });

  it('takes a file anew when its content has changed', async () => {
    const files: Record<string, Uint8Array> = { 'tag.ttf': await bundledFontBytes('Pacifico', 400) };
    const library = new FontLibrary(computerWith(files));
    const before = await face(library, file('tag.ttf'));
    files['tag.ttf'] = blockFont();
    const after = await face(library, file('tag.ttf'));
    assert.deepEqual([before.family, after.family], ['Pacifico', 'Blocks']);
    assert.notEqual(before.id, after.id);
  });

  it('looks among installed fonts for what is not bundled, and only then', async () => {
    const computer = computerWith({
      '/fonts/broken.ttf': new Uint8Array(500),
      '/fonts/gone.woff': await packagedFont('lobster'),
      '/fonts/roboto-400.woff': await packagedFont('roboto'),
      '/fonts/set.ttc': collection([blockFont(), await bundledFontBytes('Alfa Slab One', 400)]),
    });
    const library = new FontLibrary(computer);
    await face(library, regular('Pacifico'));
    assert.deepEqual(computer.reads, []);
    assert.equal((await face(library, regular('roboto'))).family, 'Roboto');
    assert.equal((await face(library, regular('Blocks'))).ascender, 0.8);
    assert.deepEqual(await library.families(), [
      ...['Alfa Slab One', 'Great Vibes', 'Nunito', 'Pacifico'],
      ...['Blocks', 'Lobster', 'Roboto'],
    ]);
  });

  it('sets a variable font to the weight asked for, as far as it goes (Nunito: 200 to 1000)', async () => {
    const bytes = await variableFont('nunito');
    // Under another name than the bundled family, which would come first.
    const renamed = bytes.slice();
    for (const name of ['Nunito', 'N\0u\0n\0i\0t\0o']) replaceText(renamed, name, name.replace('N', 'Z'));
    const library = new FontLibrary(computerWith({ '/fonts/variable.ttf': renamed }));
    // The subset keeps only the name of its lightest weight.
    const family = 'Zunito ExtraLight';
    const at = (weight: number): Promise<FontFace> => face(library, { family, weight, italic: false });
    assert.equal((await at(550)).weight, 550);
    assert.equal((await at(100)).weight, 200);
    const inked = async (weight: number): Promise<number> =>
      layoutText(await at(weight), { text: 'mmmm', align: 'left' }).advance;
    assert.ok((await inked(900)) > (await inked(300)) * 1.05);
  });

  it('sets a variable font file to the weight asked for, and takes the nearest face of a collection', async () => {
    const library = new FontLibrary(
      computerWith({
        'nunito.woff2': await variableWoff2('nunito'),
        'two.ttc': collection([await bundledFontBytes('Nunito', 600), await bundledFontBytes('Nunito', 800)]),
      }),
    );
    for (const [path, weight, taken] of [
      ['nunito.woff2', 400, 400],
      ['nunito.woff2', 730, 730],
      ['nunito.woff2', 100, 200],
      ['two.ttc', 400, 600],
      ['two.ttc', 600, 600],
      ['two.ttc', 700, 800],
    ] as const)
      assert.equal((await face(library, { file: path, weight, italic: false })).weight, taken, `${path} ${weight}`);
  });

  it('answers an unknown family with those of a similar name', async () => {
    const library = new FontLibrary(computerWith({ '/fonts/r.woff': await packagedFont('roboto') }));
    assert.deepEqual(await problem(library, regular('Robto')), {
      kind: 'unknown-font',
      message:
        'There is no font “Robto” among those bundled or installed. A font file beside the spec works as well: “font: name.ttf”.',
      suggestions: ['Roboto'],
    });
    assert.deepEqual((await problem(library, regular('great'))).suggestions, ['Great Vibes']);
    assert.deepEqual((await problem(library, regular('Quite another'))).suggestions, []);
    assert.deepEqual((await problem(library, regular(''))).suggestions, []);
  });

  it('answers a bad file with what is wrong with it', async () => {
    const html = new TextEncoder().encode('<html><body>404</body></html>');
    const pacifico = await bundledFontBytes('Pacifico', 400);
    const library = new FontLibrary(computerWith({ 'my fonts/page.ttf': html, 'cut.ttf': pacifico.subarray(0, 9000) }));
    assert.deepEqual(await problem(library, file('my fonts/page.ttf')), {
      kind: 'bad-font',
      message: 'The font “page.ttf” is a web page or a drawing, not a font file.',
      suggestions: [],
    });
    assert.equal((await problem(library, file('cut.ttf'))).message, 'The font “cut.ttf” is cut short.');
    const none = await problem(library, file('a\\b\\none.ttf'));
    assert.deepEqual([none.kind, none.message], ['bad-font', 'The font “none.ttf” cannot be found or read.']);
  });

  it('never throws, whatever the files do', async () => {
    const failing = (): never => {
      throw new Error('no disk');
    };
    const library = new FontLibrary({ bundled: failing, read: failing, systemFonts: failing });
    assert.equal((await problem(library, regular('Pacifico'))).kind, 'bad-font');
    assert.equal((await problem(library, regular('Other'))).kind, 'unknown-font');
    assert.equal((await problem(library, file('x.ttf'))).kind, 'bad-font');
    assert.equal((await library.families()).length, bundledFonts.length);
  });

  it('sees a font that was installed meanwhile once it is told to look again', async () => {
    const files: Record<string, Uint8Array> = {};
    const library = new FontLibrary({ ...computerWith(files), systemFonts: () => Promise.resolve(Object.keys(files)) });
    assert.equal((await problem(library, regular('Blocks'))).kind, 'unknown-font');
    files['/fonts/blocks.otf'] = blockFont();
    library.refresh();
    assert.equal((await face(library, regular('Blocks'))).family, 'Blocks');
  });
});

describe('font files on a computer', () => {
  let folder: string;
  const home = { home: process.env['HOME'], data: process.env['XDG_DATA_HOME'] };

  before(async () => {
    folder = await mkdtemp(join(tmpdir(), 'tagwright-fonts-'));
  });

  after(async () => {
    restore('HOME', home.home);
    restore('XDG_DATA_HOME', home.data);
    await rm(folder, { recursive: true });
  });

  it('are read in part or whole', async () => {
    const path = join(folder, 'blocks.otf');
    const bytes = blockFont();
    await writeFile(path, bytes);
    const files = nodeFontFiles(folder);
    assert.deepEqual(await files.read(path), bytes);
    assert.deepEqual(await files.bundled('blocks.otf').then((buffer) => new Uint8Array(buffer)), bytes);
    assert.deepEqual(await files.read(path, { start: 4, end: 12 }), bytes.subarray(4, 12));
    assert.equal((await files.read(path, { start: bytes.length - 3, end: bytes.length + 90 })).length, 3);
    assert.equal((await files.read(path, { start: bytes.length + 5, end: bytes.length + 9 })).length, 0);
    await assert.rejects(files.read(join(folder, 'none.otf')));
  });

  it('are found below the folders of the system, through links, without going in circles', async function () {
    if (process.platform !== 'linux') this.skip();
    const fonts = join(folder, 'share', 'fonts');
    await mkdir(join(fonts, 'deep', 'deeper'), { recursive: true });
    await writeFile(join(fonts, 'deep', 'deeper', 'Blocks.OTF'), blockFont());
    await writeFile(join(fonts, 'readme.txt'), 'not a font');
    await symlink(fonts, join(fonts, 'deep', 'back'));
    process.env['HOME'] = folder;
    process.env['XDG_DATA_HOME'] = join(folder, 'share');
    const found = (await nodeFontFiles('').systemFonts()).filter((path) => path.startsWith(folder));
    assert.ok(found.includes(join(fonts, 'deep', 'deeper', 'Blocks.OTF')));
    assert.ok(found.length < 10 && found.every((path) => path.endsWith('Blocks.OTF')), found.join(' '));
    const library = new FontLibrary(nodeFontFiles(''));
    assert.equal((await face(library, regular('Blocks'))).family, 'Blocks');
  });
});

function restore(name: string, value: string | undefined): void {
  if (value === undefined) Reflect.deleteProperty(process.env, name);
  else process.env[name] = value;
}

function replaceText(bytes: Uint8Array, from: string, to: string): void {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
  for (let at = buffer.indexOf(from, 0, 'latin1'); at >= 0; at = buffer.indexOf(from, at + 1, 'latin1')) {
    buffer.write(to, at, 'latin1');
  }
}
