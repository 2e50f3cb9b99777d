/** Materials that must not be laser cut. */

import type { Finding } from '../issue.ts';
import type { Check } from './check.ts';

/**
 * From the lists of materials that university workshops forbid in laser cutters; no list is complete. Names as people write
 * them; whole words, so that an “abstract oak” is not ABS.
 */
const forbidden: readonly { readonly words: RegExp; readonly why: string }[] = [
  {
    words:
      /\b(pvc|cpvc|u-?pvc|vinyl|polyvinyl|chlorinated|chloride)\b|\b(faux|artificial|imitation|synthetic) leather\b/,
    why: 'is or may be PVC or another halogenated plastic: cutting it gives off hydrogen chloride, which harms lungs and machine',
  },
  { words: /\b(ptfe|fluoropolymers?|polytetrafluoroethylene)\b/, why: 'gives off poisonous fluorine compounds' },
  { words: /\bpolycarbonate\b/, why: 'burns and chars instead of cutting, with harmful smoke' },
  { words: /\babs\b/, why: 'melts, catches fire easily and gives off hydrogen cyanide' },
  { words: /\bcarbon[ -]?fib(er|re)\b/, why: 'gives off harmful dust and fumes' },
  {
    words: /\b(epoxy|fr-?4|g-?10|fib(er|re)glass|glass[ -]?fib(er|re)|circuit board)\b/,
    why: 'gives off harmful fumes from its resin, and glass dust',
  },
];

export const unsafeMaterial: Check = ({ stock }): Finding[] => {
  const { material } = stock;
  const name = material?.toLowerCase() ?? '';
  // “PVC-free” and “no vinyl” say what it is not.
  const plain = name.replaceAll(
    /\b(pvc|vinyl|epoxy|formaldehyde)[ -]free\b|\b(no|without|not) (pvc|vinyl|epoxy)\b/g,
    '',
  );
  const rule = forbidden.find(({ words }) => words.test(plain));
  if (!rule) return [];
  return [
    {
      code: 'unsafe-material',
      severity: 'error',
      path: ['stock', 'material'],
      message: `Do not laser cut this: “${material}” ${rule.why}. If you are not sure what a sheet is, do not cut it; your machine’s manual and your supplier’s data sheet say more.`,
    },
  ];
};
