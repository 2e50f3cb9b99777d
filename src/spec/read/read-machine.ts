/** Reads the machine, for the estimate of its time, from layers; the first layer that gives a value counts. */

import type { YamlPath } from '../../core/issue.ts';
import type { Machine } from '../model/workshop-model.ts';
import { parseRate } from './rates.ts';
import type { Problems } from './problems.ts';
import type { MachineSpec } from '../types.generated.ts';

/** Defaults that suit most small machines (rule of thumb, no source), in mm and seconds. */
const usual = { travel: 200, acceleration: 1000, cornerJump: 5, hatch: 0.1 } as const;

/** A `machine` of the spec, of its stock or of a used file, with the problems of the file it is in. */
export interface MachineLayer {
  readonly spec: MachineSpec;
  readonly path: YamlPath;
  readonly problems: Problems;
}

/** The machine; `undefined` without layers. Reads every layer, so that all problems are reported. */
export function readMachine(layers: readonly MachineLayer[], name?: string): Machine | undefined {
  if (layers.length === 0) return undefined;
  const read = layers.map(readLayer);
  const first = <K extends keyof LayerSpec>(key: K) => read.find((layer) => layer[key] !== undefined)?.[key];
  const [cut, score, engrave] = [first('cut'), first('score'), first('engrave')];
  const power = Object.assign({}, ...read.map((layer) => layer.power ?? {}).reverse()) as NonNullable<Machine['power']>;
  return {
    ...(name === undefined ? {} : { name }),
    ...(cut === undefined ? {} : { cut }),
    ...(score === undefined ? {} : { score }),
    ...(engrave === undefined ? {} : { engrave }),
    travel: first('travel') ?? usual.travel,
    acceleration: first('acceleration') ?? usual.acceleration,
    cornerJump: first('cornerJump') ?? usual.cornerJump,
    hatch: first('hatch') ?? usual.hatch,
    passes: Object.assign(
      { cut: 1, score: 1, engrave: 1 },
      ...read.map((layer) => layer.passes ?? {}).reverse(),
    ) as Machine['passes'],
    ...(Object.keys(power).length === 0 ? {} : { power }),
  };
}

interface LayerSpec {
  readonly cut?: number | undefined;
  readonly score?: number | undefined;
  readonly engrave?: number | undefined;
  readonly travel?: number | undefined;
  readonly acceleration?: number | undefined;
  readonly cornerJump?: number | undefined;
  readonly hatch?: number | undefined;
  readonly passes?: Partial<Machine['passes']> | undefined;
  readonly power?: Machine['power'] | undefined;
}

function readLayer({ spec, path, problems }: MachineLayer): LayerSpec {
  const rate = (key: keyof MachineSpec & ('cut' | 'score' | 'engrave' | 'travel' | 'acceleration' | 'corner_jump')) => {
    const written = spec[key];
    if (written === undefined) return undefined;
    const result = parseRate(written, key === 'acceleration' ? 'acceleration' : 'speed');
    if ('value' in result) return result.value;
    problems.error('bad-value', [...path, key], result.problem);
    return undefined;
  };
  return {
    cut: rate('cut'),
    score: rate('score'),
    engrave: rate('engrave'),
    travel: rate('travel'),
    acceleration: rate('acceleration'),
    cornerJump: rate('corner_jump'),
    hatch: problems.measured(spec.hatch, [...path, 'hatch'], 'hatch'),
    passes: spec.passes,
    power: spec.power && Object.fromEntries(Object.entries(spec.power).map(([key, value]) => [key, String(value)])),
  };
}
