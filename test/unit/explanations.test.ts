import assert from 'node:assert/strict';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { severitiesOf } from '../../src/cli/usage.ts';
import { severitySettings } from '../../src/dev/severity-settings.ts';
import { checkBatch } from '../../src/engine/batch.ts';
import type { Report } from '../../src/engine/engine.ts';
import { findFixes } from '../../src/fixes/find-fixes.ts';
import { issueCodes, issueKinds } from '../../src/core/issue-kinds.ts';
import type { IssueCode } from '../../src/core/issue-kinds.ts';
import { canBeSilenced } from '../../src/engine/severity.ts';
import { longestSpec } from '../../src/spec/yaml/source.ts';
import { bundledFontBytes } from '../fonts/font-files.ts';
import { withFsType } from '../fonts/fs-type.ts';
import { newEngine, placeOf, report } from './support/engine.ts';
import { approvalText, approvedTag } from '../../src/tag/approval/approval-text.ts';

const folder = join(import.meta.dirname, '..', '..', 'src', 'guide', 'problems');

/** What the page of `not-as-approved` has fixed, as it was approved. */
async function approvedCrate(): Promise<string> {
  const spec = `tagwright: 1
shapes: {plate: {rectangle: [60 mm, 30 mm], radius: 4 mm}}
pieces: {crate: {body: [plate], hanger: {hole: {at: top, diameter: 4 mm}}}}
`;
  const { tag } = await report(spec);
  return approvalText({ on: '2026-03-14', note: '', tags: [approvedTag(tag!, undefined)] });
}

/** Files that the examples name. */
const engine = newEngine({
  'crate.approved.json': await approvedCrate(),
  'house.yaml': 'tagwright: 1\nshapes: {plate: {ellipse: 40 mm}}\n',
  'leaf.svg':
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 40"><ellipse cx="10" cy="20" rx="10" ry="20"/></svg>',
  'veined-leaf.svg':
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 40"><ellipse cx="10" cy="20" rx="10" ry="20"/><path d="M10 4V36M10 20L16 14" fill="none" stroke="black"/></svg>',
  'fonts/page.ttf': '<!DOCTYPE html><title>A font for you</title>',
  'fonts/shop.ttf': withFsType(await bundledFontBytes('Pacifico', 400), 0b10),
  'fonts/mine.ttf': new Uint8Array(await bundledFontBytes('Pacifico', 400)),
});
const options = { locate: (relative: string) => `/specs/${relative}` };

/** With all tags of a batch. */
async function checked(text: string): Promise<Report> {
  return (await checkBatch(engine, await engine.compute(text, options), options)).report;
}

interface Page {
  readonly code: IssueCode;
  readonly text: string;
  /** Its sentences, with the line ends of the source taken for spaces. */
  readonly prose: string;
}

interface Example {
  readonly problem: string;
  readonly fixed: string;
}

const pages = issueCodes.map((code): Page => {
  const file = join(folder, `${code}.md`);
  const text = existsSync(file) ? readFileSync(file, 'utf8') : '';
  return { code, text, prose: text.replaceAll(/\s+/g, ' ') };
});

function examplesOf({ text }: Page, kind: keyof Example): string[] {
  return [...text.matchAll(/^```yaml (\w+)\n([^]*?)^```$/gm)]
    .filter((match) => match[1] === kind)
    .map((match) => match[2]!);
}

/** A spec that is too big can be made, but not shown. */
function exampleOf(page: Page): Example {
  const [problem, fixed] = [examplesOf(page, 'problem')[0], examplesOf(page, 'fixed')[0]];
  if (page.code !== 'file-too-large') return { problem: problem!, fixed: fixed! };
  const spec = 'tagwright: 1\nshapes:\n  disc: {ellipse: 40 mm}\npieces:\n  label: {body: [disc]}\n';
  return { problem: `${spec}${'#'.repeat(longestSpec)}`, fixed: spec };
}

/** The one line of a problem that says what is wrong with it, and where its comment begins. */
const marked = / {3}#.*$/m;

function markedLine(problem: string): number {
  const before = problem.slice(0, marked.exec(problem)!.index);
  return before.split('\n').length;
}

