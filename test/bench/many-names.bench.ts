/**
 * Hundreds of names through the command line: how long `check`, `sheets`, `export` and `job` take, and how much memory they hold at most;
 * of a job also when its first whole layout is there.
 * `node --import tsx test/bench/many-names.bench.ts`; `--rows=2000`, `--what=check,export` and `--of=script,glued` choose. Beside the
 * clock's time that of the processors, which other work on the machine disturbs less. For Linux, and after `npm run build`.
 */

import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { manyNames } from './many-names.ts';

const cli = join(import.meta.dirname, '..', '..', 'dist', 'cli.mjs');

const head = `tagwright: 1
title: Seed label, {name}
stocks: {ply3: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}}
stock: ply3
tie: {twine: 2 mm}
sheet: {size: [600 mm, 400 mm], margin: 5 mm, gap: 2 mm}
batch: names.csv
`;

/** Cut names with a ring in a script and in block letters, an engraved label with a hole, and letters glued on a backing. */
const specs: Readonly<Record<string, string>> = {
  script: `${head}shapes:
  name: {text: "{name}", font: Pacifico, x_height: 9 mm, overlap: 0.6 mm, grow: 0.5 mm}
pieces:
  name: {body: [name], hanger: {ring: {at: left, diameter: 4 mm}}}
`,
  block: `${head}shapes:
  name: {text: "{name}", font: Alfa Slab One, x_height: 9 mm, overlap: 0.6 mm, grow: 0.5 mm}
pieces:
  name: {body: [name], hanger: {ring: {at: auto, diameter: 4 mm}}}
`,
  glued: `${head}shapes:
  word: {text: "{name}", font: Nunito, weight: 800, x_height: 9 mm}
  backing: {around: word, by: 7 mm, corners: round}
pieces:
  back: {title: Backing, body: [backing], score: [{from: word, grow: -0.5 mm}], hanger: {ring: {on: backing, at: top}}}
  letters: {title: Letters, body: [word], parts: many, glue_to: back}
`,
  label: `${head}shapes:
  plate: {label: {size: [86 mm, 34 mm], clip: 10 mm}}
  words:
    lines:
      - {text: "{name}", font: Pacifico, share: 2.3}
      - {text: "sown in {sown}", font: Nunito, weight: 600, optional: true}
    align: baseline
    fit: {in: plate, margin: 3 mm, at_most: {x_height: 5.5 mm}}
pieces:
  label: {body: [plate], engrave: [words], hanger: {hole: {on: plate, at: left}}}
`,
};

const tasks: Readonly<Record<string, readonly string[]>> = {
  check: ['check', '--strict'],
  sheets: ['sheets', '--force', '--to', 'svg', '--out', 'sheets'],
  export: ['export', '--force', '--to', 'svg', '--out', 'files'],
  job: ['job', '--progress', '--out', 'job'],
};

/** An order for each name; how densely they lie is another matter. */
const jobOf = (spec: string): string => `tagwright_job: 1
effort: 0.1
tags: [{spec: ${spec}.tag.yaml, orders: names.csv}]
sheets: {ply3: [{size: [600 mm, 400 mm], margin: 5 mm}]}
`;

const months = 'February March April May September'.split(' ');

/** Clock ticks a second in `/proc`, as Linux has them for every program. */
const ticks = 100;

interface Use {
  readonly processor: number;
  readonly memoryMb: number;
}

/** Of a process and all that it started, as long as they live. */
function useOf(pid: number): Use {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]!.split(' ');
    const memoryMb = Number(/VmRSS:\s*(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1024;
    const children = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').split(' ').filter(Boolean).map(Number);
    const of = children.map(useOf);
    return {
      processor: (Number(stat[11]) + Number(stat[12])) / ticks + of.reduce((sum, { processor }) => sum + processor, 0),
      memoryMb: memoryMb + of.reduce((sum, each) => sum + each.memoryMb, 0),
    };
  } catch {
    return { processor: 0, memoryMb: 0 };
  }
}

function run(
  folder: string,
  args: readonly string[],
): Promise<Use & { readonly seconds: number; readonly firstLayout: number; readonly code: number }> {
  const start = performance.now();
  const child = spawn(process.execPath, [cli, ...args], { cwd: folder, stdio: ['ignore', 'ignore', 'pipe'] });
  let [processor, memoryMb, firstLayout] = [0, 0, NaN];
  child.stderr.on('data', (chunk: Buffer) => {
    if (Number.isNaN(firstLayout) && /\d+ sheets? so far/.test(chunk.toString()))
      firstLayout = (performance.now() - start) / 1000;
  });
  const ask = setInterval(() => {
    const use = useOf(child.pid!);
    processor = Math.max(processor, use.processor);
    memoryMb = Math.max(memoryMb, use.memoryMb);
  }, 50);
  return new Promise((resolve) => {
    child.on('exit', (code) => {
      clearInterval(ask);
      resolve({ seconds: (performance.now() - start) / 1000, firstLayout, processor, memoryMb, code: code ?? -1 });
    });
  });
}

function chosen(name: string, all: string): string[] {
  const given = process.argv.find((argument) => argument.startsWith(`--${name}=`));
  return (given?.slice(name.length + 3) ?? all).split(',');
}

console.log('rows  of      task     first layout s  clock s  processor s  peak MB  exit  files');
for (const rows of chosen('rows', '500').map(Number)) {
  const folder = mkdtempSync(join(tmpdir(), 'tagwright-names-'));
  const lines = manyNames(rows).map((name, index) => `${name},${months[index % months.length]!}`);
  writeFileSync(join(folder, 'names.csv'), `name,sown\n${lines.join('\n')}\n`);
  for (const of of chosen('of', Object.keys(specs).join(','))) {
    writeFileSync(join(folder, `${of}.tag.yaml`), specs[of]!);
    writeFileSync(join(folder, `${of}.job.yaml`), jobOf(of));
    for (const task of chosen('what', Object.keys(tasks).join(','))) {
      const { seconds, firstLayout, processor, memoryMb, code } = await run(folder, [
        ...tasks[task]!,
        `${of}.${task === 'job' ? 'job' : 'tag'}.yaml`,
      ]);
      const files = readdirSync(folder, { recursive: true }).filter((file) => String(file).endsWith('.svg')).length;
      console.log(
        `${String(rows).padStart(4)}  ${of.padEnd(7)} ${task.padEnd(8)} ${(Number.isNaN(firstLayout) ? '' : firstLayout.toFixed(1)).padStart(14)}  ${seconds.toFixed(1).padStart(7)}  ${processor.toFixed(1).padStart(11)}  ${memoryMb.toFixed(0).padStart(7)}  ${String(code).padStart(4)}  ${String(files).padStart(5)}`,
      );
      for (const made of ['sheets', 'files', 'job']) rmSync(join(folder, made), { recursive: true, force: true });
    }
  }
  rmSync(folder, { recursive: true });
}
