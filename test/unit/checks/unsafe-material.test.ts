import assert from 'node:assert/strict';
import { make, placeOf, specOf } from '../support/engine.ts';
import { assertSilent, only } from './found.ts';

const made = (material: string) =>
  make(
    specOf(['body: {rectangle: [40, 20]}'], undefined, [
      `stock: {thickness: 3, material: ${JSON.stringify(material)}}`,
    ]),
  );

describe('A material that must not be laser cut', () => {
  // What to forbid: published university workshop lists (PVC, vinyl and other halogenated plastics, polycarbonate, ABS, PTFE,
  // carbon fibre, epoxy or glass-fibre boards).
  for (const [why, materials] of [
    [
      /hydrogen chloride/,
      [
        'PVC',
        'pvc sheet',
        '3mm PVC',
        'white_pvc_2mm',
        'Foamed U-PVC',
        'uPVC board',
        'Vinyl',
        'self-adhesive vinyl',
        'polyvinyl chloride',
        'Poly(vinyl chloride)',
        'chlorinated rubber',
        'halogenated plastic',
        'Faux leather',
        'imitation leather, brown',
        'leatherette',
        'faux leather (PVC)',
      ],
    ],
    [/fluorine/, ['PTFE', 'ptfe sheet', 'polytetrafluoroethylene']],
    [/chars/, ['polycarbonate', 'Poly-carbonate, clear', 'POLYCARBONATE 2 mm']],
    [/hydrogen cyanide/, ['ABS', 'ABS plastic', 'two-colour ABS', 'abs 1.5mm', 'ABS (not PVC)']],
    [/dust and fumes/, ['carbon fibre', 'Carbon fiber plate', 'carbon-fibre veneer', 'CFRP']],
    [
      /resin/,
      [
        'FR4',
        'FR-4 board',
        'G10',
        'G-10',
        'epoxy',
        'walnut with epoxy inlay',
        'fibreglass',
        'glass fiber',
        'circuit board',
      ],
    ],
  ] as const) {
    for (const material of materials) {
      it(material, async () => {
        const { issues, report } = await made(material);
        const issue = only({ issues }, 'unsafe-material');
        assert.equal(issue.severity, 'error');
        assert.match(issue.message, why);
        assert.ok(issue.message.includes(`“${material}”`));
        assert.match(issue.message, /data sheet/);
        assert.equal(placeOf(report, issue).text, JSON.stringify(material));
      });
    }
  }

  it('is still that one where only another is denied', async () => {
    for (const material of [
      'acid-free PVC',
      'ABS without PVC',
      'PVC free-standing sign',
      'no formaldehyde, with epoxy',
    ]) {
      only(await made(material), 'unsafe-material');
    }
  });
});

describe('A material that may be laser cut', () => {
  it('is not taken for another by a part of its name', async () => {
    for (const material of [
      'birch plywood',
      'basswood',
      'walnut',
      'oak veneer',
      'MDF',
      'acrylic',
      'absinthe-green acrylic',
      'abstract oak',
      'Cabs cherry',
      'vegetable-tanned leather',
      'leather',
      'card',
      'wool felt',
      'cork',
      'grapevine slab',
      'carbon-black card',
      'glass-clear acrylic',
      'G100 card',
    ]) {
      assertSilent(await made(material), 'unsafe-material', material);
    }
  });

  it('is not taken for what it is said not to be', async () => {
    for (const material of [
      'PVC-free felt',
      'Vinyl-free leather',
      'vinyl free, PVC free banner paper',
      'faux leather, PVC-free',
      'leather (no vinyl)',
      'felt without PVC or vinyl',
      'halogen-free card',
      'non-PVC film',
      'epoxy-free cork',
    ]) {
      assertSilent(await made(material), 'unsafe-material', material);
    }
  });

  it('may go without a name', async () => {
    assertSilent(await make(specOf(['body: {rectangle: [40, 20]}'])), 'unsafe-material');
  });
});
