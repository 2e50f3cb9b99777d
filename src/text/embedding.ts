/** A font's embedding rights in words. */

import type { EmbeddingRights, FontLicence } from './font-description.ts';

/** The embedding bits (OS/2 `fsType`, OpenType specification) as a clause that follows "The font". */
export function embeddingInWords({ embedding, wholeOnly, picturesOnly }: FontLicence): string {
  const limits = [
    ...(wholeOnly ? ['only whole, not in part'] : []),
    ...(picturesOnly ? ['only as pictures of its letters'] : []),
  ];
  const limited = limits.length > 0 && embedding !== 'restricted' ? ` (${limits.join('; ')})` : '';
  return `${embedding === undefined ? 'does not say whether it may be embedded in files' : words[embedding]}${limited}`;
}

const words: Readonly<Record<EmbeddingRights, string>> = {
  installable: 'may be embedded in files, and installed from them',
  editable: 'may be embedded in files that are viewed, printed and edited',
  'preview-and-print': 'may be embedded in files that are viewed and printed, not edited',
  restricted: 'may not be embedded in files without its maker’s permission',
};
