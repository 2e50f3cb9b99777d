/** Fonts and their licences in words, each licence by its name and its address once. */

import { listed } from '../../core/names.ts';
import type { UsedFont } from '../../tag/lettering/fonts-used.ts';
import type { FontLicence } from '../../text/font-description.ts';

/** Licences that font files state in long sentences, or by an address alone. */
const wellKnown = [
  { name: 'SIL Open Font License', marks: /SIL Open Font Licen[cs]e|scripts\.sil\.org\/OFL|openfontlicense\.org/i },
  { name: 'Apache License', marks: /Apache Licen[cs]e|apache\.org\/licenses/i },
] as const;

const address = /https?:\/\/[^\s)"'<>]+/;

/** A line for each font, and one for each way in which they may be embedded. */
export function fontLicences(fonts: readonly UsedFont[]): string[] {
  const each = fonts.map(({ family, style, licence }) => `${family} ${style}: ${licenceInWords(licence)}`);
  const ways = new Map<string, string[]>();
  for (const { family, embedding } of fonts) ways.set(embedding, [...(ways.get(embedding) ?? []), family]);
  const embedded = [...ways].map(([way, families]) => {
    const names = [...new Set(families)];
    const isAll = ways.size === 1;
    if (isAll && fonts.length > 1) return `According to its file, each font ${way}.`;
    return `According to its file, the font ${isAll ? '' : `${listed(names)} `}${way}.`;
  });
  return [...new Set(each), ...embedded];
}

function licenceInWords({ copyright, text = '', url = '' }: FontLicence): string {
  const whole = [text, url].map((part) => part.trim()).filter((part) => part !== '');
  const stated = [...whole, copyright ?? ''].join(' ');
  const known = wellKnown.find(({ marks }) => marks.test(stated));
  const version = known && /version (\d+(?:\.\d+)?)/i.exec(text)?.[1];
  const name = known ? `${known.name}${version === undefined ? '' : `, version ${version}`}` : text.trim();
  const where = (address.exec(url) ?? address.exec(text) ?? (known ? address.exec(copyright ?? '') : null))?.[0];
  const shown = where === undefined || name.includes(where) ? '' : ` (${where.replace(/[.,]$/, '')})`;
  const licence = name === '' && shown === '' ? 'the font states no licence' : `${name}${shown}`.trim();
  // Many fonts say their licence's address in the copyright as well.
  const owner = copyright?.trim().replace(known ? /[\s,.]*https?:\/\/scripts\.sil\.org\/OFL\S*$/i : /$^/, '');
  return owner === undefined || owner === '' ? `${licence}.` : `${licence}. ${owner.replace(/\.$/, '')}.`;
}
