/** The machine, for the estimate of its time. */

import type { Machine } from './model.ts';
import { parseRate } from './rates.ts';
import type { Scope } from './scope.ts';
import type { MachineSpec } from './types.generated.ts';

/** What most small machines do, where the spec does not say (rule of thumb, no source); in mm and seconds. */
const usual = { travel: 200, acceleration: 1000, cornerJump: 5, hatch: 0.1 } as const;

export function readMachine({ spec: { machine }, problems }: Scope): Machine | undefined {
  if (!machine) return undefined;
  const rate = (key: keyof MachineSpec & ('cut' | 'score' | 'engrave' | 'travel' | 'acceleration' | 'corner_jump')) => {
    const written = machine[key];
    if (written === undefined) return undefined;
    const result = parseRate(written, key === 'acceleration' ? 'acceleration' : 'speed');
    if ('value' in result) return result.value;
    problems.error('bad-value', ['machine', key], result.problem);
    return undefined;
  };
  const [cut, score, engrave] = [rate('cut'), rate('score'), rate('engrave')];
  return {
    ...(cut === undefined ? {} : { cut }),
    ...(score === undefined ? {} : { score }),
    ...(engrave === undefined ? {} : { engrave }),
    travel: rate('travel') ?? usual.travel,
    acceleration: rate('acceleration') ?? usual.acceleration,
    cornerJump: rate('corner_jump') ?? usual.cornerJump,
    hatch: problems.length(machine.hatch, ['machine', 'hatch'], 'size') ?? usual.hatch,
    passes: { cut: 1, score: 1, engrave: 1, ...machine.passes },
  };
}
