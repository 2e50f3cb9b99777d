/** A stock on one of several machines: values under the name of the machine take precedence over those for all. */

import { mm } from '../../core/figures.ts';
import type { YamlPath } from '../../core/issue.ts';
import { isDated } from '../model/measured-values.ts';
import type { Stock } from '../model/workshop-model.ts';
import { Problems } from './problems.ts';
import { readMachine } from './read-machine.ts';
import type { MachineLayer } from './read-machine.ts';
import { readStock } from './read-stock.ts';
import type { Scope } from './scope.ts';
import type { StockOnMachineSpec, StockSpec } from '../types.generated.ts';

export interface StockPlace {
  readonly owner: Scope;
  readonly spec: StockSpec;
  readonly path: YamlPath;
}

/**
 * Reads a stock, and reports its problems for all machines. `machine` is the name of the chosen one, if it has a name.
 */
export function readStockOn({ owner, spec, path }: StockPlace, machine: string | undefined, name?: string): Stock {
  const base = readStock(owner, spec, path, name);
  for (const [each, over] of Object.entries(spec.machines ?? {})) {
    const place = [...path, 'machines', each];
    owner.require('machines', each, place, { range: owner.problems.source.keyRange(place) });
    reportContradiction(owner, place, base, readStock(owner, over, place));
  }
  const over = machine === undefined ? undefined : spec.machines?.[machine];
  if (!over) return base;
  // Already reported above.
  const { source, units, base: within } = owner.problems;
  return readStock({ problems: new Problems(source, units, within) }, onMachine(spec, over), path, name);
}

/** The layers for working the stock: first on the chosen machine, then on any. */
export function stockMachineLayers({ owner, spec, path }: StockPlace, machine: string | undefined): MachineLayer[] {
  const over = machine === undefined ? undefined : spec.machines?.[machine]?.machine;
  const { problems } = owner;
  return [
    ...(over ? [{ spec: over, path: [...path, 'machines', machine!, 'machine'], problems }] : []),
    ...(spec.machine ? [{ spec: spec.machine, path: [...path, 'machine'], problems }] : []),
  ];
}

/** Reads how each machine except the chosen one works the stock, so that problems are reported. */
export function readOtherMachines({ owner: { problems }, spec, path }: StockPlace, chosen: string | undefined): void {
  for (const [name, over] of Object.entries(spec.machines ?? {})) {
    if (name === chosen || !over.machine) continue;
    readMachine([{ spec: over.machine, path: [...path, 'machines', name, 'machine'], problems }]);
  }
}

/** The stock on one machine. A day for a value that this machine has of its own is not carried over. */
export function onMachine(spec: StockSpec, over: StockOnMachineSpec): StockSpec {
  const own = { ...over, ...over.machine };
  const days = Object.entries(spec.measured_on ?? {}).filter(([key]) => !(isDated(key) && own[key] !== undefined));
  const measuredOn = { ...Object.fromEntries(days), ...over.measured_on };
  const merged: StockSpec = {
    ...spec,
    ...over,
    machine: { ...spec.machine, ...over.machine },
    measured_on: measuredOn,
  };
  if (Object.keys(measuredOn).length === 0) delete merged.measured_on;
  return merged;
}

/**
 * Reports a kerf and a web that contradict each other; the machine's own value is marked. Two values written together
 * have been checked already.
 */
function reportContradiction({ problems }: Scope, place: YamlPath, base: Stock, over: Stock): void {
  const hasKerf = over.stated?.kerf === true;
  if (hasKerf === over.stated?.minWeb || !(hasKerf ? base.stated?.minWeb : base.stated?.kerf)) return;
  const [beam, web] = hasKerf ? [over.kerf, base.minWeb] : [base.kerf, over.minWeb];
  if (web >= beam) return;
  const message = `“min_web” is ${mm(web)}, less than the kerf of ${mm(beam)}: one of the two is wrong.`;
  problems.error('bad-length', [...place, hasKerf ? 'kerf' : 'min_web'], message);
}
