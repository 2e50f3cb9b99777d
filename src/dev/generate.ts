/**
 * Generates files so that every key of the language, and every table, has a single source. From the schemas of specs,
 * jobs, offcuts and approvals: TypeScript types and a precompiled validator for each, and the guide's language reference. From the
 * table of issue codes: the settings in `package.json`. Also the guide's tables, and the style sheet of materials.
 */

import Ajv from 'ajv';
import standaloneCode from 'ajv/dist/standalone/index.js';
import { build } from 'esbuild';
import { compile } from 'json-schema-to-typescript';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeGuide } from './guide-tables.ts';
import { lookStyles } from './look-styles.ts';
import { writeSeveritySettings } from './severity-settings.ts';

const root = join(import.meta.dirname, '..', '..');
export const schemaFile = join(root, 'schemas', 'tag.schema.json');

const languages = [
  { schema: 'tag.schema.json', to: 'src/spec/', name: 'TagSpec' },
  { schema: 'approval.schema.json', to: 'src/tag/approval/', name: 'ApprovalRecord' },
  { schema: 'job.schema.json', to: 'src/jobs/job-', name: 'JobSpec' },
  { schema: 'offcuts.schema.json', to: 'src/jobs/offcuts-', name: 'OffcutsSpec' },
] as const;

/** Keywords that editors read and validation ignores. */
const annotations = ['markdownDescription', 'enumDescriptions', 'markdownEnumDescriptions', 'defaultSnippets'];

export async function generate(): Promise<void> {
  for (const { schema, to, name } of languages) {
    const text = readFileSync(join(root, 'schemas', schema), 'utf8');
    // Both tools resolve references in place, so each gets its own copy.
    writeIfChanged(`${to}types.generated.ts`, await types(JSON.parse(text) as object, name, schema));
    writeIfChanged(`${to}validate.generated.mjs`, await validator(JSON.parse(text) as object));
    writeIfChanged(`${to}validate.generated.d.mts`, declaration);
  }
  writeIfChanged('webview/preview/style/looks.generated.css', lookStyles());
  writeSeveritySettings(root);
  writeGuide(root);
}

const declaration = `import type { ValidateFunction } from 'ajv';
declare const validate: ValidateFunction;
export default validate;
`;

function types(schema: object, name: string, file: string): Promise<string> {
  return compile(withoutReferenceNotes(schema) as object, name, {
    bannerComment: `/* Generated from schemas/${file}. */`,
    additionalProperties: false,
    unreachableDefinitions: true,
    format: false,
  });
}

/**
 * A description beside a reference is meant for the editor's hover; in the types it would create a new name for each
 * use.
 */
function withoutReferenceNotes(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(withoutReferenceNotes);
  if (typeof node !== 'object' || node === null) return node;
  if ('$ref' in node) return { $ref: node.$ref };
  return Object.fromEntries(Object.entries(node).map(([key, value]) => [key, withoutReferenceNotes(value)]));
}

async function validator(schema: object): Promise<string> {
  const ajv = new Ajv({
    allErrors: true,
    // Errors then include the schema that they come from, and with it the keys known there.
    verbose: true,
    strict: true,
    // “One of these keys is required” is expressed by subschemas, which do not repeat the keys.
    strictRequired: false,
    allowUnionTypes: true,
    code: { source: true, esm: true },
  });
  ajv.addVocabulary(annotations);
  const source = standaloneCode(ajv, ajv.compile(schema));
  // Ajv's output still requires its run-time helpers; bundling makes it self-contained for every loader.
  const bundled = await build({
    stdin: { contents: source, resolveDir: root },
    bundle: true,
    format: 'esm',
    platform: 'neutral',
    mainFields: ['main'],
    write: false,
  });
  return bundled.outputFiles[0]!.text;
}

/** Does not touch an unchanged file, so that watchers are not triggered for nothing. */
function writeIfChanged(file: string, text: string): void {
  const path = join(root, file);
  if (!existsSync(path) || readFileSync(path, 'utf8') !== text) writeFileSync(path, text);
}

if (process.argv[1] === import.meta.filename) await generate();
