/** What the proof of a batch says of one tag, as plain data: the thread that makes the tag hands it over. */

import { isDraft } from '../job/job.ts';
import type { Job, Tools } from '../job/job.ts';
import { outlinesOnly } from '../../tag/outlines-only.ts';
import type { Tag } from '../../tag/tag.ts';
import { wordsOn } from '../words/words-on.ts';
import { proofFacts } from './proof-facts.ts';
import type { ProofFact } from './proof-facts.ts';
import { speltLines } from './proof-words.ts';
import type { SpeltLine } from './proof-words.ts';

export interface TagProof {
  /** As far as its picture needs it. */
  readonly tag: Tag;
  readonly words: readonly SpeltLine[];
  readonly facts: readonly ProofFact[];
  readonly isDraft: boolean;
}

export async function tagProof(job: Pick<Job, 'tag' | 'fonts' | 'issues'>, tools: Tools): Promise<TagProof> {
  const captions = await tools.captions(600);
  return {
    tag: pictured(job.tag),
    words: wordsOn(job).flatMap((words) => speltLines(words, captions)),
    facts: proofFacts(job.tag),
    isDraft: isDraft(job),
  };
}

/** The grain of a piece goes by the shapes that it is made of. */
function pictured(tag: Tag): Tag {
  const { pieces, ...rest } = outlinesOnly(tag);
  const sources = (index: number) =>
    tag.pieces[index]!.sources.map(({ use, shape, entry, path }) => ({ use, shape, entry, path, region: [] }));
  return { ...rest, pieces: pieces.map((piece, index) => ({ ...piece, sources: sources(index) })) };
}