describe('The explanations', () => {
  it('are one for each code, and no more', () => {
    assert.deepEqual(readdirSync(folder).sort(), issueCodes.map((code) => `${code}.md`).sort());
  });

  for (const page of pages) {
    const { code, text, prose } = page;

    describe(`of ${code}`, () => {
      it('begin with the code, how serious it is and what it means', () => {
        assert.ok(text.startsWith(`# ${code}\n\n`), text.slice(0, 40));
        const { severity, summary } = issueKinds[code];
        assert.ok(prose.includes(` **${severity.charAt(0).toUpperCase()}${severity.slice(1)}.** ${summary} `));
      });

      it('say how to silence it, or that it cannot be', () => {
        const silencing = `To change its severity everywhere: \`tagwright.severity.${code}\` in the settings, or \`--severity ${code}=LEVEL\` on the command line; LEVEL is \`error\`, \`warning\`, \`info\` or \`off\`.`;
        const why =
          issueKinds[code].about === 'text'
            ? 'no tag can be made until it is fixed'
            : 'the tag would be cut without it';
        const cannot = `This cannot be turned off: ${why}.`;
        assert.equal(prose.includes(silencing), canBeSilenced(code));
        assert.equal(prose.includes(cannot), !canBeSilenced(code));
        const levels = ['error', 'warning', 'info', 'off'];
        const weighing = severitySettings()[`tagwright.severity.${code}`]!.enum;
        assert.equal(
          levels.every((level) => weighing.includes(level)),
          canBeSilenced(code),
        );
        for (const level of levels) assert.deepEqual(severitiesOf([`${code}=${level}`]), { [code]: level });
      });

      it('have links that lead somewhere', () => {
        for (const [, target = ''] of text.matchAll(/\]\(([^)]+)\)/g)) {
          const [file = '', anchor] = target.split('#');
          const path = join(folder, file);
          assert.ok(existsSync(path), target);
          if (anchor === undefined) continue;
          const headings = [...readFileSync(path, 'utf8').matchAll(/^#+ (.*)$/gm)].map(([, heading]) => heading!);
          assert.ok(headings.map((each) => each.toLowerCase().replaceAll(' ', '-')).includes(anchor), target);
        }
      });

      it('have an example that has the problem, where it is marked', async () => {
        const { problem } = exampleOf(page);
        assert.equal(examplesOf(page, 'problem').length, code === 'file-too-large' ? 0 : 1);
        const made = await checked(problem);
        const lines = made.issues.filter((issue) => issue.code === code).map((issue) => placeOf(made, issue).line);
        assert.ok(lines.length > 0, made.issues.map(({ message }) => message).join('\n'));
        const place = code === 'file-too-large' ? 1 : markedLine(problem);
        assert.deepEqual([...new Set(lines)], [place]);
      });

      it('have a fixed example that nothing is said of', async () => {
        assert.equal(examplesOf(page, 'fixed').length, code === 'file-too-large' ? 0 : 1);
        const made = await checked(exampleOf(page).fixed);
        assert.deepEqual(
          made.issues.map(({ message }) => message),
          [],
        );
        assert.ok(made.tag);
      });

      it('promise only fixes that are offered for the example', async () => {
        const promised = [...prose.matchAll(/(?<=[-,] )\*([A-Z][^*]+)\*/g)].map(([, words]) => words!);
        if (promised.length === 0) return;
        const made = await checked(exampleOf(page).problem);
        const titles: string[] = [];
        for (const issue of made.issues.filter((each) => each.code === code))
          titles.push(...(await findFixes(engine, made, issue, options)).map(({ title }) => title));
        for (const words of promised) {
          const [start = '', end = ''] = words.split('…');
          const isOffered = titles.some((title) => title.startsWith(start) && title.includes(end));
          assert.ok(isOffered, `“${words}” is not among\n${titles.join('\n')}`);
        }
      });

      it('accept it by the comment they give', async () => {
        const comments = [...prose.matchAll(/`(# accept [a-z][^`]*)`/g)].map(([, comment]) => comment!);
        assert.equal(comments.length, canBeSilenced(code) && code !== 'odd-comment' ? 1 : 0);
        for (const comment of comments) {
          const accepted = await checked(exampleOf(page).problem.replace(marked, `   ${comment}`));
          assert.deepEqual(
            accepted.issues.filter((issue) => [code, 'odd-comment'].includes(issue.code)).map(({ message }) => message),
            [],
          );
          assert.ok(accepted.accepted.some((issue) => issue.code === code));
        }
      });
    });
  }

  it('of what may break say that a width is no promise', () => {
    const caution = "Your machine's manual and your local codes come first.";
    for (const code of ['weak-bridge', 'thin-stroke', 'hanger-weak', 'hole-near-edge'] as const)
      assert.ok(pages.find((page) => page.code === code)!.prose.includes(caution), code);
  });
});
