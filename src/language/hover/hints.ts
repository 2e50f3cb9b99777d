/** Inlay hints: computed sizes, shown after the values they follow from. */

import type { Report } from '../../engine/engine.ts';
import type { YamlPath } from '../../core/issue.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import type { PlacedHanger, Tag } from '../../tag/tag.ts';
import { shortLength, sizeText } from '../../core/units.ts';
import { sizeOfRegion } from './sizes.ts';
import { isGroup, valueAt } from '../../core/values.ts';

export interface SizeHint {
  /** The hint is shown after this offset. */
  readonly offset: number;
  readonly text: string;
  /** Explanation, as a sentence. */
  readonly tip: string;
}

/** `source`: the current text, which may be newer than the report. */
export function hintsOf({ tag, model }: Report, source: SpecSource): SizeHint[] {
  if (!tag || !model) return [];
  const shapes = [...model.shapes.values()].flatMap((shape) => shapeHint(shape, tag, source) ?? []);
  const growths = [...(tag.growths ?? [])].flatMap(([{ path }, grow]) => {
    const text = `= ${shortLength(grow, tag.units)}`;
    return behind([...path, 'grow'], text, 'The growth that min_web needs', source) ?? [];
  });
  const hangers = tag.pieces.flatMap((piece) =>
    piece.hangers.flatMap((hanger) => hangerHint(hanger, tag, source) ?? []),
  );
  return [...shapes, ...growths, ...hangers].sort((a, b) => a.offset - b.offset);
}

/** The side that follows from the other, or both if neither is given. */
function shapeHint(shape: Shape, tag: Tag, source: SpecSource): SizeHint | undefined {
  const { width, height } = shape.modifiers;
  const size = sizeOfRegion(tag.made.get(shape)?.region ?? []);
  if (!size || (width !== undefined && height !== undefined)) return undefined;
  if (width !== undefined)
    return behind(
      [...shape.path, 'width'],
      `× ${shortLength(roundToTenth(size.height), tag.units)}`,
      'The height that follows from the width',
      source,
    );
  if (height !== undefined)
    return behind(
      [...shape.path, 'height'],
      `× ${shortLength(roundToTenth(size.width), tag.units)}`,
      'The width that follows from the height',
      source,
    );
  const key = keyBehind(shape);
  return key === undefined
    ? undefined
    : behind([...shape.path, key], `= ${sizeText(size.width, size.height, tag.units)}`, 'The finished size', source);
}

/** The key to show the size at; `undefined` if its value states the size already. */
function keyBehind({ generator, modifiers }: Shape): string | undefined {
  if (modifiers.fit) return 'fit';
  switch (generator.kind) {
    case 'text':
      return 'size';
    case 'around':
      return 'by';
    case 'lines':
      return generator.size?.of === 'capitals' ? 'cap_height' : 'x_height';
    case 'stack':
    case 'path':
    case 'drawing':
    case 'union':
    case 'difference':
    case 'intersection':
    case 'from':
    case 'border':
    case 'code':
    case 'stick':
    case 'repeat':
      return generator.kind;
    default:
      return undefined;
  }
}

function hangerHint(
  { path, openingSize, openingLength }: PlacedHanger,
  tag: Tag,
  source: SpecSource,
): SizeHint | undefined {
  const written = valueAt(source.value, path);
  if (isGroup(written) && ('diameter' in written || 'width' in written)) return undefined;
  const opening =
    openingLength > openingSize + 0.01
      ? sizeText(openingLength, openingSize, tag.units)
      : shortLength(roundToTenth(openingSize), tag.units);
  return behind(path, `opening ${opening}`, 'The opening, as the tie needs it', source);
}

/** To a tenth of a millimetre, as for all sizes. */
const roundToTenth = (mm: number): number => Math.round(mm * 10) / 10;

function behind(path: YamlPath, text: string, tip: string, source: SpecSource): SizeHint | undefined {
  // A value from a used file has its hint in that file.
  if (valueAt(source.value, path) === undefined) return undefined;
  return { offset: source.range(path).end, text, tip };
}
