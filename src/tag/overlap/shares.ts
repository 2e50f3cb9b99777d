/** In x-heights; by eye, and by an independent reader of letters, on a hundred names in six faces (our own judgement). */
export const shares = {
  /** The most a letter comes nearer for a joint, beside what it laps. */
  reach: 0.22,
  /** The same in a script, whose letters join by themselves or lean: one that is moved falls out of its rhythm, and along its neighbour. */
  scriptReach: 0.06,
  /** How far a sign that hangs high comes, in any face, and a mark that is to touch an arm. */
  highReach: 0.22,
  /** How far a full stop and what stands beside it come together, in any face; a space between them is no more. */
  stopReach: 1.3,
  /** The same for what would otherwise take a longer bar than this. */
  farReach: 0.6,
  longBar: 0.55,
  /** A joint longer than this makes one stroke of two stems. */
  stem: 0.5,
  /** What two stems keep between them instead. */
  stemGap: 0.12,
  /** What a mark keeps from the letter before. */
  markGap: 0.14,
  /** What two words keep between them. */
  wordGap: 0.5,
  /** What two letters keep between them below an apostrophe. */
  signGap: 0.2,
  /** The longest post between an arm and what is below it. */
  post: 0.3,
  /** Letters are tried at places so far apart. */
  step: 1 / 80,
} as const;
