/** All pieces of a job by stock, one for each copy; and the tags that cannot be laid out, with reasons. */

import { mostPieces } from '../../nesting/layout.ts';
import { inUnits } from '../../core/figures.ts';
import type { Issue, YamlPath } from '../../core/issue.ts';
import type { IssueCode } from '../../core/issue-kinds.ts';
import type { Severity } from '../../core/issue-kinds.ts';
import { clip } from '../../core/length.ts';
import type { CutFrom } from '../../spec/model/model.ts';
import type { Stock } from '../../spec/model/workshop-model.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import { stockOf } from '../../tag/by-stock.ts';
import type { Piece, Tag } from '../../tag/tag.ts';
import { kerfOf } from '../../tag/uncompensated.ts';
import { fixedPieces } from './fixed.ts';
import type { FixedPiece } from './fixed.ts';
import { takenBy } from '../orders/taken-by.ts';
import { jobPiece } from '../orders/job-piece.ts';
import type { JobPiece } from '../orders/job-piece.ts';
import type { JobModel } from '../read/model.ts';
import type { OffcutFile } from '../read/offcuts.ts';
import { fits, roomsOf } from './rooms.ts';
import type { Room } from './rooms.ts';
import type { JobTag, JobWork, LeftOutTag } from '../orders/work.ts';
import { TooLarge } from './too-large.ts';

/** Everything that is cut from one stock. */
export interface StockWork {
  readonly name: string;
  readonly from: CutFrom;
  readonly output: Tag['output'];
  readonly pieces: readonly JobPiece[];
  /** Those of the pieces that the job fixes. */
  readonly fixed: readonly FixedPiece[];
  readonly rooms: readonly Room[];
}

export interface JobPieces {
  readonly stocks: readonly StockWork[];
  /** Tags of which all pieces are included. */
  readonly tags: readonly JobTag[];
  readonly leftOut: readonly LeftOutTag[];
  readonly issues: readonly Issue[];
}

interface PieceContext {
  readonly offcuts: ReadonlyMap<string, OffcutFile>;
  /** Name of the job in files of offcuts. */
  readonly job: string;
}

