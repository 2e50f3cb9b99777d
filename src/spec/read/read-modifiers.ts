/** Reads modifiers: what is done to a shape once it is made. */

import type { YamlPath } from '../../core/issue.ts';
import type { Side } from '../../geometry/types.ts';
import type { Fit, HoldWidth, Modifiers, ShapeNames } from '../model/shape-model.ts';
import { idleCorners } from '../slips/idle-corners.ts';
import type { Problems } from './problems.ts';
import { readPlace, readTarget } from './read-place.ts';
import type { FitSpec, ShapeSpec } from '../types.generated.ts';

export function readModifiers(spec: ShapeSpec, path: YamlPath, problems: Problems, shapes: ShapeNames): Modifiers {
  const length = (key: 'tidy' | 'grow' | 'width' | 'height', sign: 'size' | 'distance' | 'signed') => {
    const written = spec[key];
    if (written === 'auto') return { growAuto: true as const };
    const value = problems.length(written, [...path, key], sign);
    return value === undefined ? {} : { [key]: value };
  };
  const fit = readFit(spec, [...path, 'fit'], problems, shapes);
  const place = readPlace(spec.place, [...path, 'place'], problems, shapes, fit);
  const nudge = problems.nudge(spec.nudge, [...path, 'nudge']);
  const straps = readStraps(spec.straps, [...path, 'straps'], problems);
  const bridges = readBridges(spec.bridges, [...path, 'bridges'], problems);
  if (fit && (spec.width !== undefined || spec.height !== undefined)) {
    problems.error('bad-value', [...path, 'fit'], '“fit” sets the size itself; leave out width and height.', {
      range: problems.source.keyRange([...path, 'fit']),
    });
  }
  const idle = idleCorners(spec);
  if (idle !== undefined)
    problems.error('bad-value', [...path, 'corners'], idle, { range: problems.source.keyRange([...path, 'corners']) });
  return {
    ...length('tidy', 'distance'),
    ...length('grow', 'signed'),
    corners: spec.corners ?? 'round',
    ...length('width', 'size'),
    ...length('height', 'size'),
    ...(fit ? { fit } : {}),
    ...(straps ? { straps } : {}),
    ...(bridges ? { bridges } : {}),
    ...(spec.rotate === undefined ? {} : { rotate: spec.rotate }),
    ...(spec.mirror === undefined ? {} : { mirror: spec.mirror }),
    ...(place ? { place } : {}),
    ...(nudge ? { nudge } : {}),
  };
}

function readHold(value: number | string | undefined, path: YamlPath, problems: Problems): HoldWidth | undefined {
  return value === 'auto' ? value : problems.length(value, path, 'size');
}

function readStraps(spec: ShapeSpec['straps'], path: YamlPath, problems: Problems): Modifiers['straps'] {
  const { at, count, width: written } = typeof spec === 'object' ? spec : { width: spec };
  const width = readHold(written, typeof spec === 'object' ? [...path, 'width'] : path, problems);
  if (at !== undefined && count !== undefined) {
    const message = '“count” spreads the straps round each part, “at” names their sides; leave out one of the two.';
    problems.error('bad-value', [...path, 'count'], message, { range: problems.source.keyRange([...path, 'count']) });
  }
  if (width === undefined) return undefined;
  const sides = at?.split('-') as Side[] | undefined;
  return { width, ...(sides ? { sides } : {}), ...(count === undefined ? {} : { count }) };
}

/** What is as large as it can be touches what it is in, which looks like a mistake (our own judgement). */
const usualMarginMm = 2;

/** For a margin that should let a shape reach over the edge. */
const beyondIt = '; to reach beyond it, fit it into a larger shape, one that is “around” it';

/** A fitted shape keeps the same distance from everything as from the edge, unless the spec says otherwise. */
function readFit(spec: ShapeSpec, path: YamlPath, problems: Problems, shapes: ShapeNames): Fit | undefined {
  if (spec.fit === undefined) return undefined;
  const written: FitSpec = typeof spec.fit === 'string' ? { in: spec.fit } : spec.fit;
  const target =
    typeof spec.fit === 'string'
      ? shapes.placed(spec.fit, path)
      : readTarget(written.in, written.part, path, 'in', problems, shapes);
  const { margin, clear, at_most: most, same_size: sameSize = false } = written;
  const edge = problems.length(margin, [...path, 'margin'], 'distance', beyondIt) ?? usualMarginMm;
  const atMost = (key: 'x_height' | 'cap_height' | 'width') => {
    const at = [...path, 'at_most', key];
    if (most?.[key] === undefined) return undefined;
    if (key !== 'width' && spec.text === undefined && spec.lines === undefined) {
      problems.error('bad-value', at, `“${key}” goes with text; give “width”.`, {
        range: problems.source.keyRange(at),
      });
      return undefined;
    }
    return problems.length(most[key], at, 'size');
  };
  const [small, capitals, width] = [atMost('x_height'), atMost('cap_height'), atMost('width')];
  return (
    target && {
      ...target,
      margin: edge,
      sameSize,
      clear: problems.length(clear, [...path, 'clear'], 'distance') ?? edge,
      ...(most
        ? {
            atMost: {
              ...(small === undefined ? {} : { 'small letters': small }),
              ...(capitals === undefined ? {} : { capitals }),
              ...(width === undefined ? {} : { width }),
            },
          }
        : {}),
    }
  );
}

function readBridges(spec: ShapeSpec['bridges'], path: YamlPath, problems: Problems): Modifiers['bridges'] {
  if (spec === undefined) return undefined;
  if (typeof spec !== 'object') {
    const width = readHold(spec, path, problems);
    return width === undefined ? undefined : { width, sides: ['top', 'bottom'] };
  }
  const width = problems.length(spec.width, [...path, 'width'], 'size');
  return width === undefined ? undefined : { width, sides: (spec.at ?? 'top-bottom').split('-') as Side[] };
}
