/**
 * The grain of wood as the preview and proofs draw it: years of growth, lines that crowd and spread as they cross a tile, each
 * of its own breadth and darkness. The sines only stand for chance, and give the same wood every time.
 */

/** In mm. */
export const grainTile = { width: 90, height: 40 } as const;

const lineCount = 34;

type XY = readonly [x: number, y: number];

/** From the left edge of the tile to its right one, which it leaves as it entered, so that tiles join; y down, in mm. */
export interface GrainLine {
  readonly from: XY;
  /** Cubic curves: two handles and the end of each. */
  readonly curves: readonly (readonly [XY, XY, XY])[];
  readonly width: number;
  /** From 0, unseen, to 1. */
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
        // Straight on from the handle before.
        [end - third, y - sway * 0.4],
        [end - third, y - sway],
        [end, y],
      ],
    ],
    width: 0.1 + 0.34 * dark * dark,
    opacity: 0.1 + 0.28 * dark,
  };
});

/** Where tiles begin for a piece on the table, and for one that lies on another: the same sheet, another place of it. */
export const grainOrigin = { below: [0, 0], onTop: [17 * 1.7, 17] } as const satisfies Readonly<Record<string, XY>>;
