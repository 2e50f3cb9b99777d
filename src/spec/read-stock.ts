/** A stock: what it is, how it is cut, what it weighs and costs. */

import type { YamlPath } from '../core/issue.ts';
import { defaultMinWeb, webDefaultOf } from './min-web-defaults.ts';
import type { Stock } from './model.ts';
import type { Problems } from './problems.ts';
import { readMeasured } from './read-measured.ts';
import type { Scope } from './scope.ts';
import type { StockSpec } from './types.generated.ts';

/** Round a hanger there is as much material as the sheet is thick, up to this (rule of thumb, no source). */
const stoutWebMm = 3;

export const defaultStock: Stock = { kerf: 0, ...readWebs({ kerf: 0 }) };

export function readStock({ problems }: Scope, spec: StockSpec, path: YamlPath): Stock {
  const { material, density } = spec;
  const thickness = problems.length(spec.thickness, [...path, 'thickness'], 'size');
  const written = problems.length(spec.min_web, [...path, 'min_web'], 'size');
  const kerf = readKerf(spec.kerf, [...path, 'kerf'], problems);
  const measured = readMeasured(spec.measured, thickness, [...path, 'measured'], problems);
  // Of a price that lacks what it needs, which has been reported, the schema's check leaves a part.
  const { amount, per, currency }: Partial<NonNullable<StockSpec['price']>> = spec.price ?? {};
  return {
    ...(material === undefined ? {} : { material }),
    ...(thickness === undefined ? {} : { thickness }),
    ...kerf,
    ...readWebs({ material, thickness, written, kerf: kerf.kerf }),
    ...(density === undefined ? {} : { density }),
    ...(measured ? { measured } : {}),
    ...(amount === undefined || per === undefined
      ? {}
      : { price: { amount, per, ...(currency === undefined ? {} : { currency }) } }),
  };
}

interface WebSource {
  readonly material?: string | undefined;
  readonly thickness?: number | undefined;
  /** As `min_web` says. */
  readonly written?: number | undefined;
  readonly kerf: number;
}

/** What is written counts as it is. */
function readWebs({ material, thickness, written, kerf }: WebSource): Pick<Stock, 'minWeb' | 'leastWeb' | 'hangerWeb'> {
  const minWeb = written ?? defaultMinWeb(material, thickness);
  return {
    minWeb,
    leastWeb: Math.min(minWeb, Math.max(webDefaultOf(material).least, kerf)),
    hangerWeb: written ?? Math.max(minWeb, Math.min(thickness ?? 0, stoutWebMm)),
  };
}

function readKerf(kerf: StockSpec['kerf'], path: YamlPath, problems: Problems): Pick<Stock, 'kerf' | 'kerfs'> {
  if (typeof kerf !== 'object') return { kerf: problems.length(kerf, path, 'distance') ?? 0 };
  const read = (key: 'outer' | 'inner' | 'engrave') => problems.length(kerf[key], [...path, key], 'distance');
  const [outer, inner, engrave] = [read('outer'), read('inner'), read('engrave') ?? 0];
  const kerfs = { outer: outer ?? inner ?? 0, inner: inner ?? outer ?? 0, engrave };
  return { kerf: Math.max(kerfs.outer, kerfs.inner), kerfs };
}
