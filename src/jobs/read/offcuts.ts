/** Files of offcuts: the offcuts in stock, and which jobs have used them. */

import { difference, normalise } from '../../geometry/clipper.ts';
import { translation, transform } from '../../geometry/affine.ts';
import { area, boundsOf, ringArea } from '../../geometry/measure.ts';
import type { Region, Ring } from '../../geometry/types.ts';
import { isGroup } from '../../core/values.ts';
import type { Issue, YamlPath } from '../../core/issue.ts';
import { Problems } from '../../spec/read/problems.ts';
import { checkAgainstSchema } from '../../spec/schema/schema-issues.ts';
import { yamlSlip } from '../../spec/slips/yaml-slip.ts';
import type { SpecPlaces, SpecSource } from '../../spec/yaml/source.ts';
import type { OffcutsSpec, OffcutSpec } from '../offcuts-types.generated.ts';
import validateOffcuts from '../offcuts-validate.generated.mjs';

export interface Offcut {
  /** The number written on it. */
  readonly id: number;
  /** In mm, with its box at the origin. */
  readonly region: Region;
  /** Names of jobs. */
  readonly from?: string;
  readonly usedBy?: string;
  /** Index of its entry in the list. */
  readonly index: number;
}

export interface OffcutFile {
  /** Full path, and the name written in the job. */
  readonly file: string;
  readonly name: string;
  /** The present text; absent if there is no such file yet. */
  readonly source?: SpecSource;
  readonly offcuts: readonly Offcut[];
  readonly issues: readonly Issue[];
  /** It is there and is no file of offcuts, or cannot be read: nothing is written over it. */
  readonly isOther?: boolean;
}

/** A problem with one offcut does not affect the others. */
export function readOffcuts(source: SpecPlaces): Pick<OffcutFile, 'offcuts' | 'issues' | 'isOther'> {
  if (source.issues.length > 0) {
    const read = (changed: SpecSource) => readOffcuts(changed).issues.length;
    return { offcuts: [], issues: yamlSlip(source, read), isOther: true };
  }
  if (!isGroup(source.value) || other(source.value)) {
    const message = 'This is not a file of offcuts yet. Start with “tagwright_offcuts: 1”, then offcuts.';
    const range = source.keyRange([]);
    // An empty file may be begun.
    const isOther = source.value !== null && source.value !== undefined;
    return { offcuts: [], issues: [{ code: 'not-a-spec', severity: 'error', path: [], range, message }], isOther };
  }
  const { value, issues } = checkAgainstSchema(source, validateOffcuts, 'the file');
  const spec = (isGroup(value) ? value : {}) as Partial<OffcutsSpec>;
  const problems = new Problems(source, spec.units ?? 'mm');
  const list = [...((spec.offcuts ?? []) as readonly (OffcutSpec | undefined)[])];
  const taken = new Set<number>();
  const free = freeIds(list);
  const offcuts = list.flatMap((each, index): Offcut[] => {
    if (each === undefined) return [];
    const path: YamlPath = ['offcuts', index];
    const region = readRegion(each, path, problems);
    const id = each.id ?? free();
    if (taken.has(id)) {
      problems.error('name-clash', [...path, 'id'], `There are two offcuts ${id}; the second is not used.`);
      return [];
    }
    taken.add(id);
    if (!region) return [];
    return [
      {
        id,
        region,
        index,
        ...(each.from === undefined ? {} : { from: each.from }),
        ...(each.used_by === undefined ? {} : { usedBy: each.used_by }),
      },
    ];
  });
  return { offcuts, issues: [...issues, ...problems.issues] };
}

/** Whether it is a file of another kind, such as a spec. */
function other(value: Readonly<Record<string, unknown>>): boolean {
  return !('tagwright_offcuts' in value) && !('offcuts' in value);
}

/** Generates unused numbers, in order. */
export function freeIds(list: readonly ({ readonly id?: number } | undefined)[]): () => number {
  let last = Math.max(0, ...list.map((each) => each?.id ?? 0));
  return () => ++last;
}

/**
 * Offcuts that a job may cut from: those that it took before, and unused ones that it has not left. Exported again, it
 * takes none that came later, or it would be laid out on other wood than was cut.
 */
export function freeOffcuts(file: Pick<OffcutFile, 'offcuts'>, job: string): Offcut[] {
  const later = new Set(laterOffcuts(file, job));
  return file.offcuts.filter((each) => {
    const { from, usedBy } = each;
    return usedBy === job || (usedBy === undefined && from !== job && !later.has(each));
  });
}

