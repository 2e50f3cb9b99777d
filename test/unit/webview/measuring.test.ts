import assert from 'node:assert/strict';
import { cornersOf, nearestOf, nearestOnEdges, ringsOf } from '../../../webview/preview/scene/outline-points.ts';
import { rulerMarks } from '../../../webview/preview/measure/ruler-marks.ts';

describe('The marks of a ruler', () => {
  const figures = (...given: Parameters<typeof rulerMarks>): string[] =>
    rulerMarks(...given)
      .filter(({ rank }) => rank === 'figure')
      .map(({ text }) => text);

  it('stand at round figures, not nearer to each other than can be read', () => {
    assert.deepEqual(figures(-12, 32, 5, 'mm'), ['-10', '0', '10', '20', '30']);
    assert.deepEqual(figures(0, 3, 100, 'mm'), ['0.0', '0.5', '1.0', '1.5', '2.0', '2.5', '3.0']);
    assert.deepEqual(figures(0, 250, 0.5, 'mm'), ['0', '100', '200']);
  });

  it('are those of an inch where the spec is in inches: 25.4 mm', () => {
    const marks = rulerMarks(0, 51, 4, 'in').filter(({ rank }) => rank === 'figure');
    assert.deepEqual(
      marks.map(({ at, text }) => [Math.round(at * 100) / 100, text]),
      [
        [0, '0.0'],
        [12.7, '0.5'],
        [25.4, '1.0'],
        [38.1, '1.5'],
        [50.8, '2.0'],
      ],
    );
  });

  it('are parted evenly, the middle one longer', () => {
    const ranks = rulerMarks(0, 2, 44, 'mm').map(({ rank }) => rank);
    assert.deepEqual(
      [0, 1, 5, 9, 10].map((nth) => ranks[nth]),
      ['figure', 'fine', 'half', 'fine', 'figure'],
    );
    // Never nearer than 4 px at any zoom.
    for (const scale of [0.05, 0.3, 1, 3.78, 17, 80, 1000]) {
      const marks = rulerMarks(0, 400 / scale, scale, 'mm');
      const gaps = marks.slice(1).map(({ at }, index) => (at - marks[index]!.at) * scale);
      assert.ok(Math.min(...gaps) >= 4 - 1e-6, `${scale}: ${Math.min(...gaps)}`);
    }
  });
});

describe('What the ruler comes to rest on', () => {
  const square = ringsOf('M0 0l10 0 0 10 -10 0z', [5, 1]);

  it('is read from path data as the host writes it', () => {
    assert.deepEqual(square, [
      [
        [5, 1],
        [15, 1],
        [15, 11],
        [5, 11],
      ],
    ]);
    assert.equal(ringsOf('M0 0l1 0 0 1zM3 3l1 0 0 1z', [0, 0]).length, 2);
  });

  it('is a corner, but not a bend of a curve', () => {
    assert.equal(cornersOf(square).length, 4);
    const circle = Array.from({ length: 60 }, (_, n) => {
      const turn = (2 * Math.PI * n) / 60;
      return [Math.cos(turn), Math.sin(turn)] as const;
    });
    assert.equal(cornersOf([circle]).length, 0);
    assert.deepEqual(nearestOf(cornersOf(square), [14, 2], 2), [15, 1]);
    assert.equal(nearestOf(cornersOf(square), [12, 4], 2), undefined);
  });

  it('is the nearest point of an edge, or that with the shortest way from where the measure began', () => {
    assert.deepEqual(nearestOnEdges(square, [9, 0.5], 1), [9, 1]);
    assert.equal(nearestOnEdges(square, [9, 5], 1), undefined);
    // From (8, 11) the shortest way to the upper edge ends at (8, 1).
    assert.deepEqual(nearestOnEdges(square, [8.4, 0.7], 1, [8, 11]), [8, 1]);
    // Too far along the edge from the pointer: then just the nearest.
    assert.deepEqual(nearestOnEdges(square, [12, 0.7], 1, [8, 11]), [12, 1]);
  });
});

describe('Outlines and lines as the page reads them', () => {
  it('begin where each begins, and open lines are gone along and back', () => {
    assert.deepEqual(ringsOf('M0 0l10 0 0 5zM20 0l4 0 0 4z', [1, 2]), [
      [
        [1, 2],
        [11, 2],
        [11, 7],
      ],
      [
        [21, 2],
        [25, 2],
        [25, 6],
      ],
    ]);
    assert.deepEqual(ringsOf('M0 0l10 0 0 5M20 0l4 0', [0, 0]), [
      [
        [0, 0],
        [10, 0],
        [10, 5],
        [10, 0],
      ],
      [
        [20, 0],
        [24, 0],
      ],
    ]);
  });
});
