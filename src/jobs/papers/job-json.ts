/** Prints a job as JSON for the command line: mm, s and g; lines and columns from 1; y up. */

import type { Issue, TextRange } from '../../core/issue.ts';
import { isError } from '../../core/issue.ts';
import { byOrder } from './by-order.ts';
import type { CheckedJob, LaidOutJob } from '../job.ts';
import { pieceRows } from './job-table.ts';
import type { FileIssues } from '../read/model.ts';
import { sharesOf } from '../shares.ts';
import { costsOfJob, estimateOfJob, piecesWanted } from '../totals.ts';

/** `laid`: absent if nothing could be laid out. */
export function jobJson(file: string, job: CheckedJob, laid: LaidOutJob | undefined, files: readonly string[]): object {
  const issues = [
    ...(laid ?? job).issues.map((issue) => issueJson(file, issue, (offset) => job.source.position(offset))),
    ...job.inFiles.flatMap(({ name, issues: found, position }) =>
      found.map((issue) => issueJson(name, issue, position)),
    ),
  ];
  const estimate = laid && estimateOfJob(laid);
  return {
    file,
    ok: issues.every((issue) => !isError(issue)),
    title: job.title,
    ...(laid
      ? {
          wanted: piecesWanted(laid.pieces.tags),
          pieces: pieceRows(laid).map(({ place, ...row }) => ({
            ...row,
            ...(place
              ? { x: round(place.x), y: round(place.y), width: round(place.width), height: round(place.height) }
              : {}),
          })),
          sheets: laid.layout.sheets.map(({ name, stock, width, height, filled, offcut, pieces }) => ({
            name,
            stock,
            width: round(width),
            height: round(height),
            ...(offcut ? { offcut: offcut.offcut.id } : {}),
            filled: round(filled),
            pieces: pieces.length,
          })),
          orders: ordersJson(laid),
          takes: {
            ...(estimate?.weight === undefined ? {} : { weight: round(estimate.weight) }),
            ...(estimate && 'seconds' in estimate.time ? { seconds: round(estimate.time.seconds) } : {}),
            ...costsOfJob(laid),
          },
        }
      : {}),
    left_out: job.leftOut,
    issues,
    files,
  };
}

/** As on the pick list; what is not made is told by `left_out`. */
function ordersJson(job: LaidOutJob): object[] {
  const shareOf = sharesOf(job);
  return byOrder(job)
    .filter(({ tags }) => tags.length > 0)
    .map(({ order, rush, tags }) => ({
      order,
      rush,
      tags: tags.reduce((sum, { copies }) => sum + copies, 0),
      ...shareOf(tags.flatMap(({ made }) => made)),
    }));
}

function issueJson(file: string, { code, severity, message, range }: Issue, position: FileIssues['position']) {
  const at = ({ start, end }: TextRange) => ({ start: position(start), end: position(end) });
  return { file, code, severity, message, range: at(range) };
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000 + 0;
}
