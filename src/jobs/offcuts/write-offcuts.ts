/**
 * Updates files of offcuts after a job: marks what it has used, and adds what it has left. Comments and other entries
 * stay.
 */

import { boundsOf, ringArea } from '../../geometry/measure.ts';
import { mmPer, trimmed } from '../../core/units.ts';
import type { Units } from '../../core/units.ts';
import { unitsOf } from '../../core/values.ts';
import { withList } from '../../spec/yaml/yaml-list.ts';
import type { LaidOutJob } from '../job.ts';
import type { JobSheet } from '../layout/layout.ts';
import { leftoversOf } from './leftovers.ts';
import type { Leftover } from './leftovers.ts';
import { freeIds, takenFrom } from '../read/offcuts.ts';
import type { OffcutFile } from '../read/offcuts.ts';

/** A file to be written, with the text that it was made from. */
export interface OffcutChange {
  /** Full path, and the name written in the job. */
  readonly file: string;
  readonly name: string;
  /** Absent if there was no such file. */
  readonly before?: string;
  readonly after: string;
  readonly used: number;
  readonly kept: readonly KeptOffcut[];
}

export interface KeptOffcut {
  /** The number to write on it. */
  readonly id: number;
  readonly sheet: JobSheet;
  readonly leftover: Leftover;
}

/** The files whose text changes. */
export function offcutChanges(job: LaidOutJob): OffcutChange[] {
  return offcutFiles(job).filter(({ before, after }) => after !== before);
}

/** Offcuts kept from each sheet, including those already written down. */
export function keptOffcuts(job: LaidOutJob): KeptOffcut[] {
  return offcutFiles(job).flatMap(({ kept }) => kept);
}

/** Every file whose stock is cut. A file that is broken, or that another job has built on since, stays unchanged. */
function offcutFiles(job: LaidOutJob): OffcutChange[] {
  const { model, offcuts, layout } = job;
  return [...model.sheets].flatMap(([stock, sources]) => {
    const sheets = layout.sheets.filter((sheet) => sheet.stock === stock);
    const files = sources.flatMap((source) => (source.kind === 'offcuts' ? [source.file] : []));
    return files.flatMap((name, index): OffcutChange[] => {
      const file = offcuts.get(name);
      if (!file || takenFrom(file, job.name).length > 0 || (file.source?.issues.length ?? 0) > 0) return [];
      const used = sheets.flatMap(({ offcut }) => (offcut?.file === name ? [offcut.offcut.index] : []));
      // Leftovers of whole sheets go into the first file; those of an offcut, into the file that it came from.
      const own = sheets.filter(({ offcut }) => (offcut ? offcut.file === name : index === 0));
      return [offcutChange(file, job.name, used, own, stock)];
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
  const before = file.source?.text;
  const known = new Map(file.offcuts.map((offcut) => [offcut.index, offcut]));
  // Entries left by an earlier run of this job are replaced, unless they have been cut from.
  const isOld = (index: number) => {
    const { from, usedBy } = known.get(index) ?? {};
    return from === job && usedBy === undefined;
  };
  const ids = freeIds(file.offcuts.filter(({ index }) => !isOld(index)));
  const units = unitsOf(file.source?.value);
  const kept = sheets.flatMap((sheet) =>
    leftoversOf(sheet).map((leftover): KeptOffcut => ({ id: ids(), sheet, leftover })),
  );
  const start = `# Offcuts of ${stock}. Take a line out when its piece is gone.\ntagwright_offcuts: 1\noffcuts: []\n`;
  const after = withList(before ?? start, 'offcuts', {
    change: (index) => {
      const offcut = known.get(index);
      if (!offcut) return {};
      if (isOld(index)) return { drop: true };
      // The number is on the wood, so it must not change with the lines above.
      const first = { id: offcut.id };
      if (used.includes(index)) return { first, set: { used_by: job } };
      return { first, remove: offcut.usedBy === job ? ['used_by'] : [] };
    },
    add: kept.map(({ id, leftover }) => entryOf(leftover, { job, units, id })),
  });
  return {
    file: file.file,
    name: file.name,
    ...(before === undefined ? {} : { before }),
    after,
    used: used.length,
    kept,
  };
}

interface OffcutEntry {
  readonly job: string;
  readonly units: Units;
  readonly id: number;
}

function entryOf(
  { region, isRectangle }: Leftover,
  { job, units, id }: OffcutEntry,
): Readonly<Record<string, unknown>> {
  const figure = (mm: number) => Number(trimmed(mm / mmPer[units], units === 'mm' ? 1 : 3));
  const box = boundsOf(region)!;
  const ring = (points: (typeof region)[number]) => points.map(({ x, y }) => [figure(x), figure(y)]);
  const [outline, ...holes] = [...region].sort((a, b) => ringArea(b) - ringArea(a)).map(ring);
  const shape = isRectangle
    ? { size: [figure(box.maxX), figure(box.maxY)] }
    : { outline, ...(holes.length > 0 ? { holes } : {}) };
  return { id, ...shape, from: job };
}
