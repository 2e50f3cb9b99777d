import assert from 'node:assert/strict';
import { jobOf } from '../../../src/export/job/job.ts';
import type { Job } from '../../../src/export/job/job.ts';
import { pageSvg } from '../../../src/export/page/page-svg.ts';
import { toBatchProof, toPdf, toProof } from '../../../src/export/pdf/pdf.ts';
import { isGrainUpright } from '../../../src/tag/grain-direction.ts';
import { tagProof } from '../../../src/export/proof/tag-proof.ts';
import { boundsOf } from '../../../src/geometry/measure.ts';
import { proofPage } from '../../../src/export/proof/proof.ts';
import { packReadme } from '../../../src/export/readme.ts';
import { make, newEngine } from '../support/engine.ts';
import { readPdf } from '../support/file-readers.ts';
import { hardSpecs } from '../support/hard-specs.ts';
import { samples } from '../support/samples.ts';
import { tools } from '../support/tools.ts';

const engine = newEngine();

async function jobFrom(text: string): Promise<Job> {
  return jobOf((await make(text)).report)!;
}

const specs: readonly (readonly [name: string, text: string])[] = [
  ...samples.map(({ name, text }) => [name, text] as const),
  ...Object.entries(hardSpecs),
];

/** What is said at the bench and means nothing, or the wrong thing, to who buys a tag. Our own list. */
const bench =
  /\b(kerfs?|travel|webs?|min_web|min\.?|minimum|necks?|scor(e|ed|es|ing)|machines?|costs?|prices?|EUR|beam|laser|passes|mm\/s|seconds?|tabs?|bridges?|straps?|counters?|hangers?|slots?|stock|sheets?|interval|compensat\w*|operations?|cut-(inner|outer)|warnings?|errors?|DO NOT CUT|lines? \d+|parts? of|spec|YAML|SVG|DXF|plies|inset|sink|burn\w*|scorch\w*|power|speed|fumes)\b|#[0-9a-f]{6}\b/i;

/** What the user wrote is the user's, and so is what the makers of fonts say of them. */
function without(text: string, { tag, fonts }: Job): string {
  const own = [
    tag.title,
    ...tag.pieces.map(({ title }) => title),
    ...[...tag.made.keys()].flatMap(({ generator }) => (generator.kind === 'text' ? generator.text.split('\n') : [])),
    ...fonts.flatMap(({ family, licence }) => [licence.copyright, licence.text, licence.url, family]),
  ];
  const plain = text.replace(/\s+/g, ' ');
  return own
    .filter((each) => each !== undefined && each !== '')
    .sort((a, b) => b!.length - a!.length)
    .reduce<string>((rest, each) => rest.replaceAll(each!.replace(/\s+/g, ' ').trim(), '…'), plain);
}

function assertForCustomers(text: string, job: Job, what: string): void {
  const wording = without(text, job);
  const found = bench.exec(wording);
  assert.equal(
    found?.[0],
    undefined,
    `${what} says “${found?.[0]}” in: ${wording.slice(Math.max(0, (found?.index ?? 0) - 60))}`,
  );
}

describe('The picture of a proof', () => {
  it('has shadows of what they fall on: grey on the table, and on a layer below no farther than its edge', async () => {
    const wide = (front: number) => `tagwright: 1
stock: {material: birch plywood, thickness: 3}
shapes: {plate: {rectangle: [60, 40]}, bar: {rectangle: [${front}, 10]}}
pieces: {back: {body: [plate]}, front: {body: [bar], glue_to: back}}
`;
    const fills = async (front: number) => {
      const page = await proofPage(await jobFrom(wide(front)), tools, true);
      const onTable = page.drawings.flatMap((each) => ('path' in each && each.fill ? [each.fill] : []));
      const clipped = page.drawings.flatMap((each) => ('clip' in each ? [each] : []));
      return { onTable, clipped };
    };
    const grey = /^#(..)\1\1$/i;
    const { onTable: over, clipped } = await fills(90);
    const { onTable: within } = await fills(30);
    // Faces, edges and the frame of the picture are the same in both.
    const [tones, others] = [within.filter((fill) => grey.test(fill)), within.filter((fill) => !grey.test(fill))];
    assert.deepEqual(new Set(over.filter((fill) => !grey.test(fill))), new Set(others));
    assert.equal(over.filter((fill) => grey.test(fill)).length - tones.length, 3, 'one shadow of three tones more');
    const onBack = clipped.filter(({ drawings }) => drawings.every(({ fill }) => fill !== undefined));
    assert.equal(onBack.length, 1);
    const xs = onBack[0]!.clip.flatMap((point) => ('x' in point ? [point.x] : []));
    const ys = onBack[0]!.clip.flatMap((point) => ('y' in point ? [point.y] : []));
    const extent = (all: readonly number[]) => Math.max(...all) - Math.min(...all);
    assert.ok(Math.abs(extent(xs) / extent(ys) - 60 / 40) < 1e-3, 'clipped to the plate');
  });
});

