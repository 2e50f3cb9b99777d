/**
 * `tagwright test-piece`: writes the specs of test pieces for the stock of a spec or workshop file, and their cut
 * files.
 */

import { mkdir } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import type { Severities } from '../engine/severity.ts';
import { loadUses } from '../spec/files/used-files.ts';
import { SpecSource } from '../spec/yaml/source.ts';
import { accepted } from '../test-pieces/accepted.ts';
import { fieldValues, usualFor } from '../test-pieces/engraving-field.ts';
import { headOfSpec, headOfUsed } from '../test-pieces/stock-head.ts';
import { isTestPiece, testPieceNames, testPieces } from '../test-pieces/all.ts';
import { nodeFontFiles } from '../text/node-font-files.ts';
import { exportAll } from './export.ts';
import { newEngine, readSpec } from './files.ts';
import type { SpecFile } from './files.ts';
import { exitCodes, UsageError } from './usage.ts';
import { Writer } from './writer.ts';

interface TestPieceOptions {
  /** Comma-separated names; by default all. */
  readonly only: string | undefined;
  /** Name of a stock, for a workshop file. */
  readonly stock: string | undefined;
  readonly font: string | undefined;
  /** Values for the engraving field. */
  readonly powers: string | undefined;
  readonly speeds: string | undefined;
  readonly to: string | undefined;
  readonly out: string | undefined;
  readonly overwrite: boolean;
}

export async function testPieceAll(
  specs: readonly SpecFile[],
  { only, stock, font = 'Nunito', powers, speeds, to = 'svg', out, overwrite }: TestPieceOptions,
  severities: Severities,
): Promise<number> {
  const [spec, ...more] = specs;
  if (!spec || more.length > 0) throw new UsageError('test-piece takes one spec or workshop file.');
  if (out === undefined) throw new UsageError('test-piece needs --out.');
  const names = only === undefined ? testPieceNames : only.split(',').map(knownTestPiece);
  const field = { powers: fieldValuesFrom('powers', powers), speeds: fieldValuesFrom('speeds', speeds) };
  const pathOf = (file: string) => relative(resolve(out), file).replaceAll('\\', '/');
  const source = new SpecSource(spec.text);
  const files = nodeFontFiles('');
  const read = async (path: string) => new TextDecoder().decode(await files.read(path));
  const { used } = await loadUses(source, { read, locate: spec.options.locate });
  const head = stock === undefined ? headOfSpec(source, used, pathOf) : headOfUsed(pathOf(resolve(spec.file)), stock);
  await mkdir(out, { recursive: true });
  const engine = newEngine();
  const options = { locate: (path: string) => resolve(out, path), severities };
  const written: SpecFile[] = [];
  const writer = new Writer(overwrite);
  for (const name of names) {
    const target = join(out, `${name}-${head.name.replaceAll(/[^\w-]+/g, '-')}.tag.yaml`);
    const text = await accepted(engine, testPieces[name].spec({ ...head, font, field }), options);
    await writer.write(target, text);
    // It is read again.
    await writer.end();
    written.push(await readSpec(target, severities));
  }
  const code = await exportAll(written, { to, out, force: false, overwrite, width: undefined, progress: false });
  return (await writer.end()) ? code : exitCodes.errors;
}

function fieldValuesFrom(what: 'powers' | 'speeds', typed: string | undefined): readonly string[] {
  const result = fieldValues(what, typed ?? usualFor(what));
  if ('problem' in result) throw new UsageError(`--${what}: ${result.problem}`);
  return result.values;
}

function knownTestPiece(name: string) {
  if (!isTestPiece(name)) throw new UsageError(`There is no test piece “${name}”: ${testPieceNames.join(', ')}.`);
  return name;
}
