/** Decides whether a ring that moves reads as part of the lettering that it hangs, and whether it did so before. */

import { samePath, valueAt } from '../core/values.ts';
import { ringReads } from '../checks/measures/ring-reads.ts';
import type { Report } from '../engine/engine.ts';
import type { ReadAs } from '../tag/hanger/reading.ts';
import type { PlacedHanger } from '../tag/tag.ts';
import { movedHanger } from './moved-hangers.ts';

/** So a ring is hardly taken for a part of the word. */
const harmless: ReadonlySet<ReadAs> = new Set<ReadAs>(['dot', 'initial', 'loop']);

/** A ring that moves by less than this share of its size stays where it was (our own judgement). */
const sameShare = 0.05;

/** One that moves by more than this share is in another place, where nobody has looked at it (our own judgement). */
const farShare = 1;

/** One that nobody has moved stands at another part of a letter once it is further off than this share (our own judgement). */
const jumpShare = 0.5;

/** Whether no ring reads as something that it did not read as before, or covers a letter that it did not. */
export function ringsReadAsWell(before: Report, after: Report): boolean {
  return (before.tag?.pieces ?? []).every((was) => {
    const is = after.tag?.pieces.find(({ id }) => id === was.id);
    return was.hangers.every((ring, index) => {
      const now = is?.hangers[index];
      if (ring.kind !== 'ring' || now?.kind !== 'ring') return true;
      const known = takenFor(ring);
      return takenFor(now).every((each) => known.includes(each));
    });
  });
}

/** Whether a ring is moved to another place altogether, or reads as part of the lettering at its new one, as well or as badly as before. */
export function isMovedAmongLetters(before: Report, after: Report): boolean {
  const moved = movedHanger(before, after, sameShare);
  if (!moved) return false;
  if (movedHanger(before, after, farShare)?.kind === 'ring') return true;
  const rings = (after.tag?.pieces ?? []).flatMap(({ hangers }) => hangers);
  return rings.some((ring) => samePath(ring.path, moved.path) && takenFor(ring).length > 0);
}

/** Whether a ring that is written as it was stands in another place of its lettering, as one placed automatically does after a change of the letters. */
export function ringJumps(before: Report, after: Report): boolean {
  const moved = movedHanger(before, after, jumpShare);
  return moved?.kind === 'ring' && written(before, moved) === written(after, moved);
}

const written = ({ source }: Report, { path }: PlacedHanger): string => JSON.stringify(valueAt(source.value, path));

function takenFor(ring: PlacedHanger): string[] {
  const read = ringReads(ring).filter((each) => !harmless.has(each));
  return ring.covers ? [...read, `over ${ring.covers}`] : read;
}
