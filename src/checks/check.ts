/** What a check is. One rule a file; `all.ts` lists them. */

import type { Finding } from '../core/issue.ts';
import type { Tag } from '../tag/tag.ts';

/** Judges a tag. Pure, and bound to end whatever the tag: it is run at every keystroke. */
export type Check = (tag: Tag) => Finding[];
