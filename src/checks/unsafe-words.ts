/**
 * Materials that must not be laser cut, by their names in several languages. From the lists that university workshops
 * publish (among them those of the universities of Texas at Austin and of Illinois Chicago, seen); no list is complete.
 */

export interface UnsafeMaterial {
  readonly words: RegExp;
  /** The text that follows “PVC …”. */
  readonly why: string;
}

/** Names in lower case, with single spaces between runs of letters and digits. */
const unsafe = (why: string, ...names: readonly string[]): UnsafeMaterial => ({
  words: wholeWords(names.join('|')),
  why,
});

/**
 * Matches whole words, bounded by anything but letters: “3 mm PVC” and “PVC3” are PVC, an “abstract oak” is not ABS.
 */
export function wholeWords(words: string, flags = 'u'): RegExp {
  return new RegExp(`(?<!\\p{L})(${words})(?!\\p{L})`, flags);
}

export const unsafeMaterials: readonly UnsafeMaterial[] = [
  unsafe(
    'is PVC or polyurethane more often than not: cutting it gives off hydrogen chloride or hydrogen cyanide, which harm lungs and machine',
    '(faux|artificial|imitation|synthetic|fake|vegan|pu) leather|leatherette|leather imitation|pleather',
    'kunstleder|lederimitat|simili ?cuir|cuir (synthétique|artificiel|végan)|faux cuir',
    'cuero (sintético|artificial|vegano)|polipiel|similpelle|ecopelle|finta pelle|kunstleer|nepleer|imitatieleer|couro sintético',
  ),
  unsafe(
    'is or may be PVC or another halogenated plastic: cutting it gives off hydrogen chloride, which harms lungs and machine',
    'u ?pvc|c?pvc|pvdc|poly ?vinyl ?chloride|(poly ?)?vinyl(?! (acetate|alcohol))|chlorinated|chloride|halogenated',
    '(poly ?)?chloropren(e|o)?|neopren(e|o)?|néoprène|polychloroprène|chloropren ?kautschuk',
    'polyvinylchlorid[e]?|vinylfolie|polychlorure de vinyle|chlorure de polyvinyle|vinyle',
    '(poli)?cloruro de (poli)?vinilo|vinilo|cloruro di polivinile|polivinilcloruro|vinile|policloreto de vinil[ao]',
  ),
  unsafe(
    'gives off poisonous fluorine compounds',
    'ptfe|pvdf|etfe|fep|polytetrafluoro?ethylene?|fluoropolymers?|teflon',
    'polytétrafluoroéthylène|politetrafluoroetilen[oe]|fluorpolymere?|fluoropolym(ère|ero)s?',
  ),
  unsafe(
    'burns and chars instead of cutting, with harmful smoke',
    'poly ?carbonates?|polycarbonaat|polycarbonat|policarbonato|lexan|makrolon',
  ),
  unsafe(
    'melts, catches fire easily and gives off hydrogen cyanide',
    'abs|acrylonitrile butadi(e|è)ne st(y|yr|i)r?(e|è)ne|acrylnitril butadien styrol',
    'acrilonitrilo butadieno estireno|acrilonitrile butadiene stirene|acrylonitril butadieen styreen',
  ),
  unsafe(
    'gives off hydrogen cyanide and isocyanates, which harm the lungs',
    'polyurethanes?(?! (varnish|lacquer|finish|sealer))|polyurethan|polyurethaan|polyuréthane|poliuretano|pu (foam|schaum)|tpu',
  ),
  unsafe(
    'catches fire at once, melts and drips burning',
    '(expanded|extruded) poly ?(styrene|propylene)|poly ?(styrene|propylene) foam|eps|xps|epp|styrofoam|depron|foam ?(core|board)',
    'polystyrol ?(hart ?)?schaum|polypropylen ?schaum|styropor|polystyrène (expansé|extrudé)|polypropylène expansé',
    'poliestireno (expandido|extruido)|polipropileno expandido|polistirolo( espanso)?|polistirene espanso|piepschuim',
  ),
  unsafe(
    'melts, catches fire and fouls the bed',
    'hdpe|pe hd|high density polyethylene|polyethylen hoher dichte|polyéthylène haute densité',
    'polietileno de alta densidad|polietilene ad alta densità|polyethyleen met hoge dichtheid',
  ),
  unsafe(
    'gives off chromium compounds, which harm lungs and skin',
    'chrom(e|ium) ?(tanned|tan|leather)|chrom(e|ium) tanned leather|chromgegerbt\\p{L}*|chromleder',
    'tann(é|age|ée) au chrome|curtid[oa] al cromo|conciat[oa] al cromo|chroomgelooid',
  ),
  unsafe(
    'gives off harmful dust and fumes',
    'carbon ?fib(er|re)s?|cfrp|cfk|carbonfasern?|kohle(nstoff)?fasern?|fibres? de carbone|fibra d[ei] carbon(o|io)|koolstofvezel',
  ),
  unsafe(
    'gives off harmful fumes from its resin, and glass dust',
    'epoxy|epoxies|fr ?4(?!\\d)|g ?10(?!\\d)|glass ?fib(er|re)s?|fib(er|re) ?glass|gfrp|grp|gfk|pcb|circuit boards?',
    'epoxid(harz)?|époxy|epoxi|epossidic[ao]|glasfasern?|leiterplatten?|fibres? de verre|fibra de vidrio|fibra di vetro|vetroresina|glasvezel',
  ),
  unsafe(
    'gives off formaldehyde, phenol or hydrogen cyanide from its resin',
    'melamine?|mélamin(e|é)|melamina|melaminharz|hpl|high pressure laminate|schichtstoff\\p{L}*|hartpapier|bakelite?|formica|resopal',
    'phenolic (laminate|board|sheet|panel|paper|film)|phenol formaldehyde board|stratifié',
  ),
  unsafe(
    'holds wood preservative: its smoke and dust are poisonous',
    '(pressure|chemically) ?treated|(?<!(heat|thermally|oil) )treated (wood|timber|lumber|pine)|tanali[sz]ed|creosoted?',
    '(kessel)?druckimprägniert\\p{L}*|traité(e|s)? en autoclave|bois traité|madera tratada|legno trattato|geïmpregneerd hout',
  ),
  unsafe(
    'may hold lead or other metals, or PVC: do not cut it unless you know the paint',
    '(old|unknown|lead) paint|(?<!(acrylic|based|milk|chalk) )painted (wood|timber|lumber|pine|oak|plywood|mdf|board)(?! (with|in) )',
    'alter anstrich|unbekannte[rn]? (farbe|lack)|peinture (inconnue|ancienne)|pintura desconocida|vernice sconosciuta',
  ),
];
