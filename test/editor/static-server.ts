/**
 * Serves VS Code as mere files: there is no Node behind it, and extensions run in a worker of the browser. The folder that is
 * open is reached over HTTP by an extension of its own (`http-files/`), so it is a virtual one, as that of a repository
 * looked at in the browser is.
 */

import { build } from 'esbuild';
import { once } from 'node:events';
import { mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { basename, dirname, extname, join, normalize } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { installEditor, vscodeFolder } from './install.ts';
import { quiet, type ServedEditor, type ServeOptions } from './server.ts';

const httpFiles = join(import.meta.dirname, 'http-files');

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
};

export async function serveStatically({ folder, extension, settings }: ServeOptions): Promise<ServedEditor> {
  installEditor();
  const reader = await httpFilesScript();
  const server = createServer((request, response) => {
    void answer(request, response).catch((error: unknown) => {
      const isMissing = error instanceof Error && 'code' in error && error.code === 'ENOENT';
      response.writeHead(isMissing ? 404 : 500).end(String(error));
    });
  });
  await once(server.listen(0, '127.0.0.1'), 'listening');
  const authority = `127.0.0.1:${(server.address() as AddressInfo).port}`;

  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const { pathname, searchParams } = new URL(request.url!, `http://${authority}`);
    const path = normalize(decodeURIComponent(pathname));
    const [, room = '', ...rest] = path.split('/');
    const name = basename(folder);
    const roots: Readonly<Record<string, string>> = { editor: vscodeFolder, extension, 'http-files': httpFiles };
    if (room === name) await answerFolder(dirname(folder), path, request, searchParams, response);
    else if (path === '/') response.setHeader('Content-Type', types['.html']!).end(page(authority, name, settings));
    else if (path === '/http-files/extension.js') response.end(reader);
    else if (roots[room]) await sendFile(join(roots[room], ...rest), response);
    else response.writeHead(404).end();
  }

  const ended = once(server, 'close');
  return {
    url: `http://${authority}/`,
    ended,
    close: async () => {
      server.close();
      server.closeAllConnections();
      await ended;
    },
    abandon: () => {
      // It is in this process, and ends with it.
    },
  };
}

/** What `http-files/extension.ts` asks for. */
async function answerFolder(
  root: string,
  path: string,
  request: IncomingMessage,
  query: URLSearchParams,
  response: ServerResponse,
): Promise<void> {
  const target = join(root, path);
  if (request.method === 'PUT') {
    const from = query.get('from');
    if (from !== null) await rename(join(root, from), target);
    else if (query.has('folder')) await mkdir(target, { recursive: true });
    else await writeFile(target, await buffer(request));
  } else if (request.method === 'DELETE') {
    await rm(target, { recursive: true });
  } else {
    const stats = await stat(target);
    response.setHeader('X-Size', stats.size).setHeader('X-Modified', Math.round(stats.mtimeMs));
    if (stats.isDirectory()) {
      const entries = await readdir(target, { withFileTypes: true });
      response.setHeader('X-Folder', '').write(JSON.stringify(entries.map(entryOf)));
    } else {
      response.write(await readFile(target));
    }
  }
  response.end();
}

/** As `vscode.FileType` numbers them. */
function entryOf(entry: { name: string; isDirectory(): boolean }): [string, number] {
  return [entry.name, entry.isDirectory() ? 2 : 1];
}

async function sendFile(path: string, response: ServerResponse): Promise<void> {
  const type = types[extname(path)];
  const content = await readFile(path);
  if (type) response.setHeader('Content-Type', type);
  response.end(basename(path) === 'workbench.js' ? withoutServer(content.toString()) : content);
}

/**
 * This VS Code is made to be served by a server of its own: it looks for one where the page came from, and for the user's
 * data on it. Without it those lie in the browser, as in any other VS Code that is mere files.
 */
function withoutServer(script: string): string {
  const changes = [
    [/remoteAuthority:location\.host/, 'remoteAuthority:undefined'],
    [/scheme:\w+\.vscodeRemote(?=\}\),"User"\))/, 'scheme:"vscode-userdata"'],
  ] as const;
  return changes.reduce((text, [from, to]) => {
    if (!from.test(text)) throw new Error(`The editor's script does not say ${from.source}`);
    return text.replace(from, to);
  }, script);
}

async function httpFilesScript(): Promise<Uint8Array> {
  const entry = join(httpFiles, 'extension.ts');
  const { outputFiles } = await build({
    entryPoints: [entry],
    bundle: true,
    format: 'cjs',
    external: ['vscode'],
    write: false,
  });
  return outputFiles[0]!.contents;
}

function page(authority: string, folder: string, settings: Record<string, unknown> = {}): string {
  const at = (path: string) => ({ scheme: 'http', authority, path });
  const configuration = {
    folderUri: { scheme: 'http-files', authority, path: `/${folder}` },
    additionalBuiltinExtensions: [at('/http-files'), at('/extension')],
    configurationDefaults: { ...quiet, ...settings },
    enableWorkspaceTrust: false,
    developmentOptions: { enableSmokeTestDriver: true },
    webviewEndpoint: `http://${authority}/editor/out/vs/workbench/contrib/webview/browser/pre`,
    productConfiguration: { nameShort: 'Code', nameLong: 'Code', enableTelemetry: false },
    // What the server of this VS Code would have said.
    userDataPath: '/',
    isEnabledFileDownloads: true,
    isEnabledFileUploads: true,
    isEnabledCoderGettingStarted: false,
  };
  const attribute = JSON.stringify(configuration).replaceAll('&', '&amp;').replaceAll('"', '&quot;');
  return `<!DOCTYPE html>
<html>
  <head>
    <meta charset="utf-8">
    <meta id="vscode-workbench-web-configuration" data-settings="${attribute}">
    <link rel="stylesheet" href="/editor/out/vs/code/browser/workbench/workbench.css">
  </head>
  <body aria-label=""></body>
  <script>globalThis._VSCODE_FILE_ROOT = location.origin + '/editor/out/';</script>
  <script type="module" src="/editor/out/nls.messages.js"></script>
  <script type="module" src="/editor/out/vs/code/browser/workbench/workbench.js"></script>
</html>
`;
}
