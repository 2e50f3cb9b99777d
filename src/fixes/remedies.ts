/** What may help against an issue: one key of the spec, and the values to try for it, least change first. */

import type { Report } from '../engine.ts';
import type { Issue, YamlPath } from '../issue.ts';
import type { TagModel } from '../spec/model.ts';
import { comfortableOpening, slotEaseMm } from '../spec/tie.ts';

export interface Remedy {
  /** The map in which the key is set. */
  readonly path: YamlPath;
  readonly key: string;
  /** Lengths in mm, or words. */
  readonly values: readonly (number | string)[];
  title(value: string): string;
}

/** Growing both sides by half of what is missing is enough for one straight neck; a size asked for takes some of it back. */
const growShares = [0.5, 0.6, 0.75, 1, 1.4, 2];

/** Steps in mm by which parts that do not touch are brought together. */
const joiningMm = [0.15, 0.3, 0.5, 0.75, 1, 1.5];

export function remediesFor(issue: Issue, { model, tag }: Report): Remedy[] {
  if (!model || !tag) return [];
  const { path } = issue;
  const missing = tag.stock.minWeb - (issue.width ?? 0);
  switch (issue.code) {
    case 'weak-bridge':
    case 'thin-stroke': {
      const hanger = hangerAt(path, model);
      const shares = (...factors: number[]) => factors.map((factor) => factor * missing);
      if (!hanger) return growing(path, model, shares(...growShares));
      if (hanger.kind !== 'ring') {
        return [lengthen(path, 'inset', hanger.inset, shares(1, 1.2, 1.5), `Move the ${hanger.kind} inwards`)];
      }
      return [
        lengthen(path, 'sink', hanger.sink, shares(0.5, 1, 1.5, 2), 'Set the ring deeper'),
        lengthen(path, 'wall', hanger.wall, shares(1, 1.5, 2), 'Thicken the ring'),
      ];
    }
    case 'loose-part': {
      const piece = tag.pieces.find(({ id }) => id === issue.piece);
      const many: Remedy[] = piece?.glueTo
        ? [
            {
              path: piece.path,
              key: 'parts',
              values: ['many'],
              title: () => 'Separate parts are intended: parts: many',
            },
          ]
        : [];
      return [...many, ...growing(path, model, joiningMm), ...tightening(path, model)];
    }
    case 'hole-too-small': {
      const hanger = hangerAt(path, model);
      if (!hanger) return [];
      const slot = hanger.kind === 'slot' && tag.tie?.kind === 'ribbon';
      const value = slot ? tag.tie.size + slotEaseMm : comfortableOpening(tag.tie);
      const key = slot ? 'length' : 'opening';
      return [
        { path, key, values: [value], title: (text) => `Make the ${slot ? 'slot' : 'hole'} larger: ${key} ${text}` },
      ];
    }
    default:
      return [];
  }
}

function hangerAt(path: YamlPath, model: TagModel) {
  const key = path.join('/');
  return model.pieces.map(({ hanger }) => hanger).find((hanger) => hanger?.path.join('/') === key);
}

function growing(path: YamlPath, model: TagModel, steps: readonly number[]): Remedy[] {
  const shape = shapeAt(path, model);
  if (!shape) return [];
  return [lengthen(path, 'grow', shape.modifiers.grow ?? 0, steps, `Thicken “${shape.name ?? 'the shape'}”`)];
}

/** Letters that nearly touch are often better moved than thickened. */
function tightening(path: YamlPath, model: TagModel): Remedy[] {
  const shape = shapeAt(path, model);
  if (shape?.generator.kind !== 'text') return [];
  const before = shape.generator.letterSpacingMm;
  return [
    lengthen(
      path,
      'letter_spacing',
      before,
      joiningMm.map((step) => -step),
      'Move the letters together',
    ),
  ];
}

function shapeAt(path: YamlPath, model: TagModel) {
  const key = path.join('/');
  const inPlace = model.pieces.flatMap(({ body, cut }) => [...body, ...cut]).map(({ shape }) => shape);
  return [...model.shapes.values(), ...inPlace].find((shape) => shape.path.join('/') === key);
}

function lengthen(path: YamlPath, key: string, before: number, steps: readonly number[], words: string): Remedy {
  return { path, key, values: steps.map((step) => before + step), title: (text) => `${words}: ${key} ${text}` };
}
