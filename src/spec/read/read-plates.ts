/** Reads plates: the shapes defined by a few figures. */

import type { Point } from '../../geometry/types.ts';
import type { YamlPath } from '../../core/issue.ts';
import { limit, mm } from '../../core/figures.ts';
import type { Generator } from '../model/shape-model.ts';
import type { Problems } from './problems.ts';
import type {
  ArrowSpec,
  HouseSpec,
  LabelSpec,
  OvalSpec,
  PolygonSpec,
  ScallopsSpec,
  ShapeSpec,
  Size,
  TicketSpec,
} from '../types.generated.ts';

/** A `size` or a single length. */
type SizeOrLength = NonNullable<ShapeSpec['ellipse']>;

/** Default exponent of a superellipse, between an ellipse and a rectangle; judged by eye. */
const usualExponent = 2.5;

/** Default proportions, as shares of a side; judgement, no source. */
const usualRoof = 1 / 3;
const usualCut = 1 / 4;
const usualBite = 1 / 5;

/** Height over width of a heart made of a square of side 1 and two half discs: (½√½ + ½ + √½) / (√½ + 1). */
const heartProportion = (1.5 * Math.SQRT1_2 + 0.5) / (Math.SQRT1_2 + 1);

export function readRectangle(spec: ShapeSpec, path: YamlPath, problems: Problems): Generator | undefined {
  const [width, height] = readSize(spec.rectangle!, [...path, 'rectangle'], problems);
  const radius = problems.length(spec.radius, [...path, 'radius'], 'distance') ?? 0;
  if (!width || !height) return undefined;
  atMost(radius, Math.min(width, height) / 2, 'half the shorter side', [...path, 'radius'], problems);
  return { kind: 'rectangle', width, height, radius };
}

export function readEllipse(value: SizeOrLength, path: YamlPath, problems: Problems): Generator | undefined {
  const [width, height] = Array.isArray(value)
    ? readSize(value, path, problems)
    : Array<number | undefined>(2).fill(problems.length(value, path, 'size'));
  return width && height ? { kind: 'ellipse', width, height } : undefined;
}

/** A size may be all that is written. */
function sized<T extends { readonly size: Size }>(
  written: T | Size,
  path: YamlPath,
): { readonly spec: Partial<T> & { readonly size: Size }; readonly at: YamlPath } {
  // An array is a size, for a group is none.
  if (Array.isArray(written)) return { spec: { size: written } as Partial<T> & { readonly size: Size }, at: path };
  return { spec: written, at: [...path, 'size'] };
}

export function readPolygon(spec: PolygonSpec, path: YamlPath, problems: Problems): Generator | undefined {
  const { sides, points } = spec;
  if ((sides === undefined) === (points === undefined)) {
    problems.error('bad-value', path, 'A polygon needs either sides and across, or points.');
    return undefined;
  }
  if (points) {
    const read = points.flatMap((pair, index): Point[] => {
      const right = problems.length(pair[0], [...path, 'points', index, 0], 'signed');
      const down = problems.length(pair[1], [...path, 'points', index, 1], 'signed');
      return right === undefined || down === undefined ? [] : [{ x: right, y: -down }];
    });
    return { kind: 'points', points: read };
  }
  const across = problems.length(spec.across, [...path, 'across'], 'size');
  if (spec.across === undefined) problems.error('missing-key', path, '“polygon” needs “across” beside “sides”.');
  return across === undefined ? undefined : { kind: 'regular', sides: sides!, across };
}

export function readArrow(arrow: ArrowSpec, path: YamlPath, problems: Problems): Generator | undefined {
  const at = (key: keyof ArrowSpec) => [...path, key];
  const length = problems.length(arrow.length, at('length'), 'size');
  const head = problems.length(arrow.width, at('width'), 'size');
  const width = problems.length(arrow.shaft, at('shaft'), 'size') ?? head;
  const notch = problems.length(arrow.notch, at('notch'), 'size') ?? (width ?? 0) / 2;
  if (!length || !width || !head) return undefined;
  if (head < width) problems.error('bad-length', at('shaft'), 'The shaft cannot be wider than the whole arrow.');
  const tipDegrees = arrow.tip ?? 90;
  const tail = arrow.tail ?? 'straight';
  const point = head / 2 / Math.tan((tipDegrees * Math.PI) / 360);
  const taken = point + (tail === 'straight' ? 0 : notch);
  if (taken >= length) {
    const message = `The tip and the tail alone are ${mm(taken, 1)}; the arrow must be longer.`;
    problems.error('bad-length', at('length'), message);
  }
  return { kind: 'arrow', length, width, head, tipDegrees, tail, notch };
}

export function readOval(written: OvalSpec | Size, path: YamlPath, problems: Problems): Generator | undefined {
  const { spec: oval, at: sizeAt } = sized(written, path);
  const [width, height] = readSize(oval.size, sizeAt, problems);
  return width && height ? { kind: 'oval', width, height, exponent: oval.exponent ?? usualExponent } : undefined;
}

