/** Explains why a shape cannot be fitted, and how much is lacking. */

import { mm } from '../../core/figures.ts';
import { capitalised, listed } from '../../core/names.ts';
import { difference, offset } from '../../geometry/clipper.ts';
import { area } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { textsOf } from '../../spec/model/shape-model.ts';
import type { Fit, Shape } from '../../spec/model/shape-model.ts';
import type { WordsBeside, WordsInMiddle } from './line-order.ts';

/** What a fitted shape keeps clear of, and the quiet zones of codes, which it stays out of but may touch. */
export interface Obstacles {
  readonly things: Region;
  readonly quiet: Region;
  /** In a message: “the hole at the top”, “sprout” in quotes. */
  readonly names: readonly string[];
  /** Words below which it is to stand. */
  readonly above?: WordsBeside | undefined;
  readonly middle?: WordsInMiddle | undefined;
  /** Names of the words above, as far as they are fitted too. */
  readonly fillers?: readonly (string | undefined)[];
  /** Whether there are openings to hang it by, and besides them a border at most. */
  readonly isOpeningsAlone?: boolean;
  /** Middles of the other words there. */
  readonly words?: readonly Point[];
  /** The middle of those that found their place by themselves, below which it is to stand. */
  readonly leading?: Point | undefined;
}

/** An area below this is no room, in mm². */
const leastMm2 = 1e-3;

/** Halvings of the missing distance: down to a hundredth of a millimetre for any distance that is asked for. */
const halvings = 14;

/**
 * @param around What else is there.
 * @param isRound Whether it is lines that run along the edge.
 */
export function noRoom(
  { shape, part, margin, clear }: Fit,
  target: Region,
  { things, quiet, names }: Obstacles = { things: [], quiet: [], names: [] },
  grow: number,
  isRound = false,
): string {
  const name = `“${part ?? shape.name ?? 'the shape'}”`;
  const isRoom = (less: number) => {
    const inner = offset(target, -Math.max(0, margin + grow - less));
    const kept = offset(things, Math.max(0, clear + grow - less));
    return area(difference(inner, [kept, quiet])) > leastMm2;
  };
  let [low, high] = [0, Math.max(margin, clear) + grow];
  if (isRoom(low) && isRound) return noWayRound(name, names);
  if (isRoom(low))
    return `No size of this shape fits ${name} where “place” puts it; leave out “place”, or choose another place.`;
  if (!isRoom(high))
    return `There is no room left in ${name}: ${theOthers(names)} ${names.length > 1 ? 'take' : 'takes'} all of it.`;
  for (let i = 0; i < halvings; i++) {
    const middle = (low + high) / 2;
    if (isRoom(middle)) high = middle;
    else low = middle;
  }
  const kept = [
    ...(margin > 0 ? [`a margin of ${mm(margin)}`] : []),
    ...(things.length > 0 && clear > 0 ? [`${mm(clear)} clear of ${theOthers(names)}`] : []),
    ...(grow > 0 ? [`${mm(grow)} of growth`] : []),
  ].join(' and ');
  return `There is no room in ${name}: with ${kept} it is more than ${mm(2 * low)} too narrow.`;
}

/** Most things that are named. */
const mostNamed = 3;

/** The openings of a row are one thing: “the holes at the top”. */
function eachOnce(names: readonly string[]): string[] {
  return [...new Set(names)].map((name) =>
    names.indexOf(name) === names.lastIndexOf(name) ? name : name.replace(/^the (\w+)/, 'the $1s'),
  );
}

function theOthers(names: readonly string[]): string {
  return listed(eachOnce(names), mostNamed) || 'what else is there';
}

function noWayRound(name: string, names: readonly string[]): string {
  if (names.length === 0) return `These lines do not go round inside ${name}; use shorter words or a smaller margin.`;
  const help = listed([...lessInTheWay(names), 'use shorter words'], Infinity, 'or');
  return `${capitalised(theOthers(names))} ${names.length > 1 ? 'leave' : 'leaves'} no room for these lines to run round inside ${name}: ${help}.`;
}

/** Why lines that run round are smaller than the edge would have them. */
export function squeezedRound({ shape, part, clear }: Fit, names: readonly string[], share: number): string {
  const name = `“${part ?? shape.name ?? 'the shape'}”`;
  const help = listed([...lessInTheWay(names), ...(clear > 0 ? ['give a smaller “clear”'] : [])], Infinity, 'or');
  const percent = Math.round(100 * share);
  return `To pass ${mm(clear)} clear of ${theOthers(names)}, these lines have ${percent} % of the size that they would have round the inside of ${name}. To make them larger, ${help}.`;
}

/** Why words are much smaller than their plate: what it hangs by takes the room. */
export function squeezedBeside(
  { name, generator }: Shape,
  { shape, part }: Fit,
  names: readonly string[],
  share: number,
): string {
  const openings = eachOnce(names).filter((each) => each.startsWith('the '));
  const isSeveral = generator.kind === 'lines' || textsOf(generator).some(({ text }) => text.includes('\n'));
  const own = name === undefined ? 'these words' : `“${name}”`;
  const room = `“${part ?? shape.name ?? 'the shape'}”`;
  const help = listed(
    [
      ...lessInTheWay(names.filter((each) => each.startsWith('the '))),
      'put it at another side',
      ...(isSeveral ? ['break the words into fewer lines'] : []),
    ],
    Infinity,
    'or',
  );
  return `${capitalised(listed(openings, mostNamed))} ${openings.length > 1 || /s at /.test(openings[0] ?? '') ? 'leave' : 'leaves'} ${own} ${Math.round(100 * share)} % of the size that ${name === undefined ? 'they' : 'it'} would have in ${room}, and less than half of its width. To make it larger, ${help}.`;
}

/** Why words stand beside others that were fitted first. */
export function besideOthers({ name }: Shape, { shape, part }: Fit, fillers: readonly (string | undefined)[]): string {
  const others = listed(
    eachOnce(fillers.map((each) => (each === undefined ? 'the words before' : `“${each}”`))),
    mostNamed,
  );
  const [leave, fits, all] = fillers.length > 1 ? ['leave', 'their', 'all of them'] : ['leaves', 'its', 'both'];
  const room = `“${part ?? shape.name ?? 'the shape'}”`;
  const own = name === undefined ? 'these words' : `“${name}”`;
  return `${capitalised(others)} ${leave} no line free below in ${room}, so ${own} ${name === undefined ? 'stand' : 'stands'} beside. Keep ${fits} letters smaller by “at_most”, or make ${all} “lines” of one shape.`;
}

function lessInTheWay(names: readonly string[]): string[] {
  const [opening] = names.filter((each) => each.startsWith('the '));
  const drawn = eachOnce(names).filter((each) => !each.startsWith('the '));
  return [
    ...(opening === undefined ? [] : [`use a ring instead of ${opening}`]),
    ...(drawn.length > 0 ? [`make ${drawn.length > 1 ? 'the drawings in the middle' : drawn[0]} smaller`] : []),
  ];
}
