/**
 * Materials that must not be laser cut, and those to ask about first, by their names in several languages. From the lists
 * that university workshops publish (among them those of the universities of Texas at Austin and of Illinois Chicago,
 * seen), and what is common practice, no source, where a row says so; no list is complete.
 */

import { inAnyWord, wholeWords } from './material-names.ts';

export interface UnsafeMaterial {
  readonly words: RegExp;
  /** The text that follows “PVC …”. */
  readonly why: string;
  /** Counts only beside one of these: “painted” beside wood. */
  readonly beside?: RegExp;
  /** Does not count where the name says this too. */
  readonly unless?: RegExp;
  /** Of what is asked about; otherwise an info. */
  readonly severity?: 'warning';
}

/** Names without accents, in lower case, with single spaces between runs of letters and digits. */
const unsafe = (why: string, ...names: readonly string[]): UnsafeMaterial => ({
  words: wholeWords(names.join('|')),
  why,
});

/** Paints whose names say what they are, and which workshops cut: common practice, no source. */
const knownPaints: readonly string[] = [
  'acryl\\p{L}*|acrílic\\p{L}*|acrilic\\p{L}*|acrylique|milk|milch\\p{L}*|lait|leche|latte|melk\\p{L}*|chalk|kreide\\p{L}*|craie|tiza|gesso|krijt\\p{L}*',
  'water based|water borne|wasser(basis|basiert\\p{L}*|lack)|à l eau|al agua|all acqua|(op )?water ?basis|watergedragen',
  'casein|kasein\\p{L}*|caséine|caseína|caseina|caseïne|shellac|schellack\\p{L}*|gomme laque|goma laca|gomma ?lacca|schellak',
  'linseed oil|leinöl\\p{L}*|huile de lin|aceite de linaza|olio di lino|lijnolie|wax|\\p{L}*wachs\\p{L}*|cire|cera|was',
];

