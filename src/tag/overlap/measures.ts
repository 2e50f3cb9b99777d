/** The measures by which letters are joined, in mm. */
export interface Measures {
  readonly xHeight: number;
  /** Least width of a joint, growth included. */
  readonly web: number;
  /** Largest overlap of letters, growth included. */
  readonly overlap: number;
  /** Growth of the letters that is still to come, ≥ 0. */
  readonly grow: number;
  /** Width to which hairlines are thickened, growth included; 0 if they stay as drawn. */
  readonly hairline: number;
  /** Distance of the rows and columns on which shapes are compared. */
  readonly pitch: number;
}

/** Fine enough for the letters and for a joint of `web`, but bounded for letters that are large compared with it. */
export function pitchFor(xHeight: number, web: number): number {
  return Math.max(Math.min(xHeight / 60, web / 6), xHeight / 240);
}
