/** What the YAML parser complains of, in words for someone who has never heard of flow maps and scalars. */

import type { YAMLError } from 'yaml';
import { clip } from './length.ts';

/** The parser quotes what it expected, which may be as long as the file. */
const longestMessage = 200;

export const sentences = {
  BLOCK_AS_IMPLICIT_KEY: 'A colon too many, or a line that is indented too far: one line holds one key and its value.',
  MULTILINE_IMPLICIT_KEY: 'This line is indented further than the one it belongs with.',
  TAB_AS_INDENT: 'Lines are indented by spaces here, not by tabs.',
  DUPLICATE_KEY: 'This key is there twice; keep one of them.',
  BAD_SCALAR_START: 'A value that begins with this sign must be put in quotes.',
  MULTIPLE_DOCS: 'Three dashes begin another file; a tag spec is one.',
  BAD_DQ_ESCAPE: 'A backslash in double quotes must be written twice; in single quotes once is enough.',
  BAD_ALIAS: 'A * stands for something named by & before, and there is nothing of that name.',
} as const satisfies Partial<Record<YAMLError['code'], string>>;

export function yamlMessage({ code, message }: YAMLError): string {
  if (code in sentences) return sentences[code as keyof typeof sentences];
  if (code === 'MISSING_CHAR' && /quote/.test(message)) return `The closing quote is missing: ${quoteOf(message)}.`;
  if (code === 'MISSING_CHAR' && /followed by map values/.test(message)) return 'A colon and a value are missing here.';
  if (code === 'BAD_INDENT' && /end with a ([}\]])/.test(message)) {
    return `A closing ${message.at(-1) ?? ''} is missing, or stands too far left.`;
  }
  if (code === 'UNEXPECTED_TOKEN') {
    const sign = /"([^"]+)"$/.exec(message)?.[1] ?? '';
    return `There is ${sign === '' ? 'a sign' : `a ${clip(sign)}`} here that opens, closes or belongs to nothing.`;
  }
  return sentence(clip(message, longestMessage));
}

function quoteOf(message: string): string {
  return message.includes("'") ? "'" : '"';
}

export function sentence(message: string): string {
  return /[.!?]$/.test(message) ? message : `${message}.`;
}
