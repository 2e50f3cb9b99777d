/** Which fixes a menu shows at once, and in how many words: a list from edge to edge is read by nobody. */

/** Shown at once, in all. Our own judgement. */
const mostShown = 5;
/** Longest title, in characters, that says all that a fix does (our own judgement). */
const longest = 90;

/**
 * `byProblem`: the fixes of each problem, the best first, by keys. In turn from each problem, so that none is left
 * without; a single one that is left over is shown as well. Of those that are the same but for their figures, one is shown.
 * @param remedyOf What a fix is, without its figures.
 */
export function offered(
  byProblem: readonly (readonly string[])[],
  remedyOf: (key: string) => string = (key) => key,
): {
  readonly shown: string[];
  readonly more: string[];
} {
  const all = [...new Set(byProblem.flat())];
  const deepest = Math.max(0, ...byProblem.map(({ length }) => length));
  const inTurn = Array.from({ length: deepest }, (_, nth) => byProblem.flatMap((keys) => keys[nth] ?? [])).flat();
  const unlike = [...new Map(inTurn.toReversed().map((key) => [remedyOf(key), key])).values()];
  const first = [...new Set(inTurn)].filter((key) => unlike.includes(key));
  const chosen = new Set(first.slice(0, all.length === mostShown + 1 ? all.length : mostShown));
  return { shown: all.filter((key) => chosen.has(key)), more: all.filter((key) => !chosen.has(key)) };
}

/** The change, and what it does: “Thicken “name”: grow 0.2 mm (bridge 0.92 → 1.50 mm, width +0.6 mm)”. */
export function partsOfTitle(title: string): { readonly label: string; readonly effects?: string } {
  const [, label = title, effects] = /^(.*?)(?: \((.*)\))?$/.exec(title) ?? [];
  return { label, ...(effects === undefined ? {} : { effects }) };
}

/** What a fix is, without its figures: “Thicken “name””; a title that sets one thing or another is that itself. */
export function remedyIn(title: string): string {
  const { label } = partsOfTitle(title);
  const [, words = label, figures = ''] = /^(.*?): (.*)$/.exec(label) ?? [];
  return /\d/.test(figures) ? words : label;
}

/** How much larger the piece becomes, among the effects of a fix. */
const ofSize = /^(width|height) [+−]/;

/** A long title without the size of the piece, if it says more of the look than that: what becomes of the letters is never left out. */
export function shortTitle(title: string): string {
  const { label, effects } = partsOfTitle(title);
  const all = effects?.split(', ') ?? [];
  const others = all.filter((each) => !ofSize.test(each));
  const isEnough = others.length > (ofSize.test(all[0] ?? '') ? 0 : 1);
  return title.length <= longest || !isEnough ? title : `${label} (${others.join(', ')})`;
}
