/**
 * Stacks that a shape is a member of. Whoever puts something on a member means it where its stack has put it, for by itself it
 * lies on the origin, where nobody sees it.
 */

import type { Entry, Shape, Target } from './model.ts';
import type { PieceSpec, PlaceSpec, ShapeOrName, ShapeSpec } from './types.generated.ts';

type Shapes = Readonly<Record<string, ShapeSpec>>;
type Pieces = Readonly<Record<string, PieceSpec>>;

/** Where a stack is written: its name, or its place in the body of a piece. */
export type StackRef = string | { readonly piece: string; readonly index: number };

/** Of one file; what its pieces are made of counts as well. */
export class StackMembers {
  readonly #shapes: Shapes;
  readonly #pieces: Pieces;
  readonly #stacks = new Map<string, StackRef[]>();
  readonly #bodies = new Set<string>();
  readonly #reached = new Map<StackRef, ReadonlySet<string>>();

  constructor(shapes: Shapes, pieces: Pieces) {
    this.#shapes = shapes;
    this.#pieces = pieces;
    for (const [name, spec] of Object.entries(shapes)) this.#note(name, spec);
    for (const [piece, spec] of Object.entries(pieces)) {
      bodyOf(spec).forEach((ref, index) => {
        if (typeof ref === 'string') this.#bodies.add(ref);
        else if (ref) this.#note({ piece, index }, ref);
      });
    }
  }

  #note(ref: StackRef, spec: ShapeSpec): void {
    for (const member of new Set(namesIn(spec.stack?.shapes)))
      this.#stacks.set(member, [...(this.#stacks.get(member) ?? []), ref]);
  }

  /** The stacks that have a member of this name: those with a name, and those written in the body of a piece. */
  stacksWith(member: string): readonly StackRef[] {
    return this.#stacks.get(member) ?? [];
  }

  /** Whether a piece is made of the shape itself, beside any stack: then it lies where it lies by itself. */
  isBody(name: string): boolean {
    return this.#bodies.has(name);
  }

  /** Whether a stack is made from, or placed by, a shape of the file. */
  leadsTo(stack: StackRef, name: string): boolean {
    const reached = this.#reached.get(stack) ?? this.#allThatMakes(this.written(stack));
    this.#reached.set(stack, reached);
    return reached.has(name);
  }

  written(stack: StackRef): ShapeOrName {
    return typeof stack === 'string' ? stack : bodyOf(this.#pieces[stack.piece]!)[stack.index]!;
  }

  #allThatMakes(from: ShapeOrName): ReadonlySet<string> {
    const seen = new Set<string>();
    const waiting = [from];
    for (let ref = waiting.pop(); ref !== undefined; ref = waiting.pop()) {
      if (typeof ref !== 'string') waiting.push(...madeFrom(ref));
      else if (!seen.has(ref)) {
        seen.add(ref);
        if (Object.hasOwn(this.#shapes, ref)) waiting.push(...madeFrom(this.#shapes[ref]!));
      }
    }
    return seen;
  }
}

function madeFrom(spec: ShapeSpec): ShapeOrName[] {
  const lists = [spec.stack?.shapes, spec.union, spec.difference, spec.intersection];
  const refs: (ShapeOrName | undefined)[] = [
    ...lists.flatMap((list): (ShapeOrName | undefined)[] => (list ? [...list] : [])),
    spec.around,
    spec.from,
    typeof spec.border === 'object' ? spec.border.of : spec.border,
    spec.stick?.carries,
    spec.repeat?.shape,
    typeof spec.repeat?.along === 'object' && 'outline' in spec.repeat.along ? spec.repeat.along.outline : undefined,
    spec.fit?.in,
    typeof spec.place === 'object' ? placeTarget(spec.place) : spec.place,
  ];
  // The schema's complaints leave holes in lists.
  return refs.filter((ref) => ref !== undefined);
}

function bodyOf({ body }: PieceSpec): (ShapeOrName | undefined)[] {
  // What the schema took out is not there.
  const written = body as PieceSpec['body'] | undefined;
  return Array.isArray(written) ? [...written] : [written];
}

function placeTarget({ on, above, below, left_of: leftOf, right_of: rightOf }: PlaceSpec): string | undefined {
  return on ?? above ?? below ?? leftOf ?? rightOf;
}

function namesIn(list: readonly (string | undefined)[] | undefined): string[] {
  return list ? list.filter((name) => name !== undefined) : [];
}

/**
 * What a hanger on `on` is put on in a piece of this body: `on` as it is, or, where a stack of the body has it as a member, that
 * member. More than one: nobody could say which is meant.
 */
export function placesInBody(on: Shape, body: readonly Entry[]): Target[] {
  const part = on.name;
  if (part === undefined || body.some(({ shape }) => shape === on)) return [{ shape: on }];
  const found = body.flatMap(({ shape }) => stacksIn(shape, on).map((): Target => ({ shape, part })));
  return found.length > 0 ? found : [{ shape: on }];
}

/** The stacks with that member that a shape is made of, as far as it still knows their members. */
function stacksIn(shape: Shape, member: Shape): Shape[] {
  const seen = new Set<Shape>();
  const waiting = [shape];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    if (seen.has(next)) continue;
    seen.add(next);
    waiting.push(...keptMembers(next));
  }
  return [...seen].filter(({ generator }) => generator.kind === 'stack' && generator.shapes.includes(member));
}

function keptMembers({ generator }: Shape): readonly Shape[] {
  switch (generator.kind) {
    case 'stack':
    case 'union':
    case 'intersection':
      return generator.shapes;
    case 'difference':
      return generator.shapes.slice(0, 1);
    case 'from':
      return [generator.shape];
    default:
      return [];
  }
}
