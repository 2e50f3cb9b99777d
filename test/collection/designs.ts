/** The designs of the collection: one spec a file, what is expected of it in its comments (see README.md beside this file). */

import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { checkBatch } from '../../src/engine/batch.ts';
import { Engine } from '../../src/engine/engine.ts';
import type { ComputeOptions, Report } from '../../src/engine/engine.ts';
import type { Severity } from '../../src/core/issue-kinds.ts';
import { severityRank } from '../../src/core/issue.ts';
import { nodeInstalledFonts } from '../../src/text/node-font-files.ts';
import { packagedFontFiles } from '../fonts/font-files.ts';

export type Kind = 'sound' | 'spoiled';

/** Something that must be said of a spoiled design. */
export interface Expectation {
  /** Any of these, with slashes between them. */
  readonly code: string;
  /** At least so grave, where the comment says. */
  readonly severity?: Severity;
  /** Any of these lines will do, counting from 1. */
  readonly lines: readonly number[];
}

export interface Design {
  readonly kind: Kind;
  /** The file's name without its ending. */
  readonly name: string;
  readonly path: string;
  readonly text: string;
  readonly expectations: readonly Expectation[];
  /** Why it does not come out as expected yet. */
  readonly open?: string;
  /** What its fixes do yet that they should not. */
  readonly openFixes?: string;
}

const ending = '.tag.yaml';

export function designsOf(kind: Kind): Design[] {
  const folder = join(import.meta.dirname, kind);
  return readdirSync(folder)
    .filter((file) => file.endsWith(ending))
    .sort()
    .map((file) => {
      const path = join(folder, file);
      const text = readFileSync(path, 'utf8');
      const open = /^# open: (.+)$/m.exec(text)?.[1];
      const openFixes = /^# open fixes: (.+)$/m.exec(text)?.[1];
      return {
        ...{ kind, name: file.slice(0, -ending.length), path, text, expectations: expectationsOf(text) },
        ...(open ? { open } : {}),
        ...(openFixes ? { openFixes } : {}),
      };
    });
}

/** `# expect: CODE`, `# expect: error CODE` or `# expect: CODE/OTHER-CODE` at the end of a line; `# or: CODE` where another line would do as well. */
export function expectationsOf(text: string): Expectation[] {
  const found: { code: string; severity?: Severity; lines: number[] }[] = [];
  const others: { code: string; line: number }[] = [];
  for (const [index, content] of text.split(/\r?\n/).entries()) {
    const comment = /#\s*(expect|or):\s*([a-z, /-]+?)\s*$/.exec(content);
    for (const said of comment?.[2]?.split(',') ?? []) {
      const words = said.trim().split(' ');
      const code = words.at(-1)!;
      const severity = words.length > 1 ? words[0] : undefined;
      if (comment?.[1] === 'or') others.push({ code, line: index + 1 });
      else found.push({ code, lines: [index + 1], ...(isSeverity(severity) ? { severity } : {}) });
    }
  }
  for (const { code, line } of others) {
    const first = found.find((each) => each.code === code);
    if (!first) throw new Error(`Line ${line} has an “or” of ${code}, which is not expected anywhere.`);
    first.lines.push(line);
  }
  return found;
}

function isSeverity(word: string | undefined): word is Severity {
  return word !== undefined && Object.hasOwn(severityRank, word);
}

/** Families that a design may name as if they were installed, beside the bundled ones: package and weights. */
const installed: Readonly<Record<string, readonly string[]>> = {
  caveat: ['400-normal', '700-normal'],
  'dancing-script': ['400-normal', '700-normal'],
  fredoka: ['400-normal', '600-normal', '700-normal'],
  'josefin-sans': ['300-normal', '400-normal', '700-normal'],
  'kaushan-script': ['400-normal'],
  lobster: ['400-normal'],
  parisienne: ['400-normal'],
  'playfair-display': ['400-normal', '400-italic', '700-normal', '900-normal'],
  roboto: ['300-normal', '400-normal', '700-normal', '900-normal'],
  'source-sans-3': ['300-normal', '400-normal', '700-normal'],
  'source-serif-4': ['400-normal', '400-italic', '700-normal'],
  'zilla-slab': ['400-normal', '700-normal'],
};

const packages = join(import.meta.dirname, '..', '..', 'node_modules', '@fontsource');

export function newCollectionEngine(): Engine {
  return new Engine({
    ...packagedFontFiles(),
    read: (path, stretch) => nodeInstalledFonts.read(path, stretch),
    systemFonts: () =>
      Promise.resolve(
        Object.entries(installed).flatMap(([slug, faces]) =>
          faces.map((face) => join(packages, slug, 'files', `${slug}-latin-${face}.woff`)),
        ),
      ),
  });
}

/** Files are looked for beside the design. */
export function optionsOf({ path }: Design): ComputeOptions {
  return { locate: (relative) => join(dirname(path), relative) };
}

/** What is said of a design, of any tag of its batch. */
export async function reportOn(engine: Engine, design: Design, text = design.text): Promise<Report> {
  const options = optionsOf(design);
  return (await checkBatch(engine, await engine.compute(text, options), options)).report;
}

export interface ReportedProblem {
  readonly code: string;
  readonly severity: Severity;
  readonly line: number;
  readonly message: string;
}

export function reportedIn({ issues, source }: Report): ReportedProblem[] {
  return issues.map(({ code, severity, message, range }) => {
    return { code, severity, message, line: source.position(range.start).line };
  });
}

export function meets({ code, severity, lines }: Expectation, reported: readonly ReportedProblem[]): boolean {
  return reported.some(
    (each) =>
      code.split('/').includes(each.code) &&
      lines.includes(each.line) &&
      (severity === undefined || severityRank[each.severity] >= severityRank[severity]),
  );
}

export function listed(reported: readonly ReportedProblem[]): string {
  return reported.map(({ line, severity, code, message }) => `  ${line}: ${severity} ${code}: ${message}`).join('\n');
}