export function jobPieces(
  model: JobModel,
  { tags, leftOut: already }: Pick<JobWork, 'tags' | 'leftOut'>,
  source: SpecSource,
  { offcuts, job }: PieceContext,
): JobPieces {
  const issues: Issue[] = [];
  const leftOut: LeftOutTag[] = [];
  const reported = new Set<string>();
  const reportProblem = (
    code: IssueCode,
    path: YamlPath,
    message: string,
    severity: Severity = 'error',
    key = false,
  ) => {
    if (reported.has(message)) return;
    reported.add(message);
    const range = key ? source.keyRange(path) : source.range(path);
    issues.push({ code, severity, path, range, message: inUnits(message, model.units) });
  };
  const stocks = new Map<
    string,
    { from: CutFrom; output: Tag['output']; spec: string; pieces: JobPiece[]; rooms: Room[] }
  >();
  const kept: JobTag[] = [];
  const tooLarge = new TooLarge();
  /** Two lines may ask for the same tag in the same order. */
  const copies = new Map<string, number>();
  let count = 0;
  const leaveOut = ({ spec, order, label, product, copies: quantity }: JobTag, why: string) => {
    const named = { spec, order, label, ...(product === undefined ? {} : { product }) };
    leftOut.push({ ...named, quantity, why: inUnits(why, model.units) });
  };
  for (const each of tags) {
    const { tag, spec, path } = each;
    const drop = (why: string) => {
      leaveOut(each, why);
    };
    const nameless = tag.pieces.find((piece) => stockOf(piece, tag).name === undefined);
    if (nameless) {
      const why = `${spec} is cut from a stock without a name; put it under “stocks”, so that the job knows its sheets.`;
      reportProblem('missing-key', [...path, 'spec'], why);
      drop(why);
      continue;
    }
    const lacking = tag.pieces.map((piece) => stockOf(piece, tag).name!).find((name) => !model.sheets.has(name));
    if (lacking !== undefined) {
      const why = `There are no sheets of “${clip(lacking)}”, which ${spec} is cut from.`;
      if (!model.stocksMeant.has(lacking)) reportProblem('missing-key', ['sheets'], why, 'error', true);
      drop(why);
      continue;
    }
    const pieces = tag.pieces.filter((piece) => takenBy(piece, tag).length > 0);
    for (const piece of pieces) {
      const from: CutFrom = piece.cutFrom ?? { stock: tag.stock, ...(tag.machine ? { machine: tag.machine } : {}) };
      const name = from.stock.name!;
      const known = stocks.get(name);
      if (known) {
        const differing = stockDifference(known.from.stock, from.stock);
        if (differing !== undefined && known.spec !== spec)
          reportProblem(
            'name-clash',
            [...path, 'spec'],
            `“${clip(name)}” has another ${differing} in ${spec} than in ${known.spec}: they share sheets, so they should share the stock.`,
            'warning',
          );
        continue;
      }
      const kerf = Math.max(...tags.flatMap((other) => kerfsOf(other.tag, name)));
      const rooms = roomsOf(model.sheets.get(name)!, offcuts, { job, kerf });
      stocks.set(name, { from, output: tag.output, spec, pieces: [], rooms });
    }
    const large = pieces.find(
      (piece) => !stocks.get(stockNameOf(piece, tag))!.rooms.some((room) => fits(takenBy(piece, tag), room)),
    );
    if (large) {
      const stock = stockNameOf(large, tag);
      const { title } = large;
      const hasRooms = stocks.get(stock)!.rooms.length > 0;
      const why = tooLarge.add({ spec, label: each.label, title, stock, region: takenBy(large, tag), hasRooms });
      drop(why);
      continue;
    }
    count += each.copies * pieces.length;
    kept.push(each);
    if (count > mostPieces) continue;
    const asked = JSON.stringify([each.spec, each.order, each.label]);
    const before = copies.get(asked) ?? 0;
    copies.set(asked, before + each.copies);
    for (let copy = before + 1; copy <= before + each.copies; copy++)
      for (const piece of pieces) stocks.get(stockNameOf(piece, tag))!.pieces.push(jobPiece(each, copy, piece));
  }
  for (const { stock, message } of tooLarge.problems)
    if (!model.sheetsUnread.has(stock)) reportProblem('exceeds-sheet', ['sheets', stock], message, 'error', true);
  if (count > mostPieces) {
    // Whole and at once: laying out those that are not too many takes minutes, and which they are is chance.
    const why = `The job has ${count} pieces; at most ${mostPieces} are laid out at once. Split it into several jobs.`;
    reportProblem('bad-value', ['tags'], why, 'error', true);
    for (const each of kept) leaveOut(each, why);
    return { stocks: [], tags: [], leftOut, issues };
  }
  const missing = new Set([...already, ...leftOut].map(({ spec }) => spec));
  const all = [...stocks].map(([name, { from, output, pieces, rooms }]) => ({ name, from, output, pieces, rooms }));
  const fixed = fixedPieces(model.fixed, all, missing, reportProblem);
  const worked = all.map((stock): StockWork => ({ ...stock, fixed: fixed.get(stock.name) ?? [] }));
  return { stocks: worked.filter(({ pieces }) => pieces.length > 0), tags: kept, leftOut, issues };
}

function stockNameOf(piece: Piece, tag: Tag): string {
  return stockOf(piece, tag).name!;
}

/** Kerfs along outlines of the stock with that name. */
function kerfsOf(tag: Tag, name: string): number[] {
  return tag.pieces
    .map((piece) => stockOf(piece, tag))
    .filter((stock) => stock.name === name)
    .map((stock) => kerfOf(stock).outer);
}

/** A property in which two stocks of one name differ although they would share a sheet. */
function stockDifference(a: Stock, b: Stock): string | undefined {
  if (a.thickness !== b.thickness) return 'thickness';
  if (a.material !== b.material) return 'material';
  return kerfOf(a).outer === kerfOf(b).outer && kerfOf(a).inner === kerfOf(b).inner ? undefined : 'kerf';
}