export const unsafeMaterials: readonly UnsafeMaterial[] = [
  unsafe(
    'is PVC or polyurethane more often than not: cutting it gives off hydrogen chloride or hydrogen cyanide, which harm lungs and machine',
    '(faux|artificial|imitation|synthetic|fake|vegan|pu) (leather|suede)|leatherette|leather imitation|pleather|oil ?cloth',
    inAnyWord(
      'kunst(?:wild)?leder',
      'lederimitat',
      'imitatieleder',
      'wachstuch',
      'kunstleer',
      'nepleer',
      'imitatieleer',
    ),
    'veganes leder|simili ?cuir|cuir (synthétique|artificiel|végan|vegan)|faux cuir|skai|toile cirée',
    'cuero (sintético|artificial|vegano)|piel (sintética|vegana)|polipiel|similpelle|ecopelle|finta pelle|tela cerata',
    'veganistisch leer|tafelzeil|couro sintético',
  ),
  unsafe(
    'is or may be PVC or another halogenated plastic: cutting it gives off hydrogen chloride, which harms lungs and machine',
    'u ?pvc|c?pvc|pvc ?u|pvdc|poly ?vinyl ?chloride|(poly ?)?vinyls?(?! (acetate|alcohol))|chlorinated|chloride|halogenated',
    '(poly ?)?chloropren(e|o)?|neopren(e|o)?|néoprène|polychloroprène|(self )?adhesive (film|foil)|foamex|tarpaulin',
    inAnyWord(
      'pvc',
      'polyvinylchlorid',
      'vinylfoli',
      'vinylplaa?t',
      'vinylboden',
      'neopren',
      'chloropren',
      'schallplatte',
    ),
    inAnyWord('klebefoli', 'plotterfoli', 'plakfoli', 'lkw ?plane', 'vrachtwagenzeil'),
    'bâche|film adhésif|polychlorure de vinyle|chlorure de polyvinyle|vinyles?|vinyliques?',
    '(poli)?cloruro de (poli)?vinilo|vinilos?|vinílic[oa]s?|cloruro di polivinile|polivinilcloruro|vinile|vinilic[oa]|policloreto de vinil[ao]',
  ),
  unsafe(
    'gives off poisonous fluorine compounds',
    'ptfe|pvdf|etfe|fep|polytetrafluoro?ethylene?|fluoropolymers?|teflon\\p{L}*|téflon|teflón',
    'polytétrafluoroéthylène|politetrafluoroetilen[oe]|fluorpolymere?|fluoropolym(ère|ero)s?',
    inAnyWord('polytetrafluor', 'ptfe'),
  ),
  unsafe(
    'burns and chars instead of cutting, with harmful smoke',
    'poly ?carbonates?|polycarbona(at|t)\\p{L}*|policarbonato|lexan|makrolon|pc (sheets?|platten?|plaat|plates?)|plaque (de |en )?pc',
  ),
  unsafe(
    'melts, catches fire easily and gives off hydrogen cyanide',
    'abs|acrylonitrile butadi(e|è)ne st(y|yr|i)r?(e|è)ne|acrylnitril butadien styrol|abs(kunststoff|platten?|plaat)',
    'acrilonitrilo butadieno estireno|acrilonitrile butadiene stirene|acrylonitril butadieen styreen',
  ),
  unsafe(
    'gives off hydrogen cyanide and isocyanates, which harm the lungs',
    'polyurethanes?(?! (varnish|lacquer|finish|sealer))|poliuretan[oi]|poliuretánic[oa]|pu (foam|schaum)|tpu',
    inAnyWord('polyurethan(?:plat|foli|schaum|har)', 'polyurethaan'),
    'polyurethan',
  ),
  unsafe(
    'catches fire at once, melts and drips burning',
    '(expanded|extruded) poly ?(styrene|propylene)|poly ?(styrene|propylene) foam|eps|xps|epp|styrofoam|depron|foam ?(core|board)',
    inAnyWord('polystyrol ?(?:hart ?)?schaum', 'polypropylen ?schaum', 'styropor', 'piepschuim', 'tempex'),
    'polystyrène (expansé|extrudé)|polypropylène expansé|carton (plume|mousse)|leichtstoffplatten?|cartón pluma',
    'poliestireno (expandido|extruido)|poliespan|polipropileno expandido|polistirolo( espanso)?|polistirene espanso',
  ),
  unsafe(
    'melts, catches fire and fouls the bed',
    'hdpe|pe hd|high density polyethylene|polyethylen hoher dichte|polyéthylène haute densité',
    'polietileno de alta densidad|polietilene ad alta densità|polyethyleen met hoge dichtheid',
  ),
  unsafe(
    'gives off chromium compounds, which harm lungs and skin',
    'chrom(e|ium) ?(tanned|tan|leather)|chromium tanned leather|chrome leather',
    inAnyWord('chromgegerb', 'chromleder', 'chroomgelooid', 'chroomleer'),
    'mit chrom gegerbt\\p{L}*|tann(é|age|ée)s? au chrome|cuir (au )?chrome|curtid[oa]s? al cromo|cuero al cromo',
    'conciat[oa] al cromo|concia al cromo|cuoio al cromo|met chroom gelooid',
  ),
  unsafe(
    'gives off harmful dust and fumes',
    'carbon ?fib(er|re)s?|cfrp|cfk|fibres? de carbone|fibra d[ei] carbon(o|io)|koolstofvezel\\p{L}*',
    inAnyWord('cfk', 'carbonfaser', 'karbonfaser', 'kohle(?:nstoff)?faser', 'carbonplaa?t', 'carbonlaminat'),
    'carbon (sheet|plate)|plaque (de )?carbone|placa de carbono|lastra (di|in) carbonio|carbon(?= \\d|$)|(?<!nero |negro )carbon(e|o|io)(?= \\d|$)',
  ),
  unsafe(
    'gives off harmful fumes from its resin, and glass dust',
    'epoxy|epoxies|fr ?4(?!\\d)|g ?10(?!\\d)|glass ?fib(er|re)s?|fib(er|re) ?glass|gfrp|grp|gfk|gvk|pcb|circuit boards?',
    inAnyWord('gfk', 'epoxid', 'epoxyhar[zs]', 'glasfaser', 'glasfib', 'glasvezel', 'leiterplatte', 'fiberglas'),
    'époxyde?s?|epoxi|epóxic[oa]s?|epossidic[oa]|fibres? de verre|fibra d[ei] vidrio|fibra di vetro|vetroresina|printplaat',
  ),
  unsafe(
    'gives off formaldehyde, phenol or hydrogen cyanide from its resin',
    'melamine?|mélamin(e|é)s?|mélaminée?s?|melaminad?[oa]s?|melaminat[oa]|hpl|high pressure laminate|bakelite?|bakélite|baquelita|bachelite',
    inAnyWord('melamin(?:harz|beschicht)', 'schichtstoff', 'hartpapier', 'pertinax', 'hpl ?plaa?t', 'melaminehars'),
    'formica|resopal|stratifiés?|phenolic (laminate|board|sheet|panel|paper|film)|phenol formaldehyde board',
  ),
  {
    ...unsafe(
      'holds wood preservative: its smoke and dust are poisonous',
      'treated|traitée?s?|tratad[oa]s?|trattat[oaie]|behandeld?e?|impregnated|imprégnée?s?|impregnad[oa]s?|impregnat[oaie]',
      'behandel(t|te|tes|ten|ter|tem)|(kessel|druck)?imprägnier(t|te|tes|ten|ter|tem)|geïmpregneerde?',
    ),
    beside: wood(),
    // Heat and oil preserve wood without poison: common practice, no source.
    unless: wholeWords(
      '(heat|thermally|thermo|oil|wax) (treated|behandel\\p{L}*)|(hitze|wärme|thermisch|öl|mit öl|mit wachs) ?behandel\\p{L}*|traitée?s? (à la chaleur|à l huile|thermiquement)|tratad[oa]s? (térmicamente|con calor|con aceite)|trattat[oaie] (termicamente|con olio|ad olio)|(hitte|thermisch|met olie) behandelde?',
    ),
  },
  unsafe(
    'holds wood preservative: its smoke and dust are poisonous',
    '(pressure|chemically) ?treated|tanali[sz]ed|wolmani[sz]ed|kdi|cca|creosoted?|créosotée?s?|creosotad[oa]|creosotato|railway sleepers?',
    '(kessel)?druckimprägniert\\p{L}*|(en )?autoclave|autoclavé|autoclavad[oa]|kreosot\\p{L}*|gecreosoteerd',
  ),
  unsafe(
    'may hold lead or other metals, or PVC: do not cut it unless you know the paint',
    '(old|unknown|lead) paint|alter (anstrich|lack)|alte farbe|unbekannte[rn]? (farbe|lack)|bleifarbe|peinture (inconnue|ancienne|au plomb)',
    'pintura (desconocida|vieja|antigua)|vernice (sconosciuta|vecchia|al piombo)|onbekende (verf|lak)|oude verf|loodverf',
  ),
  {
    ...unsafe(
      'may be coated with something that holds lead or other metals, PVC or polyurethane: do not cut it unless you know the paint, and say in the name which it is',
      'painted|repainted|enamell?ed|(?<!clear |top )coated',
      '(?!un|nicht|klar|matt|seidenmatt|glanz)\\p{L}*(lackier|gestriche|bemal|beschichte)(t|n)?(e|es|en|er|em|ne|nes|nen|ner|nem)?',
      'repeinte?s?|peinte?s?|laquée?s?|enduite?s?|revêtue?s?|pintad[oa]s?|lacad[oa]s?|esmaltad[oa]s?|recubiert[oa]s?',
      'verniciat[oaie]|dipint[oaie]|pitturat[oaie]|laccat[oaie]|smaltat[oaie]|rivestit[oaie]',
      '(voor)?(geverfd|(?<!blank |transparant )gelakt|geschilderd|gecoat)e?',
    ),
    beside: wood(),
    unless: knownPaint(),
  },
  {
    // Common practice, no source.
    ...unsafe(
      'gives off zinc fumes, which make one ill',
      'galvani[sz]ed|zinc (plated|coated)|galvanisée?s?|zinguée?s?|galvanizad[oa]s?|zincat[oaie]|zinkplaat',
      '(feuer|elektro)?verzinkt(e|es|en|er|em)?|(ver|ge)zinkte?|gegalvaniseerde?',
    ),
  },
  {
    ...unsafe(
      'is a foam that may be polyurethane, polystyrene or PVC: it catches fire at once and gives off poisonous smoke',
      'foam|foams|foam ?(sheet|rubber)|foamed|(?<!vert )mousse|espuma|goma ?espuma|schiuma|gomma ?piuma|schuim',
      inAnyWord('schaumstoff', 'schaumgummi', 'hartschaum', 'schaumplatte', 'schuimrubber', 'schuimplaat'),
    ),
    // Foam of EVA is cut, as common practice has it, no source; “foam” may be a colour of card.
    unless: wholeWords('eva|foam textured|foam (green|white|blue)|sea ?foam'),
  },
];

