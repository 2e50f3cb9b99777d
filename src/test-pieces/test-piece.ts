/** Types of a test piece. */

export interface StockAtHand {
  /** Lines of the spec that state the stock, such as `use: shop.workshop.yaml` and `stock: ply3`. */
  readonly head: readonly string[];
  /** Name of the stock, for labels. */
  readonly name: string;
  /** Font of the tag to be engraved. */
  readonly font: string;
  /** Values for an engraving field, if not the default ones. */
  readonly field?: FieldValues;
}

/** Values set by hand for the squares of an engraving field, such as `30 %` and `200 mm/s`. */
export interface FieldValues {
  readonly powers: readonly string[];
  readonly speeds: readonly string[];
}

export interface TestPiece {
  readonly title: string;
  /** What it finds out, in a few words. */
  readonly finds: string;
  readonly spec: (stock: StockAtHand) => string;
}
