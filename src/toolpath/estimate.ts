/**
 * Estimates for a tag: lengths and areas, machine time, sheet, cost and weight. Nothing is guessed: a value that cannot
 * be computed stays unknown.
 */

import { contourLength, endOf, flattenContour } from '../geometry/contour.ts';
import type { Contour } from '../geometry/contour.ts';
import { area, distance } from '../geometry/measure.ts';
import type { Bounds, Point } from '../geometry/types.ts';
import type { Machine, Stock } from '../spec/model/workshop-model.ts';
import type { Operation, Tag } from '../tag/tag.ts';
import { engravingSeconds } from './hatching.ts';
import { materialOf } from '../strength/materials.ts';
import { secondsAcross, secondsAlong } from './motion.ts';

/** Steps of work, in order; a cut plan is one. */
export interface Work {
  readonly steps: readonly {
    readonly operation: Operation;
    readonly paths: readonly { readonly contours: readonly Contour[]; readonly alongLines?: boolean }[];
  }[];
  readonly bounds: Bounds;
}

/** In mm, mm², s and g. */
export interface JobEstimate {
  readonly cutLength: number;
  readonly scoreLength: number;
  /** Moves between cuts and scores with the beam off. */
  readonly travelLength: number;
  readonly engravedArea: number;
  /** Distance between engraved lines, if the machine is known. */
  readonly hatch?: number;
  /** Area of the rectangle that encloses everything. */
  readonly sheetArea: number;
  readonly time: TimeTaken;
  readonly weight?: number;
  /** “Material cost”; see `materialCost`. */
  readonly cost?: Cost;
}

export interface Cost {
  readonly amount: number;
  readonly currency?: string;
}

/** `missing`: the machine keys that the spec lacks. */
export type TimeTaken =
  | {
      readonly seconds: number;
      readonly cut: number;
      readonly score: number;
      readonly engrave: number;
      readonly travel: number;
    }
  | { readonly missing: readonly ('machine' | 'cut' | 'score' | 'engrave')[] };

export function estimateJob(tag: Tag, work: Work): JobEstimate {
  const lines = (kind: 'cut' | 'score') =>
    work.steps
      .filter(({ operation }) => operation.startsWith(kind))
      .flatMap(({ paths }) => paths.flatMap(({ contours }) => contours));
  const [cuts, scores] = [lines('cut'), lines('score')];
  const engravings = work.steps.filter(({ operation }) => operation === 'engrave').flatMap(({ paths }) => paths);
  const engraved = engravings
    .filter(({ alongLines }) => !alongLines)
    .map(({ contours }) => contours.map((contour) => flattenContour(contour)));
  const engravedLines = engravings.filter(({ alongLines }) => alongLines).flatMap(({ contours }) => contours);
  const travels = travelLengths([...engravedLines, ...scores, ...cuts]);
  const { minX, minY, maxX, maxY } = work.bounds;
  const sheetArea = (maxX - minX) * (maxY - minY);
  const weight = weightOf(tag);
  const cost = materialCost(tag, sheetArea);
  return {
    cutLength: total(cuts.map(contourLength)),
    scoreLength: total(scores.map(contourLength)),
    travelLength: total(travels),
    engravedArea: total(engraved.map(area)),
    ...(tag.machine ? { hatch: tag.machine.hatch } : {}),
    sheetArea,
    time: timeOf(tag.machine, { cuts, scores, engraved, engravedLines, travels }),
    ...(weight === undefined ? {} : { weight }),
    ...(cost ? { cost } : {}),
  };
}

export function sumEstimates([first, ...others]: readonly [JobEstimate, ...JobEstimate[]]): JobEstimate {
  return others.reduce((a, b): JobEstimate => {
    const weight = a.weight === undefined || b.weight === undefined ? undefined : a.weight + b.weight;
    const cost = a.cost &&
      b.cost &&
      a.cost.currency === b.cost.currency && { ...a.cost, amount: a.cost.amount + b.cost.amount };
    return {
      cutLength: a.cutLength + b.cutLength,
      scoreLength: a.scoreLength + b.scoreLength,
      travelLength: a.travelLength + b.travelLength,
      engravedArea: a.engravedArea + b.engravedArea,
      ...(a.hatch === undefined ? {} : { hatch: a.hatch }),
      sheetArea: a.sheetArea + b.sheetArea,
      time: timeTogether(a.time, b.time),
      ...(weight === undefined ? {} : { weight }),
      ...(cost ? { cost } : {}),
    };
  }, first);
}

