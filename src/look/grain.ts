/**
 * The grain of wood as the preview and proofs draw it: annual rings as lines that crowd and spread as they cross a
 * tile, each with its own width and darkness. The sines only imitate chance, and give the same wood every time.
 */

/** Size of one tile, in mm. */
export const grainTile = { width: 90, height: 40 } as const;

const lineCount = 34;

type XY = readonly [x: number, y: number];

/**
 * A line from the left edge of the tile to the right one, which it leaves in the direction it entered, so that tiles
 * join; y down, in mm.
 */
export interface GrainLine {
  readonly from: XY;
  /** Cubic curves: two handles and the end of each. */
  readonly curves: readonly (readonly [XY, XY, XY])[];
  readonly width: number;
  /** From 0, invisible, to 1. */
  readonly opacity: number;
}

export const grainLines: readonly GrainLine[] = Array.from({ length: lineCount }, (_, nth) => {
  const part = nth / lineCount;
  const wander = Math.sin(nth * 12.9898) * 0.5 + Math.sin(nth * 4.1414) * 0.5;
  const y = grainTile.height * (part + 0.012 * wander + 0.02 * Math.sin(part * 4 * Math.PI));
  const sway = 0.5 * Math.sin(part * 6 * Math.PI) + 0.25 * wander;
  const dark = 0.5 + 0.5 * Math.sin(nth * 2.399);
  const [third, middle, end] = [grainTile.width / 3, grainTile.width / 2, grainTile.width];
  return {
    from: [0, y],
    curves: [
      [
        [third, y + sway],
        [third, y + sway],
        [middle, y + sway * 0.3],
      ],
      [
        // Continues in the direction of the handle before.
        [end - third, y - sway * 0.4],
        [end - third, y - sway],
        [end, y],
      ],
    ],
    width: 0.1 + 0.34 * dark * dark,
    opacity: 0.1 + 0.28 * dark,
  };
});

/** Origins of the tiles, in mm, for a piece on the table and one on top of another: different places of one sheet. */
export const grainOrigin = { below: [0, 0], onTop: [17 * 1.7, 17] } as const satisfies Readonly<Record<string, XY>>;
