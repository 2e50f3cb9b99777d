/** Reads generators: the one key of a shape that says what it is, and the keys that go with it. */

import { mmPerInch } from '../../core/units.ts';
import type { YamlPath } from '../../core/issue.ts';
import { textsOf } from '../model/shape-model.ts';
import type { Generator, Shape, ShapeNames } from '../model/shape-model.ts';
import type { Problems } from './problems.ts';
import { readBorder } from './read-border.ts';
import {
  readArrow,
  readEllipse,
  readHeart,
  readHouse,
  readLabel,
  readOval,
  readPolygon,
  readRectangle,
  readScallops,
  readTicket,
} from './read-plates.ts';
import { readLines } from './read-lines.ts';
import { readStick } from './read-stick.ts';
import { readCode } from './read-code.ts';
import { readRepeat } from './read-repeat.ts';
import { readStrokes, reportWidths } from './read-strokes.ts';
import { readText } from './read-text.ts';
import { isSingleLine } from './single-line.ts';
import { nearestWords } from '../schema/suggest.ts';
import type { ShapeList, ShapeOrName, ShapeSpec } from '../types.generated.ts';

/** A shape has exactly one of these keys; each is listed with the keys that only make sense beside it. */
const generators = {
  text: [
    ...([
      'font',
      'weight',
      'italic',
      'features',
      'letter_spacing',
      'overlap',
      'line_height',
      'align',
      'room_for',
    ] as const),
    ...(['size', 'cap_height', 'x_height', 'arc'] as const),
  ],
  rectangle: ['radius'],
  ellipse: [],
  circle: [],
  polygon: [],
  arrow: [],
  oval: [],
  heart: [],
  house: [],
  label: [],
  ticket: [],
  scallops: [],
  stack: [],
  path: ['lines'],
  drawing: ['lines'],
  around: ['by', 'holes', 'bays'],
  union: [],
  difference: [],
  intersection: [],
  from: [],
  // The last of those that may have other keys beside them: for a path or a drawing, “lines” is not a list.
  lines: ['gap'],
  code: ['size', 'correction'],
  border: [],
  stick: [],
  repeat: [],
} as const satisfies Partial<Record<keyof ShapeSpec, readonly (keyof ShapeSpec)[]>>;

type GeneratorKey = keyof typeof generators;

/** Keys of a text that apply to all lines of one shape. */
const ofLines: ReadonlySet<keyof ShapeSpec> = new Set([
  'font',
  'weight',
  'italic',
  'features',
  'align',
  'cap_height',
  'x_height',
]);

export const generatorKeys = Object.keys(generators) as GeneratorKey[];

export function generatorKeyOf(spec: ShapeSpec, path: YamlPath, problems: Problems): GeneratorKey | undefined {
  // “lines: true” belongs to a path or a drawing; a list of lines is a shape by itself.
  const isSaid = (key: GeneratorKey) => key === 'lines' && typeof spec.lines === 'boolean';
  const present = generatorKeys.filter((key) => spec[key] !== undefined && !isSaid(key));
  if (present.length !== 1) {
    // A generator whose value does not fit the schema was removed and has been reported.
    const intended = generatorKeys.filter((key) => problems.wrote([...path, key]) && !isSaid(key));
    if (present.length === 0 && (intended.length > 0 || misspelt(path, problems))) return undefined;
    const message =
      present.length === 0
        ? `A shape needs one of ${generatorKeys.join(', ')}.`
        : `A shape has one of ${present.join(', ')}, not several; use union to put shapes together.`;
    problems.error(present.length === 0 ? 'missing-key' : 'bad-value', path, message);
    return undefined;
  }
  const key = present[0]!;
  for (const [other, companions] of Object.entries(generators) as [GeneratorKey, readonly (keyof ShapeSpec)[]][]) {
    if (other === key) continue;
    for (const companion of companions) {
      if (spec[companion] === undefined || (key === 'lines' && ofLines.has(companion)) || companion === key) continue;
      if ((generators[key] as readonly string[]).includes(companion)) continue;
      const range = problems.source.keyRange([...path, companion]);
      problems.error(
        'bad-value',
        [...path, companion],
        `“${companion}” goes with ${other}, but this shape is a ${key}.`,
        { range },
      );
    }
  }
  return key;
}

/** Whether strokes stay lines; modifiers that need areas are reported. */
function keptAsLines(spec: ShapeSpec, path: YamlPath, problems: Problems): boolean {
  if (spec.lines !== true) return false;
  reportWidths(spec, path, problems);
  return true;
}

