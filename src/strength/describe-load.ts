/** A load estimate in plain words, for hover and preview. */

import { capitalised } from '../core/names.ts';
import { measuredText, mmPerInch, shortLength, type Units } from '../core/units.ts';
import type { Measured } from '../spec/model/workshop-model.ts';
import type { LoadEstimate, LoadSection } from './load.ts';
import { cutEdge } from './resistance.ts';

export interface LoadDescription {
  readonly headline: string;
  /** The reasons for the estimate, most important first. */
  readonly lines: readonly string[];
  /** Shown wherever the headline is: that an estimate is only an estimate. `rule`: where only one sentence fits. */
  readonly caution: string;
  readonly rule: string;
}

/**
 * The pound is exact by definition (the international yard and pound agreement, 1959); an ounce is a sixteenth of it.
 */
const kilogramsPerPound = 0.45359237;

/** Standard gravity, m/s² (exact: 3rd General Conference on Weights and Measures, 1901). */
const gravity = 9.80665;

const rule = 'Try it on scrap, and never hang anything on it that must not fall.';
const cautions = {
  wood: `An estimate from published averages of clear wood. It does not account for this piece’s grain, glue, knots or charring. ${rule}`,
  other: `An estimate from published figures. It does not account for this piece’s cracks, scratches, glue or scorching. ${rule}`,
  measured: `An estimate from the one neck you broke. Another piece may be weaker. ${rule}`,
} as const;

type BearsEstimate = Extract<LoadEstimate, { kind: 'bears' }>;

/** @param units Units of the spec: lengths are shown in them, and masses in kilograms or pounds. */
export function describeLoad(estimate: LoadEstimate, units: Units = 'mm'): LoadDescription {
  const caution = cautions[cautionFor(estimate)];
  switch (estimate.kind) {
    case 'nothing': {
      const why = {
        open: 'the opening of the hanger is not closed',
        loose: 'the hanger is not joined to most of the piece',
      };
      return { headline: `Bears no pull: ${why[estimate.fault]}`, lines: [], caution: rule, rule };
    }
    case 'unknown':
      return {
        headline: `Load unknown: ${estimate.reason}`,
        lines: [`Narrowest where it would break: ${place(estimate.weakest, units)}${crossSection(estimate, units)}.`],
        caution: rule,
        rule,
      };
    case 'bears':
      return {
        headline: `Bears a short pull of about ${force(estimate.shortPull, units)}${isMeasured(estimate.weakest) ? ', as measured' : ''} – weakest ${place(estimate.weakest, units)}`,
        lines: reasons(estimate, units),
        caution,
        rule,
      };
  }
}

function cautionFor({ material, ...estimate }: LoadEstimate): keyof typeof cautions {
  if (estimate.kind === 'bears' && isMeasured(estimate.weakest)) return 'measured';
  return material?.kind === 'wood' ? 'wood' : 'other';
}

const isMeasured = ({ by }: LoadSection): boolean => by?.basis === 'measured';

function reasons(estimate: BearsEstimate, units: Units): string[] {
  const { material, weakest, sections, brokenAlong } = estimate;
  return [
    ...(estimate.hangers > 1
      ? [
          `Each of its ${estimate.hangers} openings bears that much by itself; how they share a pull depends on how it is tied.`,
        ]
      : []),
    lasting(estimate, units),
    ...(weakest.weaker
      ? [`Assumes that the grain runs ${weakest.weaker} the pull there, which is the weaker way.`]
      : []),
    basis(estimate, units),
    ...(brokenAlong ? [alongOnly(brokenAlong, units)] : []),
    ...(material?.assumed === undefined ? [] : [material.assumed]),
    ...sections.slice(1, 2).map((section) => `Next weakest ${place(section, units)}: ${force(section.bears!, units)}.`),
  ];
}

function lasting({ material, hanging }: BearsEstimate, units: Units): string {
  if (hanging === undefined)
    return `There is no published figure for how much less ${material?.name ?? 'this material'} bears when left hanging for long.`;
  return material?.lasting?.is === 'limit'
    ? `Left hanging: about ${force(hanging, units)}; more would craze it.`
    : `Left hanging for ten years: about ${force(hanging, units)}.`;
}

/** The source of the figure, and what has been deducted from it. */
function basis({ material, thicknessMm, measured, weakest: { by } }: BearsEstimate, units: Units): string {
  if (by!.basis === 'measured')
    return `Measured: ${breakInWords(measured!, units)}. ${percent(1 - by!.share)} is taken off because the next piece may be weaker.`;
  const { name, kind } = material!;
  const edge = percent(1 - cutEdge[kind]);
  const allowed = kind === 'plastic' || kind === 'leather' ? '' : 'what 95 of 100 pieces reach, ';
  return `Calculated for ${name}, ${shortLength(thicknessMm!, units)} thick (${by!.basis.source}): ${allowed}less ${edge} for cut edges.`;
}

function alongOnly(measured: Measured, units: Units): string {
  const breakTest = breakInWords(measured, units);
  return `${capitalised(breakTest)}: that is its strength along the grain. Break one across the grain to have the weaker way measured.`;
}

function breakInWords({ breaksAt, neck }: Measured, units: Units): string {
  return `a neck ${measuredText(neck, units)} wide broke at ${force(breaksAt, units)}`;
}

/** Place and width of a section, to follow "weakest". */
function place({ what, widthMm, totalMm, count }: LoadSection, units: Units): string {
  const [wide, inAll] = [widthMm, totalMm].map((each) => measuredText(each, units));
  switch (what) {
    case 'wall':
      return `at the wall beside the opening, ${wide} wide`;
    case 'tear-out':
      return `where the tie would tear out, ${wide} from the edge`;
    case 'strap':
      return `at the strip ahead of the opening, ${wide} wide`;
    case 'attachment':
      return `where the ring is joined, ${inAll} wide`;
    case 'neck':
      return `at the neck, ${wide} wide`;
    case 'strokes':
      return `across ${count} strokes, ${inAll} together`;
  }
}

function crossSection({ weakest, thicknessMm }: Extract<LoadEstimate, { kind: 'unknown' }>, units: Units): string {
  if (thicknessMm === undefined) return '';
  const area = weakest.totalMm * thicknessMm;
  return units === 'mm' ? ` (${twoDigits(area)} mm² in all)` : ` (${twoDigits(area / mmPerInch ** 2)} in² in all)`;
}

/** "14 N (1.4 kg)" or "14 N (3.1 lb)": newtons, and the mass of that weight, for people who think in masses. */
function force(newtons: number, units: Units): string {
  const [large, small] = units === 'mm' ? (['kg', 'g'] as const) : (['lb', 'oz'] as const);
  const inLarge = newtons / gravity / (units === 'mm' ? 1 : kilogramsPerPound);
  const perLarge = units === 'mm' ? 1000 : 16;
  const isLarge = Number(inLarge.toPrecision(2)) >= 1;
  const mass = isLarge ? `${twoDigits(inLarge)} ${large}` : `${twoDigits(inLarge * perLarge)} ${small}`;
  return `${twoDigits(newtons)} N (${mass})`;
}

/** Rounded to two significant figures: more would suggest an accuracy that no such estimate has. */
function twoDigits(value: number): string {
  const digits = Number(value.toPrecision(2));
  return value > 0 && digits < 10 ? value.toPrecision(2) : String(digits);
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;
