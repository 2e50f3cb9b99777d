/** Materials that must not be laser cut. */

import type { Finding } from '../core/issue.ts';
import type { Check } from './check.ts';

/**
 * From the lists of materials that university workshops forbid in laser cutters; no list is complete. Names as people write
 * them, in lower case and with single spaces; `whole` keeps an “abstract oak” from being ABS.
 */
const forbidden: readonly { readonly words: RegExp; readonly why: string }[] = [
  {
    words: whole('u ?pvc|c?pvc|pvdc|(poly ?)?vinyl|chlorinated|chloride|halogenated'),
    why: 'is or may be PVC or another halogenated plastic: cutting it gives off hydrogen chloride, which harms lungs and machine',
  },
  { words: whole('ptfe|pvdf|polytetrafluoroethylene|fluoropolymers?'), why: 'gives off poisonous fluorine compounds' },
  { words: whole('poly ?carbonates?'), why: 'burns and chars instead of cutting, with harmful smoke' },
  { words: whole('abs'), why: 'melts, catches fire easily and gives off hydrogen cyanide' },
  { words: whole('carbon ?fib(er|re)s?|cfrp'), why: 'gives off harmful dust and fumes' },
  {
    words: whole(
      'epoxy|epoxies|fr ?4(?!\\d)|g ?10(?!\\d)|glass ?fib(er|re)s?|fib(er|re) ?glass|gfrp|grp|pcb|circuit boards?',
    ),
    why: 'gives off harmful fumes from its resin, and glass dust',
  },
];

/** Imitations are PVC more often than not, unless their maker says otherwise. */
const imitation = whole('(faux|artificial|imitation|synthetic|fake) leather|leatherette|leather imitation');

/** “PVC-free”, “no vinyl”, “without PVC or epoxy”: what a material is said not to be. */
const denied =
  /\p{L}+ free(?! (of|from|standing))\b|\b(no|non|not|without|free (of|from)) (any )?\p{L}+( n?or \p{L}+)*/gu;

export const unsafeMaterial: Check = ({ stock }): Finding[] => {
  const why = dangerOf(stock.material ?? '');
  if (why === undefined) return [];
  return [
    {
      code: 'unsafe-material',
      severity: 'error',
      path: ['stock', 'material'],
      message: `Do not laser cut this: “${stock.material}” ${why}. If you are not sure what a sheet is, do not cut it; your machine’s manual and your supplier’s data sheet say more.`,
    },
  ];
};

function dangerOf(material: string): string | undefined {
  const name = material
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ');
  const plain = name.replace(denied, ' ');
  const isSaidSafe = whole('pvc|vinyl').test(name);
  if (imitation.test(plain) && !isSaidSafe) return forbidden[0]!.why;
  return forbidden.find(({ words }) => words.test(plain))?.why;
}

/** The words between anything but letters: “3 mm PVC” and “PVC3” are PVC. */
function whole(words: string): RegExp {
  return new RegExp(`(?<!\\p{L})(${words})(?!\\p{L})`, 'u');
}