describe('What a customer reads', () => {
  for (const [name, text] of specs) {
    it(`has no word of the workshop: ${name}`, async () => {
      const job = await jobFrom(text);
      const page = await proofPage(job, tools, true);
      const words = page.words.map((each) => each.text).join(' ');
      assert.ok(words.length > 100);
      assertForCustomers(words, job, 'the picture');
      assert.doesNotMatch(pageSvg(page), /<text|<title|<desc/, 'a picture is drawn, not written');
      const proof = await readPdf(await toProof(job, tools));
      assert.equal(proof.pages.length, 1);
      assertForCustomers(proof.pages[0]!.text, job, 'the proof, by pdfjs-dist');
      assertForCustomers(proof.subject, job, 'the proof’s subject');
      const both = await readPdf(await toPdf(job, tools));
      assert.equal(both.pages.length, 2);
      assertForCustomers(both.pages[0]!.text, job, 'the first page of the PDF, by pdfjs-dist');
      assertForCustomers(both.subject, job, 'the PDF’s subject');
      // The note of a pack is for who cuts the files, but for what it says of the tag.
      const note = packReadme(job, 'x').replace(/\n {2}/g, ' ');
      for (const title of ['The tag', 'For whoever gets the tag']) {
        const section = note.split(/\n\n(?=[^\n]+\n-+\n)/).find((each) => each.startsWith(`${title}\n`));
        assert.ok(section, title);
        assertForCustomers(section, job, `the note of a pack, “${title}”`);
      }
      assert.doesNotMatch(
        without(note, job),
        /\b(costs?|prices?|EUR|mm\/s|machines?|warnings?|errors?|power|speed)\b/i,
      );
    }).timeout(180_000);
  }

  it('would be caught at it', async () => {
    const job = await jobFrom(samples[0]!.text);
    for (const phrase of [
      'Kerf 0.16 mm',
      'minimum 1.50 mm',
      '2 min 05 s',
      'Travel 50 mm',
      'Material cost 2.00',
      'weak web',
    ])
      assert.throws(() => {
        assertForCustomers(phrase, job, 'this');
      });
  });
});

describe('The page of a proof', () => {
  it('is as high as its paper where layers, words and small pictures have room beside each other', async () => {
    for (const size of [
      [4, 2],
      [4, 3],
      [3, 3],
    ]) {
      const text = `tagwright: 1
units: in
tie: {twine: 0.08}
stock: {material: birch plywood, thickness: 1/8 in}
shapes:
  plate: {rectangle: [${size.join(', ')}]}
  name: {text: Rue, font: Pacifico, x_height: 0.5}
  first: {text: est. 2026, x_height: 0.1, place: {on: plate, at: bottom, margin: 0.2}}
  second: {text: by hand, x_height: 0.1, place: {on: plate, at: top, margin: 0.5}}
pieces:
  back: {body: plate, engrave: [first, second], hanger: {hole: {at: top}}}
  letters: {body: name, glue_to: back}
`;
      // Letter paper, ANSI/ASME Y14.1: 8.5 by 11 inches.
      assert.equal((await proofPage(await jobFrom(text), tools)).height, 11 * 25.4, size.join());
    }
  });
});

