/** Materials that must not be laser cut, and those of which it must be known what they are. */

import type { Finding } from '../core/issue.ts';
import type { Check } from './check.ts';
import { dangerOf } from './measures/danger.ts';
import { stockPath } from './measures/stock-path.ts';

export const unsafeMaterial: Check = ({ stock, pieces }): Finding[] => {
  const found = dangerOf(stock.material ?? '');
  if (found === undefined) return [];
  const { why, severity, slip } = found;
  const [first, last] =
    severity === 'error'
      ? ['Do not laser cut this: ', 'If you are not sure what a sheet is, do not cut it; your']
      : ['', 'Your'];
  const what = slip ? `“${stock.material}” looks like ${slip.meant}, which` : `“${stock.material}”`;
  return [
    {
      code: 'unsafe-material',
      severity,
      path: stockPath(pieces, 'material'),
      message: `${first}${what} ${why}. ${last} machine’s manual and your supplier’s data sheet say more.`,
    },
  ];
};
