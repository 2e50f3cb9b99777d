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

  // Everyday names in the six languages, inflected, glued together, in any order, with accents and without. Facts of the
  // trade beyond the lists above: common practice, no source.
  for (const [why, materials] of [
    [
      /know the paint/,
      [
        ...['lackiertes Holz', 'MDF lackiert', 'gestrichenes Holz', 'bemalte Sperrholzplatte', 'weißlackierte Buche'],
        ...['beschichtetes MDF', 'coated MDF', 'oak painted in oil', 'painted lime plywood'],
        ...['contreplaqué peint', 'contreplaque laque', 'MDF peinte', 'panneau laqué'],
        ...['madera pintada', 'MDF lacado', 'tablero recubierto'],
        ...['legno verniciato', 'MDF laccato', 'compensato dipinto', 'pannelli verniciati'],
        ...['geverfd hout', 'gelakt triplex', 'MDF, gelakt', 'hout (beschilderd, onbekende verf)'],
      ],
    ],
    [
      /preservative/,
      [
        ...[
          'behandeltes Holz',
          'Holz, behandelt',
          'imprägnierte Kiefer',
          'Kiefer impraegniert',
          'Holz, druckimpraegniert',
        ],
        ...['treated plywood', 'bois traité', 'bois traite', 'pin autoclave', 'madera de pino tratada', 'pino tratado'],
        ...['legno di pino trattato', 'behandeld hout', 'geïmpregneerd hout', 'geimpregneerd vurenhout'],
      ],
    ],
    [
      /resin/,
      [
        ...[
          'Glasfaserplatte',
          'Glasfaserlaminat',
          'GFK-Platte',
          'glasvezelplaat',
          'fibra de vidrio',
          'Epoxidharzplatte',
        ],
        ...['époxy', 'plaque epoxy', 'Leiterplattenmaterial', 'Schichtstoffplatten', 'melaminado', 'stratifie'],
        ...['melaminharzbeschichtete Spanplatte', 'printplaat'],
      ],
    ],
    [
      /dust and fumes/,
      [
        'Carbonfaserplatte',
        'Carbonplatte 2 mm',
        'Carbon',
        'plaque de carbone',
        'koolstofvezelplaat',
        'fibra de carbono',
      ],
    ],
    [
      /hydrogen chloride/,
      [
        ...[
          'PVC-Platte',
          'Weichpvc',
          'Hartpvcplatte',
          'Vinylfolien',
          'film vinyle',
          'vinilo adhesivo',
          'pellicola vinilica',
        ],
        ...['Wachstuch', 'toile ciree', 'bache', 'Kunstlederreste', 'Schallplatten', 'Klebefolie', 'Neoprenplatte'],
      ],
    ],
    [/fluorine/, ['Teflonplatte', 'téflon', 'teflon', 'teflón']],
    [/chars/, ['Polycarbonatplatte', 'PC-Platte', 'polycarbonaatplaat', 'lastra di policarbonato', 'policarbonato']],
    [/hydrogen cyanide/, ['ABS-Platte', 'ABSplatten']],
    [/isocyanates/, ['Polyurethanplatte', 'poliuretánica', 'polyuréthane']],
    [/poisonous smoke/, ['Schaumstoff', 'foam sheet', 'plaque de mousse', 'goma espuma', 'gommapiuma', 'schuimrubber']],
    [/drips burning/, ['Styroporplatte', 'carton plume', 'poliestireno extruido', 'cartón pluma', 'carton pluma']],
    [
      /chromium/,
      ['Chromleder', 'chromgegerbtes Rindsleder', 'cuir tanne au chrome', 'cuero curtido al cromo', 'chroomleer'],
    ],
    [/zinc/, ['galvanised steel', 'verzinktes Blech', 'acier galvanisé', 'acero galvanizado', 'lamiera zincata']],
  ] as const) {
    for (const material of materials) {
      it(material, async () => {
        const issue = only(await made(material), 'unsafe-material');
        assert.deepEqual([issue.severity, why.test(issue.message)], ['error', true], issue.message);
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
      'unlackiertes Holz',
      'Holz, nicht lackiert',
      'unbehandelte Buche',
      'acryllackiertes Holz',
      'MDF, lackiert auf Wasserbasis',
      'wärmebehandelte Esche',
      'Thermoesche',
      'geöltes Holz',
      'contreplaqué non peint',
      'bois brut',
      'madera sin tratar',
      'legno non verniciato',
      'onbehandeld hout',
      'uncoated board',
      'coated paper',
      'gestrichenes Papier',
      'glasfaserfreier Filz',
      'carton vert mousse',
      'cartoncino nero carbonio',
      'sea-foam green card',
      'Moosgummi aus EVA',
      'Plexiglas',
      'plastic (acrylic)',
      'Buche',
      'Pappelsperrholz',
      'carton bois',
      'cartón kraft',
      'vilt van wol',
      'Leder, pflanzlich gegerbt',
      'pflanzlich gegerbtes Rindsleder',
      'veg-tan leather',
      'cuir tannage végétal',
      'cuero curtido vegetal',
      'cuoio conciato al vegetale',
      'plantaardig gelooid leer',
    ]) {
      assertSilent(await made(material), 'unsafe-material', material);
    }
  });

  it('is not taken for what it is said not to be', async () => {
    for (const material of [
      'PVC-free felt',
      'Vinyl-free vegetable-tanned leather',
      'vinyl free, PVC free banner paper',
      'vegetable-tanned leather (no vinyl)',
      'leather, chrome-free',
      'chrome-free tanned leather',
      'felt without polyvinyl chloride',
      'card, no carbon fibre',
      'Filz ohne PVC',
      'PVC-freier Karton',
      'carton sans vinyle',
      'cuero vegetal sin poliuretano',
      'kurk zonder epoxy of pvc',
      'felt without PVC or vinyl',
      'halogen-free card',
      'non-PVC film',
      'epoxy-free cork',
    ]) {
      assertSilent(await made(material), 'unsafe-material', material);
    }
  });

  it('is asked about, as an info, where its name leaves open what matters', async () => {
    // Common practice, no source.
    for (const [why, materials] of [
      [
        /vegetable-tanned, and say so/,
        [
          'leather',
          'Leder',
          'Rindsleder 2 mm',
          'cuir',
          'cuero',
          'cuoio',
          'pelle',
          'leer',
          'rundleer',
          'suede',
          'leather (no vinyl)',
        ],
      ],
      [/mirror down/, ['mirrored acrylic', 'Acryl, verspiegelt', 'Spiegelacryl', 'acrylique miroir', 'spiegelplaat']],
      [/which plastic/, ['plastic', 'Kunststoffplatte', 'plastique blanc', 'plástico', 'plastica']],
    ] as const) {
      for (const material of materials) {
        const issue = only(await made(material), 'unsafe-material');
        assert.deepEqual([issue.severity, why.test(issue.message)], ['info', true], `${material}: ${issue.message}`);
        assert.match(issue.message, /data sheet/);
      }
    }
  });

  // Common practice, no source.
  it('is a warning where wood has a varnish that it does not name, and none where that is one commonly cut', async () => {
    for (const material of [
      ...['varnished oak', 'oak, lacquered', 'clear-coated birch', 'klarlackiertes Holz', 'lasierte Kiefer'],
      ...['bois verni', 'contreplaqué vernis', 'contrachapado barnizado', 'gevernist hout', 'blank gelakt triplex'],
    ]) {
      const issue = only(await made(material), 'unsafe-material');
      assert.deepEqual(
        [issue.severity, /on water, oil, wax or shellac/.test(issue.message)],
        ['warning', true],
        material,
      );
      assert.match(issue.message, /Look at its data sheet/);
    }
    for (const material of [
      ...[
        'oak, water-based varnish',
        'varnished oak, water-based',
        'oak varnished in oil',
        'oiled and lacquered oak, hardwax oil',
      ],
      ...[
        'Eiche, klarlackiert auf Wasserbasis',
        'Kiefer, lasiert mit Leinöl',
        'bois verni à l’eau',
        'bois verni à la gomme laque',
      ],
      ...[
        'madera barnizada al agua',
        'gevernist hout op waterbasis',
        'unvarnished oak',
        'oiled walnut',
        'geöltes Holz',
      ],
    ])
      assertSilent(await made(material), 'unsafe-material', material);
  });

  it('may go without a name', async () => {
    assertSilent(await make(specOf(['body: {rectangle: [40, 20]}'])), 'unsafe-material');
  });
});