describe('The proof of a batch', () => {
  const batch = (rows: string, name = '"{name}"') =>
    `tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm}\nbatch: [${rows}]\ntitle: "Seed label, {name}"\nshapes:\n  plate: {rectangle: [60, 30], radius: 4}\n  word: {text: ${name}, font: Nunito, height: 6}\n  long: {around: word, by: 8}\npieces:\n  tag: {body: [BODY], engrave: [word], hanger: {hole: {at: top, diameter: 3 mm}}}\n`;
  const jobsOf = async (text: string) => {
    const { report } = await make(text);
    const rows = report.batch!.rows.map((_, row) => engine.compute(text, { locate: () => undefined, row }));
    return { title: report.batch!.title, jobs: (await Promise.all(rows)).map((each) => jobOf(each)!) };
  };
  const proofsOf = (jobs: readonly Job[]) => Promise.all(jobs.map((job) => tagProof(job, tools)));
  const readProof = async (title: string, jobs: readonly Job[]) => {
    const { pages } = await readPdf((await toBatchProof(title, await proofsOf(jobs), tools))!);
    return {
      pages,
      text: pages
        .map(({ text }) => text)
        .join(' ')
        .replace(/\s+/g, ' '),
    };
  };
  const count = (text: string, what: RegExp) => [...text.matchAll(what)].length;

  it('shows every tag with its words and its own size, and has one place to sign', async () => {
    const { title, jobs } = await jobsOf(batch('Sorrel, Borage, Sea Kale, Rue', '"{name}"').replace('BODY', 'long'));
    const { text, pages } = await readProof(title, jobs);
    for (const name of ['Seed label', 'Sorrel', 'Borage', 'Sea Kale', 'Rue', '4 tags', 'Birch plywood'])
      assert.ok(text.includes(name), `${name} in ${text}`);
    // Sizes by the tags themselves.
    for (const { tag } of jobs) {
      const { minX, maxX } = boundsOf(tag.pieces[0]!.region)!;
      assert.match(text, new RegExp(`Size ${Number((maxX - minX).toFixed(1))} mm wide`));
    }
    assert.equal(count(text, /sign here/g), 1);
    assert.equal(count(text, /Birch plywood/g), 1, 'what all have is said once');
    assert.ok(pages.length <= 2, String(pages.length));
    for (const job of jobs)
      assertForCustomers(text.replaceAll(/Sorrel|Borage|Sea Kale|Rue|Seed label/g, '…'), job, 'batch');
  });

  it('goes over as many pages as it needs, says one size once, and is a draft if one of its tags is', async () => {
    const names = Array.from({ length: 14 }, (_, index) => `Bed ${index + 1}`);
    const { title, jobs } = await jobsOf(batch(names.join(', ')).replace('BODY', 'plate'));
    const { text, pages } = await readProof(title, jobs);
    assert.ok(pages.length >= 2);
    for (const name of names) assert.ok(text.includes(name), name);
    assert.equal(count(text, /60 mm wide, 30 mm high, 3 mm thick/g), 1);
    const faulty = {
      ...jobs[3]!,
      issues: [{ code: 'loose-part', severity: 'error', message: '', path: [], range: { start: 0, end: 0 } }],
    } as Job;
    const draft = await readProof(title, [jobs[0]!, faulty]);
    assert.match(draft.text, /Draft: not ready/);
    assert.equal(count(draft.text, /sign here/g), 0);
    assert.equal(await toBatchProof(title, [], tools), undefined);
  });

  it('is the same of what another thread hands over, and has the grain of sticks along them', async () => {
    const text =
      'tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm}\nbatch: [Rue, 韭菜]\ntitle: "Bed of {name}"\nshapes:\n  plate: {rectangle: [60, 30]}\n  word: {text: "{name}", font: Nunito, height: 6}\n  foot: {stick: {carries: plate, towards: down, length: 40, width: 8}}\npieces:\n  tag: {body: [plate, foot], engrave: [word]}\n';
    const { title, jobs } = await jobsOf(text);
    const proofs = await proofsOf(jobs);
    assert.ok(proofs.every(({ tag }) => isGrainUpright(tag.pieces[0]!, tag)));
    assert.deepEqual(
      await toBatchProof(title, structuredClone(proofs), tools),
      await toBatchProof(title, proofs, tools),
    );
  });
});
