/** Reads the maker's own breaking test of a stock: the force and the width of the neck. */

import type { YamlPath } from '../../core/issue.ts';
import { mmByMm } from '../../core/figures.ts';
import { parseForce } from './forces.ts';
import type { Measured } from '../model/workshop-model.ts';
import type { Problems } from './problems.ts';
import type { StockSpec } from '../types.generated.ts';

/**
 * Credible strength of a sheet that can be cut, in MPa: the least is that of loose foam, the most exceeds any wood,
 * card or plastic. Beyond these, a figure or its unit is wrong. Our own judgement.
 */
const credible = { least: 0.05, most: 400 } as const;

export function readMeasured(
  spec: StockSpec['measured'],
  thickness: number | undefined,
  path: YamlPath,
  problems: Problems,
): Measured | undefined {
  // A value with a missing key, which has been reported, is partial.
  const { breaks_at: written, neck: width }: Partial<NonNullable<StockSpec['measured']>> = spec ?? {};
  const neck = problems.length(width, [...path, 'neck'], 'size');
  if (written === undefined) return undefined;
  const force = parseForce(written);
  if ('problem' in force) {
    problems.error('bad-value', [...path, 'breaks_at'], force.problem);
    return undefined;
  }
  if (neck === undefined) return undefined;
  const { newtons } = force;
  const strength = thickness === undefined ? undefined : newtons / (neck * thickness);
  if (strength !== undefined && (strength < credible.least || strength > credible.most)) {
    const than = strength > credible.most ? 'more' : 'less';
    const statement = `${Number(newtons.toPrecision(3))} N on a neck of ${mmByMm(neck, thickness!)} is ${Number(strength.toPrecision(2))} MPa, ${than} than any sheet bears`;
    problems.error(
      'bad-value',
      [...path, 'breaks_at'],
      `${statement}. Check the pull, its unit and the width of the neck.`,
    );
    return undefined;
  }
  return { breaksAt: newtons, neck };
}
