/** The colours of the operations, on the screen and in files. */

import type { Output } from '../spec/model/workshop-model.ts';
import type { Operation } from './tag.ts';

/**
 * Four of the Okabe–Ito colours (M. Okabe and K. Ito, "Color Universal Design", 2008): those that reach a contrast of
 * 3:1 on both a white and a dark canvas.
 */
export const operationColours: Readonly<Record<Operation, string>> = {
  engrave: '#CC79A7',
  score: '#D55E00',
  'cut-inner': '#0072B2',
  'cut-outer': '#009E73',
};

/** The user's colours, with these as defaults. */
export function coloursOf({ styles }: Output): Readonly<Record<Operation, string>> {
  return {
    engrave: styles.engrave?.color ?? operationColours.engrave,
    score: styles.score?.color ?? operationColours.score,
    'cut-inner': styles['cut-inner']?.color ?? operationColours['cut-inner'],
    'cut-outer': styles['cut-outer']?.color ?? operationColours['cut-outer'],
  };
}
