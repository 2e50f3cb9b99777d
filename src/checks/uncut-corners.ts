/** Borders whose corners are to be cut off where they have none. */

import type { Finding } from '../core/issue.ts';
import type { Check } from './check.ts';

export const uncutCorners: Check = ({ made }): Finding[] =>
  [...made].flatMap(([{ path }, { border }]): Finding[] =>
    border?.lacksCorners
      ? [
          {
            code: 'odd-value',
            severity: 'info',
            path: [...path, 'border', 'clip'],
            message: '“clip” cuts nothing off: this outline has no corner between two straight sides.',
          },
        ]
      : [],
  );