/** What may be cut or not, as its name does not say: told as something to find out. Common practice, no source. */
export const askedMaterials: readonly UnsafeMaterial[] = [
  {
    ...unsafe(
      'has a varnish of which the name does not say what it is: one on water, oil, wax or shellac is commonly cut, one on nitrocellulose catches fire, and one of two parts gives off isocyanates. Look at its data sheet, and say in the name which it is',
      'varnished|lacquered|(clear|top) ?coated',
      '(klar|matt|seidenmatt|glanz)lackier(t|te|tes|ten|ter|tem)|\\p{L}*lasier(t|te|tes|ten|ter|tem)',
      'vernie?s?|verniss(é|ée)s?|lasurée?s?|barnizad[oa]s?|(blank|transparant) gelakte?|(voor)?(gevernist|gelazuurd)e?',
    ),
    severity: 'warning',
    beside: wood(),
    unless: knownVarnish(),
  },
  {
    ...unsafe(
      'may be tanned with chromium, whose smoke harms lungs and skin: make sure that it is vegetable-tanned, and say so in the name',
      'leathers?|suede|nubuck|cowhide|cuirs?|daim|cueros?|cuoio|pell[ei]|piel(es)?|ante|gamuza|scamosciat[oa]|couro|leer',
      '\\p{L}*leder|\\p{L}*(rund|kalfs|geiten|schapen)leer',
    ),
    unless: wholeWords(
      [
        'veg(etable|etal\\p{L}*|etabil\\p{L}*)?|végéta(l|le|ux|les)|bark|oak tan\\p{L}*|(pflanzlich|lohe?|rinden|eichenloh)\\p{L}*',
        'plantaardig\\p{L}*|paper|papier|papel|carta|cork|kork|(chrome?|chroom|cromo) ?(free|frei|vrij)\\p{L}*|sans chrome|sin cromo|senza cromo',
      ].join('|'),
    ),
  },
  {
    ...unsafe(
      'reflects the beam, which can harm the machine: cut mirrored acrylic from its back, mirror down, and mirrors of glass or metal not at all',
      'mirror|mirrors|mirrored|miroirs?|espejos?|espejad[oa]|specchi(o|ato|ata)?|a specchio|spiegels?',
      inAnyWord('verspiegel', 'spiegelacryl', 'acrylspiegel', 'spiegelplaa?t', 'spiegelfoli', 'spiegelglas'),
    ),
  },
  {
    ...unsafe(
      'may be PVC, whose smoke is poisonous and eats the machine: find out which plastic it is, and say so in the name',
      'plastics?|kunststoff(platten?|foli(e|en))?|plastik|plastique|plásticos?|plastica|kunststof(plaat)?',
    ),
    unless: wholeWords(
      'acryl\\p{L}*|acrili\\p{L}*|acríl\\p{L}*|pmma|plexi\\p{L}*|pet|petg|pp|pe|ldpe|polyprop\\p{L}*|poliprop\\p{L}*|polyester|poliéster|pom|delrin|nylon|pla|laminate|laser',
    ),
  },
];

