/**
 * Safety reminders for the bench, about the machine and the material. Sources, where there are any, are named in the
 * guide, “Before you cut”; notes on single materials are rules of thumb, no source.
 */

import { listed } from '../../core/names.ts';
import { lookNames } from '../../look/looks.ts';
import { isSolidWood } from '../../spec/model/min-web-defaults.ts';
import type { LookName } from '../../look/looks.ts';
import type { Stock } from '../../spec/model/workshop-model.ts';

const always = [
  'Your machine’s manual comes before anything on this sheet. Know where the stop is, keep an extinguisher within reach, and never leave a running job alone.',
  'Eyes and skin: keep the lid shut and its switch working. Never look at an open beam, or its reflection, without eyewear made for its wavelength.',
  'Extract the fumes. Never cut PVC, vinyl, neoprene or other halogenated plastics, polycarbonate, ABS, PTFE, polyurethane, foams of polystyrene or polypropylene, HDPE, imitation or chrome-tanned leather, carbon fibre, epoxy or glass-fibre boards, phenolic or melamine laminates, or treated or painted wood. A material that is not named here may be just as harmful.',
] as const;

const wood = 'Wood flares up when the beam dwells: keep the air on, and watch small parts that tip.';
/** Of what is not known to be solid wood. */
const plywood = 'Plywood varies, and its glue gives off formaldehyde: extract it, and try on scrap first.';

const ofMaterial: Readonly<Record<LookName, string>> = {
  light: wood,
  dark: wood,
  red: wood,
  alder: wood,
  beech: wood,
  tan: wood,
  fibre: 'Fibreboard makes much smoke, and its glue gives off formaldehyde. Clean lens and filter more often.',
  plain:
    'Nothing is known here of this material. Ask its maker whether it may be cut with a laser; if you do not know what a sheet is, do not cut it.',
  paper: 'Card and paper catch fire easily: as little power as cuts them, and eyes on the job.',
  leather: 'Vegetable-tanned leather only: fumes of chrome-tanned and imitation leather are harmful.',
  felt: 'Know what the felt is made of: wool smells and chars, polyester melts.',
  cork: 'Cork glows on after the cut: look once more before you turn away.',
  acrylic:
    'Acrylic gives off methyl methacrylate and burns with little smoke to warn you: watch the flame. After the cut keep extracting, wait before you open the lid, and let the parts air.',
};

export function cautionsFor(material: string | undefined): readonly string[] {
  if (material === undefined)
    return [...always, 'The spec names no material. If you do not know what a sheet is, do not cut it.'];
  const own = ofMaterial[lookNames(material).look];
  return [...always, own, ...(own === wood && !isSolidWood(material) ? [plywood] : [])];
}

/**
 * Each once, with the names of the stocks if it concerns only some. Those of the stocks themselves go first: the maker
 * wrote them about these very sheets.
 */
export function cautionsOf(stocks: readonly Pick<Stock, 'name' | 'caution' | 'material'>[]): string[] {
  const concerned = new Map<string, Set<(typeof stocks)[number]>>();
  const add = (caution: string, stock: (typeof stocks)[number]) => {
    concerned.set(caution, (concerned.get(caution) ?? new Set()).add(stock));
  };
  for (const stock of stocks) if (stock.caution !== undefined) add(stock.caution, stock);
  for (const stock of stocks) for (const caution of cautionsFor(stock.material)) add(caution, stock);
  return [...concerned].map(([caution, of]) => {
    const names = [...of].flatMap(({ name }) => name ?? []);
    return of.size < stocks.length && names.length === of.size ? `${listed(names)}: ${caution}` : caution;
  });
}
