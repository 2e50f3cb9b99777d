/**
 * Distances in x-heights; by eye, and by an independent reader, on a hundred names in six faces (our own judgement).
 */
export const shares = {
  /** The most a letter moves closer for a joint, beyond its overlap. */
  reach: 0.28,
  /**
   * The same in a script, whose letters join by themselves or lean: one that is moved loses its rhythm, and slides
   * along its neighbour.
   */
  scriptReach: 0.06,
  /** The most that a high sign moves, in any face, and a mark that is to touch an arm. */
  highReach: 0.22,
  /** The most that a full stop and its neighbour move together, in any face; a space between them is closed up too. */
  stopReach: 1.3,
  /** The same for what would otherwise need a longer bar than this. */
  farReach: 0.6,
  longBar: 0.55,
  longLink: 0.75,
  /** On the arm of an F, at whose foot a bar of any length makes an E. */
  longArm: 0.75,
  /** The most that a line of several rises towards the one above: they are set closer than this. */
  lineReach: 0.5,
  /** A joint longer than this makes one stroke of two stems. */
  stem: 0.5,
  /** Distance between two stems instead. */
  stemGap: 0.12,
  /** Distance of a mark from the letter before. */
  markGap: 0.14,
  /** Distance between two words. */
  wordGap: 0.5,
  /** The same from the furthest of the one to the nearest of the other, at whatever height: a J reaches back over the word before. */
  wordRoom: 0.5,
  /** Distance between two Hebrew letters, and behind an Arabic one that does not join. */
  scriptGap: 0.16,
  /** Distance between a letter and the full stop behind it. */
  stopGap: 0.16,
  /** Distance between two letters beside a hyphen. */
  hyphenGap: 0.5,
  /** Distance between two letters below an apostrophe. */
  signGap: 0.2,
  /** The longest post between an arm and what is below it. */
  post: 0.3,
  /** Step between the places tried for a letter. */
  step: 1 / 80,
} as const;
