import assert from 'node:assert/strict';
import { centroid, contains } from '../../../src/geometry/measure.ts';
import type { Point, Region } from '../../../src/geometry/types.ts';
import { make, specOf } from '../support/engine.ts';
import { erode } from '../support/shapes.ts';

/**
 * An exhaustive search beside which the automatic place must stand: a ring at every degree, judged by the formula of
 * DEVELOPERS.md ("Where a ring goes") written anew, with the outlines grown by clipper2-ts.
 */

const words =
  `Angelica Anise Basil Bean Beet Borage Carrot Chard Chervil Chives Clover Comfrey Cress Dill Endive Fennel Garlic
  Hyssop Kale Leek Lettuce Lovage Mallow Marjoram Melon Mint Mizuna Mustard Nigella Oat Okra Onion Oregano Parsley Pea Pepper
  Poppy Quinoa Radish Rocket Rosemary Rue Sage Savory Sorrel Spinach Squash Thyme Turnip Yarrow`.split(/\s+/);

const hole = 1.5;
const wall = 1.78;

const directions: readonly { readonly at: Point; readonly cost: number }[] = [
  { at: { x: 0, y: 1 }, cost: 0 },
  { at: { x: -1, y: 0 }, cost: 0.1 },
  { at: { x: 1, y: 0 }, cost: 0.1 },
];

type Edge = readonly [Point, Point];

function edgesOf(region: Region): Edge[] {
  return region.flatMap((ring) => ring.map((from, index): Edge => [from, ring[(index + 1) % ring.length]!]));
}

/** Where a ray leaves for the last time. */
function lastCrossing(from: Point, at: Point, edges: readonly Edge[]): number | undefined {
  let last: number | undefined;
  for (const [a, b] of edges) {
    const sideA = (a.x - from.x) * at.y - (a.y - from.y) * at.x;
    const sideB = (b.x - from.x) * at.y - (b.y - from.y) * at.x;
    if (sideA > 0 === sideB > 0) continue;
    const share = sideA / (sideA - sideB);
    const along = (a.x + share * (b.x - a.x) - from.x) * at.x + (a.y + share * (b.y - a.y) - from.y) * at.y;
    if (along > 0 && (last === undefined || along > last)) last = along;
  }
  return last;
}

/** The longest chord that the outer circle has inside the body, as a share of its radius, from a closely sampled circle. */
function joined(centre: Point, body: Region): number {
  const samples = 720;
  const radius = hole + wall;
  const inside = Array.from({ length: samples }, (_, i) => {
    const angle = (i / samples) * 2 * Math.PI;
    return contains(body, { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) });
  });
  let longest = 0;
  let run = 0;
  for (let i = 0; i < 2 * samples; i += 1) {
    run = inside[i % samples]! ? Math.min(run + 1, samples) : 0;
    longest = Math.max(longest, run);
  }
  return Math.min(2 * Math.sin(Math.min((longest / samples) * Math.PI, Math.PI / 2)), 1);
}

function near(edges: readonly Edge[], { x, y }: Point, reach: number): Edge[] {
  return edges.filter(
    ([a, b]) =>
      Math.min(a.x, b.x) < x + reach &&
      Math.max(a.x, b.x) > x - reach &&
      Math.min(a.y, b.y) < y + reach &&
      Math.max(a.y, b.y) > y - reach,
  );
}

function distance({ x, y }: Point, [a, b]: Edge): number {
  const length = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
  const t = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.x) * (b.x - a.x) + (y - a.y) * (b.y - a.y)) / length));
  return Math.hypot(a.x + t * (b.x - a.x) - x, a.y + t * (b.y - a.y) - y);
}

function score(centre: Point, body: Region, edges: readonly Edge[], balance: Point): number {
  const blocked = near(edges, centre, hole).some((edge) => distance(centre, edge) < hole - 0.02);
  const hang = { x: centre.x - balance.x, y: centre.y - balance.y };
  const costs = directions.map(({ at, cost }) => {
    const tilt = Math.abs(Math.atan2(hang.x * at.y - hang.y * at.x, hang.x * at.x + hang.y * at.y)) * (180 / Math.PI);
    return cost + tilt / 60 + (lastCrossing(centre, at, edges) === undefined ? 0 : 3);
  });
  return joined(centre, body) - Math.min(...costs) - (blocked || contains(body, centre) ? 10 : 0);
}

describe('The place that a ring finds for itself', () => {
  for (const font of ['Pacifico', 'Alfa Slab One']) {
    it(`is never worse than 95 % of the best of a search by degrees: ${words.length} words in ${font}`, async function () {
      this.timeout(60_000);
      assert.equal(words.length, 50);
      for (const word of words) {
        const shape = `body: {text: ${word}, font: ${font}, width: 70, grow: 0.3}`;
        const made = await make(
          specOf([shape], `body: [body], parts: many, hanger: {ring: {opening: ${2 * hole}, wall: ${wall}}}`),
        );
        const { body, hangers } = made.pieces[0]!;
        const balance = centroid(body)!;
        const edges = edgesOf(body);
        const track = edgesOf(erode(body, -hole));
        let best = -Infinity;
        for (let degrees = 0; degrees < 360; degrees += 1) {
          const at = { x: Math.sin((degrees * Math.PI) / 180), y: Math.cos((degrees * Math.PI) / 180) };
          const along = lastCrossing(balance, at, track);
          if (along === undefined) continue;
          // Cheap bound first: only what could be better is worth the closer look.
          const centre = { x: balance.x + along * at.x, y: balance.y + along * at.y };
          const tilt = Math.min(
            ...directions.map(
              ({ at: d, cost }) => cost + Math.acos(Math.min(1, at.x * d.x + at.y * d.y)) * (3 / Math.PI),
            ),
          );
          if (1 - tilt > best) best = Math.max(best, score(centre, body, edges, balance));
        }
        const found = score(hangers[0]!.centre, body, edges, balance);
        assert.ok(best > 0, `${word} has a good place`);
        assert.ok(found >= 0.95 * best, `${word}: ${found.toFixed(3)} where ${best.toFixed(3)} can be had`);
      }
    });
  }
});
