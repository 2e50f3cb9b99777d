/** What makes a test piece. */

export interface StockAtHand {
  /** Lines of the spec that say what it is cut from, such as `use: shop.workshop.yaml` and `stock: ply3`. */
  readonly head: readonly string[];
  /** What the stock is called, for labels. */
  readonly name: string;
  /** Of the tag that is to be engraved. */
  readonly font: string;
  /** Of an engraving field, unless the usual ones will do. */
  readonly field?: FieldValues;
}

/** What is set by hand for the squares of an engraving field, such as `30 %` and `200 mm/s`. */
export interface FieldValues {
  readonly powers: readonly string[];
  readonly speeds: readonly string[];
}

export interface TestPiece {
  readonly title: string;
  /** In a few words. */
  readonly finds: string;
  readonly spec: (stock: StockAtHand) => string;
}
