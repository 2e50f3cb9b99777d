/**
 * Prints a report as JSON for the command line: mm and mm²; lines, columns and tags of a batch from 1; finished
 * geometry with y up.
 */

import type { Report } from '../engine/engine.ts';
import { area, boundsOf, ringArea } from '../geometry/measure.ts';
import type { Point } from '../geometry/types.ts';
import { isError } from '../core/issue.ts';
import type { Fix, Issue, TextEdit, TextRange } from '../core/issue.ts';
import { estimateOfTag } from '../export/job/known-estimates.ts';
import { estimateLoad } from '../strength/load.ts';
import type { Stock } from '../spec/model/workshop-model.ts';
import { stockOf } from '../tag/by-stock.ts';
import type { Piece, Tag } from '../tag/tag.ts';

/** `fixes`: none for issues whose fixes were not looked for. `rows`: tags of a batch, from `rowJson`. */
export function reportJson(
  file: string,
  { source, tag, batch, issues, accepted, fonts, timings }: Report,
  fixes: ReadonlyMap<Issue, readonly Fix[]>,
  rows: readonly object[],
): object {
  const range = ({ start, end }: TextRange) => ({ start: source.position(start), end: source.position(end) });
  const edit = (change: TextEdit) => ({ range: range(change.range), text: change.text });
  const fixesJson = (found: readonly Fix[] | undefined) =>
    found ? { fixes: found.map(({ title, edits }) => ({ title, edits: edits.map(edit) })) } : {};
  const issueJson = (issue: Issue) => ({
    code: issue.code,
    severity: issue.severity,
    message: issue.message,
    ...(issue.row === undefined ? {} : { tag: issue.row + 1 }),
    ...(issue.names === undefined ? {} : { names: issue.names }),
    ...(issue.piece === undefined ? {} : { piece: issue.piece }),
    path: issue.path,
    range: range(issue.range),
    points: pointsJson(issue.points),
    ...(issue.width === undefined ? {} : { width: round(issue.width) }),
    ...(issue.angle === undefined ? {} : { angle: round(issue.angle) }),
    ...(issue.minimum === undefined ? {} : { minimum: round(issue.minimum) }),
    ...(issue.places
      ? {
          places: issue.places.map(({ points, width }) => ({
            points: pointsJson(points),
            ...(width === undefined ? {} : { width: round(width) }),
          })),
        }
      : {}),
  });
  return {
    file,
    ok: !issues.some(isError),
    ...tagJson(tag),
    ...(batch ? { batch: batch.rows.map(({ label }, row) => ({ name: label, ...rows[row] })) } : {}),
    issues: issues.map((issue) => ({
      ...issueJson(issue),
      ...fixesJson(fixes.get(issue)),
    })),
    accepted: accepted.map((issue) => ({ ...issueJson(issue), reason: issue.reason })),
    fonts: fonts.map(({ family, style, weight, italic, licence, embedding }) => ({
      family,
      style,
      weight,
      italic,
      ...(licence.text === undefined ? {} : { licence: licence.text }),
      ...(licence.url === undefined ? {} : { licence_url: licence.url }),
      embedding,
    })),
    timings: { total_ms: Math.round(timings.total * 10) / 10 },
  };
}

function pointsJson(points: readonly Point[] = []): object {
  return points.map(({ x, y }) => [round(x), round(y)]);
}

function tagJson(tag: Tag | undefined): object {
  if (!tag) return { pieces: [] };
  const pieces = tag.pieces.map((piece) => ({ ...pieceJson(piece), ...loadJson(piece, stockOf(piece, tag)) }));
  return { title: tag.title, pieces, ...estimateJson(tag) };
}

export function rowJson({ issues, tag }: Pick<Report, 'issues' | 'tag'>): object {
  return { ok: !issues.some(isError), ...tagJson(tag) };
}

/** Estimated load of the hanger, in newtons; empty for a piece without one. */
function loadJson(piece: Piece, stock: Stock): object {
  const estimate = estimateLoad(piece, stock);
  if (!estimate) return {};
  const { kind } = estimate;
  switch (kind) {
    case 'nothing':
      return { load: { kind, fault: estimate.fault } };
    case 'unknown':
      return { load: { kind, reason: estimate.reason, weakest: estimate.weakest.what } };
    case 'bears': {
      const { shortPull, hanging, weakest, material, measured } = estimate;
      return {
        load: {
          kind,
          short_pull: round(shortPull),
          ...(hanging === undefined ? {} : { ten_years: round(hanging) }),
          weakest: weakest.what,
          ...(material ? { material: material.name } : {}),
          ...(measured && weakest.by?.basis === 'measured' ? { measured: true } : {}),
        },
      };
    }
  }
}

/** What cutting takes: times in s, only if the machine is known; weight in g; cost in the spec's currency. */
function estimateJson(tag: Tag): object {
  const estimate = estimateOfTag(tag);
  if (!estimate) return {};
  const { cutLength, scoreLength, travelLength, engravedArea, sheetArea, time, weight, cost } = estimate;
  return {
    takes: {
      cut_length: round(cutLength),
      score_length: round(scoreLength),
      travel_length: round(travelLength),
      engraved_area: round(engravedArea),
      sheet_area: round(sheetArea),
      time:
        'missing' in time
          ? { missing: time.missing }
          : {
              seconds: round(time.seconds),
              cut: round(time.cut),
              score: round(time.score),
              engrave: round(time.engrave),
              travel: round(time.travel),
            },
      ...(weight === undefined ? {} : { weight: round(weight) }),
      ...(cost ? { cost: { ...cost, amount: round(cost.amount) } } : {}),
    },
  };
}

function pieceJson({ id, region }: Piece): object {
  const box = boundsOf(region);
  const { minX, minY, maxX, maxY } = box ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  return {
    id,
    width: round(maxX - minX),
    height: round(maxY - minY),
    area: round(area(region)),
    parts: region.filter((ring) => ringArea(ring) > 0).length,
    holes: region.filter((ring) => ringArea(ring) < 0).length,
    bounds: [minX, minY, maxX, maxY].map(round),
  };
}

/** Rounds to a thousandth of a millimetre; −0 becomes 0. */
function round(value: number): number {
  return Math.round(value * 1000) / 1000 + 0;
}
