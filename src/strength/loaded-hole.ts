/**
 * The greatest stress beside a hole loaded by a tie, as a multiple of F/(d·t): the load over the width of the hole and
 * the thickness of the sheet. Unlike the stress beside an empty hole in a strip that is pulled from afar, it does not
 * fall without limit as the sheet grows wider. Lengths in mm.
 */

/**
 * Factor for a tie that lies loosely in its hole: 35 to 50 % more (Frocht and Hill 1940, as quoted in Shigley, figure
 * A-15-12, seen). Twine does lie loosely, so the maximum is taken.
 */
export const looseTie = 1.5;

/**
 * Factor for a pin that fills its hole, far from the end of the sheet. `x` is the hole as a share of the width.
 *
 * In a wide sheet 0.87 + 1.6·x: half of a wedge's and half of a strip's factor at the middle of the thickness
 * (Shivakumar and Newman, NASA TP-3192, 1992, their program seen; for x to 0.25); 0.87 is also what Crews, Hong and
 * Raju have for an infinite sheet (NASA TP-1862, 1981, abstract seen). In a narrow one Ktn·x/(1 − x), with Ktn = 12.882
 * − 52.714·x + 89.762·x² − 51.667·x³ on the section beside the hole (a fit of the chart by Frocht and Hill in
 * Peterson's Stress Concentration Factors, for x from 0.15 to 0.75 and an end at least as far as the sheet is wide;
 * from memory). The greater counts.
 */
export function closePinFactor(x: number): number {
  const charted = Math.min(x, widestCharted);
  const net = 12.882 - 52.714 * charted + 89.762 * charted ** 2 - 51.667 * charted ** 3;
  return Math.max(0.87 + 1.6 * x, (net * x) / (1 - x));
}

/** Beyond this the factor on the section beside the hole is taken as constant: our own judgement. */
const widestCharted = 0.75;

/**
 * Factor for a near end: up to 50 % more if it is within three diameters of the centre of the hole (NASA TP-1862,
 * abstract seen). Linear from nothing at three diameters to all of it at one: our own judgement.
 */
export function nearEndFactor(endMm: number, holeMm: number): number {
  const diameters = Math.min(3, Math.max(1, endMm / holeMm));
  return 1 + (0.5 * (3 - diameters)) / 2;
}

/**
 * Factor for the ends of a slot, of diameter `endsMm`, over a round hole of the same width: that of an ellipse with
 * that radius at its ends, (1 + 2·√(a/ρ))/3 (Inglis 1913; that the factors may be multiplied is our own judgement).
 */
export function slotEndFactor(acrossMm: number, endsMm: number): number {
  return (1 + 2 * Math.sqrt(Math.max(1, acrossMm / endsMm))) / 3;
}
