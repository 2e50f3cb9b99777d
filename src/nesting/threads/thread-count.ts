/** How many threads search on so many cores: where there are more than two, one is left to whoever asks. */
export function threadsFor(cores: number, most: number): number {
  return Math.max(1, Math.min(most, cores > 2 ? cores - 1 : cores));
}
