/** Shapes of a spec, each with its references resolved. */

import type { Point } from '../geometry/types.ts';
import type { YamlPath } from '../issue.ts';
import type { Generator, Modifiers, Shape, Target } from './model.ts';
import type { Problems } from './problems.ts';
import { didYouMean, nearest } from './suggest.ts';
import type { PolygonSpec, ShapeList, ShapeOrName, ShapeSpec, TagSpec } from './types.generated.ts';

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

/** How deep shapes may be written inside shapes, or lead to one another; far beyond any tag, far below the stack's limit. */
const deepest = 200;

export class ShapeReader {
  readonly #specs: Readonly<Record<string, ShapeSpec>>;
  readonly #problems: Problems;
  /** `undefined`: was tried, and its problem has been told. */
  readonly #done = new Map<string, Shape | undefined>();
  readonly #underWay: string[] = [];
  #depth = 0;

  constructor(spec: Partial<TagSpec>, problems: Problems) {
    this.#specs = spec.shapes ?? {};
    this.#problems = problems;
  }

  /** All named shapes that can be read. */
  all(): Map<string, Shape> {
    const shapes = new Map<string, Shape>();
    for (const name of Object.keys(this.#specs)) {
      const shape = this.#named(name);
      if (shape) shapes.set(name, shape);
    }
    return shapes;
  }

  /** The shape of that name; an issue at `path` where there is none. */
  byName(name: string, path: YamlPath): Shape | undefined {
    if (Object.hasOwn(this.#specs, name)) {
      const loop = this.#underWay.indexOf(name);
      if (loop < 0) return this.#named(name);
      const round = [...this.#underWay.slice(loop), name].join(' → ');
      this.#problems.error('cycle', path, `“${name}” is made from itself: ${round}.`);
      return undefined;
    }
    // A name whose own definition was found wrong has been reported there.
    const written = this.#problems.source.value as { shapes?: Record<string, unknown> } | null;
    if (written?.shapes && Object.hasOwn(written.shapes, name)) return undefined;
    const suggestions = nearest(name, Object.keys(this.#specs));
    this.#problems.error('unknown-shape', path, `There is no shape “${name}”.${didYouMean(suggestions)}`, {
      suggestions,
    });
    return undefined;
  }

  /** A name or a shape written in place. */
  byRef(ref: ShapeOrName, path: YamlPath): Shape | undefined {
    return typeof ref === 'string' ? this.byName(ref, path) : this.#read(ref, path, undefined);
  }

  #named(name: string): Shape | undefined {
    if (this.#done.has(name)) return this.#done.get(name);
    this.#underWay.push(name);
    const shape = this.#read(this.#specs[name]!, ['shapes', name], name);
    this.#underWay.pop();
    this.#done.set(name, shape);
    return shape;
  }

  #read(spec: ShapeSpec, path: YamlPath, name: string | undefined): Shape | undefined {
    if (this.#depth >= deepest) {
      this.#problems.error('bad-value', path, `Shapes lead more than ${deepest} deep into one another here.`);
      return undefined;
    }
    this.#depth++;
    try {
      const key = this.#generatorKey(spec, path);
      const before = this.#problems.issues.length;
      const generator = key && this.#generator(key, spec, path);
      const modifiers = this.#modifiers(spec, path);
      const clean = this.#problems.issues.length === before;
      return generator && clean ? { ...(name === undefined ? {} : { name }), path, generator, modifiers } : undefined;
    } finally {
      this.#depth--;
    }
  }

  #generatorKey(spec: ShapeSpec, path: YamlPath): GeneratorKey | undefined {
    const present = generatorKeys.filter((key) => spec[key] !== undefined);
    if (present.length !== 1) {
      // A generator whose value does not fit the schema was taken out, and has been reported.
      const written = path.reduce<unknown>(
        (at, step) => (at as Record<string | number, unknown> | undefined)?.[step],
        this.#problems.source.value,
      );
      const intended = generatorKeys.filter((key) => Object.hasOwn((written ?? {}), key));
      if (present.length === 0 && intended.length > 0) return undefined;
      const message =
        present.length === 0
          ? `A shape needs one of ${generatorKeys.join(', ')}.`
          : `A shape has one of ${present.join(', ')}, not several; use union to put shapes together.`;
      this.#problems.error(present.length === 0 ? 'missing-key' : 'bad-value', path, message);
      return undefined;
    }
    const key = present[0]!;
    for (const [other, companions] of Object.entries(generators) as [GeneratorKey, readonly (keyof ShapeSpec)[]][]) {
      if (other === key) continue;
      for (const companion of companions) {
        if (spec[companion] === undefined) continue;
        const range = this.#problems.source.keyRange([...path, companion]);
        this.#problems.error(
          'bad-value',
          [...path, companion],
          `“${companion}” goes with ${other}, and this shape is a ${key}.`,
          { range },
        );
      }
    }
    return key;
  }

