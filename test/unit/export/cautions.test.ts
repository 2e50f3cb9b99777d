import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { cautionsFor, cautionsOf } from '../../../src/export/words/cautions.ts';

const root = new URL('../../../', import.meta.url);
const readme = readFileSync(new URL('README.md', root), 'utf8').replaceAll(/\s+/g, ' ');
const walkthrough = readFileSync(new URL('package.json', root), 'utf8');

describe('What the bench is reminded of', () => {
  // IEC 60825-1 and ANSI Z136.1 rest on enclosures, interlocks and eyewear; published workshop rules say the same.
  it('is to keep the lid shut and to look at no open beam, on every job sheet, in the README and in the walkthrough', () => {
    for (const material of [undefined, 'birch plywood', 'cast acrylic', 'cork', 'something new']) {
      const all = cautionsFor(material).join(' ');
      assert.match(all, /lid shut and its switch working.*open beam.*eyewear made for its wavelength/);
      assert.match(all, /never leave a running job alone/);
      assert.match(all, /A material that is not named here may be just as harmful\./);
    }
    assert.match(readme, /lid shut and its switch working.*open beam.*eyewear made for its wavelength/);
    assert.match(readme, /A material that is not named here may be just as harmful\./);
    assert.match(walkthrough, /lid shut.*open beam without eyewear made for it/);
  });

  it('is of acrylic to wait and air after the cut, and of boards that their glue gives off formaldehyde', () => {
    assert.match(
      cautionsFor('clear cast acrylic').join(' '),
      /After the cut keep extracting, wait .*let the parts air/,
    );
    for (const board of ['birch plywood', 'MDF', 'hardboard', 'medium-density fibreboard'])
      assert.match(cautionsFor(board).join(' '), /formaldehyde/);
    for (const other of ['cork', 'walnut', 'black cherry', 'solid oak'])
      assert.doesNotMatch(cautionsFor(other).join(' '), /formaldehyde/, other);
  });

  it('is of a material only where that is cut, by the name of the stock if another is cut beside it', () => {
    const ply = { name: 'birch3', material: 'birch plywood' };
    const walnut = { name: 'walnut3', material: 'walnut', caution: 'Mask the face.' };
    const both = cautionsOf([ply, walnut]);
    assert.equal(both[0], 'walnut3: Mask the face.');
    assert.ok(both.some((each) => each.startsWith('birch3: Plywood varies')));
    assert.ok(both.some((each) => each.startsWith('Wood flares up')));
    assert.equal(cautionsOf([walnut])[0], 'Mask the face.');
    assert.doesNotMatch(cautionsOf([walnut]).join(' '), /[Pp]lywood/);
  });

  it('is of the same materials as in the README', () => {
    const all = cautionsFor('cork').join(' ');
    for (const word of ['neoprene', 'polyurethane', 'HDPE', 'chrome-tanned', 'melamine', 'treated or painted wood']) {
      assert.ok(all.includes(word), word);
      assert.ok(readme.includes(word), word);
    }
  });
});
