/** What a single piece takes: the way of the beam, time, sheet and weight, each where it is known. */

import { takesOf } from '../measure/takes.ts';
import { planCuts } from '../output/cut-plan.ts';
import { takesFacts } from '../output/proof-facts.ts';
import type { Fact } from '../output/proof-facts.ts';
import type { Piece, Tag } from '../tag/tag.ts';

/** Planning takes longer than anything else that is told of a piece, and is asked for twice. */
const known = new WeakMap<Tag, Map<string, readonly Fact[]>>();

export function pieceTakes(tag: Tag, piece: Piece): readonly Fact[] {
  const facts = known.get(tag) ?? new Map<string, readonly Fact[]>();
  known.set(tag, facts);
  const found = facts.get(piece.id);
  if (found) return found;
  const alone = { ...tag, pieces: [piece] };
  const plan = planCuts(alone);
  const taken = plan ? takesFacts(takesOf(alone, plan), tag.units) : [];
  facts.set(piece.id, taken);
  return taken;
}

/** The most telling of it, short enough for a line above the piece. */
export function takesLine(facts: readonly Fact[]): string {
  const value = (name: string) => facts.find((fact) => fact.name === name)?.value;
  const cut = value('Cut');
  const parts = [cut === undefined ? undefined : `cut ${cut}`, value('Machine'), value('Weight')];
  return parts.filter((part) => part !== undefined).join(' · ');
}
