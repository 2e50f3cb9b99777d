import type { TagResult } from '../service/results.ts';
import { gripsOf, type Grip } from '../../scene/grips.ts';
import { pieceScales } from '../../scene/piece-scale.ts';

/** Grips for what is drawn; none while the text is broken, as no change can be tried on it then. */
export function gripsIn({ tag, model, stale, report }: TagResult): Grip[] {
  if (!tag || !model || stale) return [];
  const scales = pieceScales(tag, model);
  return gripsOf(model, report.source, (piece) => scales.get(piece) ?? 1);
}
