/** The YAML parser's errors in words for someone who has never heard of flow maps and scalars. */

import type { YAMLError } from 'yaml';
import { clip } from '../../core/length.ts';

export const sentences = {
  ALIAS_PROPS: 'A * stands alone: nothing goes before it.',
  BAD_COLLECTION_TYPE: 'A ! and a word do not fit what follows; leave them out.',
  BAD_DIRECTIVE: 'A line that starts with % does not belong here.',
  BAD_PROP_ORDER: 'A & or ! goes before the value it belongs to.',
  BLOCK_IN_FLOW: 'Between brackets, a list or group needs brackets of its own.',
  KEY_OVER_1024_CHARS: 'A key is too long; is a colon or a quote missing?',
  MULTIPLE_ANCHORS: 'A value can have only one name after &.',
  MULTIPLE_TAGS: 'A value can have only one word after !.',
  NON_STRING_KEY: 'A key must be a word.',
  TAG_RESOLVE_FAILED: 'A ! and a word have no meaning here; leave them out.',
  BLOCK_AS_IMPLICIT_KEY:
    'One colon too many, or a line that is indented too far: one line holds one key and its value.',
  MULTILINE_IMPLICIT_KEY: 'This line is indented further than the one it belongs with.',
  TAB_AS_INDENT: 'Lines are indented with spaces here, not with tabs.',
  DUPLICATE_KEY: 'This key appears twice; keep one of them.',
  BAD_SCALAR_START: 'A value that starts with this character needs quotes.',
  MULTIPLE_DOCS: 'Three dashes start a second document; a tag spec has only one.',
  BAD_DQ_ESCAPE: 'A backslash in double quotes must be written twice; in single quotes once is enough.',
  BAD_ALIAS: 'A * refers to something named with & earlier, and there is nothing of that name.',
} as const satisfies Partial<Record<YAMLError['code'], string>>;

export function yamlMessage({ code, message }: YAMLError): string {
  if (code in sentences) return sentences[code as keyof typeof sentences];
  if (code === 'MISSING_CHAR' && /quote/.test(message)) return `The closing quote is missing: ${quoteOf(message)}.`;
  if (code === 'MISSING_CHAR' && /followed by map values/.test(message)) return 'A colon and a value are missing here.';
  if (code === 'BAD_INDENT' && /end with a ([}\]])/.test(message)) {
    return `A closing ${message.at(-1) ?? ''} is missing, or too far left.`;
  }
  if (code === 'UNEXPECTED_TOKEN') {
    const sign = /"([^"]+)"$/.exec(message)?.[1] ?? '';
    return sign === ''
      ? 'There is a character here that does not belong.'
      : `There is a ${clip(sign)} here that does not belong.`;
  }
  return code === 'BAD_INDENT'
    ? 'This line is indented too little or too far.'
    : 'Something is missing here, or does not belong.';
}

function quoteOf(message: string): string {
  return message.includes("'") ? "'" : '"';
}
