/** Values that a maker measures: how large each can be at most, and the day that it was measured on. */

/** Nothing measured at a bench of small lasers is larger, in mm: a slip of the unit or of the finger. Our own judgement. */
export const mostMm = { thickness: 50, kerf: 2, min_web: 20, min_x_height: 20, hatch: 2, opening: 50 } as const;

export type MeasuredLength = keyof typeof mostMm;

const dated = ['kerf', 'min_web', 'min_x_height', 'hatch', 'engrave'] as const;

/** What `measured_on` of a stock may give a day for. */
export type Dated = (typeof dated)[number];

export function isDated(key: string): key is Dated {
  return dated.some((each) => each === key);
}

/** Whether there is such a day, in the calendar of ISO 8601. */
export function isDay(text: string): boolean {
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

/** What a message adds to a figure, such as `, measured on 2026-03-14`; nothing where the day is not known. */
export function measuredOn(day: string | undefined): string {
  return day === undefined ? '' : `, measured on ${day}`;
}
