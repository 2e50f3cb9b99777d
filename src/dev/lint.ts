/**
 * Types of everything, and lint of everything or of the files named. One program serves both: `tsc` and ESLint would each read
 * all files and work out their types.
 */

import { ESLint } from 'eslint';
import { join } from 'node:path';
import ts from 'typescript';

const root = join(import.meta.dirname, '..', '..');

function programOf(configFile: string): ts.Program {
  const file = ts.readJsonConfigFile(configFile, (path) => ts.sys.readFile(path));
  const { options, fileNames, errors } = ts.parseJsonSourceFileConfigFileContent(file, ts.sys, root);
  if (errors.length > 0) throw new Error(report(errors));
  // Rules walk upwards from a node.
  return ts.createProgram(fileNames, options, ts.createCompilerHost(options, true));
}

function report(diagnostics: readonly ts.Diagnostic[]): string {
  const isColoured = process.stdout.isTTY || process.env['FORCE_COLOR'] !== undefined;
  const format = isColoured ? ts.formatDiagnosticsWithColorAndContext : ts.formatDiagnostics;
  return format(diagnostics, {
    getCanonicalFileName: (name) => name,
    getCurrentDirectory: () => root,
    getNewLine: () => '\n',
  });
}

const program = programOf(join(root, 'tsconfig.json'));
const wrong = ts.getPreEmitDiagnostics(program);
if (wrong.length > 0) console.log(report(wrong));
console.log(`Types: ${wrong.length} errors in ${program.getRootFileNames().length} files`);

const eslint = new ESLint({
  cwd: root,
  warnIgnored: false,
  overrideConfig: [
    { files: ['**/*.ts'], languageOptions: { parserOptions: { projectService: false, programs: [program] } } },
  ],
});
const named = process.argv.slice(2);
const results = await eslint.lintFiles(named.length > 0 ? named : ['.']);
const formatter = await eslint.loadFormatter('stylish');
console.log(await formatter.format(results));
const errors = results.reduce((sum, { errorCount }) => sum + errorCount, 0);
console.log(`Lint: ${errors} errors in ${results.length} files`);
process.exitCode = wrong.length > 0 || errors > 0 ? 1 : 0;