/** Wood and boards of it, whatever is glued to the word: “Vollholz”, “Holzplatte”. */
function wood(): RegExp {
  return wholeWords(
    [
      'wood(en)?|timber|lumber|ply(wood)?|plywoods|hardboard|chipboard|fibreboard|board|boards|planks?|mdf|hdf|osb',
      'pine|oak|birch|beech|ash|maple|walnut|cherry|poplar|basswood|lime|spruce|fir|cedar|alder|larch|bamboo|veneer',
      inAnyWord('holz', 'brett', 'hout', 'triplex', 'multiplex', 'mdf', 'hdf'),
      '(span|tischler|press)?platten?|kiefern?|fichten?|eichen?|buchen?|birken?|ahorn|nussbaum|linden?|pappeln?|erlen?|eschen?|lärchen?|kirsch(e|baum)|bambus|furnier',
      'bois|contre ?plaqué|médium|aggloméré|planches?|panneaux?|pin|chêne|bouleau|hêtre|érable|noyer|tilleul|peuplier|sapin|frêne|bambou|placage',
      'maderas?|contrachapad[oa]|aglomerad[oa]|tabl(a|as|ero|eros|ón)|pino|roble|abedul|haya|arce|nogal|tilo|chopo|álamo|fresno|cerezo|bambú|chapa',
      'legno|compensato|multistrato|truciolare|tavol[ae]|pannell[oi]|pino|rovere|quercia|betulla|faggio|acero|noce|tiglio|pioppo|abete|frassino|ciliegio|bambù|impiallacciato',
      'plank(en)?|plaat|platen|vurenhout|grenen|eiken|beuken|berken|esdoorn|noten|linde|populier|essen|spaanplaat|bamboe|fineer',
    ].join('|'),
  );
}

/** The same of varnishes. */
function knownVarnish(): RegExp {
  const oils = [
    'oil|oiled|(hart|lein|holz|tung|hartwachs)?öl|ölbasis|geölt(e|es|en|er|em)?|ölla(sur|ck)',
    'huile|huilée?s?|aceite|aceitad[oa]s?|olio|oliat[oaie]|olie|geolied?e?',
  ];
  return wholeWords([...knownPaints, ...oils].join('|'));
}

/** Paint in oil may be an old one, with lead. */
function knownPaint(): RegExp {
  return wholeWords(knownPaints.join('|'));
}
