/**
 * Serves VS Code on a free loopback port and says at what address a folder opens in it with this extension loaded.
 */

import { spawn, type ChildProcess } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { pathToFileURL } from 'node:url';
import { editorNode, installEditor, serverMain } from './install.ts';

const startLimitMs = 120_000;

export interface ServedEditor {
  readonly url: string;
  /** Resolves when the server has ended by itself. */
  readonly ended: Promise<unknown>;
  /** Ends the server with everything it started, and removes its user data. */
  close(): Promise<void>;
  /** The same without waiting for the end, for when this process ends. */
  abandon(): void;
}

export interface ServeOptions {
  /** Absolute path of the folder to open. */
  folder: string;
  /** A file in it to show at once. */
  file?: string;
  /** Absolute path of the extension under development. */
  extension: string;
  /** Absolute path of a module whose `run()` the extension host calls, as `--extensionTestsPath` of a desktop VS Code. */
  tests?: string;
  /** User settings. */
  settings?: Record<string, unknown>;
  env?: NodeJS.ProcessEnv;
}

export async function serveEditor(options: ServeOptions): Promise<ServedEditor> {
  installEditor();
  const token = randomUUID();
  const data = mkdtempSync(join(tmpdir(), 'tagwright-editor-'));
  mkdirSync(join(data, 'User'));
  writeFileSync(join(data, 'User', 'settings.json'), JSON.stringify({ ...quiet, ...options.settings }, null, 2));

  const server = spawn(
    editorNode(),
    [
      '--import',
      pathToFileURL(join(import.meta.dirname, 'end-with-parent.mjs')).href,
      serverMain,
      ...flags(data, token),
    ],
    {
      stdio: ['pipe', 'pipe', 'pipe'],
      env: { ...process.env, ...options.env },
      // A process group of its own, so that its extension hosts and watchers end with it.
      detached: process.platform !== 'win32',
    },
  );
  const removeData = (): void => {
    rmSync(data, { recursive: true, force: true, maxRetries: 5 });
  };
  const close = async (): Promise<void> => {
    if (!hasEnded(server)) {
      const ended = once(server, 'exit');
      killGroup(server);
      await ended;
    }
    removeData();
  };
  const abandon = (): void => {
    if (!hasEnded(server)) killGroup(server);
    removeData();
  };
  try {
    const port = await listeningPort(server);
    return { url: address(port, token, options), ended: once(server, 'exit'), close, abandon };
  } catch (error) {
    await close();
    throw error;
  }
}

function flags(data: string, token: string): string[] {
  return [
    ...['--host', '127.0.0.1', '--port', '0', '--connection-token', token, '--accept-server-license-terms'],
    // Without the driver the page ignores the payload that names our extension.
    ...['--enable-smoke-test-driver', '--disable-experiments', '--disable-telemetry', '--disable-workspace-trust'],
    ...['--user-data-dir', data, '--server-data-dir', data, '--extensions-dir', join(data, 'extensions')],
  ];
}

/** A new user's VS Code greets, suggests and asks; none of that belongs in a test or beside a first look at the samples. */
export const quiet = {
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'chat.disableAIFeatures': true,
  'extensions.ignoreRecommendations': true,
  'extensions.autoCheckUpdates': false,
  'telemetry.telemetryLevel': 'off',
  'update.mode': 'none',
  'git.enabled': false,
  // As on the desktop; a served VS Code would save by itself.
  'files.autoSave': 'off',
};

/** Each blink of the cursor and each step of an animation is painted, by the processor: for tests, and for nobody else. */
export const unmoved = {
  'editor.cursorBlinking': 'solid',
  'workbench.reduceMotion': 'on',
  'editor.minimap.enabled': false,
};

function address(port: number, token: string, { folder, file, extension, tests }: ServeOptions): string {
  const remote = (path: string): string => `vscode-remote://127.0.0.1:${port}${encodeURI(urlPath(path))}`;
  const payload = [['extensionDevelopmentPath', remote(extension)]];
  if (file) payload.push(['openFile', remote(join(folder, file))]);
  if (tests) payload.push(['extensionTestsPath', remote(tests)]);
  const query = new URLSearchParams({ tkn: token, folder: urlPath(folder), payload: JSON.stringify(payload) });
  return `http://127.0.0.1:${port}/?${query.toString()}`;
}

/** Windows paths stand in addresses with a leading slash. */
function urlPath(path: string): string {
  const slashed = path.replaceAll('\\', '/');
  return slashed.startsWith('/') ? slashed : `/${slashed}`;
}

/** The server picks the port and prints it. Its complaints about optional native modules are kept back unless it fails. */
async function listeningPort(server: ChildProcess): Promise<number> {
  const output: string[] = [];
  server.stderr!.setEncoding('utf8').on('data', (text: string) => output.push(text));
  const lines = createInterface({ input: server.stdout! });
  const port = new Promise<number>((resolve, reject) => {
    lines.on('line', (line) => {
      output.push(`${line}\n`);
      const match = /listening on (\d+)/.exec(line);
      if (match) resolve(Number(match[1]));
    });
    server.on('error', reject);
    server.on('exit', (code) => {
      reject(new Error(`The editor's server ended with code ${String(code)}:\n${output.join('')}`));
    });
    setTimeout(() => {
      reject(new Error(`The editor's server did not start within ${startLimitMs / 1000} s:\n${output.join('')}`));
    }, startLimitMs).unref();
  });
  return port;
}

const hasEnded = ({ exitCode, signalCode, pid }: ChildProcess): boolean =>
  exitCode !== null || signalCode !== null || pid === undefined;

function killGroup(server: ChildProcess): void {
  if (process.platform === 'win32') spawn('taskkill', ['/pid', String(server.pid), '/T', '/F']);
  else process.kill(-server.pid!, 'SIGKILL');
}
