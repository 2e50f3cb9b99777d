import assert from 'node:assert/strict';
import { make, report, specOf } from '../support/engine.ts';

/** Both ways to write it come to the same. */
async function same(short: string, long: string): Promise<void> {
  const [a, b] = await Promise.all([short, long].map((shape) => make(specOf([`body: ${shape}`]))));
  assert.deepEqual(
    a!.issues.filter(({ severity }) => severity === 'error'),
    [],
    short,
  );
  assert.ok(a!.region.length > 0);
  assert.deepEqual(a!.region, b!.region, short);
}

describe('Short forms of shapes', () => {
  it('are a size where nothing else is said', async () => {
    await same('{oval: [60, 40]}', '{oval: {size: [60, 40]}}');
    await same('{house: [40, 50]}', '{house: {size: [40, 50]}}');
    await same('{label: [80, 36]}', '{label: {size: [80, 36]}}');
    await same('{ticket: [80, 40]}', '{ticket: {size: [80, 40]}}');
  });

  it('are the words alone, for a line', async () => {
    await same(
      '{around: {lines: [Dill, Rue], width: 40}, by: 4}',
      '{around: {lines: [{text: Dill}, {text: Rue}], width: 40}, by: 4}',
    );
    const { issues } = await report(
      specOf(['body: {lines: [Dill, ""], width: 40, grow: 1}'], 'body: [body], parts: many'),
    );
    assert.deepEqual(
      issues.map(({ message, range }) => [message, range.end - range.start]),
      [['The text is empty.', 2]],
    );
  });

  it('tell a size that is none at its place', async () => {
    const { issues } = await report(specOf(['body: {oval: [60, zero]}']));
    assert.deepEqual(
      issues.map(({ code }) => code),
      ['bad-length'],
    );
  });

  it('are the name of a shape, for a border', async () => {
    const spec = (border: string) =>
      specOf(['plate: {rectangle: [60, 30]}', `edge: {border: ${border}}`], 'body: [plate], score: [edge]');
    const [short, long] = await Promise.all(['plate', '{of: plate}'].map((border) => make(spec(border))));
    assert.deepEqual(short!.issues, []);
    assert.deepEqual(short!.pieces[0]!.marks[0]!.region, long!.pieces[0]!.marks[0]!.region);
    const { issues } = await report(spec('plato'));
    assert.deepEqual(
      issues.map(({ code }) => code),
      ['unknown-shape'],
    );
  });

  it('have a grid where there are columns and rows, and a stick of a usual width', async () => {
    await same(
      '{repeat: {shape: {circle: 9}, count: [3, 2], spacing: 8}}',
      '{repeat: {shape: {circle: 9}, count: [3, 2], spacing: 8, along: grid}}',
    );
    const [usual, asked] = await Promise.all(
      ['', ', width: 6'].map((width) =>
        make(
          specOf(
            ['plate: {circle: 40}', `stick: {stick: {carries: plate, length: 60${width}}}`],
            'body: [plate, stick]',
          ),
        ),
      ),
    );
    assert.deepEqual(usual!.issues, []);
    assert.deepEqual(usual!.region, asked!.region);
  });
});
