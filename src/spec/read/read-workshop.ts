/**
 * Reads what exists before any tag is made: stock, tie, sheet, machine and output, written in the spec or taken from
 * the files it uses.
 */

import type { CutFrom } from '../model/model.ts';
import type { Machine, Output, Sheet, Stock, Tie } from '../model/workshop-model.ts';
import { mm } from '../../core/figures.ts';
import { isDay } from '../../core/days.ts';
import { readMachine } from './read-machine.ts';
import type { MachineLayer } from './read-machine.ts';
import { readOutput } from './read-output.ts';
import { defaultStock } from './read-stock.ts';
import type { Scope } from './scope.ts';
import { readOtherMachines, readStockOn, stockMachineLayers } from './stock-on-machine.ts';
import type { StockSpec, TieSpec } from '../types.generated.ts';
import type { YamlPath } from '../../core/issue.ts';

export interface Workshop {
  readonly stock: Stock;
  readonly tie: Tie | undefined;
  readonly sheet: Sheet | undefined;
  readonly machine: Machine | undefined;
  readonly output: Output;
  /** The stock of a piece that names one; `undefined` if it is the tag's own or, with an issue at `path`, unknown. */
  cutFrom(name: string, path: YamlPath): CutFrom | undefined;
}

export function readWorkshop(scope: Scope): Workshop {
  // Named ones are read even if they are not used, so that their problems are reported.
  for (const { owner, name, spec } of members(scope, 'stocks')) {
    const place = { owner, spec, path: ['stocks', name] };
    readStockOn(place, undefined);
    readMachine(stockMachineLayers(place, undefined));
    readOtherMachines(place, undefined);
  }
  for (const { owner, name, spec } of members(scope, 'ties')) readTie(owner, spec, ['ties', name]);
  const stock = chosen(scope, 'stock', 'stocks');
  const tie = chosen(scope, 'tie', 'ties');
  const sheet = definingScope(scope, 'sheet');
  const machine = definingScope(scope, 'machine');
  const machineName = typeof machine?.spec.machine === 'string' ? machine.spec.machine : undefined;
  for (const [name, spec] of Object.entries(scope.spec.machines ?? {}))
    if (name !== machineName) readMachine([{ spec, path: ['machines', name], problems: scope.problems }]);
  const [, name] = stock?.path ?? [];
  const read = stock ? readStockOn(stock, machineName, name === undefined ? undefined : String(name)) : defaultStock;
  if (stock) readOtherMachines(stock, machineName);
  if (stock && read.price?.per === 'sheet' && !sheet) {
    const message = 'A price per sheet needs the size of a sheet: “sheet”.';
    stock.owner.problems.error('missing-key', [...stock.path, 'price', 'per'], message);
  }
  return {
    stock: read,
    tie: tie && readTie(tie.owner, tie.spec, tie.path),
    sheet: sheet && readSheet(sheet),
    machine: readMachine(machineLayers(scope, machine, stock), machineName),
    output: readOutput(definingScope(scope, 'output') ?? scope),
    cutFrom: otherStocks(scope, read.name, machine),
  };
}

/** Reads each stock once; its problems are reported by the file that defines it. */
function otherStocks(scope: Scope, own: string | undefined, machine: Scope | undefined): Workshop['cutFrom'] {
  const known = new Map<string, CutFrom>();
  const machineName = typeof machine?.spec.machine === 'string' ? machine.spec.machine : undefined;
  return (name, path) => {
    const owner = scope.require('stocks', name, path);
    const spec = owner?.spec.stocks?.[name];
    if (!owner || !spec || name === own) return undefined;
    const found = known.get(name);
    if (found) return found;
    const place = { owner, spec, path: ['stocks', name] };
    const stock = readStockOn(place, machineName, name);
    if (stock.price?.per === 'sheet' && !definingScope(scope, 'sheet')) {
      const message = `The price of “${name}” is per sheet, and there is no size of a sheet: “sheet”.`;
      scope.problems.error('missing-key', path, message);
    }
    const read = readMachine(machineLayers(scope, machine, place), machineName);
    const cutFrom = { stock, ...(read ? { machine: read } : {}) };
    known.set(name, cutFrom);
    return cutFrom;
  };
}

/**
 * The layers of the machine: first the spec's own, then how its stock is worked, then the machine of a used file. For a
 * machine with a name, which is the same for every stock wherever it is chosen, the stock comes first.
 */
function machineLayers(
  scope: Scope,
  machineScope: Scope | undefined,
  stock: Chosen<StockSpec> | undefined,
): MachineLayer[] {
  const machine = machineScope?.spec.machine;
  const name = typeof machine === 'string' ? machine : undefined;
  const ofStock = stock ? stockMachineLayers(stock, name) : [];
  if (!machineScope || machine === undefined) return ofStock;
  if (typeof machine !== 'string') {
    const whole = { spec: machine, path: ['machine'], problems: machineScope.problems };
    return machineScope === scope ? [whole, ...ofStock] : [...ofStock, whole];
  }
  const owner = machineScope.require('machines', machine, ['machine']);
  const spec = owner?.spec.machines?.[machine];
  return owner && spec ? [...ofStock, { spec, path: ['machines', machine], problems: owner.problems }] : ofStock;
}

