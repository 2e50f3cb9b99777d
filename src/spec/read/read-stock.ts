/** Reads a stock: what it is, how it is cut, what it weighs and costs, how it looks. */

import type { YamlPath } from '../../core/issue.ts';
import { mm } from '../../core/figures.ts';
import { isDay } from '../../core/days.ts';
import type { Dated } from '../model/measured-values.ts';
import { defaultMinWeb, webDefaultOf } from '../model/min-web-defaults.ts';
import type { Stock } from '../model/workshop-model.ts';
import type { Problems } from './problems.ts';
import { readMeasured } from './read-measured.ts';
import type { Scope } from './scope.ts';
import type { StockSpec } from '../types.generated.ts';

/** Material round a hanger by default: the sheet's thickness, up to this, in mm (rule of thumb, no source). */
const stoutWebMm = 3;

export const defaultStock: Stock = { kerf: 0, ...readWebs({ kerf: 0 }) };

/** `name` is its key under `stocks`. */
export function readStock(
  { problems }: Pick<Scope, 'problems'>,
  spec: StockSpec,
  path: YamlPath,
  name?: string,
): Stock {
  const { material, density, caution, look } = spec;
  const thickness = problems.measured(spec.thickness, [...path, 'thickness'], 'thickness');
  const written = problems.measured(spec.min_web, [...path, 'min_web'], 'min_web');
  const minXHeight = problems.measured(spec.min_x_height, [...path, 'min_x_height'], 'min_x_height');
  const kerf = readKerf(spec.kerf, [...path, 'kerf'], problems);
  const measured = readMeasured(spec.measured, thickness, [...path, 'measured'], problems);
  const measuredOn = readDays(spec, path, problems);
  reportContradictions(kerf.kerf, written, path, problems);
  // The schema check leaves a partial price if keys are missing, which has been reported.
  const { amount, per, currency }: Partial<NonNullable<StockSpec['price']>> = spec.price ?? {};
  return {
    ...(name === undefined ? {} : { name }),
    ...(material === undefined ? {} : { material }),
    ...(thickness === undefined ? {} : { thickness }),
    ...kerf,
    ...readWebs({ material, thickness, written, kerf: kerf.kerf, isMeasured: measuredOn?.min_web !== undefined }),
    ...(minXHeight === undefined ? {} : { minXHeight }),
    ...(density === undefined ? {} : { density }),
    ...(measured ? { measured } : {}),
    ...(amount === undefined || per === undefined
      ? {}
      : { price: { amount, per, ...(currency === undefined ? {} : { currency }) } }),
    ...(caution === undefined || caution.trim() === '' ? {} : { caution: caution.trim() }),
    ...(look === undefined ? {} : { look }),
    ...(measuredOn === undefined ? {} : { measuredOn }),
    stated: { kerf: spec.kerf !== undefined, minWeb: spec.min_web !== undefined },
  };
}

interface WebSource {
  readonly material?: string | undefined;
  readonly thickness?: number | undefined;
  /** Value of `min_web`. */
  readonly written?: number | undefined;
  readonly kerf: number;
  /** Whether it is what a test piece survived rather than the maker's wish. */
  readonly isMeasured?: boolean;
}

/** A given value counts unchanged, except for hangers: a web that only just survived is too narrow to hang by. */
function readWebs({
  material,
  thickness,
  written,
  kerf,
  isMeasured,
}: WebSource): Pick<Stock, 'minWeb' | 'leastWeb' | 'hangerWeb'> {
  const minWeb = written ?? defaultMinWeb(material, thickness);
  return {
    minWeb,
    leastWeb: Math.min(minWeb, Math.max(webDefaultOf(material).least, kerf)),
    hangerWeb: (isMeasured ? undefined : written) ?? Math.max(minWeb, Math.min(thickness ?? 0, stoutWebMm)),
  };
}

function readKerf(kerf: StockSpec['kerf'], path: YamlPath, problems: Problems): Pick<Stock, 'kerf' | 'kerfs'> {
  if (typeof kerf !== 'object') return { kerf: problems.measured(kerf, path, 'kerf', 'distance') ?? 0 };
  const read = (key: 'outer' | 'inner' | 'engrave') => problems.measured(kerf[key], [...path, key], 'kerf', 'distance');
  const [outer, inner, engrave] = [read('outer'), read('inner'), read('engrave') ?? 0];
  const kerfs = { outer: outer ?? inner ?? 0, inner: inner ?? outer ?? 0, engrave };
  return { kerf: Math.max(kerfs.outer, kerfs.inner), kerfs };
}

/** Checks a library: a web that the beam removes altogether cannot have survived it. A spec may still ask for one. */
function reportContradictions(kerf: number, minWeb: number | undefined, path: YamlPath, problems: Problems): void {
  if (path[0] !== 'stocks' || minWeb === undefined || minWeb >= kerf) return;
  const message = `“min_web” is ${mm(minWeb)}, less than the kerf of ${mm(kerf)}: one of the two is wrong.`;
  problems.error('bad-length', [...path, 'min_web'], message);
}

function readDays(spec: StockSpec, path: YamlPath, problems: Problems): Stock['measuredOn'] {
  const { measured_on: days, machine } = spec;
  if (days === undefined) return undefined;
  const values: Readonly<Record<Dated, unknown>> = {
    kerf: spec.kerf,
    min_web: spec.min_web,
    min_x_height: spec.min_x_height,
    hatch: machine?.hatch,
    engrave: machine?.engrave,
  };
  for (const [key, day] of Object.entries(days) as [Dated, string][]) {
    const place = [...path, 'measured_on', key];
    if (!isDay(day)) problems.error('bad-value', place, `There is no day ${day}.`);
    else if (values[key] === undefined && !problems.wrote(valuePath(path, key)))
      problems.error('missing-key', place, `“measured_on” has a day for “${key}”, but this stock has no “${key}”.`);
  }
  return days;
}

function valuePath(path: YamlPath, key: Dated): YamlPath {
  return key === 'hatch' || key === 'engrave' ? [...path, 'machine', key] : [...path, key];
}
