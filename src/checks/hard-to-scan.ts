/**
 * QR codes that a phone may not read: modules too small for the beam, too small a quiet zone, light on dark, only
 * outlines scored, or bridges so wide that little is left of the modules.
 */

import { difference, intersection, normalise } from '../geometry/clipper.ts';
import { area, boundsOf, boxCentre } from '../geometry/measure.ts';
import type { Point, Region } from '../geometry/types.ts';
import type { Finding, YamlPath } from '../core/issue.ts';
import { mm } from '../core/figures.ts';
import { channels } from '../look/channels.ts';
import { lookOfStock } from '../look/stock-look.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import type { Machine, Stock } from '../spec/model/workshop-model.ts';
import { fromStock } from '../tag/by-stock.ts';
import { clearModules, moduleOf, squareOf } from '../tag/shapes/code.ts';
import type { Code } from '../tag/shapes/code.ts';
import type { Piece, Tag } from '../tag/tag.ts';
import { gluedOver } from './measures/assembly.ts';
import type { Check } from './check.ts';
import { finestMm } from './measures/beam.ts';
import { nameForMessage } from './measures/origin.ts';

/**
 * Least width of a module in beams, or in distances between hatch lines: an edge is off by up to half of one on either
 * side (our own judgement).
 */
const leastBeams = 3;

/** Largest share of a module that a bridge may take (our own judgement; readers sample the middle of a module). */
const mostBridge = 0.5;

/** Tolerance for comparing two figures of a drawing, in mm. */
const slackMm = 0.001;

/** Rounding tolerance for the quiet zone, in modules. */
const slackModules = 0.02;

/** Overlaps smaller than this, in mm², only touch. */
const touchingMm2 = 0.01;

interface UsedCode {
  readonly code: Code;
  readonly as: 'engrave' | 'score' | 'cut';
  readonly region: Region;
  readonly shape: Shape;
  readonly path: YamlPath;
}

export const hardToScan: Check = (tag) =>
  tag.pieces.flatMap((piece) => codesUsedOn(piece).flatMap((used) => findingOf(used, piece, tag) ?? []));

function codesUsedOn({ marks, sources }: Piece): UsedCode[] {
  const cuts = sources.filter(({ use }) => use === 'cut');
  return [
    ...marks.flatMap(({ codes = [], operation, region, shape, path }) =>
      codes.map((code) => ({ code, as: operation, region, shape, path })),
    ),
    ...cuts.flatMap(({ codes = [], region, shape, entry }) =>
      codes.map((code) => ({ code, as: 'cut' as const, region, shape, path: entry })),
    ),
  ];
}

/** Only the most serious fault: what helps against it changes the others. */
function findingOf(used: UsedCode, piece: Piece, tag: Tag): Finding | undefined {
  const { code, as, path } = used;
  const finding = (message: string, width?: number, minimum?: number): Finding => ({
    code: 'hard-to-scan',
    severity: 'warning',
    piece: piece.id,
    path,
    points: [boxCentre(boundsOf([squareOf(code)])!)],
    ...(width === undefined ? {} : { width }),
    ...(minimum === undefined ? {} : { minimum }),
    message,
  });
  if (as === 'score')
    return finding('Only the outlines of this code would be scored, which nothing reads; engrave it.');
  const module = moduleOf(code);
  const { stock, machine } = fromStock(tag, piece.cutFrom ?? tag, [piece]);
  const least = leastModule(stock, machine);
  if (module < least - slackMm) {
    const size = Math.ceil(least * code.matrix.length * 10 - slackMm) / 10;
    const message = `The modules of this code are ${mm(module)}; minimum ${mm(least)} for this beam, ${leastBeams} times its width: a size of ${mm(size, 1)}.`;
    return finding(message, module, least);
  }
  const { bridges = 0 } = code;
  if (as === 'cut' && bridges > mostBridge * module) {
    const message = `Bridges of ${mm(bridges)} hide too much of modules of ${mm(module)}; at most half of a module.`;
    return finding(message, module, bridges / mostBridge);
  }
  const clear = clearModulesOf(used, piece, tag);
  if (clear < clearModules) {
    const least = `minimum ${mm(clearModules * module)}, ${clearModules} of its modules (ISO/IEC 18004)`;
    const found = finding(
      `Only ${mm(clear * module)} is clear round this code; ${least}.`,
      clear * module,
      clearModules * module,
    );
    const near = nearestTo(used, piece, clear);
    const name = near && nameForMessage(near.shape);
    if (!near || name === undefined) return found;
    const message = `${name} leaves only ${mm(clear * module)} clear round ${nameForMessage(used.shape) ?? 'the code'}; ${least}.`;
    return { ...found, path: near.path, points: [near.point], message };
  }
  if (as === 'engrave' && code.isLight !== isLight(stock))
    return finding(
      'This code comes out light on dark, which many phones do not read. Engrave a panel without it instead, or the code alone.',
    );
  return undefined;
}

