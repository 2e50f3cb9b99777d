/** The work on a tag as table rows, step by step. */

import { estimateJob } from '../../toolpath/estimate.ts';
import { areaText, counted } from '../../core/units.ts';
import { minutes, waysIn } from '../../core/in-words.ts';
import type { Job } from '../job/job.ts';
import { operationNames, styleOf } from '../page/styles.ts';

export interface WorkRow {
  /** As text; empty if there is nothing to say. */
  readonly cells: readonly [what: string, layer: string, count: string, size: string, time: string];
  /** Colour of the step's lines in the files, #RRGGBB. */
  readonly color?: string;
  readonly isTotal: boolean;
}

export function workRows({ tag, plan }: Pick<Job, 'tag' | 'plan'>): WorkRow[] {
  const { units, machine } = tag;
  const all = estimateJob(tag, plan);
  const estimates = plan.steps.map((step) => estimateJob(tag, { steps: [step], bounds: plan.bounds }));
  // What is engraved has no way but an area.
  const [travel, ...ways] = waysIn(
    [all.travelLength, ...estimates.map(({ cutLength, scoreLength }) => cutLength + scoreLength)],
    units,
  );
  const rows = plan.steps.map(({ operation, paths, ...step }, nth): WorkRow => {
    const estimate = estimates[nth]!;
    const { color, layer } = styleOf(tag, operation, step.layer);
    const kind = operation === 'engrave' || operation === 'score' ? operation : 'cut';
    const passes = machine?.passes[kind] ?? 1;
    const time = 'seconds' in estimate.time ? estimate.time[kind] : undefined;
    const size = kind === 'engrave' ? areaText(estimate.engravedArea, units) : ways[nth]!;
    return {
      cells: [
        `${operationNames[operation]}${passes > 1 ? `, ${passes} passes` : ''}`,
        layer === operation ? color : layer,
        kind === 'engrave' ? '' : counted(paths.length, 'outline'),
        size,
        time === undefined ? '' : minutes(time),
      ],
      color,
      isTotal: false,
    };
  });
  const [travelTime, time] = 'seconds' in all.time ? [minutes(all.time.travel), minutes(all.time.seconds)] : ['', ''];
  return [
    ...rows,
    { cells: ['Travel between them', '', '', travel!, travelTime], isTotal: false },
    ...(time === '' ? [] : [{ cells: ['Total, about', '', '', '', time] as const, isTotal: true }]),
  ];
}
