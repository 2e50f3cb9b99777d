/** The engine as tests use it: the fonts of the packages, and files beside the spec that exist in memory only. */

import { Engine } from '../../../src/engine/engine.ts';
import type { Report } from '../../../src/engine/engine.ts';
import { area, boundsOf } from '../../../src/geometry/measure.ts';
import type { Bounds, Region } from '../../../src/geometry/types.ts';
import type { Issue } from '../../../src/core/issue.ts';
import type { Piece } from '../../../src/tag/tag.ts';
import type { FontFiles } from '../../../src/text/font-files.ts';
import { FontLibrary } from '../../../src/text/font-library.ts';
import { packagedFontFiles } from '../../fonts/font-files.ts';

/** Where the spec of a test is said to lie. */
const folder = '/specs/';

/** Files beside the spec, by name. */
export type Beside = Readonly<Record<string, string | Uint8Array>>;

/** Opening the fonts takes longer than most specs; engines without files of their own read the same. */
let bundled: FontLibrary | undefined;

export function newEngine(beside: Beside = {}): Engine {
  const files: FontFiles = {
    ...packagedFontFiles(),
    beside: () => Promise.resolve(Object.keys(beside)),
    read: (path, stretch) => {
      const content = beside[path.slice(folder.length)];
      if (content === undefined) return Promise.reject(new Error(`${path} does not exist`));
      const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
      return Promise.resolve(stretch ? bytes.subarray(stretch.start, stretch.end) : bytes);
    },
  };
  if (Object.keys(beside).length > 0) return new Engine(files);
  return new Engine(files, { fonts: (bundled ??= new FontLibrary(files)) });
}

let shared = newEngine();

/** Nothing that was computed before is found again: for tests of changed code in one process. */
export function renewEngine(): void {
  bundled = undefined;
  shared = newEngine();
}

/** What the engine says of a spec. */
export function report(text: string, engine: Engine = shared, signal?: AbortSignal): Promise<Report> {
  return engine.compute(text, { locate: (relative) => folder + relative, ...(signal ? { signal } : {}) });
}

export interface Made {
  readonly report: Report;
  readonly pieces: readonly Piece[];
  readonly issues: readonly Issue[];
  /** The first piece's finished outline. */
  readonly region: Region;
  readonly area: number;
  readonly bounds: Bounds;
  readonly width: number;
  readonly height: number;
}

/** A spec that must have made at least one piece. */
export async function make(text: string, engine?: Engine): Promise<Made> {
  return madeOf(text, await report(text, engine));
}

export type Unchecked = Omit<Made, 'issues' | 'report'> & { readonly report: Omit<Report, 'issues' | 'accepted'> };

/** The same without its checks, which take up to half of the time: for tests that only look at what is drawn. */
export async function makeUnchecked(text: string, engine: Engine = shared): Promise<Unchecked> {
  const enough = { first: 'not-filled', of: () => true } as const;
  return madeOf(text, await engine.compute(text, { locate: (relative) => folder + relative, enough }));
}

function madeOf(text: string, made: Report): Made {
  const region = made.tag?.pieces[0]?.region;
  const bounds = region && boundsOf(region);
  if (!made.tag || !region || !bounds) {
    throw new Error(`Nothing was made:\n${made.issues.map((issue) => issue.message).join('\n')}\nof\n${text}`);
  }
  return {
    report: made,
    pieces: made.tag.pieces,
    issues: made.issues,
    region,
    area: area(region),
    bounds,
    width: bounds.maxX - bounds.minX,
    height: bounds.maxY - bounds.minY,
  };
}

/** A spec with one piece made of `body`, where `shapes` are YAML lines below `shapes:`. */
export function specOf(shapes: readonly string[], piece = 'body: [body]', head: readonly string[] = []): string {
  const lines = ['tagwright: 1', ...head, 'shapes:', ...shapes.map((line) => `  ${line}`)];
  return [...lines, 'pieces:', `  tag: {${piece}}`, ''].join('\n');
}

/** The piece made of one shape alone. */
export function makeShape(shape: string, others: readonly string[] = [], engine?: Engine): Promise<Made> {
  return make(specOf([...others, `body: ${shape}`], 'body: [body], parts: many'), engine);
}

export function makeShapeUnchecked(shape: string): Promise<Unchecked> {
  return makeUnchecked(specOf([`body: ${shape}`], 'body: [body], parts: many'));
}

/** An issue's stretch of the text, and its 1-based line and column. */
export function placeOf(made: Report, { range }: Issue): { text: string; line: number; column: number } {
  return { text: made.source.text.slice(range.start, range.end), ...made.source.position(range.start) };
}

export function assertNear(actual: number, expected: number, tolerance: number, what = 'value'): void {
  if (!(Math.abs(actual - expected) <= tolerance)) {
    throw new Error(`${what} is ${actual}, which is not within ${tolerance} of ${expected}`);
  }
}