/** Least width of a module, in mm, by the width of the engraving beam or the distance of its lines if that is more. */
function leastModule(stock: Stock, machine: Machine | undefined): number {
  const beam = stock.kerfs?.engrave ?? Math.max(stock.kerf, finestMm);
  return leastBeams * Math.max(beam, machine?.hatch ?? 0);
}

/** Number of modules that are clear all round, up to the number needed. */
function clearModulesOf({ code, as, region, path }: UsedCode, piece: Piece, tag: Tag): number {
  const { pieces } = tag;
  const others = piece.marks.filter((mark) => mark.path !== path).map((mark) => mark.region);
  const glued = gluedOver(piece, pieces).map((each) => each.region);
  const inTheWay = normalise([...others, ...glued].flat());
  const isClear = (modules: number): boolean => {
    const zone = difference([squareOf(code, modules)], [[squareOf(code)]]);
    // A round corner of the piece may take a little of the zone's corners.
    if (area(difference(zone, [piece.region])) > (moduleOf(code) / 2) ** 2) return false;
    if (area(intersection(zone, inTheWay)) > touchingMm2) return false;
    // Round a code that is left out of a panel, the panel is what must be there.
    const own = as === 'cut' ? [] : code.isLight ? difference(zone, [region]) : intersection(zone, region);
    return area(own) <= touchingMm2;
  };
  if (isClear(clearModules - slackModules)) return clearModules;
  let [clear, blocked] = [0, clearModules];
  while (blocked - clear > slackModules) {
    const middle = (clear + blocked) / 2;
    if (isClear(middle)) clear = middle;
    else blocked = middle;
  }
  return clear;
}

/** A mark or a cut that reaches as far into the quiet zone as anything does. */
function nearestTo(
  { code, path }: UsedCode,
  { marks, sources }: Piece,
  clear: number,
): { readonly shape: Shape; readonly path: YamlPath; readonly point: Point } | undefined {
  const zone = [squareOf(code, Math.min(clearModules, clear + 2 * slackModules))];
  const others = [
    ...marks,
    ...sources.filter(({ use }) => use === 'cut').map((each) => ({ ...each, path: each.entry })),
  ];
  for (const { shape, path: at, region } of others) {
    const within = at === path ? [] : intersection(zone, region);
    if (area(within) > touchingMm2) return { shape, path: at, point: boxCentre(boundsOf(within)!) };
  }
  return undefined;
}

/** Whether engraving comes out lighter than the face of the stock. */
function isLight(stock: Stock): boolean {
  const { burn, wood } = lookOfStock(stock);
  return lightness(burn) > lightness(wood);
}

/**
 * Relative luminance, without the screen's gamma curve: only which of two is lighter matters (weights of ITU-R BT.709).
 */
function lightness(colour: string): number {
  const [red, green, blue] = channels(colour);
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
