/** The schema in editors that take a spec for YAML: asked of yaml-language-server, by which most of them go. */

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Hover, MarkupContent } from 'vscode-languageserver-types';
import { samples } from '../language/marked.ts';

interface YamlService {
  configure(settings: object): void;
  doValidation(document: TextDocument, isKubernetes: boolean): Promise<{ readonly message: string }[]>;
  doHover(document: TextDocument, position: { line: number; character: number }): Promise<Hover | null>;
}

/** What its types ask for beyond this is for servers. */
const { getLanguageService } = createRequire(import.meta.url)('yaml-language-server') as {
  readonly getLanguageService: (parts: object) => YamlService;
};

const schema = readFileSync(join(import.meta.dirname, '../../../schemas/tag.schema.json'), 'utf8');

function service(): YamlService {
  const yaml = getLanguageService({
    schemaRequestService: () => Promise.resolve(schema),
    workspaceContext: { resolveRelativePath: (path: string) => path },
  });
  const schemas = [{ uri: 'file:///tag.schema.json', fileMatch: ['*.tag.yaml'] }];
  yaml.configure({ validate: true, hover: true, completion: true, schemas });
  return yaml;
}

/** A version is read once. */
let version = 0;
const document = (text: string): TextDocument => TextDocument.create('file:///a.tag.yaml', 'yaml', ++version, text);

describe('The schema, to an editor that takes a spec for YAML', () => {
  const yaml = service();

  for (const { title, text } of samples)
    it(`has nothing against ${title}`, async () => {
      assert.deepEqual(await yaml.doValidation(document(text), false), []);
    });

  it('finds keys and values that do not fit', async () => {
    const messagesAfter = async (from: string, to: string) => {
      const { text } = samples.find(({ title }) => title.startsWith('2-'))!;
      assert.ok(text.includes(from));
      return (await yaml.doValidation(document(text.replace(from, to)), false)).map(({ message }) => message);
    };
    assert.deepEqual(await messagesAfter('font:', 'fnot:'), ['Property fnot is not allowed.']);
    assert.equal((await messagesAfter('tagwright: 1', 'tagwright: 2')).length, 1);
    assert.equal((await messagesAfter('pieces:', 'piece:')).length, 2);
  });

  it('says what a key does', async () => {
    const hover = await yaml.doHover(document('tagwright: 1\nunits: mm\npieces:\n'), { line: 1, character: 2 });
    assert.match((hover!.contents as MarkupContent).value, /Unit of lengths written as bare numbers/);
  });
});
