import assert from 'node:assert/strict';
import { describeLoad } from '../../../src/strength/describe-load.ts';
import { estimateLoad } from '../../../src/strength/load.ts';
import type { LoadEstimate } from '../../../src/strength/load.ts';
import { dumbbell, stockOf } from './pieces.ts';

const piece = dumbbell(1);
const describeFor = (material?: string, thickness?: number) =>
  describeLoad(estimateLoad(piece, stockOf(material, thickness))!);

describe('A load in words', () => {
  it('names the pull, its mass, the weakest place and its width', () => {
    // 4.8 MPa · 1 mm · 3 mm = 14.4 N, · 0.8 · 0.5394 = 6.2 N; by 9.80665 m/s² (standard gravity, exact) 0.63 kg; · 0.62 = 3.9 N.
    const { headline, lines, caution } = describeFor('walnut', 3);
    assert.equal(headline, 'Bears a short pull of about 6.2 N (630 g) – weakest at the neck, 1.00 mm wide');
    assert.equal(lines[0], 'Left hanging for ten years: about 3.9 N (390 g).');
    assert.match(lines[1]!, /^Assumes that the grain runs across the pull there/);
    assert.match(lines[2]!, /black walnut, 3 mm thick .*95 of 100 pieces.*20 % for cut edges/);
    assert.match(lines[3]!, /^Next weakest at the wall beside the opening, 6\.50 mm wide: [\d.]+ N \([\d.]+ k?g\)\.$/);
    assert.equal(lines.length, 4);
    assert.match(caution, /^An estimate .*clear wood.*grain.*glue.*knots.*charring.*scrap.*must not fall/);
  });

  it('says for acrylic that more would craze it, and which kind it is taken for', () => {
    const { headline, lines, caution } = describeFor('acrylic', 3);
    // 62 · 1 · 3 · 0.5; 5.2 · 1 · 3 · 0.5.
    assert.match(headline, /about 93 N \(9\.5 kg\)/);
    assert.match(lines[0]!, /^Left hanging: about 7\.\d N \(\d+ g\); more would craze it\.$/);
    assert.ok(lines.some((line) => line.startsWith('Taken as extruded acrylic: cast bears twice as much')));
    assert.ok(!/grain|wood/.test([headline, ...lines, caution].join()));
    assert.match(caution, /estimate.*scrap.*must not fall/);
    assert.ok(!describeFor('cast acrylic', 3).lines.some((line) => line.includes('Taken as')));
  });

  it('names the source of its figures and nothing more of them, and what is not known of a pull that lasts', () => {
    assert.ok(
      describeFor('birch plywood', 3).lines.some((line) => line.includes('(Handbook of Finnish Plywood (2002))')),
    );
    assert.match(describeFor('leather', 2).lines[0]!, /^There is no published figure for how much less leather bears/);
  });

  it('says what is not known and how much material there is instead', () => {
    const { headline, lines, caution, rule } = describeFor('poplar plywood', 3);
    assert.equal(headline, 'Load unknown: no strength of poplar plywood is known here');
    assert.deepEqual(lines, ['Narrowest where it would break: at the neck, 1.00 mm wide (3.0 mm² in all).']);
    assert.equal(caution, rule, 'and does not call it an estimate');
    assert.match(describeFor('walnut').headline, /^Load unknown: no thickness is given/);
    assert.deepEqual(describeFor('walnut').lines, ['Narrowest where it would break: at the neck, 1.00 mm wide.']);
  });

  it('says “measured” of what was broken, and what is taken off it', () => {
    const stock = { ...stockOf('poplar plywood', 3), measured: { breaksAt: 42, neck: 2 } };
    const { headline, lines, caution } = describeLoad(estimateLoad(piece, stock)!);
    // 42 N on 2 mm is 21 N on 1 mm, · (1 − 1.645 · .15) = 15.8 N.
    assert.equal(
      headline,
      'Bears a short pull of about 16 N (1.6 kg), as measured – weakest at the neck, 1.00 mm wide',
    );
    assert.equal(
      lines[1],
      'Measured: a neck 2.00 mm wide broke at 42 N (4.3 kg). 25 % is taken off because the next piece may be weaker.',
    );
    assert.match(caution, /^An estimate from the one neck you broke\./);
  });

  it('says of wood that a neck was broken along its grain, and stays with the weaker way', () => {
    const stock = { ...stockOf('walnut', 3), measured: { breaksAt: 420, neck: 2 } };
    const { headline, lines } = describeLoad(estimateLoad(piece, stock)!);
    assert.match(headline, /about 6\.2 N/);
    assert.ok(
      lines.some((line) => line.startsWith('A neck 2.00 mm wide broke at 420 N (43 kg): that is its strength along')),
    );
  });

  it('has lengths and masses of the spec’s units: an inch is 25.4 mm, a pound 0.45359237 kg, both exactly', () => {
    const stock = { ...stockOf('walnut', 3), measured: { breaksAt: 420, neck: 25.4 } };
    const { headline, lines } = describeLoad(estimateLoad(piece, stock)!, 'in');
    assert.doesNotMatch([headline, ...lines].join(' '), /mm|kg/);
    // 420 N / 9.80665 m/s² = 42.83 kg = 94.4 lb.
    assert.ok(
      lines.some((line) => line.includes('a neck 1.000 in wide broke at 420 N (94 lb)')),
      lines.join('\n'),
    );
    // 8.9 N weigh 0.908 kg, which are 2.0 lb; less than a pound is told in ounces, of which it has sixteen.
    assert.ok(lines.some((line) => /^Next weakest .* 0\.039 in wide: 8\.9 N \(2\.0 lb\)\.$/.test(line)));
    assert.ok(lines.some((line) => line.includes('3.1 N (11 oz)')));
  });

  it('says where nothing is borne', () => {
    const nothing = (fault: 'open' | 'loose'): LoadEstimate => ({ kind: 'nothing', hangers: 1, fault, sections: [] });
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
