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
        'neoprene 2 mm',
        'Polychloroprene',
        'Néoprène',
        'Polyvinylchlorid',
        'Hart-PVC',
        'polychlorure de vinyle',
        'policloruro de vinilo',
        'cloruro di polivinile',
        'vinilo adhesivo',
        'Kunstleder, schwarz',
        'similicuir',
        'polipiel',
        'ecopelle',
        'kunstleer',
        'faux leather, PVC-free',
        'PU leather',
      ],
    ],
    [/isocyanates/, ['polyurethane', 'Polyurethan 3 mm', 'poliuretano', 'PU foam']],
    [
      /drips burning/,
      ['polystyrene foam', 'Expanded polypropylene', 'XPS', 'foam core', 'Styropor', 'polystyrène expansé'],
    ],
    [/fouls the bed/, ['HDPE', 'high-density polyethylene', 'PE-HD', 'polyéthylène haute densité']],
    [
      /chromium/,
      [
        'chrome-tanned leather',
        'chrome leather',
        'Leder, chromgegerbt',
        'cuir tanné au chrome',
        'cuoio conciato al cromo',
      ],
    ],
    [/formaldehyde/, ['melamine', 'MDF, melamine faced', 'phenolic laminate', 'HPL', 'Schichtstoffplatte', 'mélaminé']],
    [
      /preservative/,
      ['pressure-treated pine', 'treated timber', 'tanalised wood', 'Kiefer, kesseldruckimprägniert', 'bois traité'],
    ],
    [/know the paint/, ['painted wood', 'old paint on oak', 'reclaimed board, unknown paint', 'painted MDF']],
    [/fluorine/, ['PTFE', 'ptfe sheet', 'polytetrafluoroethylene', 'Polytetrafluorethylen', 'politetrafluoroetileno']],
    [/chars/, ['polycarbonate', 'Poly-carbonate, clear', 'POLYCARBONATE 2 mm', 'Polycarbonat', 'policarbonato']],
    [
      /hydrogen cyanide/,
      [
        'ABS',
        'ABS plastic',
        'two-colour ABS',
        'abs 1.5mm',
        'ABS (not PVC)',
        'acrylonitrile butadiene styrene',
        'Acrylnitril-Butadien-Styrol',
      ],
    ],
    [
      /dust and fumes/,
      [
        'carbon fibre',
        'Carbon fiber plate',
        'carbon-fibre veneer',
        'CFRP',
        'Kohlefaser',
        'fibre de carbone',
        'fibra di carbonio',
      ],
    ],
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
        'Glasfaser',
        'Epoxidharz',
        'fibre de verre',
        'vetroresina',
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
      'Epoxid ohne PVC',
      'non-toxic vinyl',
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
      'polyester felt',
      'cherry',
      'Polypropylene sheet',
      'polyethylene film',
      'PETG',
      'birch plywood, phenolic glue',
      'birch plywood with polyvinyl acetate glue',
      'oak with polyurethane varnish',
      'untreated pine',
      'heat-treated ash',
      'heat-treated wood',
      'thermally treated timber',
      'acrylic-painted wood',
      'painted wood in milk paint',
      'chrome yellow card',
      'vegetable tanned leather, undyed',
      'washable paper leather',
      'neon pink acrylic',
      'EVA craft foam',
      'paper foam-textured card',
      'stratified oak',
      'Epsom card',
      'lime plywood',
      'acid-free mount board',
    ]) {
      assertSilent(await made(material), 'unsafe-material', material);
    }
  });

  it('is not taken for what it is said not to be', async () => {
    for (const material of [
      'PVC-free felt',
      'Vinyl-free leather',
      'vinyl free, PVC free banner paper',
      'leather (no vinyl)',
      'leather, chrome-free',
      'chrome-free tanned leather',
      'felt without polyvinyl chloride',
      'card, no carbon fibre',
      'Filz ohne PVC',
      'PVC-freier Karton',
      'carton sans vinyle',
      'cuero sin poliuretano',
      'kurk zonder epoxy of pvc',
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
