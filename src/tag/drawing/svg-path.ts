/** SVG path data as curves. The only file that imports svgpath. */

import svgpath from 'svgpath';
import type { CurveCommand, CurvePath } from '../../geometry/curves.ts';

/** Most commands of a path; a tag's drawing has hundreds. */
const mostCommands = 50_000;

export type PathResult = { readonly curves: CurvePath } | { readonly problem: string };

/** The parser's error in the words of someone who writes a path; its own words never reach a user. */
function plainProblem(problem: string): string {
  const [, place] = /\(at pos (\d+)\)$/.exec(problem) ?? [];
  const where = place === undefined ? '' : ` at character ${Number(place) + 1}`;
  if (/string should start/.test(problem)) return 'it must start with M or m';
  if (/bad command/.test(problem)) return `there is an unknown command${where}`;
  if (/missed param/.test(problem)) return `a number is missing${where}`;
  if (/arc flag/.test(problem)) return `the flag of an arc${where} must be 0 or 1`;
  return `there is a bad number${where}`;
}

/**
 * SVG path data (SVG 1.1 section 8.3, y down) as curves in mm with y up.
 * @param transform SVG `transform` values to apply, innermost first.
 */
export function parseSvgPath(data: string, mmPerUnit: number, transforms: readonly string[] = []): PathResult {
  let path = svgpath(data);
  const problem = (path as unknown as { err?: string }).err;
  if (problem) return { problem: plainProblem(problem) };
  // Arcs go first: a mirrored one comes out turned the wrong way (svgpath 2.6 flips its sweep flag to a '0' that counts
  // as 1).
  path = path.abs().unshort().unarc();
  for (const transform of transforms) path = path.transform(transform);
  path = path.scale(mmPerUnit, -mmPerUnit);
  const curves: CurveCommand[] = [];
  let failed: string | undefined;
  let at = { x: 0, y: 0 };
  let start = at;
  path.iterate((segment) => {
    const [letter, ...n] = segment as [string, ...number[]];
    if (curves.length >= mostCommands) failed = `it has more than ${mostCommands} commands`;
    else if (!n.every(Number.isFinite)) failed = 'a coordinate is not a number';
    if (failed) return;
    switch (letter) {
      case 'M':
        at = start = { x: n[0]!, y: n[1]! };
        curves.push({ type: 'M', ...at });
        break;
      case 'L':
        at = { x: n[0]!, y: n[1]! };
        curves.push({ type: 'L', ...at });
        break;
      case 'H':
        at = { x: n[0]!, y: at.y };
        curves.push({ type: 'L', ...at });
        break;
      case 'V':
        at = { x: at.x, y: n[0]! };
        curves.push({ type: 'L', ...at });
        break;
      case 'Q':
        at = { x: n[2]!, y: n[3]! };
        curves.push({ type: 'Q', x1: n[0]!, y1: n[1]!, ...at });
        break;
      case 'C':
        at = { x: n[4]!, y: n[5]! };
        curves.push({ type: 'C', x1: n[0]!, y1: n[1]!, x2: n[2]!, y2: n[3]!, ...at });
        break;
      case 'Z':
        at = start;
        curves.push({ type: 'Z' });
        break;
      default:
        failed = `there is an unknown command ${letter}`;
    }
  });
  return failed === undefined ? { curves } : { problem: failed };
}
