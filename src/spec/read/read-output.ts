/** Reads how files are to be written. */

import type { LineStyle, Output } from '../model/workshop-model.ts';
import type { Problems } from './problems.ts';
import type { Scope } from './scope.ts';
import type { TagSpec } from '../types.generated.ts';

/** Default width of tabs, in mm (rule of thumb, no source). */
const tabWidthMm = 0.5;

/** Default width, in pixels. */
const pictureWidth = 1600;

export function readOutput({ spec: { output }, problems }: Scope): Output {
  const tabs = readTabs(output?.tabs, problems);
  const style = (key: 'engrave' | 'score' | 'cut_inner' | 'cut_outer'): LineStyle => {
    const { color, line_width, layer } = output?.[key] ?? {};
    const lineWidth = problems.length(line_width, ['output', key, 'line_width'], 'size');
    return {
      ...(color === undefined ? {} : { color: color.toUpperCase() }),
      ...(lineWidth === undefined ? {} : { lineWidth }),
      ...(layer === undefined ? {} : { layer }),
    };
  };
  return {
    compensate: output?.compensate ?? true,
    ...(output?.engrave_layers === 'each' ? { engraveEach: true } : {}),
    ...(tabs ? { tabs } : {}),
    pictureWidth: output?.picture_width ?? pictureWidth,
    styles: {
      engrave: style('engrave'),
      score: style('score'),
      'cut-inner': style('cut_inner'),
      'cut-outer': style('cut_outer'),
    },
  };
}

function readTabs(tabs: NonNullable<TagSpec['output']>['tabs'], problems: Problems): Output['tabs'] {
  if (tabs === undefined) return undefined;
  const { count, width } = typeof tabs === 'number' ? { count: tabs, width: undefined } : tabs;
  const across = problems.length(width, ['output', 'tabs', 'width'], 'size') ?? tabWidthMm;
  return count > 0 ? { count, width: across } : undefined;
}
