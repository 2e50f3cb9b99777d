/** What lettering that stands on one line on all tags of a batch has room for, told without the words of the others. */

import type { YamlPath } from '../../core/issue.ts';
import { hasSmallLetters } from '../../spec/read/evenly.ts';
import type { TagModel } from '../../spec/model/model.ts';
import type { Evenly, Shape } from '../../spec/model/shape-model.ts';
import { evenReach, inkOf } from '../../tag/lettering/letter-band.ts';
import { everyShape } from '../../tag/load.ts';
import type { FontFace } from '../../text/font-face.ts';
import { singleLineFace } from '../../text/single-line-face.ts';

type Room = Exclude<Evenly, 'any words'>;

export interface RoomAt {
  /** Of the text, or of a line by its number among those that there are. */
  readonly path: YamlPath;
  readonly room: Room;
}

export function roomsIn(model: TagModel, faceOf: (shape: Shape) => FontFace | undefined): RoomAt[] {
  const shapes = [...everyShape(model)];
  const lines = new Set(shapes.flatMap(({ generator }) => (generator.kind === 'lines' ? generator.shapes : [])));
  return shapes.flatMap((shape) => {
    const { generator, path } = shape;
    if (lines.has(shape)) return [];
    const texts =
      generator.kind === 'lines'
        ? generator.shapes.map((line, at) => ({ text: line, path: [...path, 'lines', at] }))
        : [{ text: shape, path }];
    return texts.flatMap(({ text, path: at }): RoomAt[] => {
      const { generator: own } = text;
      if ((own.kind !== 'text' && own.kind !== 'strokes') || !own.evenly || own.evenly === 'any words') return [];
      const face = own.kind === 'strokes' ? singleLineFace : faceOf(text);
      return face ? [{ path: at, room: fewest(face, own.evenly) }] : [];
    });
  });
}

/** The letters that reach furthest and are widest say as much as all of them. */
function fewest(face: FontFace, { letters, longest }: Room): Room {
  const all = Array.from(letters, (letter) => ({ letter, ink: inkOf(face, letter) }));
  const most = (of: (ink: (typeof all)[0]['ink']) => number): string =>
    all.reduce((a, b) => (of(b.ink) > of(a.ink) ? b : a)).letter;
  if (all.length === 0) return { letters, longest };
  const reaching = [most(({ minY }) => -minY), most(({ maxY }) => maxY), most(({ minX, maxX }) => maxX - minX)];
  const small = reaching.some(hasSmallLetters) ? [] : all.filter(({ letter }) => hasSmallLetters(letter)).slice(0, 1);
  const kept = [...new Set([...reaching, ...small.map(({ letter }) => letter)])].sort().join('');
  const [known, again] = [letters, kept].map((each) => evenReach(face, { letters: each, longest }));
  // Letters may change with those beside them, such as joined signs.
  const isSame = (['deep', 'high', 'widest'] as const).every((key) => known![key] === again![key]);
  return { letters: isSame ? kept : letters, longest };
}
