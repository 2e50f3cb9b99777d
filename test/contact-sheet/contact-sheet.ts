/**
 * `npm run contact-sheet [-- PART-OF-A-NAME…]`: pictures of all designs of the collection, for a person to look over. Spoiled
 * ones stand beside what *fix all* makes of them. With `--read`, a table of what an independent reader makes of the spoiled ones
 * instead.
 */

import { join, relative } from 'node:path';
import { checkBatch } from '../../src/engine/batch.ts';
import type { Engine, Report } from '../../src/engine/engine.ts';
import { fixAll } from '../../src/fixes/fix-all.ts';
import { labelOf } from '../../src/spec/batch/batch.ts';
import { designsOf, meets, newCollectionEngine, optionsOf, reportOn, reportedIn } from '../collection/designs.ts';
import type { Design } from '../collection/designs.ts';
import { captionFont } from '../../src/export/job/job.ts';
import { printReadings } from './read.ts';
import { writeSheets } from './sheets.ts';
import { tileOf } from './tile.ts';
import type { Faces, Tile } from './tile.ts';

const folder = join(import.meta.dirname, '..', 'artefacts', 'contact');
const tileMm = 84;

const isToRead = process.argv.includes('--read');
const wanted = process.argv.slice(2).filter((word) => word !== '--read');
const isWanted = ({ kind, name }: Design) =>
  wanted.length === 0 || wanted.some((part) => `${kind}/${name}`.includes(part));

const engine = newCollectionEngine();
const faces: Faces = { plain: await captionFont(engine.fonts, 600), bold: await captionFont(engine.fonts, 800) };

if (isToRead) await printReadings(engine, designsOf('spoiled').filter(isWanted));
else await drawAll();

async function drawAll(): Promise<void> {
  const sound: Tile[] = [];
  for (const design of designsOf('sound').filter(isWanted)) sound.push(...(await tilesOf(engine, design, design.text)));
  write('sound', inRows(sound, 3));

  const fixed: Tile[][] = [];
  const unfixed: Tile[] = [];
  for (const design of designsOf('spoiled').filter(isWanted)) {
    const before = await tilesOf(engine, design, design.text, await missedExpectations(engine, design));
    const { text, made } = await fixAll(engine, design.text, optionsOf(design));
    if (made.length === 0) unfixed.push(...before);
    else {
      const notes = made.map((title) => `fix: ${title}`);
      const after = await tilesOf(engine, design, text, notes);
      before.forEach((tile, i) => fixed.push([tile, ...after.slice(i, i + 1)]));
    }
  }
  write('fixed', fixed);
  write('spoiled', inRows(unfixed, 3));
}

/** A tile for each tag of the design; `notes` below the first. */
async function tilesOf(engine: Engine, design: Design, text: string, notes: readonly string[] = []): Promise<Tile[]> {
  const options = optionsOf(design);
  const { all } = await checkBatch(engine, await engine.compute(text, options), options);
  return all.map((report, i) =>
    tileOf(titleOf(design, report), report, { width: tileMm, faces, notes: i > 0 ? [] : notes }),
  );
}

function titleOf({ name }: Design, report: Report): string {
  const row = labelOf(report);
  return row === undefined ? name : `${name}: ${row}`;
}

async function missedExpectations(engine: Engine, design: Design): Promise<string[]> {
  const reported = reportedIn(await reportOn(engine, design));
  return design.expectations
    .filter((each) => !meets(each, reported))
    .map(({ code, lines }) => `NOT SAID: ${code} in line ${lines.join(' or ')}`);
}

function inRows<T>(list: readonly T[], columns: number): T[][] {
  return Array.from({ length: Math.ceil(list.length / columns) }, (_, i) => list.slice(i * columns, (i + 1) * columns));
}

function write(name: string, rows: readonly (readonly Tile[])[]): void {
  for (const path of writeSheets(folder, name, rows, tileMm)) console.log(relative(process.cwd(), path));
}
