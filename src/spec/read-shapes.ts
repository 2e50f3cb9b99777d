/** Shapes of a spec, each with its references resolved. */

import type { YamlPath } from '../issue.ts';
import type { Shape, ShapeNames } from './model.ts';
import type { Problems } from './problems.ts';
import { generatorKeyOf, readGenerator } from './read-generator.ts';
import { readModifiers } from './read-modifiers.ts';
import type { ShapeOrName, ShapeSpec, TagSpec } from './types.generated.ts';

/** How deep shapes may be written inside shapes, or lead to one another; far beyond any tag, far below the stack's limit. */
const deepest = 200;

/** Where names are looked up that the file itself does not define. */
interface ShapeScope {
  readonly uses: readonly { readonly shapes: ShapeReader }[];
  require(group: 'shapes', name: string, path: YamlPath): { readonly shapes: ShapeReader } | undefined;
}

export class ShapeReader implements ShapeNames {
  readonly #specs: Readonly<Record<string, ShapeSpec>>;
  readonly #problems: Problems;
  /** `undefined`: was tried, and its problem has been told. */
  readonly #done = new Map<string, Shape | undefined>();
  readonly #underWay: string[] = [];
  readonly #scope: ShapeScope;
  #depth = 0;

  constructor(spec: Partial<TagSpec>, problems: Problems, scope: ShapeScope) {
    this.#specs = spec.shapes ?? {};
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

  /** The shape of that name; an issue at `path` where there is none. */
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
      const key = generatorKeyOf(spec, path, this.#problems);
      const before = this.#problems.issues.length;
      const generator = key && readGenerator(key, spec, path, this.#problems, this);
      const modifiers = readModifiers(spec, path, this.#problems, this);
      const clean = this.#problems.issues.length === before;
      if (!generator || !clean) return undefined;
      return { ...(name === undefined ? {} : { name }), path: this.#problems.inSpec(path), generator, modifiers };
    } finally {
      this.#depth--;
    }
  }
}
