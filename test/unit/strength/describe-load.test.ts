import assert from 'node:assert/strict';
import { describeLoad } from '../../../src/strength/describe-load.ts';
import { estimateLoad } from '../../../src/strength/load.ts';
import type { LoadEstimate } from '../../../src/strength/load.ts';
import { dumbbell, stockOf } from './pieces.ts';

const piece = dumbbell(2);
const describeFor = (material?: string, thickness?: number) =>
  describeLoad(estimateLoad(piece, stockOf(material, thickness))!);

describe('A load in words', () => {
  it('names the pull, its mass, the weakest place and its width', () => {
    // 4.8 MPa · 2 mm · 3 mm = 28.8 N, · 0.8 · 0.58875 = 13.6 N; by 9.80665 m/s² (standard gravity, exact) 1.38 kg; · 0.62 = 8.4 N.
    const { headline, lines, caution } = describeFor('walnut', 3);
    assert.equal(headline, 'Bears a short pull of about 14 N (1.4 kg) – weakest at the neck, 2.00 mm wide');
    assert.equal(lines[0], 'Left hanging for ten years: about 8.4 N (860 g).');
    assert.match(lines[1]!, /^Assumes that the grain runs across the pull there/);
    assert.match(lines[2]!, /black walnut, 3 mm thick .*95 of 100 pieces.*20 % for cut edges/);
    assert.match(lines[3]!, /^Next weakest at the wall beside the opening, 6\.50 mm wide: \d+ N \([\d.]+ kg\)\.$/);
    assert.equal(lines.length, 4);
    assert.match(caution, /^An estimate .*clear wood.*grain.*glue.*knots.*charring.*scrap.*must not fall/);
  });

  it('says for plastic that years are not in the figures, and nothing of grain', () => {
    const { headline, lines, caution } = describeFor('acrylic', 3);
    // 62 · 2 · 3 · 0.5.
    assert.match(headline, /about 190 N \(19 kg\)/);
    assert.match(lines[0]!, /^There is no published figure for how much less .* bears when left hanging for long\.$/);
    assert.ok(!/grain|wood/.test([headline, ...lines, caution].join()));
    assert.match(caution, /estimate.*scrap.*must not fall/);
  });

  it('says what is not published and how much material there is instead', () => {
    const { headline, lines, caution, rule } = describeFor('birch plywood', 3);
    assert.equal(headline, 'Load unknown: no strength of birch plywood is published');
    assert.deepEqual(lines, ['Narrowest where it would break: at the neck, 2.00 mm wide (6.0 mm² in all).']);
    assert.equal(caution, rule, 'and does not call it an estimate');
    assert.match(describeFor('walnut').headline, /^Load unknown: no thickness is given/);
    assert.deepEqual(describeFor('walnut').lines, ['Narrowest where it would break: at the neck, 2.00 mm wide.']);
  });

  it('says where nothing is borne', () => {
    const nothing = (fault: 'open' | 'loose'): LoadEstimate => ({ kind: 'nothing', fault, sections: [] });
    assert.match(describeLoad(nothing('open')).headline, /Bears no pull: the opening .* not closed/);
    assert.match(describeLoad(nothing('loose')).headline, /Bears no pull: the hanger is not joined/);
  });

  for (const [newtons, text] of [
    [0.768, '0.77 N (78 g)'],
    [9.96, '10 N (1.0 kg)'],
    [9.8, '9.8 N (1.0 kg)'],
    [9.7, '9.7 N (990 g)'],
    [104.4, '100 N (11 kg)'],
    [2345, '2300 N (240 kg)'],
  ] as const) {
    it(`rounds ${newtons} N to two figures: ${text}`, () => {
      const estimate = estimateLoad(piece, stockOf('walnut', 3))!;
      assert.ok(estimate.kind === 'bears');
      const { headline } = describeLoad({ ...estimate, shortPull: newtons });
      assert.ok(headline.includes(`about ${text} –`), headline);
    });
  }
});
