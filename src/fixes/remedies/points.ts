/** Remedies that blunt a sharp point. */

import { samePath } from '../../core/values.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeTitle, replacing, setting, shapeAt, valueAt, specLength } from '../candidate.ts';
import { growing, isCutThrough } from './letter-changes.ts';

/** Half the width below which a point is thin: grown by this, none is. */
const radiusMm = 0.4;

/** Tip angles of an arrow that hold, in degrees. */
const tipsDegrees = [20, 25, 30, 40];

export function blunter(at: Case): Remedy[] {
  const shape = shapeAt(at, at.issue.path);
  if (!shape) return [];
  const { kerf } = at.tag.stock;
  const radius = Math.max(radiusMm, 2 * kerf);
  const { generator } = shape;
  // Beside what is cut through, the points are the plate's.
  const way = isCutThrough(at, shape) ? -1 : 1;
  const blunt: Remedy = {
    words: `Make the tip of ${shapeTitle(shape)} blunter`,
    candidates:
      generator.kind === 'arrow'
        ? tipsDegrees
            .filter((tip) => tip > generator.tipDegrees)
            .flatMap((tip) => setting(at, [...shape.path, 'arrow'], 'tip', String(tip)))
        : [],
  };
  return [
    ...roundedPoints(at, shape.path, way * radius),
    growing(
      at,
      shape,
      [0.25, 0.5, 0.75, 1].map((share) => way * share * radius),
    ),
    blunt,
  ];
}

/**
 * Shrinks and regrows the shape: whatever is narrower than twice the radius goes, and everything else stays. With a negative
 * radius the other way round, for what is cut through.
 */
function roundedPoints(at: Case, path: Case['issue']['path'], radius: number): Remedy[] {
  const piece = at.model.pieces.find(({ id }) => id === at.issue.piece);
  const entry = [...(piece?.body ?? []), ...(piece?.cut ?? [])].find(({ shape }) => samePath(shape.path, path));
  const name = entry && valueAt(at, entry.path);
  if (!entry || typeof name !== 'string') return [];
  const { units } = at.tag;
  const [first, then] = [specLength(-radius, units), specLength(radius, units)];
  const text = `{from: {from: ${name}, grow: ${first}}, grow: ${then}}`;
  return [
    {
      words: `Round off the points ${radius > 0 ? 'of' : 'beside'} ${shapeTitle(entry.shape)}`,
      candidates: [
        { description: `radius ${specLength(Math.abs(radius), units)}`, edits: [replacing(at, entry.path, text)] },
      ],
    },
  ];
}
