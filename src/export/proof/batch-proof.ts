/** One proof for all tags of a batch: each with its picture, its words and its size, and one place to sign. */

import { counted } from '../../core/units.ts';
import { draftNote } from '../job/job.ts';
import type { Tools } from '../job/job.ts';
import { Flow, papers } from '../page/flow.ts';
import { columnWidth, paged } from '../page/paged.ts';
import type { Page } from '../page/page.ts';
import { proofPicture } from '../pictures/proof-picture.ts';
import { drawWordsBriefly } from './proof-words.ts';
import type { ProofFact } from './proof-facts.ts';
import { drawBar, writeFacts, writeFoot } from './proof.ts';
import type { TagProof } from './tag-proof.ts';

const marginMm = 14;
const columns = 2;

/** Height of a picture at most, in mm. */
const mostPictureMm = 60;

const quiet = '#666666';
const red = '#B00020';

/** `title`: of the batch. */
export async function batchProofPages(
  title: string,
  proofs: readonly [TagProof, ...TagProof[]],
  tools: Tools,
): Promise<Page[]> {
  const [{ tag }] = proofs;
  const paper = { ...papers[tag.units], margin: marginMm };
  const faces = { plain: await tools.captions(600), bold: await tools.captions(800) };
  const begin = () => new Flow(faces, marginMm, columnWidth(paper, columns));
  const keys = proofs.map(({ facts }) => new Set(facts.map(keyOf)));
  const isShared = (fact: ProofFact) => keys.every((own) => own.has(keyOf(fact)));
  const isOfDraft = proofs.some((proof) => proof.isDraft);
  const head = begin();
  head.write('Proof', { size: 3.2, fill: quiet });
  if (head.canWrite(title)) head.write(title, { size: title.length > 40 ? 4.5 : 6, bold: true });
  if (isOfDraft) head.write(draftNote, { fill: red, bold: true });
  head.skip(1);
  writeFacts(head, [
    { name: 'Names', value: counted(proofs.length, 'tag') },
    ...proofs[0].facts.filter(isShared).map(ofEach),
  ]);
  head.skip(5);
  const bar = drawBar(head, tag.units);
  head.skip(1.5);
  head.write(`Shown at true size when the bar is ${bar} long, but where another scale is given.`, {
    size: 2.8,
    fill: quiet,
  });
  head.skip(4);
  const blocks = proofs.map((proof) => {
    const flow = begin();
    drawPicture(flow, proof);
    drawWordsBriefly(flow, proof.words);
    flow.skip(1);
    writeFacts(
      flow,
      proof.facts.filter((fact) => !isShared(fact)),
    );
    flow.skip(7);
    return flow;
  });
  const foot = begin();
  writeFoot(foot, tag, isOfDraft);
  return paged([head, ...blocks, foot], paper, title, columns);
}

function keyOf({ name, value }: ProofFact): string {
  return JSON.stringify([name, value]);
}

function ofEach({ name, ...fact }: ProofFact): ProofFact {
  return { ...fact, name: name === 'How many' ? 'How many of each' : name };
}

function drawPicture(flow: Flow, { tag }: TagProof): void {
  const { width, page, left, faces } = flow;
  const picture = proofPicture(tag, { width, height: mostPictureMm, most: 1 });
  if (!picture) return;
  picture.draw(page, left, flow.y, faces.plain);
  flow.skip(picture.height);
  if (picture.scale < 1 - 1e-9)
    flow.write(`Shown at ${(100 * picture.scale).toFixed(0)} %`, { size: 2.8, fill: quiet });
  flow.skip(1);
}