/** Unused offcuts that came after a job was exported, going by their numbers, which rise. */
export function laterOffcuts({ offcuts }: Pick<OffcutFile, 'offcuts'>, job: string): Offcut[] {
  const numbers = (own: (offcut: Offcut) => boolean) => offcuts.filter(own).map(({ id }) => id);
  const left = numbers(({ from }) => from === job);
  const took = numbers(({ usedBy }) => usedBy === job);
  return offcuts.filter(({ id, from, usedBy }) => {
    if (usedBy !== undefined || from === job) return false;
    if (left.length > 0) return id > Math.min(...left);
    // A job that left nothing has not said where its own time was; what stood there by hand may be older.
    return took.length > 0 && from !== undefined && id > Math.max(...took);
  });
}

/** Offcuts left by this job that others have cut from, so that it must have been cut. */
export function takenFrom({ offcuts }: Pick<OffcutFile, 'offcuts'>, job: string): Offcut[] {
  return offcuts.filter(({ from, usedBy }) => from === job && usedBy !== undefined && usedBy !== job);
}

function readRegion(spec: OffcutSpec, path: YamlPath, problems: Problems): Region | undefined {
  const before = problems.issues.length;
  const region = spec.size ? rectangle(spec.size, path, problems) : outlined(spec, path, problems);
  if (problems.issues.length > before) return undefined;
  if (spec.size && spec.outline) {
    problems.error('bad-value', [...path, 'outline'], 'An offcut has a “size” or an “outline”, not both.');
    return undefined;
  }
  if (!region) {
    if (!problems.wrote([...path, 'size']) && !problems.wrote([...path, 'outline']))
      problems.error('missing-key', path, 'An offcut needs its “size”, or its “outline”.');
    return undefined;
  }
  const box = boundsOf(region);
  if (!box || area(region) < 1) {
    problems.error('bad-value', path, 'Nothing is left of this offcut.');
    return undefined;
  }
  return transform(region, translation(-box.minX, -box.minY));
}

function rectangle(size: readonly (number | string)[], path: YamlPath, problems: Problems): Region | undefined {
  const [width, height] = ([0, 1] as const).map((i) => problems.length(size[i], [...path, 'size', i], 'size'));
  if (width === undefined || height === undefined) return undefined;
  return [
    [
      { x: 0, y: 0 },
      { x: width, y: 0 },
      { x: width, y: height },
      { x: 0, y: height },
    ],
  ];
}

function outlined({ outline, holes = [] }: OffcutSpec, path: YamlPath, problems: Problems): Region | undefined {
  if (!outline) return undefined;
  const rings = [
    ringOf(outline, [...path, 'outline'], problems),
    ...Array.from(holes as readonly (Points | undefined)[], (hole, index) =>
      ringOf(hole, [...path, 'holes', index], problems),
    ),
  ];
  for (const [index, ring] of rings.entries()) {
    if (!ring || !crosses(ring)) continue;
    const [what, at] = index === 0 ? ['outline', ['outline']] : ['hole', ['holes', index - 1]];
    problems.error('bad-value', [...path, ...at], `This ${what} crosses itself.`);
  }
  const [whole, ...missing] = rings.flatMap((ring) => (ring ? [normalise([ring])] : []));
  return whole && missing.length === holes.length ? difference(whole, missing) : undefined;
}

/** Whether its area is not the one that its points enclose in their order (shoelace formula): parts of it lie over others, or the other way round. */
function crosses(ring: Ring): boolean {
  const enclosed = Math.abs(ringArea(ring));
  return Math.abs(area(normalise([ring])) - enclosed) > 0.01 + 1e-4 * enclosed;
}

/** What the schema does not allow, and has been told, is missing. */
type Points = readonly (readonly (number | string | undefined)[] | undefined)[];

/** `undefined` if any point cannot be read. */
function ringOf(points: Points | undefined, at: YamlPath, problems: Problems): Ring | undefined {
  const ring = Array.from(points ?? [], (point, index) => {
    const [x, y] = ([0, 1] as const).map((i) => problems.length(point?.[i], [...at, index, i], 'signed'));
    return x === undefined || y === undefined ? undefined : { x, y };
  });
  return points && ring.every((point) => point !== undefined) ? ring : undefined;
}
