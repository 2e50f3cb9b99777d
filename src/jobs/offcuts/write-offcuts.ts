/**
 * Updates files of offcuts after a job: marks what it has used, and adds what it has left. Comments and other entries
 * stay.
 */

import { boundsOf, ringArea } from '../../geometry/measure.ts';
import { mmPer, trimmed } from '../../core/units.ts';
import type { Units } from '../../core/units.ts';
import { isGroup, unitsOf } from '../../core/values.ts';
import { withList } from '../../spec/yaml/yaml-list.ts';
import type { JobLayout, JobSheet } from '../layout/layout.ts';
import type { JobModel } from '../read/model.ts';
import { leftoversOf } from './leftovers.ts';
import type { Leftover } from './leftovers.ts';
import { freeIds, takenFrom } from '../read/offcuts.ts';
import type { Offcut, OffcutFile } from '../read/offcuts.ts';

/** Of a job that is laid out. */
export interface JobWithOffcuts {
  readonly name: string;
  readonly model: JobModel;
  readonly offcuts: ReadonlyMap<string, OffcutFile>;
  readonly layout: JobLayout;
}

/** A file to be written, with the text that it was made from. */
export interface OffcutChange {
  /** Full path, and the name written in the job. */
  readonly file: string;
  readonly name: string;
  /** Absent if there was no such file. */
  readonly before?: string;
  readonly after: string;
  readonly kept: readonly KeptOffcut[];
  /** Offcuts that another job has cut from since, if this job would now leave others. */
  readonly outdated: readonly Offcut[];
}

export interface KeptOffcut {
  /** The number to write on it. */
  readonly id: number;
  readonly sheet: JobSheet;
  readonly leftover: Leftover;
}

/** The files whose text changes. */
export function offcutChanges(job: JobWithOffcuts): OffcutChange[] {
  return offcutFiles(job).filter(({ before, after }) => after !== before);
}

/** Offcuts kept from each sheet, including those already written down. */
export function keptOffcuts(job: JobWithOffcuts): KeptOffcut[] {
  return offcutFiles(job).flatMap(({ kept }) => kept);
}

/** By the name of their file, offcuts that another job has cut from and this one would no longer leave like that. */
export function outdatedOffcuts(job: JobWithOffcuts): Map<string, readonly Offcut[]> {
  const isCutFrom = [...job.offcuts.values()].some((file) => takenFrom(file, job.name).length > 0);
  if (!isCutFrom) return new Map();
  return new Map(offcutFiles(job).flatMap(({ name, outdated }) => (outdated.length > 0 ? [[name, outdated]] : [])));
}

/** Every file whose stock is cut. One that is broken, or something else, stays unchanged. */
function offcutFiles({ name: job, model, offcuts, layout }: JobWithOffcuts): OffcutChange[] {
  return [...model.sheets].flatMap(([stock, sources]) => {
    const sheets = layout.sheets.filter((sheet) => sheet.stock === stock);
    const files = sources.flatMap((source) => (source.kind === 'offcuts' ? [source.file] : []));
    return files.flatMap((name, index): OffcutChange[] => {
      const file = offcuts.get(name);
      if (!file || file.isOther) return [];
      const used = sheets.flatMap(({ offcut }) => (offcut?.file === name ? [offcut.offcut.index] : []));
      // Leftovers of whole sheets go into the first file; those of an offcut, into the file that it came from.
      const own = sheets.filter(({ offcut }) => (offcut ? offcut.file === name : index === 0));
      return [offcutChange(file, job, used, own, stock)];
    });
  });
}

function offcutChange(
  file: OffcutFile,
  job: string,
  used: readonly number[],
  sheets: readonly JobSheet[],
  stock: string,
): OffcutChange {
  const units = unitsOf(file.source?.value);
  // What is not taken out again is no longer left.
  const stale = new Set(file.offcuts.filter(({ from }) => from === job));
  const left = sheets.flatMap((sheet) =>
    leftoversOf(sheet).map((leftover) => {
      const shape = shapeOf(leftover, units);
      const written = [...stale].find((each) => isWritten(file, each, shape));
      if (written) stale.delete(written);
      return { sheet, leftover, shape, written };
    }),
  );
  const isSame = stale.size === 0 && left.every(({ written }) => written);
  const outdated = isSame ? [] : takenFrom(file, job);
  // Once its wood is in use elsewhere, what the job leaves is settled.
  const isSettled = outdated.length > 0;
  const next = idsAgain([...stale], file.offcuts);
  const kept = left
    .filter(({ written }) => written !== undefined || !isSettled)
    .map(({ written, ...each }) => ({ ...each, id: written?.id ?? next(), isNew: !written }));
  const known = new Map(file.offcuts.map((offcut) => [offcut.index, offcut]));
  const before = file.source?.text;
  const start = `# Offcuts of ${stock}. Take a line out when its piece is gone.\ntagwright_offcuts: 1\noffcuts: []\n`;
  const after = withList(before?.trim() ? before : start, 'offcuts', {
    change: (index) => {
      const offcut = known.get(index);
      if (!offcut) return {};
      if (stale.has(offcut) && !isSettled) return { drop: true };
      // The number is on the wood, so it must not change with the lines above.
      const first = { id: offcut.id };
      if (used.includes(index)) return { first, set: { used_by: job } };
      return { first, remove: offcut.usedBy === job && !isSettled ? ['used_by'] : [] };
    },
    add: kept.flatMap(({ id, shape, isNew }) => (isNew ? [{ id, ...shape, from: job }] : [])),
  });
  return { file: file.file, name: file.name, ...(before === undefined ? {} : { before }), after, kept, outdated };
}

/** Numbers of entries that are dropped, which nothing else has, then new ones. */
function idsAgain(dropped: readonly Offcut[], all: readonly Offcut[]): () => number {
  const again = dropped.map(({ id }) => id).sort((a, b) => a - b);
  const ids = freeIds(all);
  return () => again.shift() ?? ids();
}

/** An offcut as an entry says it: its `size`, or its `outline` and `holes`. */
type Shape = Readonly<Record<string, unknown>>;

function isWritten({ source }: OffcutFile, { index }: Offcut, shape: Shape): boolean {
  const value = source?.value;
  const list: unknown = isGroup(value) ? value['offcuts'] : undefined;
  const entry: unknown = Array.isArray(list) ? list[index] : undefined;
  if (!isGroup(entry)) return false;
  const { size, outline, holes } = entry;
  return JSON.stringify({ size, outline, holes }) === JSON.stringify(shape);
}

function shapeOf({ region, isRectangle }: Leftover, units: Units): Shape {
  const figure = (mm: number) => Number(trimmed(mm / mmPer[units], units === 'mm' ? 1 : 3));
  const box = boundsOf(region)!;
  const ring = (points: (typeof region)[number]) => points.map(({ x, y }) => [figure(x), figure(y)]);
  const [outline, ...holes] = [...region].sort((a, b) => ringArea(b) - ringArea(a)).map(ring);
  if (isRectangle) return { size: [figure(box.maxX), figure(box.maxY)] };
  return { outline, ...(holes.length > 0 ? { holes } : {}) };
}
