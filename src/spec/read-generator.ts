/** Generators of a spec: the one key of a shape that says what it is, and the keys that go with it. */

import type { Point } from '../geometry/types.ts';
import type { YamlPath } from '../issue.ts';
import type { Generator, Shape, ShapeNames } from './model.ts';
import type { Problems } from './problems.ts';
import { nearest } from './suggest.ts';
import type { PolygonSpec, ShapeList, ShapeOrName, ShapeSpec } from './types.generated.ts';

/** The keys of which a shape has exactly one, each with the keys that only make sense beside it. */
const generators = {
  text: ['font', 'weight', 'italic', 'size', 'letter_spacing', 'line_height', 'align', 'features'],
  rectangle: ['radius'],
  ellipse: [],
  polygon: [],
  arrow: [],
  stack: [],
  path: [],
  drawing: [],
  around: ['by', 'holes'],
  union: [],
  difference: [],
  intersection: [],
  from: [],
} as const satisfies Partial<Record<keyof ShapeSpec, readonly (keyof ShapeSpec)[]>>;

type GeneratorKey = keyof typeof generators;

export const generatorKeys = Object.keys(generators) as GeneratorKey[];

/** Family used where a text names none; it is bundled. */
const defaultFont = 'Nunito';

/** mm per unit of `path` data in a spec written in inches. */
const mmPerInch = 25.4;

export function generatorKeyOf(spec: ShapeSpec, path: YamlPath, problems: Problems): GeneratorKey | undefined {
  const present = generatorKeys.filter((key) => spec[key] !== undefined);
  if (present.length !== 1) {
    // A generator whose value does not fit the schema was taken out, and has been reported.
    const intended = generatorKeys.filter((key) => problems.wrote([...path, key]));
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
      if (spec[companion] === undefined) continue;
      const range = problems.source.keyRange([...path, companion]);
      problems.error(
        'bad-value',
        [...path, companion],
        `“${companion}” goes with ${other}, and this shape is a ${key}.`,
        { range },
      );
    }
  }
  return key;
}

/** A key that is unknown, which has been reported with the generator that was meant. */
function misspelt(path: YamlPath, problems: Problems): boolean {
  return problems.keysAt(path).some((key) => nearest(key, generatorKeys).length > 0);
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
      return readText(spec, path, problems);
    case 'rectangle': {
      const [width, height] = readSize(spec.rectangle!, at('rectangle'), problems);
      const radius = problems.length(spec.radius, at('radius'), 'distance') ?? 0;
      if (width && height && radius > Math.min(width, height) / 2) {
        problems.error(
          'bad-length',
          at('radius'),
          `The radius can be at most half the shorter side, ${Math.min(width, height) / 2} mm.`,
        );
      }
      return width && height ? { kind: 'rectangle', width, height, radius } : undefined;
    }
    case 'ellipse': {
      const value = spec.ellipse!;
      const [width, height] = Array.isArray(value)
        ? readSize(value, at('ellipse'), problems)
        : Array<number | undefined>(2).fill(problems.length(value, at('ellipse'), 'size'));
      return width && height ? { kind: 'ellipse', width, height } : undefined;
    }
    case 'polygon':
      return readPolygon(spec.polygon!, at('polygon'), problems);
    case 'arrow': {
      const arrow = spec.arrow!;
      const length = problems.length(arrow.length, at('arrow', 'length'), 'size');
      const width = problems.length(arrow.width, at('arrow', 'width'), 'size');
      const head = problems.length(arrow.head, at('arrow', 'head'), 'size') ?? width;
      const notch = problems.length(arrow.notch, at('arrow', 'notch'), 'size') ?? (width ?? 0) / 2;
      if (!length || !width || !head) return undefined;
      if (head < width)
        problems.error('bad-length', at('arrow', 'head'), 'The head cannot be narrower than the shaft.');
      const tipDegrees = arrow.tip ?? 90;
      const tail = arrow.tail ?? 'straight';
      const point = head / 2 / Math.tan((tipDegrees * Math.PI) / 360);
      const taken = point + (tail === 'straight' ? 0 : notch);
      if (taken >= length) {
        problems.error(
          'bad-length',
          at('arrow', 'length'),
          `The tip and the tail alone are ${taken.toFixed(1)} mm; the arrow must be longer.`,
        );
      }
      return { kind: 'arrow', length, width, head, tipDegrees, tail, notch };
    }
    case 'stack': {
      const stack = spec.stack!;
      const members = readList(stack.shapes, at('stack', 'shapes'), shapes);
      const lap = problems.length(stack.lap, at('stack', 'lap'), 'distance');
      return {
        kind: 'stack',
        shapes: members,
        towards: stack.towards ?? 'down',
        ...(lap === undefined ? {} : { lap }),
      };
    }
    case 'path':
      return { kind: 'path', data: spec.path!, mmPerUnit: problems.units === 'in' ? mmPerInch : 1 };
    case 'drawing':
      return { kind: 'drawing', file: spec.drawing! };
    case 'around': {
      const shape = shapes.byRef(spec.around!, at('around'));
      const by = problems.length(spec.by, at('by'), 'distance');
      if (spec.by === undefined)
        problems.error('missing-key', path, '“around” needs “by”: the distance of the outline.');
      if (!shape || by === undefined) return undefined;
      return { kind: 'around', shape, by, corners: spec.corners ?? 'round', keepHoles: spec.holes === 'keep' };
    }
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

function readText(spec: ShapeSpec, path: YamlPath, problems: Problems): Generator | undefined {
  const text = spec.text!;
  if (text.trim() === '') problems.error('bad-value', [...path, 'text'], 'The text is empty.');
  const sizeMm = problems.length(spec.size, [...path, 'size'], 'size');
  if (!['size', 'width', 'height', 'fit'].some((key) => problems.wrote([...path, key]))) {
    problems.error('missing-key', path, 'How large? A text needs width, height, size or fit.');
  }
  return {
    kind: 'text',
    text,
    font: spec.font ?? defaultFont,
    weight: spec.weight ?? 400,
    italic: spec.italic ?? false,
    ...(sizeMm === undefined ? {} : { sizeMm }),
    letterSpacingMm: problems.length(spec.letter_spacing, [...path, 'letter_spacing'], 'signed') ?? 0,
    ...(spec.line_height === undefined ? {} : { lineHeight: spec.line_height }),
    align: spec.align ?? 'center',
    features: spec.features ?? {},
  };
}

function readPolygon(spec: PolygonSpec, path: YamlPath, problems: Problems): Generator | undefined {
  const { sides, points } = spec;
  if ((sides === undefined) === (points === undefined)) {
    problems.error('bad-value', path, 'A polygon has either sides and across, or points.');
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

function readSize(
  size: readonly [number | string, number | string],
  path: YamlPath,
  problems: Problems,
): (number | undefined)[] {
  return size.map((value, index) => {
    const mm = problems.length(value, [...path, index], 'size');
    return mm;
  });
}

function readList(refs: ShapeList | readonly string[], path: YamlPath, shapes: ShapeNames): Shape[] {
  // The schema's complaints leave holes in lists.
  const written: readonly (ShapeOrName | undefined)[] = refs;
  return [...written].flatMap((ref, index) => (ref === undefined ? [] : (shapes.byRef(ref, [...path, index]) ?? [])));
}
