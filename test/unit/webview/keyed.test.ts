import assert from 'node:assert/strict';
import fc from 'fast-check';
import { planPatch } from '../../../webview/common/keyed.ts';

/** Carries out the plan on a plain list. */
function applied(current: readonly string[], wanted: readonly string[]): string[] {
  const list = [...current];
  for (const step of planPatch(current, wanted)) {
    const at = list.indexOf(step.key);
    if (at >= 0) list.splice(at, 1);
    if (step.kind === 'remove') continue;
    const before = step.before === undefined ? list.length : list.indexOf(step.before);
    assert.ok(before >= 0, `${step.key} goes before what is not there`);
    list.splice(before, 0, step.key);
  }
  return list;
}

const letters = Array.from('abcdefghij');

describe('A patch of a list of elements', () => {
  const keys = fc.uniqueArray(fc.constantFrom(...letters), { maxLength: 10 });

  it('reaches the wanted order from any other', () => {
    fc.assert(
      fc.property(keys, keys, (current, wanted) => {
        assert.deepEqual(applied(current, wanted), wanted);
      }),
    );
  });

  it('does nothing where nothing changed', () => {
    fc.assert(
      fc.property(keys, (list) => {
        assert.deepEqual(planPatch(list, list), []);
      }),
    );
  });

  it('touches only what comes and goes', () => {
    fc.assert(
      fc.property(keys, fc.constantFrom(...letters), (list, key) => {
        const without = list.filter((each) => each !== key);
        assert.ok(planPatch(list, without).length <= 1);
        assert.ok(planPatch(without, list).length <= 1);
      }),
    );
  });
});