export function readHeart(value: SizeOrLength, path: YamlPath, problems: Problems): Generator | undefined {
  if (Array.isArray(value)) {
    const [width, height] = readSize(value, path, problems);
    return width && height ? { kind: 'heart', width, height } : undefined;
  }
  const width = problems.length(value, path, 'size');
  return width === undefined ? undefined : { kind: 'heart', width, height: width * heartProportion };
}

export function readHouse(written: HouseSpec | Size, path: YamlPath, problems: Problems): Generator | undefined {
  const { spec: house, at: sizeAt } = sized(written, path);
  const [width, height] = readSize(house.size, sizeAt, problems);
  const roof = problems.length(house.roof, [...path, 'roof'], 'size');
  const eaves = problems.length(house.eaves, [...path, 'eaves'], 'distance') ?? 0;
  if (!width || !height) return undefined;
  lessThan(roof ?? 0, height, 'the height', [...path, 'roof'], problems);
  lessThan(eaves, width / 2, 'half the width', [...path, 'eaves'], problems);
  return { kind: 'house', width, height, roof: roof ?? height * usualRoof, eaves };
}

export function readLabel(written: LabelSpec | Size, path: YamlPath, problems: Problems): Generator | undefined {
  const { spec: label, at: sizeAt } = sized(written, path);
  const [width, height] = readSize(label.size, sizeAt, problems);
  const cut = problems.length(label.clip, [...path, 'clip'], 'size');
  if (!width || !height) return undefined;
  const end = label.end ?? 'left';
  const [across, along] = end === 'left' || end === 'right' ? [height, width] : [width, height];
  const most = Math.min(across / 2, along);
  atMost(cut ?? 0, most, most === along ? 'the length' : 'half the end', [...path, 'clip'], problems);
  return { kind: 'label', width, height, cut: cut ?? Math.min(across * usualCut, along), end };
}

export function readTicket(written: TicketSpec | Size, path: YamlPath, problems: Problems): Generator | undefined {
  const { spec: ticket, at: sizeAt } = sized(written, path);
  const [width, height] = readSize(ticket.size, sizeAt, problems);
  const bite = problems.length(ticket.bite, [...path, 'bite'], 'size');
  if (!width || !height) return undefined;
  const shorter = Math.min(width, height);
  lessThan(bite ?? 0, shorter / 2, 'half the shorter side', [...path, 'bite'], problems);
  return { kind: 'ticket', width, height, bite: bite ?? shorter * usualBite };
}

/** With fewer lobes along a side, or more round the edge, they no longer look like scallops. */
const fewestLobes = 2;
const mostLobes = 200;

export function readScallops(spec: ScallopsSpec, path: YamlPath, problems: Problems): Generator | undefined {
  const rectangular = spec.size !== undefined && spec.lobe !== undefined;
  const round = spec.across !== undefined && spec.lobes !== undefined;
  const written = (['size', 'lobe', 'across', 'lobes'] as const).filter((key) => problems.wrote([...path, key]));
  if (written.length !== 2 || rectangular === round) {
    const faulty = written.some((key) => spec[key] === undefined);
    if (!faulty) problems.error('bad-value', path, 'Scallops need either size and lobe, or across and lobes.');
    return undefined;
  }
  if (round) {
    const across = problems.length(spec.across, [...path, 'across'], 'size');
    return across === undefined ? undefined : { kind: 'scalloped-disc', across, lobes: spec.lobes! };
  }
  const [width, height] = readSize(spec.size!, [...path, 'size'], problems);
  const lobe = problems.length(spec.lobe, [...path, 'lobe'], 'size');
  if (!width || !height || !lobe) return undefined;
  const [columns, rows] = [Math.round(width / lobe), Math.round(height / lobe)];
  if (Math.min(columns, rows) < fewestLobes)
    problems.error('bad-length', [...path, 'lobe'], 'Not even two lobes of this width fit along the shorter side.');
  if (Math.max(columns, rows) > mostLobes)
    problems.error('bad-length', [...path, 'lobe'], `More than ${mostLobes} lobes would fit along a side.`);
  return { kind: 'scalloped-rectangle', width, height, columns, rows };
}

function readSize(size: Size, path: YamlPath, problems: Problems): (number | undefined)[] {
  return size.map((value, index) => problems.length(value, [...path, index], 'size'));
}

function atMost(length: number, most: number, what: string, path: YamlPath, problems: Problems): void {
  if (length <= most) return;
  // Rounded down, so that the suggestion is not too long again.
  const suggestions = most > 0.01 ? [`${Math.floor(most * 100) / 100} mm`] : [];
  const message = `“${String(path.at(-1))}” can be at most ${what}, ${limit(most)}.`;
  problems.error('bad-length', path, message, { suggestions });
}

function lessThan(length: number, bound: number, what: string, path: YamlPath, problems: Problems): void {
  if (length >= bound)
    problems.error('bad-length', path, `“${String(path.at(-1))}” must be less than ${what}, ${limit(bound)}.`);
}
