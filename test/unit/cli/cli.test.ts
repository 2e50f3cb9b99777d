import assert from 'node:assert/strict';
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { PNG } from 'pngjs';
import { built, root, run, spawned } from '../support/command-line.ts';
import { packagedFont } from '../../fonts/font-files.ts';
import { withFsType } from '../../fonts/fs-type.ts';

const plate =
  'tagwright: 1\nshapes:\n  plate: {rectangle: [60, 20]}\npieces:\n  tag: {body: [plate], hanger: {hole: {diameter: 4, inset: 3}}}\n';

describe('The command line', function () {
  this.timeout(300_000);
  let folder: string;
  let good: string;
  let faulty: string;
  let weak: string;

  before(async () => {
    await built();
    folder = await mkdtemp(join(tmpdir(), 'tagwright-cli-'));
    good = join(folder, 'good.tag.yaml');
    faulty = join(folder, 'faulty.tag.yaml');
    weak = join(folder, 'weak-on-purpose.tag.yaml');
    await writeFile(good, plate);
    await writeFile(faulty, plate.replace('rectangle', 'rectangel'));
    const sample = await readFile(join(root, 'samples', '7-weak-on-purpose.tag.yaml'), 'utf8');
    // A shorter name is made sooner.
    await writeFile(weak, sample.replaceAll('Chives', 'Ivi'));
  });

  after(() => rm(folder, { recursive: true, force: true }));

  it('prints one object a file as JSON: finished geometry in mm, lines and columns from 1', async () => {
    const { code, out, err } = await spawned('check', good, faulty, weak, '--json');
    assert.equal(err, '');
    assert.equal(code, 1);
    const [first, second, third] = JSON.parse(out) as Record<string, unknown>[];
    assert.equal(first!['file'], good);
    assert.equal(first!['ok'], true);
    // Exact: a plate less a hole of 4 mm.
    const [piece] = first!['pieces'] as Record<string, unknown>[];
    assert.deepEqual(Object.keys(piece!), ['id', 'width', 'height', 'area', 'parts', 'holes', 'bounds', 'load']);
    assert.deepEqual(
      { ...piece, area: 0, load: undefined },
      { load: undefined, id: 'tag', width: 60, height: 20, area: 0, parts: 1, holes: 1, bounds: [-30, -10, 30, 10] },
    );
    assert.ok(Math.abs(Number(piece!['area']) - (1200 - 4 * Math.PI)) < 0.02);
    // Neither the material nor the thickness of the sheet is given.
    assert.equal((piece!['load'] as Record<string, unknown>)['kind'], 'unknown');
    assert.ok(Number((first!['timings'] as Record<string, number>)['total_ms']) > 0);

    assert.equal(second!['ok'], false);
    assert.deepEqual(second!['pieces'], []);
    const unknown = (second!['issues'] as Record<string, unknown>[]).find((issue) => issue['code'] === 'unknown-key')!;
    assert.deepEqual(unknown['range'], { start: { line: 3, column: 11 }, end: { line: 3, column: 20 } });
    assert.deepEqual(unknown['path'], ['shapes', 'plate', 'rectangel']);

    const issues = third!['issues'] as Record<string, unknown>[];
    const narrow = issues.find((issue) => 'width' in issue && (issue['points'] as unknown[]).length === 2)!;
    for (const key of ['code', 'severity', 'message', 'piece', 'path', 'range', 'points', 'width', 'fixes'])
      assert.ok(key in narrow, key);
    assert.equal(narrow['piece'], 'tag');
    assert.ok(Array.isArray(narrow['fixes']));
  });

  it('says the same without looking for fixes where they are not wanted', async () => {
    const small = join(folder, 'fixable.tag.yaml');
    await writeFile(small, plate.replace('shapes:', 'tie: {twine: 3}\nshapes:'));
    const issues = async (...how: string[]) => {
      const [{ issues: told }] = JSON.parse((await run('check', small, '--json', ...how)).out) as [
        { issues: Record<string, unknown>[] },
      ];
      return told;
    };
    const [[all], [bare]] = [await issues(), await issues('--no-fixes')];
    const { fixes, ...rest } = all!;
    assert.ok((fixes as unknown[]).length > 0);
    assert.deepEqual(bare, rest);
  });

  it('leaves with 0 for warnings, and with 1 for them when strict', async () => {
    const small = join(folder, 'small.tag.yaml');
    await writeFile(small, plate.replace('shapes:', 'tie: {twine: 3}\nshapes:'));
    const lax = await run('check', small);
    assert.equal(lax.code, 0);
    assert.match(lax.out, /small\.tag\.yaml:6:\d+: warning: .*\[hole-too-small\]/);
    assert.equal((await run('check', small, '--strict')).code, 1);
    const clean = await run('check', good, '--strict');
    assert.equal(clean.code, 0);
    assert.match(clean.out, /no problems/);
  });

  it('prints problems so that the matcher for tasks understands each', async () => {
    const manifest = JSON.parse(await readFile(join(root, 'package.json'), 'utf8')) as {
      contributes: { problemMatchers: [{ pattern: Record<string, number> & { regexp: string } }] };
    };
    const [{ pattern }] = manifest.contributes.problemMatchers;
    const { out } = await run('check', weak);
    const lines = out.trim().split('\n');
    assert.ok(lines.length >= 3, out);
    for (const line of lines) {
      const match = new RegExp(pattern.regexp).exec(line);
      assert.ok(match, line);
      const part = (name: string) => match[pattern[name]!]!;
      assert.equal(part('file'), weak);
      assert.ok(Number(part('line')) > 5 && Number(part('column')) > 0);
      assert.match(part('severity'), /^(error|warning|info)$/);
      assert.match(part('code'), /^[a-z-]+$/);
      assert.match(part('message'), /^[A-Z\d].*\.$/);
    }
  });

  it('exports whole files and leaves nothing else behind', async () => {
    const out = join(folder, 'deep', 'cut');
    const { code, out: output } = await spawned('export', good, '--to', 'svg', '--out', out);
    assert.equal(code, 0);
    assert.deepEqual(await readdir(out), ['good.svg']);
    assert.equal(output.trim(), join(out, 'good.svg'));
    const svg = await readFile(join(out, 'good.svg'), 'utf8');
    assert.match(svg, /width="60mm" height="20mm"/);
    assert.ok(svg.endsWith('</svg>\n'));
  });

  it('does not export what has errors', async () => {
    const out = join(folder, 'none');
    const { code, err } = await run('export', faulty, '--to', 'svg', '--out', out);
    assert.equal(code, 1);
    assert.match(err, /was left out; --force exports it anyway/);
    assert.deepEqual(await readdir(out), []);
  });

  it('says of which tags proofs and pictures are drafts, though nothing is wrong', async () => {
    const unfilled = join(folder, 'unfilled.tag.yaml');
    const shapes = 'shapes:\n  name: {text: "sown in {month}", font: Nunito, x_height: 3, place: {on: plate}}\n';
    await writeFile(
      unfilled,
      plate.replace('shapes:\n', shapes).replace('body: [plate]', 'body: [plate], engrave: [name]'),
    );
    const { code, err } = await run('export', unfilled, '--to', 'svg', '--out', join(folder, 'drafts'));
    assert.equal(code, 0);
    assert.equal(err.trim(), `${unfilled}: words on it are not filled in; its proof and its pictures say “Draft”.`);
    assert.equal((await run('export', good, '--to', 'svg', '--out', join(folder, 'drafts'))).err, '');
  });

  it('exports every format, with pictures as wide as is asked for', async () => {
    const out = join(folder, 'all');
    const { code, err } = await run(
      'export',
      good,
      '--to',
      'svg,dxf,pdf,png,proof,job',
      '--out',
      out,
      '--width',
      '320',
    );
    assert.equal(code, 0, err);
    const endings = ['-job.pdf', '-proof.pdf', '.dxf', '.pdf', '.png', '.svg'];
    assert.deepEqual(
      await readdir(out),
      endings.map((ending) => `good${ending}`),
    );
    assert.equal(PNG.sync.read(await readFile(join(out, 'good.png'))).width, 320);
    assert.equal((await readFile(join(out, 'good.pdf'))).subarray(0, 5).toString(), '%PDF-');
  });

  it('never writes over another file unless it is told to', async () => {
    const out = join(folder, 'again');
    const file = join(folder, 'again.tag.yaml');
    const target = join(out, 'again.svg');
    await writeFile(file, plate);
    const export_ = (...more: string[]) => run('export', file, '--to', 'svg', '--out', out, ...more);
    assert.equal((await export_()).code, 0);
    assert.equal((await export_()).code, 0, 'the same once more is no matter');
    const first = await readFile(target, 'utf8');
    await writeFile(file, plate.replace('60', '70'));
    const refused = await export_();
    assert.equal(refused.code, 1);
    assert.match(refused.err, /--overwrite/);
    assert.equal(await readFile(target, 'utf8'), first);
    assert.equal((await export_('--overwrite')).code, 0);
    assert.match(await readFile(target, 'utf8'), /width="70mm"/);
  });

  it('exports what has errors only by force, and the file says so', async () => {
    const out = join(folder, 'forced');
    const { code } = await run('export', weak, '--to', 'svg', '--out', out, '--force');
    assert.equal(code, 1);
    assert.match(await readFile(join(out, 'weak-on-purpose.svg'), 'utf8'), /DO NOT CUT/);
  });

  it('says what cutting takes', async () => {
    const file = join(folder, 'takes.tag.yaml');
    await writeFile(
      file,
      plate.replace('shapes:', 'stock: {thickness: 3, kerf: 0, density: 700}\nmachine: {cut: 10 mm/s}\nshapes:'),
    );
    const [{ takes }] = JSON.parse((await run('check', file, '--json')).out) as [{ takes: Record<string, unknown> }];
    // Exact: 160 mm round the plate and 4π round its hole; (1200 − 4π) mm² of 3 mm at 700 kg/m³.
    assert.ok(Math.abs(Number(takes['cut_length']) - 160 - 4 * Math.PI) < 0.02);
    assert.ok(Math.abs(Number(takes['weight']) - (1200 - 4 * Math.PI) * 2.1e-3) < 2e-3);
    const { seconds } = takes['time'] as { seconds: number };
    assert.ok(seconds > 17.2 && seconds < 18.5, String(seconds));
  });

  it('checks and exports every tag of a batch', async () => {
    const batch = join(folder, 'batch.tag.yaml');
    const text = plate.replace(
      'shapes:',
      'batch: [Sorrel, "Sea Kale", Rue]\nshapes:\n  word: {text: "{name}", height: 10}',
    );
    await writeFile(
      batch,
      text.replace('[plate]', '[plate], engrave: [word]').replace('inset: 3', 'inset: 3, at: left'),
    );
    const { code, out } = await run('check', batch, '--json');
    const [object] = JSON.parse(out) as { batch: Record<string, unknown>[]; issues: Record<string, unknown>[] }[];
    assert.deepEqual(
      object!.batch.map(({ name, ok, title }) => [name, ok, title]),
      [
        ['Sorrel', true, 'Sorrel'],
        ['Sea Kale', true, 'Sea Kale'],
        ['Rue', true, 'Rue'],
      ],
    );
    assert.equal(code, 0);
    assert.deepEqual(
      object!.issues.map(({ tag, code: kind }) => [tag, kind]),
      [[2, 'hole-blocked']],
    );
    const to = join(folder, 'batch');
    assert.equal((await run('export', batch, '--to', 'svg,dxf', '--out', to)).code, 0);
    const files = ['sorrel', 'sea-kale', 'rue'].flatMap((name) => [`batch-${name}.dxf`, `batch-${name}.svg`]);
    assert.deepEqual((await readdir(to)).sort(), files.sort());
    // One paper to sign for all of them.
    assert.equal((await run('export', batch, '--to', 'proof', '--out', `${to}-proof`)).code, 0);
    assert.deepEqual(await readdir(`${to}-proof`), ['batch-proof.pdf']);
    assert.equal((await run('pack', batch, '--out', `${to}.zip`)).code, 0);
    const packed = Object.keys(unzipSync(await readFile(`${to}.zip`)));
    assert.equal(packed.filter((name) => name.endsWith('/README.txt')).length, 3);
  });

  it('names every tag that has a problem, in the JSON where there are too many for a line', async () => {
    const batch = join(folder, 'named.tag.yaml');
    const rows = ['2', '1', '1', '1', '1', '1', '1', '1'].map((bar, row) => `{name: N${row}, bar: "${bar}"}`);
    await writeFile(
      batch,
      `tagwright: 1\nstock: {min_web: 1.5 mm}\nbatch: [${rows.join(', ')}]\nshapes:\n  bar: {path: "M0,0 h60 v{bar} h-60 z"}\npieces:\n  tag: {body: [bar]}\n`,
    );
    const names = ['N1', 'N2', 'N3', 'N4', 'N5', 'N6', 'N7'];
    const { out } = await run('check', batch, '--json', '--no-fixes');
    const [object] = JSON.parse(out) as { issues: { names: string[] }[] }[];
    assert.deepEqual(
      object!.issues.map((issue) => issue.names),
      [names],
    );
    const text = await run('check', batch);
    assert.match(text.out, /warning: “N1”: .* Likewise “N2”, “N3”, “N4”, “N5”, “N6” and “N7”\. \[thin-stroke\]\n$/);
    await writeFile(batch, (await readFile(batch, 'utf8')).replace('batch: [', 'batch: [{name: N8, bar: "1"}, '));
    const more = await run('check', batch);
    assert.match(more.out, /warning: “N8”: .* Likewise “N1”, “N2”, “N3”, “N4”, “N5” and 2 more\. \[thin-stroke\]\n/);
    assert.match(more.out, /: “check --json --no-fixes” lists every name of a problem, under “names”\.\n$/);
  });

  it('shares many tags among threads: each once, in order, and the same as by themselves', async () => {
    const names = Array.from({ length: 26 }, (_, index) => `Bed ${index + 1}`);
    const words = (list: readonly string[]) =>
      plate
        .replace('shapes:', `batch: [${list.join(', ')}]\nshapes:\n  word: {text: "{name}", height: ${word}}`)
        .replace('{body: [plate]', '{body: [plate], engrave: [word]');
    const word = 10;
    const whole = join(folder, 'many.tag.yaml');
    await writeFile(whole, words(names));
    const checked = await spawned('check', whole, '--json', '--no-fixes');
    const [object] = JSON.parse(checked.out) as { batch: Record<string, unknown>[] }[];
    assert.deepEqual(
      object!.batch.map(({ name }) => name),
      names,
    );
    const to = join(folder, 'many');
    const { code, out, err } = await spawned('export', whole, '--to', 'svg,dxf', '--out', to);
    assert.equal(code, 0, err);
    assert.deepEqual(
      out.trim().split('\n'),
      names.flatMap((_, index) => ['svg', 'dxf'].map((ending) => join(to, `many-bed-${index + 1}.${ending}`))),
    );
    // So few that they are made one after another.
    const few = join(folder, 'few');
    await mkdir(few);
    await writeFile(join(few, 'many.tag.yaml'), words(names.slice(10, 20)));
    await run('export', join(few, 'many.tag.yaml'), '--to', 'svg,dxf', '--out', few);
    for (const file of ['many-bed-11.svg', 'many-bed-17.svg', 'many-bed-20.dxf'])
      assert.equal(await readFile(join(to, file), 'utf8'), await readFile(join(few, file), 'utf8'), file);
    // What is wrong with one of them is said of it, and keeps the others from nothing.
    const [broken, rest] = [join(folder, 'broken.tag.yaml'), join(folder, 'rest')];
    await writeFile(
      broken,
      words(names)
        .replace('{rectangle: [60, 20]}', '{rectangle: ["{size}", 20]}')
        .replace(
          `[${names.join(', ')}]`,
          `[${names.map((name, index) => `{name: ${name}, size: ${index === 22 ? '-4' : '60'}}`).join(', ')}]`,
        ),
    );
    const partly = await spawned('export', broken, '--to', 'svg', '--out', rest);
    assert.equal(partly.code, 1);
    assert.match(partly.err, /broken\.tag\.yaml \(Bed 23\): has errors and was left out/);
    assert.equal((await readdir(rest)).length, names.length - 1);
  });

  it('packs tags of one file name under names of their own', async () => {
    const file = join(folder, 'row.tag.yaml');
    await writeFile(file, plate.replace('shapes:', 'batch: [Bed 1, Bed-1]\nshapes:'));
    const to = join(folder, 'packs');
    const { code, err } = await run('pack', file, '--out', to);
    assert.equal(code, 0, err);
    assert.deepEqual((await readdir(to)).sort(), ['row-bed-1', 'row-bed-1-2']);
    assert.ok((await readdir(join(to, 'row-bed-1-2'))).includes('row-bed-1-2.dxf'));
    assert.match(await readFile(join(to, 'row-bed-1-2', 'README.txt'), 'utf8'), /row-bed-1-2\.dxf/);
  });

  it('says once which font of a batch may not go into its packs', async () => {
    const file = join(folder, 'theirs.tag.yaml');
    // fsType 2 of the OpenType specification, OS/2 table: restricted.
    await writeFile(join(folder, 'theirs.ttf'), withFsType(await packagedFont('pacifico'), 2));
    const named = 'batch: [Ivy, Rue]\nshapes:\n  name: {text: "{name}", font: theirs.ttf, x_height: 5}';
    await writeFile(file, plate.replace('shapes:', named).replace('body: [plate]', 'body: [plate], engrave: [name]'));
    const { code, err } = await run('pack', file, '--out', join(folder, 'theirs'));
    assert.equal(code, 0, err);
    assert.equal(err.match(/The font Pacifico \(“theirs\.ttf”\) is not in the pack/g)?.length, 1, err);
    assert.ok(!(await readdir(join(folder, 'theirs', 'theirs-ivy'))).includes('fonts'));
  });

  it('shares the tags of a job among threads: of each line as many, and what cannot be made is told the same', async () => {
    // Some lines ask for the same, one for what cannot be made.
    const wanted = Array.from({ length: 32 }, (_, index) => (index === 20 ? -4 : 20 + (index % 28)));
    const sized = plate
      .replace('{rectangle: [60, 20]}', '{rectangle: ["{size}", 20]}')
      .replace('shapes:', 'stocks:\n  ply: {material: birch plywood, thickness: 3}\nstock: ply\nshapes:');
    await writeFile(join(folder, 'sized.tag.yaml'), sized);
    const job = async (lines: readonly number[]) => {
      const rows = lines.map((size, index) => `o${index + 1},${size}`).join('\n');
      await writeFile(join(folder, 'orders.csv'), `order,size\n${rows}\n`);
      const file = join(folder, 'many.job.yaml');
      await writeFile(
        file,
        'tagwright_job: 1\neffort: 0.1\ntags:\n  - {spec: sized.tag.yaml, orders: orders.csv}\nsheets:\n  ply: [{size: [300, 200]}]\n',
      );
      const { out } = await spawned('job', file, '--json', '--out', join(folder, `job-${lines.length}`));
      const [object] = JSON.parse(out) as {
        pieces: { order: string }[];
        left_out: { order: string }[];
        issues: { message: string }[];
      }[];
      return {
        orders: object!.pieces.map(({ order }) => order),
        left: object!.left_out.map(({ order }) => order),
        messages: object!.issues.map(({ message }) => message),
      };
    };
    const all = await job(wanted);
    const made = wanted.flatMap((size, index) => (size > 0 ? [`o${index + 1}`] : []));
    assert.deepEqual(all.orders.sort(), made.sort());
    assert.deepEqual(all.left, ['o21']);
    // As where it is one of few.
    const alone = await job([30, -4]);
    assert.deepEqual(alone.left, ['o2']);
    assert.deepEqual(
      all.messages.map((message) => message.replace('o21', 'o2')),
      alone.messages,
    );
  });

  it('lays all tags of a batch out on sheets, and says what they come to', async () => {
    const file = join(folder, 'swap.tag.yaml');
    const head = 'sheet: {size: [140, 60], margin: 2, copies: 2}\nbatch: [Sorrel, Rue, Dill]\nshapes:';
    await writeFile(file, plate.replace('shapes:', head));
    const to = join(folder, 'sheets');
    const { code, out, err } = await run('sheets', file, '--to', 'svg,dxf,pdf', '--out', to);
    assert.equal(code, 0, err);
    // Two across and two up: (140 − 4) / 62 and (60 − 4) / 22.
    const made = ['swap-sheet-1.dxf', 'swap-sheet-1.svg', 'swap-sheet-2.dxf', 'swap-sheet-2.svg', 'swap-sheets.pdf'];
    assert.deepEqual((await readdir(to)).sort(), made);
    assert.deepEqual(
      out.trim().split('\n').sort(),
      made.map((name) => join(to, name)),
    );
    assert.match(err, /swap\.tag\.yaml: Pieces: 6\n.*Sheets: 2 of 140 × 60 mm\n/);
    const none = await run('sheets', good, '--to', 'svg', '--out', to);
    assert.equal(none.code, 1);
    assert.match(none.err, /No sheet size given: add “sheet: \{size: \[600 mm, 400 mm\]\}”/);
    const wide = await run('sheets', file.replace('swap', 'batch'), '--to', 'svg', '--out', to);
    assert.equal(wide.code, 1);
    assert.equal((await run('sheets', file, '--to', 'svg')).code, 2);
  });

  it('packs everything into a folder or an archive', async () => {
    const out = join(folder, 'packs');
    const { code, err } = await run('pack', good, '--out', out);
    assert.equal(code, 0, err);
    const files = ['README.txt', 'good-cover.png', 'good.dxf', 'good.pdf', 'good.svg', 'good.tag.yaml'];
    assert.deepEqual(await readdir(join(out, 'good')), files);
    const archive = join(folder, 'both.zip');
    assert.equal((await run('pack', good, faulty, '--out', archive)).code, 1, 'one has errors');
    const zipped = unzipSync(await readFile(archive));
    assert.deepEqual(
      Object.keys(zipped).sort(),
      files.map((file) => `good/${file}`),
    );
    assert.deepEqual(Buffer.from(zipped['good/good.svg']!), await readFile(join(out, 'good', 'good.svg')));
  });

  it('fixes files and shows how, or only shows how', async () => {
    const file = join(folder, 'weak.tag.yaml');
    const before = await readFile(weak, 'utf8');
    await writeFile(file, before);
    const dry = await run('fix', file, '--dry-run');
    assert.equal(dry.code, 0, dry.err);
    assert.match(dry.out, /^@@ .* @@$/m);
    assert.match(dry.out, /^-\s+hanger: .*diameter: 2\.8 mm/m);
    assert.match(dry.out, /^\+\s+hanger: .*diameter: 5 mm/m);
    assert.equal(await readFile(file, 'utf8'), before, 'nothing is written');
    const one = await run('fix', file, '--only', 'hole-too-small');
    assert.equal(one.code, 1, 'parts still fall out');
    assert.equal(await readFile(file, 'utf8'), before.replace('diameter: 2.8 mm', 'diameter: 5 mm'));
    const all = await run('fix', file);
    assert.equal(all.code, 0);
    assert.match(all.err, /Slide the letters of “name” together|Join the parts of “name” with straps/);
    assert.match(all.err, /left as it is: thin-stroke\. Even the mildest fix changes the look too much/);
    assert.doesNotMatch((await run('check', file)).out, /error/);
    const again = await run('fix', file);
    assert.doesNotMatch(again.out, /@@/);
  });

  it('leads from a job to the command for jobs', async () => {
    const job = join(folder, 'swap.job.yaml');
    await writeFile(job, 'tagwright_job: 1\ntags:\n  - {spec: good.tag.yaml}\n');
    for (const command of ['check', 'sheets']) {
      const { code, err } = await run(command, good, job);
      assert.equal(code, 2);
      assert.match(err, /swap\.job\.yaml is a job: “tagwright job .*swap\.job\.yaml --out FOLDER”/);
      assert.doesNotMatch(err, /Usage/);
    }
  });

  it('weighs problems as it is told', async () => {
    const off = ['loose-part=off', 'thin-stroke=error', 'hole-too-small=info'].flatMap((each) => ['--severity', each]);
    const { code, out } = await run('check', weak, ...off);
    assert.equal(code, 1);
    assert.doesNotMatch(out, /loose-part/);
    assert.match(out, /error: .*\[thin-stroke\]/);
    assert.match(out, /info: .*\[hole-too-small\]/);
  });

  it('writes test pieces for a stock of a workshop’s file, and their cut files', async () => {
    const shop = join(folder, 'seeds.workshop.yaml');
    await writeFile(
      shop,
      'tagwright: 1\nstocks:\n  ply3: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm, min_web: 1.2 mm}\n',
    );
    const out = join(folder, 'test-pieces');
    const args = ['test-piece', shop, '--stock', 'ply3', '--only', 'web,holes', '--out', out];
    const first = await run(...args);
    assert.equal(first.code, 0, first.err + first.out);
    const written = (await readdir(out)).sort();
    assert.deepEqual(
      written.filter((name) => name.endsWith('.yaml')),
      ['holes-ply3.tag.yaml', 'web-ply3.tag.yaml'],
    );
    assert.equal(written.filter((name) => name.endsWith('.svg')).length, 2);
    const text = await readFile(join(out, 'web-ply3.tag.yaml'), 'utf8');
    assert.match(text, /\nuse: "\.\.\/seeds\.workshop\.yaml"\nstock: ply3\n/);
    await writeFile(join(out, 'web-ply3.tag.yaml'), `${text}# mine\n`);
    assert.equal((await run(...args)).code, 1, 'what is there stays');
    assert.match(await readFile(join(out, 'web-ply3.tag.yaml'), 'utf8'), /# mine/);
    const wrong = await run('test-piece', shop, '--stock', 'ply3', '--only', 'webs', '--out', out);
    assert.equal(wrong.code, 2);
    assert.match(wrong.err, /There is no test piece “webs”/);
    assert.equal((await run('test-piece', shop)).code, 2);
  });

  it('records what was approved, and reports what has changed since', async () => {
    const beds = join(folder, 'beds.tag.yaml');
    const record = join(folder, 'beds.approved.json');
    const written = plate
      .replace('tagwright: 1', 'tagwright: 1\nbatch: [Rue, Dill]')
      .replace('plate: ', 'name: {text: "{name}", font: Nunito, x_height: 3.5, place: {on: plate}}\n  plate: ')
      .replace('body: [plate]', 'body: [plate], engrave: [name]');
    await writeFile(beds, written);
    assert.equal((await run('approve', faulty)).code, 1);
    assert.match((await run('approve', faulty)).err, /not recorded; what has errors cannot be approved/);
    assert.equal((await run('approve', beds, '--on', '2026-02-30')).code, 2);
    const first = await run('approve', beds, '--on', '2026-02-28', '--note', 'by post');
    assert.deepEqual([first.code, first.out.trim()], [0, record]);
    assert.equal(await readFile(beds, 'utf8'), written.replace('1\n', '1\napproved: beds.approved.json\n'));
    assert.match((await run('check', beds)).out, /no problems/);
    await writeFile(
      beds,
      (await readFile(beds, 'utf8')).replace('Dill', 'Dale').replace('x_height: 3.5', 'x_height: 4'),
    );
    const { code, out } = await run('check', beds);
    assert.equal(code, 0);
    assert.match(
      out,
      /:2:11: warning: “Rue”: Not as approved on 2026-02-28: its engraving differs\. \[not-as-approved\]/,
    );
    assert.match(out, /:2:11: warning: “Dale” is not among the tags that were approved on 2026-02-28\. \[/);
    const kept = await readFile(record, 'utf8');
    const refused = await run('approve', beds, '--on', '2026-03-01');
    assert.equal(refused.code, 1);
    assert.match(refused.err, /exists and differs; --overwrite replaces it/);
    assert.equal(await readFile(record, 'utf8'), kept);
    assert.equal((await run('approve', beds, '--on', '2026-03-01', '--overwrite')).code, 0);
    assert.match((await run('check', beds)).out, /no problems/);
    // Whoever buys the files gets neither the line nor the note.
    const packed = join(folder, 'beds-pack');
    await run('pack', beds, '--out', packed);
    const spec = await readFile(join(packed, 'beds-rue', 'beds-rue.tag.yaml'), 'utf8');
    assert.doesNotMatch(spec, /approved/);
  });

  it('explains itself and leaves with 2 when it is used wrongly', async () => {
    const wrong = [
      ['check'],
      ['chekc', good],
      ['check', join(folder, 'nowhere.tag.yaml')],
      ['check', good, '--fast'],
      ['check', good, '--severity', 'loose-part=high'],
      ['check', good, '--severity', 'lose-part=off'],
      ['fix', good, '--only', 'lose-part'],
      ['export', good, '--to', 'svg'],
      ['export', good, '--to', 'gif', '--out', folder],
      ['sheets', good, '--to', 'proof', '--out', folder],
      ['export', good, '--to', 'png', '--out', folder, '--width', '12'],
      ['pack', good],
    ];
    for (const args of wrong) {
      const { code, err, out } = await run(...args);
      assert.equal(code, 2, args.join(' '));
      assert.match(err, /Usage:/);
      assert.equal(out, '');
    }
    assert.equal((await spawned('pack', good)).code, 2);
    const help = await spawned('--help');
    assert.equal(help.code, 0);
    assert.match(help.out, /tagwright check FILE/);
  });
});
