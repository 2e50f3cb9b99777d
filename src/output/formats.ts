/** The file formats a tag can be written in, by their file extension. */

import type { Tag } from '../tag/tag.ts';
import { toSvg } from './svg.ts';

/** Each gives the whole file, or `undefined` where the tag has nothing to cut. */
export const formats = { svg: toSvg } as const satisfies Record<string, (tag: Tag) => string | undefined>;

export type Format = keyof typeof formats;

export function isFormat(name: string): name is Format {
  return Object.hasOwn(formats, name);
}
