/** What files of the project import: statically, as types, by re-export and by `import()`. */

import { readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { parseSync, Visitor } from 'oxc-parser';

const root = join(import.meta.dirname, '..', '..');

/** Packages by name and files from the root with slashes (`src/tag/fit.ts`), in no particular order. `file` is from the root. */
export function importsOf(file: string): string[] {
  const { program } = parseSync(file, readFileSync(join(root, file), 'utf8'));
  const found: string[] = [];
  const add = ({ source }: { source: object | null }): void => {
    if (source && 'value' in source && typeof source.value === 'string') found.push(source.value);
  };
  new Visitor({
    ImportDeclaration: add,
    ExportNamedDeclaration: add,
    ExportAllDeclaration: add,
    ImportExpression: add,
    TSImportType: add,
  }).visit(program);
  return found.map((to) =>
    to.startsWith('.') ? relative(root, join(root, dirname(file), to)).replaceAll('\\', '/') : to,
  );
}
