import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { gapCloses } from '../../../src/checks/gap-closes.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import { words } from '../../fonts/faces.ts';
import { checked } from '../support/checked.ts';
import { distance } from '../support/distance.ts';
import { assertNear, specOf } from '../support/engine.ts';
import { erode } from '../support/shapes.ts';
import { placesIn } from './found.ts';

const kerf = (mm: number): string[] => [`stock: {kerf: ${mm} mm, min_web: 0.2 mm}`];

function gaps(shapes: readonly string[], piece: string, kerfMm: number) {
  return checked(specOf(shapes, piece, kerf(kerfMm)), gapCloses);
}

describe('Gaps that the kerf closes', () => {
  it('are told with their width, their ends and the kerf, at a shape that bounds them', async () => {
    const shapes = ['left: {rectangle: [20, 10]}', 'right: {rectangle: [20, 10], nudge: {right: 20.12}}'];
    const { issues, lines } = await gaps(shapes, 'body: [left, right], parts: many', 0.2);
    assert.equal(issues.length, 1);
    const [{ message, severity, width, points, piece }] = issues as [(typeof issues)[number]];
    assert.equal(severity, 'warning');
    assert.equal(piece, 'tag');
    assertNear(width!, 0.12, 1e-4);
    const [a, b] = points!;
    assertNear(a!.x, 10, 1e-4);
    assertNear(b!.x, 10.12, 1e-4);
    for (const figure of ['0.12 mm', '0.20 mm', '10 mm']) assert.ok(message.includes(figure), message);
    assert.ok([4, 5].includes(lines[0]!));
  });

  it('are none where the beam leaves something open, or where no kerf is known', async () => {
    const shapes = ['left: {rectangle: [20, 10]}', 'right: {rectangle: [20, 10], nudge: {right: 20.12}}'];
    for (const kerfMm of [0, 0.08, 0.12]) {
      assert.deepEqual((await gaps(shapes, 'body: [left, right], parts: many', kerfMm)).issues, []);
    }
  });

  it('are slits cut into a plate, told at the slit', async () => {
    const shapes = ['plate: {rectangle: [60, 30]}', 'slit: {rectangle: [0.1, 20], nudge: {up: 8}}'];
    const { issues, lines } = await gaps(shapes, 'body: [plate], cut: [slit]', 0.2);
    assert.equal(issues.length, 1);
    assert.deepEqual(lines, [5]);
    assert.deepEqual((await gaps(shapes, 'body: [plate], cut: [slit]', 0.09)).issues, []);
  });

  // Nunito's l is a plain upright stroke, so two of them run side by side.
  it('lie between letters moved too near each other, exactly when growing by half the kerf joins them', async () => {
    let count = 0;
    for (const spacing of [-2, -1.9, -1.8, -1.7, -1.6, -1.4, -1]) {
      const shapes = [`word: {text: ll, font: Nunito, weight: 800, height: 20, letter_spacing: ${spacing} mm}`];
      const { made, issues, lines } = await gaps(shapes, 'body: [word], parts: many', 0.3);
      const parts = partsOf(made.region);
      assert.equal(parts.length, 2, 'the letters do not overlap');
      const gap = distance(parts[0]!, parts[1]!);
      assert.ok(Math.abs(gap - 0.3) > 0.02, 'not at the very limit');
      // By Clipper2.
      assert.equal(issues.length > 0, partsOf(erode(made.region, -0.15)).length === 1, `gap ${gap}`);
      for (const issue of issues) assertNear(issue.width!, gap, 1e-3);
      for (const line of lines) assert.equal(line, 4);
      count += issues.length;
    }
    assert.ok(count > 0 && count < 7, `${count} told`);
  });

  it('are one finding for a shape, with every place, the narrowest first', async () => {
    const bar = (i: number): string => `{rectangle: [4, 20], nudge: {right: ${(i * (4.1 + i * 0.002)).toFixed(3)}}}`;
    const bars = [`bars: {union: [${Array.from({ length: 10 }, (_, i) => bar(i)).join(', ')}]}`];
    const { issues } = await gaps(bars, 'body: [bars], parts: many', 0.2);
    assert.equal(issues.length, 1);
    const [finding] = issues as [(typeof issues)[number]];
    assert.match(finding.message, /^9 gaps are narrower than the kerf of 0\.20 mm; the narrowest is 0\.10 mm/);
    const widths = placesIn(finding).map(({ width }) => width!);
    assert.equal(widths.length, 9);
    assert.deepEqual(
      widths,
      widths.toSorted((a, b) => a - b),
    );
    assert.equal(finding.width, widths[0]);
  });

  it('are none where a ring sinks into the body, letters overlap and strokes meet in wedges', async () => {
    const ring = await checked(
      specOf(['body: {ellipse: [60, 40]}'], 'body: [body], hanger: {ring: {at: top}}', [
        ...kerf(0.2),
        'tie: {twine: 2}',
      ]),
      gapCloses,
    );
    assert.deepEqual(ring.issues, []);
    const star = 'body: {polygon: {points: [[0, 0], [30, 1], [0, 2], [30, 3], [0, 4], [-9, 2]]}}';
    assert.deepEqual((await gaps([star], 'body: [body]', 0.3)).issues, []);
  });

  it('leave words alone that are set as their fonts mean it', async () => {
    for (const [family, text] of [
      ['Pacifico', 'Angelica'],
      ['Pacifico', words[0]!],
      ['Great Vibes', 'Sorrel'],
      ['Great Vibes', 'Sweet pea!'],
      ['Nunito', 'RUNNER BEANS'],
      ['Alfa Slab One', 'Sage'],
    ] as const) {
      const shapes = [`word: {text: "${text}", font: ${family}, width: 80}`];
      const { issues } = await gaps(shapes, 'body: [word], parts: many', 0.2);
      assert.deepEqual(issues, [], `${text} in ${family}`);
    }
  });

  it('are in no sample', async () => {
    const folder = new URL('../../../samples/', import.meta.url);
    for (const name of readdirSync(folder).filter((each) => each.endsWith('.tag.yaml'))) {
      const { issues } = await checked(readFileSync(new URL(name, folder), 'utf8'), gapCloses);
      assert.deepEqual(issues, [], name);
    }
  });
});