/** Whether there is an unknown key that resembles a generator; it has been reported with the key that was meant. */
function misspelt(path: YamlPath, problems: Problems): boolean {
  return problems.keysAt(path).some((key) => nearestWords(key, generatorKeys).length > 0);
}

export function readGenerator(
  key: GeneratorKey,
  spec: ShapeSpec,
  path: YamlPath,
  problems: Problems,
  shapes: ShapeNames,
): Generator | undefined {
  const at = (...steps: (string | number)[]) => [...path, ...steps];
  switch (key) {
    case 'text':
      return isSingleLine(spec.font) ? readStrokes(spec, path, problems) : readText(spec, path, problems);
    case 'lines':
      return readLines(spec, path, problems);
    case 'rectangle':
      return readRectangle(spec, path, problems);
    case 'ellipse':
      return readEllipse(spec.ellipse!, at('ellipse'), problems);
    case 'circle':
      return readEllipse(spec.circle!, at('circle'), problems);
    case 'polygon':
      return readPolygon(spec.polygon!, at('polygon'), problems);
    case 'arrow':
      return readArrow(spec.arrow!, at('arrow'), problems);
    case 'oval':
      return readOval(spec.oval!, at('oval'), problems);
    case 'heart':
      return readHeart(spec.heart!, at('heart'), problems);
    case 'house':
      return readHouse(spec.house!, at('house'), problems);
    case 'label':
      return readLabel(spec.label!, at('label'), problems);
    case 'ticket':
      return readTicket(spec.ticket!, at('ticket'), problems);
    case 'scallops':
      return readScallops(spec.scallops!, at('scallops'), problems);
    case 'stack': {
      const stack = spec.stack!;
      const members = readList(stack.shapes, at('stack', 'shapes'), shapes);
      const lap = problems.length(stack.lap, at('stack', 'lap'), 'distance', '; a shape between two keeps them apart');
      return {
        kind: 'stack',
        shapes: members,
        towards: stack.towards ?? 'down',
        ...(lap === undefined ? {} : { lap }),
      };
    }
    case 'path':
      return {
        kind: 'path',
        data: spec.path!,
        mmPerUnit: problems.units === 'in' ? mmPerInch : 1,
        asLines: keptAsLines(spec, path, problems),
      };
    case 'drawing':
      return { kind: 'drawing', file: problems.beside(spec.drawing!), asLines: keptAsLines(spec, path, problems) };
    case 'around': {
      const shape = shapes.byRef(spec.around!, at('around'));
      const by = problems.length(
        spec.by,
        at('by'),
        'distance',
        '; the outline inside a shape is “from” with a negative “grow”',
      );
      const corners = spec.corners ?? 'round';
      const bays = problems.length(spec.bays, at('bays'), 'distance') ?? (corners === 'round' ? by : 0);
      if (spec.by === undefined)
        problems.error('missing-key', path, '“around” needs “by”: the distance of the outline.');
      if (!shape || by === undefined || bays === undefined) return undefined;
      const together = spec.bays === undefined && hasLines(shape);
      return { kind: 'around', shape, by, corners, keepHoles: spec.holes === 'keep', bays, together };
    }
    case 'code':
      return readCode(spec, path, problems);
    case 'border':
      return readBorder(spec.border!, at('border'), problems, shapes);
    case 'stick':
      return readStick(spec.stick!, at('stick'), problems, shapes);
    case 'repeat':
      return readRepeat(spec.repeat!, at('repeat'), problems, shapes);
    case 'union':
    case 'difference':
    case 'intersection':
      return { kind: key, shapes: readList(spec[key]!, at(key), shapes) };
    case 'from': {
      const shape = shapes.byRef(spec.from!, at('from'));
      return shape && { kind: 'from', shape };
    }
  }
}

function hasLines({ generator }: Shape): boolean {
  return generator.kind === 'lines' || textsOf(generator).some(({ text }) => /\n/.test(text.trim()));
}

function readList(refs: ShapeList | readonly string[], path: YamlPath, shapes: ShapeNames): Shape[] {
  // The schema check leaves holes in lists.
  const written: readonly (ShapeOrName | undefined)[] = refs;
  return [...written].flatMap((ref, index) => (ref === undefined ? [] : (shapes.byRef(ref, [...path, index]) ?? [])));
}
