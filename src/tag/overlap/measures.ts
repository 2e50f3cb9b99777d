/** The sizes in mm by which letters are joined. */
export interface Measures {
  readonly xHeight: number;
  /** The least width of a joint, growth included. */
  readonly web: number;
  /** How deep letters may lap, growth included. */
  readonly overlap: number;
  /** What the letters will be grown by afterwards, ≥ 0. */
  readonly grow: number;
  /** Distance of the rows and columns that shapes are compared on. */
  readonly pitch: number;
}

/** Fine enough for the letters and for a joint of `web`, but bounded for letters that are large beside it. */
export function pitchFor(xHeight: number, web: number): number {
  return Math.max(Math.min(xHeight / 60, web / 6), xHeight / 240);
}