  #generator(key: GeneratorKey, spec: ShapeSpec, path: YamlPath): Generator | undefined {
    const problems = this.#problems;
    const at = (...steps: (string | number)[]) => [...path, ...steps];
    switch (key) {
      case 'text':
        return this.#text(spec, path);
      case 'rectangle': {
        const [width, height] = this.#size(spec.rectangle!, at('rectangle'));
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
          ? this.#size(value, at('ellipse'))
          : Array<number | undefined>(2).fill(problems.length(value, at('ellipse'), 'size'));
        return width && height ? { kind: 'ellipse', width, height } : undefined;
      }
      case 'polygon':
        return this.#polygon(spec.polygon!, at('polygon'));
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
        const shapes = this.#list(stack.shapes, at('stack', 'shapes'));
        const lap = problems.length(stack.lap, at('stack', 'lap'), 'distance');
        return { kind: 'stack', shapes, towards: stack.towards ?? 'down', ...(lap === undefined ? {} : { lap }) };
      }
      case 'path':
        return { kind: 'path', data: spec.path!, mmPerUnit: problems.units === 'in' ? mmPerInch : 1 };
      case 'drawing':
        return { kind: 'drawing', file: spec.drawing! };
      case 'around': {
        const shape = this.byRef(spec.around!, at('around'));
        const by = problems.length(spec.by, at('by'), 'distance');
        if (spec.by === undefined)
          problems.error('missing-key', path, '“around” needs “by”: the distance of the outline.');
        if (!shape || by === undefined) return undefined;
        return { kind: 'around', shape, by, corners: spec.corners ?? 'round', keepHoles: spec.holes === 'keep' };
      }
      case 'union':
      case 'difference':
      case 'intersection':
        return { kind: key, shapes: this.#list(spec[key]!, at(key)) };
      case 'from': {
        const shape = this.byRef(spec.from!, at('from'));
        return shape && { kind: 'from', shape };
      }
    }
  }

  #text(spec: ShapeSpec, path: YamlPath): Generator | undefined {
    const text = spec.text!;
    if (text.trim() === '') this.#problems.error('bad-value', [...path, 'text'], 'The text is empty.');
    const sizeMm = this.#problems.length(spec.size, [...path, 'size'], 'size');
    if (sizeMm === undefined && spec.width === undefined && spec.height === undefined && spec.fit === undefined) {
      this.#problems.error('missing-key', path, 'How large? A text needs width, height, size or fit.');
    }
    return {
      kind: 'text',
      text,
      font: spec.font ?? defaultFont,
      weight: spec.weight ?? 400,
      italic: spec.italic ?? false,
      ...(sizeMm === undefined ? {} : { sizeMm }),
      letterSpacingMm: this.#problems.length(spec.letter_spacing, [...path, 'letter_spacing'], 'signed') ?? 0,
      ...(spec.line_height === undefined ? {} : { lineHeight: spec.line_height }),
      align: spec.align ?? 'center',
      features: spec.features ?? {},
    };
  }

  #polygon(spec: PolygonSpec, path: YamlPath): Generator | undefined {
    const { sides, points } = spec;
    if ((sides === undefined) === (points === undefined)) {
      this.#problems.error('bad-value', path, 'A polygon has either sides and across, or points.');
      return undefined;
    }
    if (points) {
      const read = points.flatMap((pair, index): Point[] => {
        const right = this.#problems.length(pair[0], [...path, 'points', index, 0], 'signed');
        const down = this.#problems.length(pair[1], [...path, 'points', index, 1], 'signed');
        return right === undefined || down === undefined ? [] : [{ x: right, y: -down }];
      });
      return { kind: 'points', points: read };
    }
    const across = this.#problems.length(spec.across, [...path, 'across'], 'size');
    if (spec.across === undefined)
      this.#problems.error('missing-key', path, '“polygon” needs “across” beside “sides”.');
    return across === undefined ? undefined : { kind: 'regular', sides: sides!, across };
  }

  #modifiers(spec: ShapeSpec, path: YamlPath): Modifiers {
    const problems = this.#problems;
    const length = (key: 'tidy' | 'grow' | 'width' | 'height', sign: 'size' | 'distance' | 'signed') => {
      const value = problems.length(spec[key], [...path, key], sign);
      return value === undefined ? {} : { [key]: value };
    };
    const fitTarget = spec.fit && this.#target(spec.fit.in, spec.fit.part, [...path, 'fit'], 'in');
    const placeTarget = spec.place && this.#target(spec.place.on, spec.place.part, [...path, 'place'], 'on');
    const margin = (value: number | string | undefined, key: string) =>
      problems.length(value, [...path, key, 'margin'], 'distance') ?? 0;
    const nudge = problems.nudge(spec.nudge, [...path, 'nudge']);
    if (fitTarget && (spec.width !== undefined || spec.height !== undefined)) {
      problems.error('bad-value', [...path, 'fit'], '“fit” finds the size by itself; leave out width and height.', {
        range: problems.source.keyRange([...path, 'fit']),
      });
    }
    return {
      ...length('tidy', 'distance'),
      ...length('grow', 'signed'),
      corners: spec.corners ?? 'round',
      ...length('width', 'size'),
      ...length('height', 'size'),
      ...(fitTarget ? { fit: { ...fitTarget, margin: margin(spec.fit!.margin, 'fit') } } : {}),
      ...(spec.rotate === undefined ? {} : { rotate: spec.rotate }),
      ...(spec.mirror === undefined ? {} : { mirror: spec.mirror }),
      ...(placeTarget
        ? {
            place: {
              ...placeTarget,
              at: spec.place!.at ?? 'center',
              margin: margin(spec.place!.margin, 'place'),
              by: spec.place!.by ?? 'eye',
            },
          }
        : {}),
      ...(nudge ? { nudge } : {}),
    };
  }

  #target(name: string, part: string | undefined, path: YamlPath, key: string): Target | undefined {
    const shape = this.byName(name, [...path, key]);
    if (!shape || part === undefined) return shape && { shape };
    const members = shape.generator.kind === 'stack' ? shape.generator.shapes.map((member) => member.name!) : [];
    if (members.includes(part)) return { shape, part };
    const suggestions = nearest(part, members);
    const message =
      members.length === 0
        ? `“${name}” is not a stack and has no parts.`
        : `“${name}” has no part “${part}”.${didYouMean(suggestions)}`;
    this.#problems.error('unknown-shape', [...path, 'part'], message, { suggestions });
    return undefined;
  }

  #size(size: readonly [number | string, number | string], path: YamlPath): (number | undefined)[] {
    return size.map((value, index) => {
      const mm = this.#problems.length(value, [...path, index], 'size');
      return mm;
    });
  }

  #list(refs: ShapeList | readonly string[], path: YamlPath): Shape[] {
    // The schema's complaints leave holes in lists.
    const written: readonly (ShapeOrName | undefined)[] = refs;
    return [...written].flatMap((ref, index) => (ref === undefined ? [] : (this.byRef(ref, [...path, index]) ?? [])));
  }
}
