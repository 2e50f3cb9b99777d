/**
 * Provides the command line as tasks, so that a build can check, export or pack; the problem matcher in `package.json`
 * reads their output.
 */

import * as vscode from 'vscode';
import { jobGlob, tagSpecGlob } from '../common/documents.ts';

const type = 'tagwright';

/** As in `taskDefinitions` of `package.json`. */
interface Definition extends vscode.TaskDefinition {
  readonly task: 'check' | 'export' | 'sheets' | 'pack' | 'job';
  /** Globs in the folder; by default every spec, or every job. */
  readonly files?: readonly string[];
  readonly formats?: readonly string[];
  readonly out?: string;
}

/** Longer command lines are not possible everywhere. */
const mostFiles = 200;

export function registerTasks(extensionUri: vscode.Uri): vscode.Disposable {
  const cli = vscode.Uri.joinPath(extensionUri, 'dist', 'cli.mjs').fsPath;
  return vscode.tasks.registerTaskProvider(type, {
    provideTasks: async () => {
      const tasks: vscode.Task[] = [];
      for (const folder of vscode.workspace.workspaceFolders ?? []) {
        const task = await made({ type, task: 'check' }, folder, cli);
        if (task) tasks.push(task);
        tasks.push(...(await jobTasks(folder, cli)));
      }
      return tasks;
    },
    resolveTask: ({ definition, scope }) => {
      const folder = typeof scope === 'object' ? scope : vscode.workspace.workspaceFolders?.[0];
      return folder && made(definition as Definition, folder, cli);
    },
  });
}

/** One for each job, with a folder beside it, as jobs in other folders may have the same name. */
async function jobTasks(folder: vscode.WorkspaceFolder, cli: string): Promise<vscode.Task[]> {
  if (folder.uri.scheme !== 'file') return [];
  const tasks: vscode.Task[] = [];
  for (const job of await filesOf({ type, task: 'job' }, folder)) {
    const out = job.replace(/[^/]*$/, 'cut');
    const task = taskOf({ type, task: 'job', files: [globOf(job)], out }, [job], folder, { cli, name: `job ${job}` });
    tasks.push(task);
  }
  return tasks;
}

/** A glob that matches this path alone. */
function globOf(path: string): string {
  return path.replaceAll(/[[{*?]/g, '[$&]');
}

/** `undefined` if a file does not exist, or there is none to run on. */
async function made(
  definition: Definition,
  folder: vscode.WorkspaceFolder,
  cli: string,
): Promise<vscode.Task | undefined> {
  if (folder.uri.scheme !== 'file') return undefined;
  const files = await filesOf(definition, folder);
  return files.length === 0 ? undefined : taskOf(definition, files, folder, { cli });
}

function taskOf(
  definition: Definition,
  files: readonly string[],
  folder: vscode.WorkspaceFolder,
  { cli, name }: { readonly cli: string; readonly name?: string },
): vscode.Task {
  const { task, formats, out = 'cut' } = definition;
  const to = ['--to', (formats ?? ['svg']).join(',')];
  const written = ['--out', out, '--overwrite'];
  const options = { check: [], export: [...to, ...written], sheets: [...to, ...written], pack: written, job: written }[
    task
  ];
  // The editor's own executable can run as Node.
  const execution = new vscode.ProcessExecution(process.execPath, [cli, task, ...files, ...options], {
    cwd: folder.uri.fsPath,
    env: { ELECTRON_RUN_AS_NODE: '1' },
  });
  const names = {
    check: 'check',
    export: `export to ${out}`,
    sheets: `sheets to ${out}`,
    pack: `pack to ${out}`,
    job: `job to ${out}`,
  };
  const made = new vscode.Task(definition, folder, name ?? names[task], 'Tagwright', execution, '$tagwright');
  made.group = vscode.TaskGroup.Build;
  return made;
}

async function filesOf(
  { task, files = [task === 'job' ? jobGlob : tagSpecGlob] }: Definition,
  folder: vscode.WorkspaceFolder,
): Promise<string[]> {
  const found = await Promise.all(
    files.map((glob) => vscode.workspace.findFiles(new vscode.RelativePattern(folder, glob), undefined, mostFiles)),
  );
  const root = folder.uri.path.replace(/\/?$/, '/');
  const relative = found.flat().map(({ path }) => path.slice(root.length));
  return [...new Set(relative)].sort().slice(0, mostFiles);
}
