/** The type of a check. One rule per file; `all.ts` lists them. */

import type { Finding } from '../core/issue.ts';
import type { Tag } from '../tag/tag.ts';

/** Judges a tag. Pure, and certain to end whatever the tag: it runs at every keystroke. */
export type Check = (tag: Tag) => Finding[];
