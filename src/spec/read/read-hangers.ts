/** Reads hangers, named and written in place. */

import { limit } from '../../core/figures.ts';
import type { YamlPath } from '../../core/issue.ts';
import type { Hanger, HangerPlace } from '../model/model.ts';
import type { Problems } from './problems.ts';
import type { Workshop } from './read-workshop.ts';
import type { Scope } from './scope.ts';
import {
  comfortableOpening,
  keyholeHeadMm,
  keyholeSlotMm,
  leastRingWallMm,
  slotEaseMm,
  slotOpeningMm,
} from '../model/tie.ts';
import type { HangerOrName, HangerSpec, RingSpec } from '../types.generated.ts';

/** Default inset of an opening, as a multiple of the material it needs round it (our own judgement). */
export const usualInset = 1.5;

/** The same where there is no room for that, or something is in its way: hardly more than it needs. */
const leastInset = 1.05;

export type ReadHanger = (ref: HangerOrName, path: YamlPath) => Hanger | undefined;

/** Reads named hangers once, so that their problems are reported once, even if nothing uses them. */
export function hangerReader(scope: Scope, workshop: Workshop): ReadHanger {
  const read = new Map<Scope, Map<string, Hanger | undefined>>();
  const readAll = (owner: Scope): void => {
    if (read.has(owner)) return;
    const named = Object.entries(owner.spec.hangers ?? {});
    read.set(owner, new Map(named.map(([name, spec]) => [name, readHanger(spec, ['hangers', name], owner, workshop)])));
    owner.uses.forEach(readAll);
  };
  readAll(scope);
  return (ref, path) => {
    if (typeof ref !== 'string') return readHanger(ref, path, scope, workshop);
    const owner = scope.require('hangers', ref, path);
    return owner && read.get(owner)?.get(ref);
  };
}

/** `undefined` for one that stands alone. */
function readRow(
  { count, spacing, at }: RingSpec,
  path: YamlPath,
  problems: Problems,
): Pick<Hanger, 'row'> | undefined {
  const apart = problems.length(spacing, [...path, 'spacing'], 'size');
  const say = (key: string, message: string) => {
    problems.error('bad-value', [...path, key], message, { range: problems.source.keyRange([...path, key]) });
  };
  if (count === undefined || count === 1) {
    if (spacing !== undefined) say('spacing', '“spacing” goes with “count”, which says how many there are in the row.');
    return undefined;
  }
  if (typeof at === 'string' && (at.includes('-') || at === 'center')) {
    say('at', 'A row goes along a side: use “top”, “bottom”, “left” or “right”.');
    return undefined;
  }
  return { row: { nth: 0, count, ...(apart === undefined ? {} : { spacing: apart }) } };
}

function readHanger(
  spec: HangerSpec,
  path: YamlPath,
  { shapes, problems }: Scope,
  { stock, tie }: Workshop,
): Hanger | undefined {
  const kind = (['ring', 'hole', 'slot', 'keyhole'] as const).find((key) => spec[key] !== undefined);
  if (!kind) return undefined;
  const here = [...path, kind];
  const written = spec[kind]!;
  const common: Exclude<typeof written, string | number> = typeof written === 'object' ? written : { at: written };
  const length = (key: string, sign: 'size' | 'distance' | 'signed', instead?: string) =>
    problems.length((common as Record<string, number | string | undefined>)[key], [...here, key], sign, instead);
  const on = common.on === undefined ? undefined : shapes.byName(common.on, [...here, 'on']);
  const row = readRow(common, here, problems);
  const place = readPlace(common.at, kind, [...here, 'at'], problems);
  const base = {
    path: problems.inSpec(here),
    ...(on ? { on: { shape: on } } : {}),
    ...row,
    // A row has a side: what hangs on two cords hangs by its top.
    at: row && place.kind === 'auto' ? topSide : place,
    nudge: problems.nudge(common.nudge, [...here, 'nudge']) ?? { x: 0, y: 0 },
  };
  const opening = length(kind === 'slot' || kind === 'keyhole' ? 'width' : 'diameter', 'size');
  const asked = length('inset', 'distance', '; a hanger outside the edge is a “ring”');
  const insets =
    asked === undefined
      ? { inset: usualInset * stock.hangerWeb, leastInset: leastInset * stock.hangerWeb }
      : { inset: asked };
  switch (kind) {
    case 'ring':
      return {
        ...base,
        kind,
        opening: opening ?? comfortableOpening(tie),
        wall: length('wall', 'size') ?? Math.max(leastRingWallMm, stock.hangerWeb),
        sink: length('sink', 'signed') ?? 0,
      };
    case 'hole':
      return {
        ...base,
        kind,
        opening: opening ?? comfortableOpening(tie),
        ...insets,
        ...(common.at === undefined || common.at === 'auto' ? { anySide: true } : {}),
      };
    case 'slot': {
      const across = opening ?? slotOpeningMm;
      const ribbon = tie?.kind === 'ribbon' ? tie.size : 10;
      const long = length('length', 'size') ?? ribbon + slotEaseMm;
      if (long < across) problems.error('bad-length', [...here, 'length'], 'A slot is at least as long as it is wide.');
      return { ...base, ...insets, kind, opening: across, length: long };
    }
    case 'keyhole': {
      const head = length('diameter', 'size') ?? keyholeHeadMm;
      const width = opening ?? Math.min(keyholeSlotMm, head / 2);
      const least = head + width / 2;
      const long = length('length', 'size') ?? least + head / 2;
      if (width >= head) {
        const message = 'The slot must be narrower than the round opening, or the head of the nail slips through.';
        problems.error('bad-length', [...here, 'width'], message);
      } else if (long < least) {
        const message = `A keyhole like this must be at least ${limit(least)} long, or the head of the nail comes out again.`;
        problems.error('bad-length', [...here, 'length'], message);
      }
      return { ...base, ...insets, kind, opening: width, head, length: long };
    }
  }
}

const topSide: HangerPlace = { kind: 'anchor', anchor: 'top' };

function readPlace(at: RingSpec['at'], kind: Hanger['kind'], path: YamlPath, problems: Problems): HangerPlace {
  if (at === undefined) return kind === 'ring' ? { kind: 'auto' } : topSide;
  if (at === 'auto') return { kind: 'auto' };
  if (at === 'center') {
    if (kind === 'ring') problems.error('bad-value', path, 'A ring stands at an edge: name a side, or “auto”.');
    return { kind: 'point', offset: { x: 0, y: 0 } };
  }
  if (typeof at === 'string') return { kind: 'anchor', anchor: at };
  if (typeof at === 'number') return { kind: 'degrees', degrees: at };
  return { kind: 'point', offset: problems.nudge(at, path) ?? { x: 0, y: 0 } };
}