function timeTogether(a: TimeTaken, b: TimeTaken): TimeTaken {
  if ('missing' in a || 'missing' in b) {
    const missing = [a, b].flatMap((time) => ('missing' in time ? time.missing : []));
    return { missing: [...new Set(missing)] };
  }
  return {
    seconds: a.seconds + b.seconds,
    cut: a.cut + b.cut,
    score: a.score + b.score,
    engrave: a.engrave + b.engrave,
    travel: a.travel + b.travel,
  };
}

interface WorkParts {
  readonly cuts: readonly Contour[];
  readonly scores: readonly Contour[];
  readonly engraved: readonly ReturnType<typeof flattenContour>[][];
  /** Contours engraved by following them, not by hatching. */
  readonly engravedLines: readonly Contour[];
  readonly travels: readonly number[];
}

function timeOf(
  machine: Machine | undefined,
  { cuts, scores, engraved, engravedLines, travels }: WorkParts,
): TimeTaken {
  if (!machine) return { missing: ['machine'] };
  const { acceleration, cornerJump, hatch, passes } = machine;
  const needed = {
    cut: cuts.length > 0,
    score: scores.length > 0,
    engrave: engraved.length + engravedLines.length > 0,
  };
  const missing = (['cut', 'score', 'engrave'] as const).filter((key) => needed[key] && machine[key] === undefined);
  if (missing.length > 0) return { missing };
  const along = (kind: 'cut' | 'score' | 'engrave', contours: readonly Contour[]) =>
    passes[kind] *
    total(contours.map((contour) => secondsAlong(contour, { speed: machine[kind]!, acceleration, cornerJump })));
  const cut = along('cut', cuts);
  const score = along('score', scores);
  const engrave =
    along('engrave', engravedLines) +
    passes.engrave *
      total(engraved.map((region) => engravingSeconds(region, { speed: machine.engrave!, acceleration, hatch })));
  const travel = total(travels.map((length) => secondsAcross(length, { speed: machine.travel, acceleration })));
  return { seconds: cut + score + engrave + travel, cut, score, engrave, travel };
}

/** Travel from each path to the next; the first starts from the lower left corner. */
function travelLengths(contours: readonly Contour[]): number[] {
  let at: Point = { x: 0, y: 0 };
  return contours.map((contour) => {
    const { start } = contour;
    const length = distance(start, at);
    at = endOf(contour);
    return length;
  });
}

/** In kg/m³: from the spec, or else the published value of the material. */
export function densityOf({ density, material }: Stock): number | undefined {
  return density ?? (material === undefined ? undefined : materialOf(material)?.density.value);
}

/** In g; the material that engraving removes is not subtracted. */
function weightOf({ pieces, stock }: Tag): number | undefined {
  const density = densityOf(stock);
  if (density === undefined || stock.thickness === undefined) return undefined;
  return total(pieces.map(({ region }) => area(region))) * stock.thickness * density * 1e-6;
}

/** In mm². */
const areas = { m2: 1e6, ft2: 304.8 ** 2 } as const;

/**
 * “Material cost”, in the same sense everywhere: the price of a tag's bounding rectangle as a share of the sheet price.
 * It leaves out machine time and labour, whose price the spec does not give. “Whole sheets” is a separate figure: the
 * same for the area of all sheets, used up or not.
 * @param mm2 Area of the rectangle, or of the sheets.
 */
export function materialCost({ stock, sheet }: Pick<Tag, 'stock' | 'sheet'>, mm2: number): Cost | undefined {
  const { price } = stock;
  const whole = price?.per === 'sheet' ? sheet && sheet.width * sheet.height : price && areas[price.per];
  if (!price || !whole) return undefined;
  const amount = (price.amount * mm2) / whole;
  return { amount, ...(price.currency === undefined ? {} : { currency: price.currency }) };
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
