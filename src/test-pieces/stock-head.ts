/** The opening lines of a test piece that give it the stock of a spec, or one from a workshop file. */

import { chosenMachine, chosenPlace } from '../edits/chosen-place.ts';
import { valueAt, unitsOf } from '../core/values.ts';
import type { YamlPath } from '../core/issue.ts';
import { clip } from '../core/length.ts';
import type { SpecSource } from '../spec/yaml/source.ts';
import type { UsedFile } from '../spec/files/used-files.ts';
import { yamlText } from '../language/completion/snippets.ts';

export interface StockHead {
  readonly head: readonly string[];
  readonly name: string;
}

/**
 * Uses a stock from a workshop file. `file`: path from the folder of the test piece. `machine`: its name in that file.
 */
export function headOfUsed(file: string, name: string, machine?: string): StockHead {
  const lines = [`stock: ${name}`, ...(machine === undefined ? [] : [`machine: ${machine}`])];
  return { head: [`use: ${yamlText(file)}`, ...lines], name: labelled(name) };
}

/**
 * Uses the stock of a spec: copied if the spec itself defines it, by `use` if a file does. `pathOf`: path of a file,
 * given in full, from the folder of the test piece.
 */
export function headOfSpec(source: SpecSource, used: readonly UsedFile[], pathOf: (file: string) => string): StockHead {
  const place = chosenPlace('stock', source, used);
  if (!place) return { head: [], name: 'unnamed stock' };
  if (place.file !== undefined)
    return place.name === undefined
      ? { head: [`use: ${yamlText(pathOf(place.file))}`], name: 'stock' }
      : headOfUsed(pathOf(place.file), place.name, machineIn(place.source, chosenMachine(source, used)));
  const { start, end } = source.range(place.path);
  const written = source.text.slice(start, end);
  const units = unitsOf(source.value);
  const isBlock = !written.startsWith('{');
  // A block value stays a block, indented by two.
  const lines = isBlock ? ['stock:', ...indented(written)] : [`stock: ${written}`];
  return {
    head: [...(units === 'in' ? ['units: in'] : []), ...lines],
    name: labelled(place.name ?? materialText(source, place.path)),
  };
}

/** The machine is known only if it is defined in the same file as the stock. */
function machineIn(file: SpecSource, name: string | undefined): string | undefined {
  return name !== undefined && valueAt(file.value, ['machines', name]) !== undefined ? name : undefined;
}

/** Longest name, in letters of the label font, that fits every test piece. */
const longestLabel = 16;

function labelled(name: string): string {
  const plain = name.replaceAll(/[^\w ,.-]/g, '').trim();
  return clip(plain === '' ? 'stock' : plain, longestLabel).replace('…', '.');
}

function materialText(source: SpecSource, path: YamlPath): string {
  const material = valueAt(source.value, [...path, 'material']);
  return typeof material === 'string' ? material : '';
}

/** The first line comes without its indent, which the others share. */
function indented(block: string): string[] {
  const [first = '', ...rest] = block.split(/\r?\n/);
  const least = Math.min(
    ...rest.filter((line) => line.trim() !== '').map((line) => line.length - line.trimStart().length),
  );
  return [first, ...rest.map((line) => line.slice(Number.isFinite(least) ? least : 0))].map((line) => `  ${line}`);
}
