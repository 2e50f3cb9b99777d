/** A load estimate in plain words, for hover and preview. */

import type { Measured } from '../spec/model.ts';
import type { LoadEstimate, LoadSection } from './load.ts';
import { cutEdge } from './resistance.ts';

export interface LoadDescription {
  readonly headline: string;
  /** How it comes about, most important first. */
  readonly lines: readonly string[];
  /** To be shown wherever the headline is: that it is an estimate, where there is one. `rule`: for where only a sentence fits. */
  readonly caution: string;
  readonly rule: string;
}

/** Standard gravity, m/s² (exact: 3rd General Conference on Weights and Measures, 1901). */
const gravity = 9.80665;

const rule = 'Try it on scrap, and never hang anything on it that must not fall.';
const cautions = {
  wood: `An estimate from published averages of clear wood. It does not account for this piece’s grain, glue, knots or charring. ${rule}`,
  other: `An estimate from published figures. It does not account for this piece’s cracks, scratches, glue or scorching. ${rule}`,
  measured: `An estimate from the one neck you broke. Another piece may be weaker. ${rule}`,
} as const;

type Bears = Extract<LoadEstimate, { kind: 'bears' }>;

export function describeLoad(estimate: LoadEstimate): LoadDescription {
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
        lines: [`Narrowest where it would break: ${place(estimate.weakest)}${crossSection(estimate)}.`],
        caution: rule,
        rule,
      };
    case 'bears':
      return {
        headline: `Bears a short pull of about ${force(estimate.shortPull)}${isMeasured(estimate.weakest) ? ', as measured' : ''} – weakest ${place(estimate.weakest)}`,
        lines: reasons(estimate),
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

function reasons(estimate: Bears): string[] {
  const { material, weakest, sections, brokenAlong } = estimate;
  return [
    lasting(estimate),
    ...(weakest.weaker
      ? [`Assumes that the grain runs ${weakest.weaker} the pull there, which is the weaker way.`]
      : []),
    basis(estimate),
    ...(brokenAlong ? [alongOnly(brokenAlong)] : []),
    ...(material?.assumed === undefined ? [] : [material.assumed]),
    ...sections.slice(1, 2).map((section) => `Next weakest ${place(section)}: ${force(section.bears!)}.`),
  ];
}

function lasting({ material, hanging }: Bears): string {
  if (hanging === undefined)
    return `There is no published figure for how much less ${material?.name ?? 'this material'} bears when left hanging for long.`;
  return material?.lasting?.is === 'limit'
    ? `Left hanging: about ${force(hanging)}; more would craze it.`
    : `Left hanging for ten years: about ${force(hanging)}.`;
}

/** What the figure rests on, and what has been taken off it. */
function basis({ material, thicknessMm, measured, weakest: { by } }: Bears): string {
  if (by!.basis === 'measured')
    return `Measured: ${broke(measured!)}. ${percent(1 - by!.share)} is taken off because the next piece may be weaker.`;
  const { name, kind } = material!;
  const edge = percent(1 - cutEdge[kind]);
  const allowed = kind === 'plastic' || kind === 'leather' ? '' : 'what 95 of 100 pieces reach, ';
  return `Calculated for ${name}, ${lengthText(thicknessMm!)} mm thick (${by!.basis.source}): ${allowed}less ${edge} for cut edges.`;
}

function alongOnly(measured: Measured): string {
  const told = broke(measured);
  return `${told.charAt(0).toUpperCase()}${told.slice(1)}: that is its strength along the grain. Break one across the grain to have the weaker way measured.`;
}

function broke({ breaksAt, neck }: Measured): string {
  return `a neck ${neck.toFixed(2)} mm wide broke at ${force(breaksAt)}`;
}

/** Where a section is and how wide, to follow "weakest". */
function place({ what, widthMm, totalMm, count }: LoadSection): string {
  const wide = `${widthMm.toFixed(2)} mm`;
  switch (what) {
    case 'wall':
      return `at the wall beside the opening, ${wide} wide`;
    case 'tear-out':
      return `where the tie would tear out, ${wide} from the edge`;
    case 'strap':
      return `at the strip ahead of the opening, ${wide} wide`;
    case 'attachment':
      return `where the ring is joined, ${totalMm.toFixed(2)} mm wide`;
    case 'neck':
      return `at the neck, ${wide} wide`;
    case 'strokes':
      return `across ${count} strokes, ${totalMm.toFixed(2)} mm together`;
  }
}

function crossSection({ weakest, thicknessMm }: Extract<LoadEstimate, { kind: 'unknown' }>): string {
  if (thicknessMm === undefined) return '';
  return ` (${rounded(weakest.totalMm * thicknessMm)} mm² in all)`;
}

/** "14 N (1.4 kg)": newtons, and the mass that weighs as much, for people who think in those. */
function force(newtons: number): string {
  const kilograms = newtons / gravity;
  const mass = Number(kilograms.toPrecision(2)) >= 1 ? `${rounded(kilograms)} kg` : `${rounded(kilograms * 1000)} g`;
  return `${rounded(newtons)} N (${mass})`;
}

/** To two significant figures: more would feign an accuracy that no such estimate has. */
function rounded(value: number): string {
  const digits = Number(value.toPrecision(2));
  return value > 0 && digits < 10 ? value.toPrecision(2) : String(digits);
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;
const lengthText = (mm: number): string => String(Number(mm.toFixed(2)));
