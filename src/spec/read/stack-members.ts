/**
 * The stacks that a shape is a member of. Something placed on a member belongs where the stack puts it, since by itself
 * the member is at the origin, where nobody sees it.
 */

import type { ShapeEntry } from '../model/model.ts';
import type { Shape, Target } from '../model/shape-model.ts';
import type { PieceSpec, PlaceSpec, ShapeOrName, ShapeSpec } from '../types.generated.ts';

type Shapes = Readonly<Record<string, ShapeSpec>>;
type Pieces = Readonly<Record<string, PieceSpec>>;

/** A reference to a stack: its name, or its place in the body of a piece. */
export type StackRef = string | { readonly piece: string; readonly index: number };

/** The members of all stacks in one file, those in the bodies of its pieces included. */
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
    for (const member of new Set(givenNames(spec.stack?.shapes)))
      this.#stacks.set(member, [...(this.#stacks.get(member) ?? []), ref]);
  }

  /** The stacks with a member of this name: named ones, and those written in the body of a piece. */
  stacksWith(member: string): readonly StackRef[] {
    return this.#stacks.get(member) ?? [];
  }

  /** Whether the shape is the body of a piece outside any stack; then it stays at its own place. */
  isBody(name: string): boolean {
    return this.#bodies.has(name);
  }

  /** Whether a stack is made from a shape of the file, or placed relative to it. */
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
    typeof spec.fit === 'object' ? spec.fit.in : spec.fit,
    typeof spec.place === 'object' ? placeTarget(spec.place) : spec.place,
  ];
  // The schema check leaves holes in lists.
  return refs.filter((ref) => ref !== undefined);
}

function bodyOf({ body }: PieceSpec): (ShapeOrName | undefined)[] {
  // The schema check may have removed it.
  const written = body as PieceSpec['body'] | undefined;
  return Array.isArray(written) ? [...written] : [written];
}

function placeTarget({ on, above, below, left_of: leftOf, right_of: rightOf }: PlaceSpec): string | undefined {
  return on ?? above ?? below ?? leftOf ?? rightOf;
}

function givenNames(list: readonly (string | undefined)[] | undefined): string[] {
  return list ? list.filter((name) => name !== undefined) : [];
}

/**
 * The possible targets of a hanger on `on` in a piece with this body: `on` itself or, if stacks of the body have it as
 * a member, that member in each. With more than one, it is not clear which is meant.
 */
export function placesInBody(on: Shape, body: readonly ShapeEntry[]): Target[] {
  const part = on.name;
  if (part === undefined || body.some(({ shape }) => shape === on)) return [{ shape: on }];
  const found = body.flatMap(({ shape }) => stacksIn(shape, on).map((): Target => ({ shape, part })));
  return found.length > 0 ? found : [{ shape: on }];
}

/** The stacks with that member that a shape is made of, as far as their members are still known. */
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