type SingleKey = 'stock' | 'tie' | 'sheet' | 'machine' | 'output';

/** The spec itself if it has the key, else the one used file that does. */
function definingScope(scope: Scope, key: SingleKey): Scope | undefined {
  if (scope.spec[key] !== undefined) return scope;
  const definingScopes = scope.uses.flatMap((used) => definingScope(used, key) ?? []);
  const sources = new Set(definingScopes.map(({ problems }) => problems.source));
  if (sources.size > 1) {
    const message = `Several of the used files set “${key}”; set it in this file too, so that it is clear which counts.`;
    scope.problems.error('name-clash', ['use'], message);
  }
  return definingScopes[0];
}

interface Chosen<T> {
  readonly owner: Scope;
  readonly spec: T;
  readonly path: YamlPath;
}

function chosen(scope: Scope, key: 'stock', group: 'stocks'): Chosen<StockSpec> | undefined;
function chosen(scope: Scope, key: 'tie', group: 'ties'): Chosen<TieSpec> | undefined;
function chosen(scope: Scope, key: 'stock' | 'tie', group: 'stocks' | 'ties'): Chosen<StockSpec | TieSpec> | undefined {
  const from = definingScope(scope, key);
  const value = from?.spec[key];
  if (!from || value === undefined) return undefined;
  if (typeof value !== 'string') return { owner: from, spec: value, path: [key] };
  const owner = from.require(group, value, [key]);
  const spec = owner?.spec[group]?.[value];
  return owner && spec && { owner, spec, path: [group, value] };
}

function members(scope: Scope, group: 'stocks'): { owner: Scope; name: string; spec: StockSpec }[];
function members(scope: Scope, group: 'ties'): { owner: Scope; name: string; spec: TieSpec }[];
function members(scope: Scope, group: 'stocks' | 'ties'): { owner: Scope; name: string; spec: StockSpec | TieSpec }[] {
  const own = Object.entries(scope.spec[group] ?? {}).filter(
    ([name]) => scope.spec[group === 'stocks' ? 'stock' : 'tie'] !== name,
  );
  return own.map(([name, spec]) => ({ owner: scope, name, spec: spec as StockSpec | TieSpec }));
}

function readTie({ problems }: Scope, spec: TieSpec, path: YamlPath): Tie | undefined {
  const keys = (['twine', 'ribbon', 'split_ring'] as const).filter((key) => problems.wrote([...path, key]));
  const [key] = keys;
  if (!key) problems.error('missing-key', path, 'A tie needs “twine”, “ribbon” or “split_ring”.');
  if (keys.length > 1) problems.error('bad-value', path, 'A tie is one of “twine”, “ribbon” and “split_ring”.');
  const kind = key === 'split_ring' ? 'split ring' : key;
  const size = key && problems.length(spec[key], [...path, key], 'size');
  const opening = problems.measured(spec.opening, [...path, 'opening'], 'opening');
  const openingOn = spec.measured_on;
  const day = [...path, 'measured_on'];
  if (openingOn !== undefined && !isDay(openingOn)) problems.error('bad-value', day, `There is no day ${openingOn}.`);
  else if (openingOn !== undefined && !problems.wrote([...path, 'opening']))
    problems.error('missing-key', day, '“measured_on” is the day of “opening”, which this tie does not have.');
  if (kind === 'twine' && size !== undefined && opening !== undefined && opening < size)
    problems.error(
      'bad-length',
      [...path, 'opening'],
      `“opening” is ${mm(opening)}, less than the twine of ${mm(size)}: one of the two is wrong.`,
    );
  if (!kind || size === undefined) return undefined;
  return {
    kind,
    size,
    ...(opening === undefined ? {} : { opening }),
    ...(opening === undefined || openingOn === undefined ? {} : { openingOn }),
  };
}

/** Default gap between pieces, in mm (rule of thumb, no source). */
const usualGapMm = 2;

function readSheet({ spec: { sheet }, problems }: Scope): Sheet | undefined {
  // A size that does not fit the schema was removed and has been reported.
  const written: readonly (number | string)[] = (sheet as Partial<typeof sheet>)?.size ?? [];
  const side = (index: 0 | 1) => problems.length(written[index], ['sheet', 'size', index], 'size');
  const [width, height] = [side(0), side(1)];
  const margin = problems.length(sheet?.margin, ['sheet', 'margin'], 'distance') ?? 0;
  const gap = problems.length(sheet?.gap, ['sheet', 'gap'], 'distance') ?? usualGapMm;
  if (width === undefined || height === undefined) return undefined;
  if (2 * margin >= Math.min(width, height)) {
    problems.error('bad-length', ['sheet', 'margin'], 'The margins leave nothing of the sheet.');
  }
  return { width, height, margin, gap, turn: sheet?.turn ?? 'half', copies: sheet?.copies ?? 1 };
}
