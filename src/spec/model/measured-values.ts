/** Values that a maker measures: the largest credible ones, and the days on which they were measured. */

/**
 * Largest values that can be measured at the bench of a small laser, in mm; a larger one is a wrong unit or a typing
 * mistake. Our own judgement.
 */
export const mostMm = { thickness: 50, kerf: 2, min_web: 20, min_x_height: 20, hatch: 2, opening: 50 } as const;

export type MeasuredLength = keyof typeof mostMm;

const dated = ['kerf', 'min_web', 'min_x_height', 'hatch', 'engrave'] as const;

/** Values for which `measured_on` of a stock may give a day. */
export type Dated = (typeof dated)[number];

export function isDated(key: string): key is Dated {
  return dated.some((each) => each === key);
}

/** The addition to a figure in a message, such as `, measured on 2026-03-14`; empty if the day is not known. */
export function measuredOn(day: string | undefined): string {
  return day === undefined ? '' : `, measured on ${day}`;
}
