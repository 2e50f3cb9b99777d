import assert from 'node:assert/strict';
import { jobOf } from '../../../src/export/job/job.ts';
import type { Job } from '../../../src/export/job/job.ts';
import { pageSvg } from '../../../src/export/page/page-svg.ts';
import { toPdf, toProof } from '../../../src/export/pdf/pdf.ts';
import { proofPage } from '../../../src/export/proof/proof.ts';
import { packReadme } from '../../../src/export/readme.ts';
import { make } from '../support/engine.ts';
import { readPdf } from '../support/file-readers.ts';
import { hardSpecs } from '../support/hard-specs.ts';
import { samples } from '../support/samples.ts';
import { tools } from '../support/tools.ts';

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
      // Names of files end in what kind they are.
      const note = packReadme(job, 'x').replace(/x(-job)?\.(svg|dxf|pdf|png)/g, '…');
      assertForCustomers(note.replace(/\n {2}/g, ' '), job, 'the note of a pack');
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
