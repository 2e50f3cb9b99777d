/** A stock: what it is, how it is cut, what it weighs and costs. */

import type { YamlPath } from '../issue.ts';
import type { Stock } from './model.ts';
import type { Problems } from './problems.ts';
import type { Scope } from './scope.ts';
import type { StockSpec } from './types.generated.ts';

/** Narrowest web to rely on where the spec does not say: as wide as the sheet is thick, 1.5 mm as a floor (common practice, no source). */
const leastWebMm = 1.5;

export const defaultStock: Stock = { kerf: 0, minWeb: leastWebMm };

export function readStock({ problems }: Scope, spec: StockSpec, path: YamlPath): Stock {
  const { material, density } = spec;
  const thickness = problems.length(spec.thickness, [...path, 'thickness'], 'size');
  const minWeb = problems.length(spec.min_web, [...path, 'min_web'], 'size');
  // Of a price that lacks what it needs, which has been reported, the schema's check leaves a part.
  const { amount, per, currency }: Partial<NonNullable<StockSpec['price']>> = spec.price ?? {};
  return {
    ...(material === undefined ? {} : { material }),
    ...(thickness === undefined ? {} : { thickness }),
    ...readKerf(spec.kerf, [...path, 'kerf'], problems),
    minWeb: minWeb ?? Math.max(leastWebMm, thickness ?? 0),
    ...(density === undefined ? {} : { density }),
    ...(amount === undefined || per === undefined
      ? {}
      : { price: { amount, per, ...(currency === undefined ? {} : { currency }) } }),
  };
}

function readKerf(kerf: StockSpec['kerf'], path: YamlPath, problems: Problems): Pick<Stock, 'kerf' | 'kerfs'> {
  if (typeof kerf !== 'object') return { kerf: problems.length(kerf, path, 'distance') ?? 0 };
  const read = (key: 'outer' | 'inner' | 'engrave') => problems.length(kerf[key], [...path, key], 'distance');
  const [outer, inner, engrave] = [read('outer'), read('inner'), read('engrave') ?? 0];
  const kerfs = { outer: outer ?? inner ?? 0, inner: inner ?? outer ?? 0, engrave };
  return { kerf: Math.max(kerfs.outer, kerfs.inner), kerfs };
}
