import assert from 'node:assert/strict';
import { nearestStyle, weightWithin } from '../../../src/text/font-match.ts';

function nearest(weights: readonly number[], wanted: number): number | undefined {
  const faces = weights.map((weight) => ({ weight, italic: false }));
  return nearestStyle(faces, { weight: wanted, italic: false })?.weight;
}

// CSS Fonts 4, section 5.2, "font-weight is matched next".
describe('the nearest face of a family', () => {
  it('is the one of the very weight, if there is one', () => {
    assert.equal(nearest([300, 400, 700], 700), 700);
  });

  it('from 400 to 500 is the next up to 500, then the lighter ones, then the heavier', () => {
    assert.equal(nearest([300, 450, 500, 700], 400), 450);
    assert.equal(nearest([300, 500, 700], 400), 500);
    assert.equal(nearest([400, 700], 500), 400);
    assert.equal(nearest([100, 300, 600], 450), 300);
    assert.equal(nearest([600, 900], 400), 600);
  });

  it('below 400 is the next lighter, then the next heavier', () => {
    assert.equal(nearest([100, 200, 400], 300), 200);
    assert.equal(nearest([400, 700], 300), 400);
  });

  it('above 500 is the next heavier, then the next lighter', () => {
    assert.equal(nearest([500, 700, 900], 600), 700);
    assert.equal(nearest([300, 500], 600), 500);
  });

  it('leans as asked before its weight counts, and stands upright if none leans', () => {
    const faces = [
      { weight: 700, italic: false },
      { weight: 400, italic: true },
    ];
    assert.equal(nearestStyle(faces, { weight: 700, italic: true }), faces[1]);
    assert.equal(nearestStyle(faces.slice(0, 1), { weight: 400, italic: true }), faces[0]);
  });

  it('is of normal width, though a condensed one has the weight', () => {
    const faces = [
      { weight: 400, italic: false, width: 3 },
      { weight: 700, italic: false, width: 5 },
    ];
    assert.equal(nearestStyle(faces, { weight: 400, italic: false }), faces[1]);
  });

  it('of a variable font takes the weight within its range', () => {
    const variable = { weight: { min: 200, max: 700 }, italic: false };
    assert.equal(nearestStyle([{ weight: 500, italic: false }, variable], { weight: 650, italic: false }), variable);
    assert.deepEqual(
      [weightWithin(variable, 650), weightWithin(variable, 900), weightWithin(variable, 1)],
      [650, 700, 200],
    );
  });

  it('of no faces is none', () => {
    assert.equal(nearest([], 400), undefined);
  });
});
