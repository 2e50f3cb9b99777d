/** Reads the shapes of a spec, with references resolved. */

import type { YamlPath } from '../../core/issue.ts';
import type { Shape, ShapeNames, Target } from '../model/shape-model.ts';
import type { Problems } from './problems.ts';
import { generatorKeyOf, readGenerator } from './read-generator.ts';
import { readModifiers } from './read-modifiers.ts';
import { StackMembers } from './stack-members.ts';
import type { StackRef } from './stack-members.ts';
import type { ShapeOrName, ShapeSpec, TagSpec } from '../types.generated.ts';

/** Deepest nesting of shapes, or chain of references; far beyond any tag, far below the stack's limit. */
const deepest = 200;

/** Looks up names that the file itself does not define. */
interface ShapeScope {
  readonly uses: readonly { readonly shapes: ShapeReader }[];
  owner(group: 'shapes', name: string): { readonly shapes: ShapeReader } | undefined;
  require(group: 'shapes', name: string, path: YamlPath): { readonly shapes: ShapeReader } | undefined;
}

export class ShapeReader implements ShapeNames {
  readonly #specs: Readonly<Record<string, ShapeSpec>>;
  readonly #members: StackMembers;
  readonly #problems: Problems;
  /** `undefined` for a shape that was tried and whose problem has been reported. */
  readonly #done = new Map<string, Shape | undefined>();
  /** Shapes written in place, by path, so that reading one again gives the same object. */
  readonly #inPlace = new Map<string, Shape | undefined>();
  readonly #underWay: string[] = [];
  readonly #scope: ShapeScope;
  #depth = 0;

  constructor(spec: Partial<TagSpec>, problems: Problems, scope: ShapeScope) {
    this.#specs = spec.shapes ?? {};
    // Pieces of a used file do not concern the spec.
    this.#members = new StackMembers(this.#specs, problems.base.length === 0 ? (spec.pieces ?? {}) : {});
    this.#problems = problems;
    this.#scope = scope;
  }

  /** All named shapes that can be read, those of used files first. */
  all(): Map<string, Shape> {
    const shapes = new Map<string, Shape>(this.#scope.uses.flatMap((used) => [...used.shapes.all()]));
    for (const name of Object.keys(this.#specs)) {
      const shape = this.#named(name);
      if (shape) shapes.set(name, shape);
    }
    return shapes;
  }

  /** The shape of that name; an issue at `path` if there is none. */
  byName(name: string, path: YamlPath): Shape | undefined {
    if (Object.hasOwn(this.#specs, name)) {
      const loop = this.#underWay.indexOf(name);
      if (loop < 0) return this.#named(name);
      const round = [...this.#underWay.slice(loop), name].join(' → ');
      this.#problems.error('cycle', path, `“${name}” is made from itself: ${round}.`);
      return undefined;
    }
    const owner = this.#scope.require('shapes', name, path);
    return owner?.shapes.byName(name, path);
  }

  /** The shape of a name or of a definition written in place. */
  byRef(ref: ShapeOrName, path: YamlPath): Shape | undefined {
    if (typeof ref === 'string') return this.byName(ref, path);
    const place = JSON.stringify(path);
    if (!this.#inPlace.has(place)) this.#inPlace.set(place, this.#read(ref, path, undefined));
    return this.#inPlace.get(place);
  }

  /**
   * The target meant by placing something on the shape of that name or fitting it inside: a member of a stack where the
   * stack puts it. A member that is also a body by itself stands for itself, and so does one whose stack is made from
   * the shape being placed.
   */
  placed(name: string, path: YamlPath): Target | undefined {
    const shape = this.byName(name, path);
    if (!shape || this.#members.isBody(name)) return shape && { shape };
    const putting = this.#underWay.at(-1);
    const stacks = this.#stacksWith(name).filter(
      ({ reader, ref }) => reader !== this || putting === undefined || !this.#members.leadsTo(ref, putting),
    );
    if (stacks.length > 1) {
      const names = stacks.flatMap(({ ref }) => (typeof ref === 'string' ? [ref] : []));
      const which = names.length > 0 ? names.map((each) => `“${each}”`).join(' and ') : 'several';
      const example = `on: ${names[0] ?? 'plate'}, part: ${name}`;
      this.#problems.error(
        'bad-value',
        path,
        `“${name}” is a member of more than one stack: ${which}. Say where: {${example}}.`,
      );
      return undefined;
    }
    const [only] = stacks;
    const stack = only && only.reader.#stack(only.ref, path);
    return stack ? { shape: stack, part: name } : { shape };
  }

  /** Stacks with that member in this file and, if the name is defined in another file, in that one. */
  #stacksWith(name: string): { readonly reader: ShapeReader; readonly ref: StackRef }[] {
    const own: { reader: ShapeReader; ref: StackRef }[] = this.#members
      .stacksWith(name)
      .map((ref) => ({ reader: this, ref }));
    if (Object.hasOwn(this.#specs, name)) return own;
    const owner = this.#scope.owner('shapes', name)?.shapes;
    return owner && owner !== this ? [...own, ...owner.#stacksWith(name)] : own;
  }

  #stack(ref: StackRef, path: YamlPath): Shape | undefined {
    if (typeof ref === 'string') return this.byName(ref, path);
    return this.byRef(this.#members.written(ref), ['pieces', ref.piece, 'body', ref.index]);
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
      this.#problems.error('bad-value', path, `Shapes are nested more than ${deepest} deep here.`);
      return undefined;
    }
    this.#depth++;
    try {
      const key = generatorKeyOf(spec, path, this.#problems);
      const before = this.#problems.errors;
      const generator = key && readGenerator(key, spec, path, this.#problems, this);
      const modifiers = readModifiers(spec, path, this.#problems, this);
      const clean = this.#problems.errors === before;
      if (!generator || !clean) return undefined;
      return { ...(name === undefined ? {} : { name }), path: this.#problems.inSpec(path), generator, modifiers };
    } finally {
      this.#depth--;
    }
  }
}
