/** The name of each part of a look in the preview's style sheet. */

import type { Look } from './looks.ts';

export const styleNames: Readonly<Record<keyof Look, string>> = {
  wood: '--wood',
  woodTop: '--wood-top',
  grain: '--grain',
  edgeFace: '--edge-face',
  char: '--char',
  burn: '--burn',
  burnStrength: '--burn-strength',
  lip: '--lip',
};
