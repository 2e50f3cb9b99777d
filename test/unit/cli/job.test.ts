import assert from 'node:assert/strict';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { built, root, run, spawned } from '../support/command-line.ts';
import { bySimpleReader } from '../support/csv-reader.ts';
import { pathsOf, ringsOf } from '../support/svg-reader.ts';
import { area } from '../support/clipper2.ts';

interface JobJson {
  readonly ok: boolean;
  readonly wanted: number;
  readonly pieces: readonly {
    readonly number: number;
    readonly order: string;
    readonly stock: string;
    readonly sheet: string;
  }[];
  readonly sheets: readonly {
    readonly name: string;
    readonly pieces: number;
    readonly filled: number;
    readonly width: number;
    readonly height: number;
  }[];
  readonly left_out: readonly { readonly order: string }[];
  readonly issues: readonly {
    readonly file: string;
    readonly code: string;
    readonly range: { readonly start: object };
  }[];
  readonly files: readonly string[];
}

describe('tagwright job', function () {
  this.timeout(300_000);
  let folder: string;
  const at = (...parts: string[]) => join(folder, ...parts);
  const read = (...parts: string[]) => readFileSync(at(...parts), 'utf8');

  before(async () => {
    await built();
    folder = mkdtempSync(join(tmpdir(), 'tagwright-job-'));
    cpSync(join(root, 'samples', 'plant-swap'), folder, { recursive: true });
    // How densely it is laid out is looked at elsewhere.
    writeFileSync(at('swap.job.yaml'), `${read('swap.job.yaml')}\neffort: 0.1\n`);
  });

  after(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  it('makes all files of the plant swap, which add up', async () => {
    const { code, out, err } = await spawned('job', at('swap.job.yaml'), '--out', at('cut'), '--json');
    assert.equal(err, '');
    assert.equal(code, 0);
    const [job] = JSON.parse(out) as JobJson[];
    assert.deepEqual([job!.ok, job!.issues, job!.left_out], [true, [], []]);
    // Two signs of two pieces; 4 + 6 + 2 + 3 + 5 labels.
    const lines = bySimpleReader(read('orders.csv').replaceAll('\n', '\r\n')).slice(1);
    const labels = lines.reduce((sum, cells) => sum + Number(cells[3]), 0);
    assert.equal(labels, 20);
    assert.equal(job!.wanted, 2 * 2 + labels);
    assert.equal(job!.pieces.length, job!.wanted);
    for (const sheet of job!.sheets) {
      assert.equal(job!.pieces.filter((piece) => piece.sheet === sheet.name).length, sheet.pieces);
      const svg = read('cut', `swap-${sheet.name.replaceAll(' ', '-')}.svg`);
      const paths = pathsOf(svg, 'cut-outer');
      assert.equal(paths.length, sheet.pieces, sheet.name);
      const cut = ringsOf(paths).reduce((sum, ring) => sum + Math.abs(area([ring])), 0);
      // What openings take is no part of what is filled.
      const openings = ringsOf(pathsOf(svg, 'cut-inner')).reduce((sum, ring) => sum + Math.abs(area([ring])), 0);
      const share = (cut - openings) / (sheet.width * sheet.height);
      assert.ok(Math.abs(share - sheet.filled) < 1e-3, `${sheet.name}: ${share}, and ${sheet.filled} is told`);
    }
    // Every piece is on a sheet of the stock that it is cut from, and the rush order on the first.
    assert.ok(job!.pieces.every(({ stock, sheet }) => sheet.startsWith(`${stock} `)));
    const rush = job!.pieces.filter(({ order }) => order === '103');
    assert.deepEqual([...new Set(rush.map(({ sheet }) => sheet))], [job!.sheets[0]!.name]);
    assert.match(read('ply3.offcuts.yaml'), /\{id: 1, size: \[310 mm, 120 mm\], used_by: swap\.job\.yaml\}/);
  });

  it('does the same again, byte by byte, in another process', async () => {
    const before = Object.fromEntries(readdirSync(at('cut')).map((name) => [name, read('cut', name)]));
    const offcuts = read('ply3.offcuts.yaml');
    const { code } = await run('job', at('swap.job.yaml'), '--out', at('cut'));
    assert.equal(code, 0);
    assert.deepEqual(Object.fromEntries(readdirSync(at('cut')).map((name) => [name, read('cut', name)])), before);
    assert.equal(read('ply3.offcuts.yaml'), offcuts);
  });

  it('writes nothing where it would replace something else, unless it is asked to', async () => {
    // Of the same tags, the pot labels alone.
    const labels = read('swap.job.yaml')
      .replace(/ *- \{spec: table-sign.*\n/, '')
      .replace(/ *cherry2: .*\n/, '');
    writeFileSync(at('labels.job.yaml'), labels);
    writeFileSync(at('orders.csv'), read('orders.csv').replace('101,Sorrel,March,4', '101,Sorrel,March,two'));
    mkdirSync(at('labels'));
    writeFileSync(at('labels', 'labels-pieces.csv'), 'mine');
    const kept = await run('job', at('labels.job.yaml'), '--out', at('labels'));
    assert.equal(kept.code, 1);
    assert.match(kept.err, /labels-pieces\.csv: exists and differs; --overwrite replaces it/);
    assert.equal(read('labels', 'labels-pieces.csv'), 'mine');
    assert.deepEqual(readdirSync(at('labels')), ['labels-pieces.csv']);
    const replaced = await run('job', at('labels.job.yaml'), '--out', at('labels'), '--overwrite', '--json');
    // One line is left out, and told at its cell; the rest is made.
    assert.equal(replaced.code, 1);
    const [job] = JSON.parse(replaced.out) as JobJson[];
    assert.deepEqual(
      job!.issues.map(({ file, code, range }) => [file, code, range.start]),
      [['orders.csv', 'bad-value', { line: 2, column: 18 }]],
    );
    assert.equal(job!.wanted, 16);
    // The head, and the line that is left out.
    assert.equal(bySimpleReader(read('labels', 'labels-pieces.csv')).length, 1 + job!.wanted + 1);
    assert.deepEqual(
      readdirSync(at('labels')).filter((name) => name.endsWith('.part')),
      [],
    );
  });

  it('needs a folder, and says what a file lacks to be a job', async () => {
    assert.equal((await run('job', at('swap.job.yaml'))).code, 2);
    const { code, out } = await run('job', at('table-sign.tag.yaml'), '--out', at('none'));
    assert.equal(code, 1);
    assert.match(out, /A job starts with the line “tagwright_job: 1”/);
    assert.throws(() => readdirSync(at('none')));
    const onFile = await run('job', at('swap.job.yaml'), '--out', at('orders.csv'));
    assert.equal(onFile.code, 1);
    assert.equal(onFile.out, '', 'before anything is made');
    assert.match(onFile.err, /orders\.csv is no folder that files can be put in; name another with --out\./);
  });
});
