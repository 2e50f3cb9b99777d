/** One proof for all tags of a batch: each with its picture, its words and its size, and one place to sign. */

import { counted } from '../../core/units.ts';
import { draftNote, isDraft } from '../job/job.ts';
import type { Job, Tools } from '../job/job.ts';
import { Flow, papers } from '../page/flow.ts';
import { columnWidth, paged } from '../page/paged.ts';
import type { Page } from '../page/page.ts';
import { proofPicture } from '../pictures/proof-picture.ts';
import { drawWordsBriefly } from './proof-words.ts';
import { proofFacts } from './proof-facts.ts';
import type { ProofFact } from './proof-facts.ts';
import { drawBar, writeFacts, writeFoot } from './proof.ts';

const marginMm = 14;
const columns = 2;

/** Height of a picture at most, in mm. */
const mostPictureMm = 60;

const quiet = '#666666';
const red = '#B00020';

/** What is on the proof of one tag. */
export type ProofJob = Pick<Job, 'tag' | 'fonts' | 'issues' | 'plan'>;

/** `title`: of the batch. */
export async function batchProofPages(
  title: string,
  jobs: readonly [ProofJob, ...ProofJob[]],
  tools: Tools,
): Promise<Page[]> {
  const [{ tag }] = jobs;
  const paper = { ...papers[tag.units], margin: marginMm };
  const faces = { plain: await tools.captions(600), bold: await tools.captions(800) };
  const begin = () => new Flow(faces, marginMm, columnWidth(paper, columns));
  const facts = jobs.map((job) => proofFacts(job.tag));
  const keys = facts.map((own) => new Set(own.map(keyOf)));
  const isShared = (fact: ProofFact) => keys.every((own) => own.has(keyOf(fact)));
  const isOfDraft = jobs.some(isDraft);
  const head = begin();
  head.write('Proof', { size: 3.2, fill: quiet });
  if (head.canWrite(title)) head.write(title, { size: title.length > 40 ? 4.5 : 6, bold: true });
  if (isOfDraft) head.write(draftNote, { fill: red, bold: true });
  head.skip(1);
  writeFacts(head, [{ name: 'Names', value: counted(jobs.length, 'tag') }, ...facts[0]!.filter(isShared).map(ofEach)]);
  head.skip(5);
  const bar = drawBar(head, tag.units);
  head.skip(1.5);
  head.write(`Shown at true size when the bar is ${bar} long, but where another scale is given.`, {
    size: 2.8,
    fill: quiet,
  });
  head.skip(4);
  const blocks = jobs.map((job, index) => {
    const flow = begin();
    drawPicture(flow, job);
    drawWordsBriefly(flow, job);
    flow.skip(1);
    writeFacts(
      flow,
      facts[index]!.filter((fact) => !isShared(fact)),
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

function drawPicture(flow: Flow, { tag }: ProofJob): void {
  const { width, page, left, faces } = flow;
  const picture = proofPicture(tag, { width, height: mostPictureMm, most: 1 });
  if (!picture) return;
  picture.draw(page, left, flow.y, faces.plain);
  flow.skip(picture.height);
  if (picture.scale < 1 - 1e-9)
    flow.write(`Shown at ${(100 * picture.scale).toFixed(0)} %`, { size: 2.8, fill: quiet });
  flow.skip(1);
}
