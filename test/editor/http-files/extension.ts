/** A file system over HTTP, as `static-server.ts` answers. It tells of the changes it makes itself. */

import * as vscode from 'vscode';

/** Proposed, and not in the types: what finds files by name where the editor has no disk to search. */
interface Searching {
  registerFileSearchProvider(
    scheme: string,
    provider: { provideFileSearchResults(query: unknown, options: { folder: vscode.Uri }): Promise<vscode.Uri[]> },
  ): vscode.Disposable;
}

export function activate(context: vscode.ExtensionContext): void {
  const files = new HttpFiles();
  context.subscriptions.push(
    vscode.workspace.registerFileSystemProvider('http-files', files),
    (vscode.workspace as unknown as Searching).registerFileSearchProvider('http-files', {
      // The editor keeps of them what fits its query.
      provideFileSearchResults: (_query, { folder }) => allIn(files, folder),
    }),
  );
}

class HttpFiles implements vscode.FileSystemProvider {
  readonly #changed = new vscode.EventEmitter<vscode.FileChangeEvent[]>();
  readonly onDidChangeFile = this.#changed.event;

  watch(): vscode.Disposable {
    return new vscode.Disposable(() => undefined);
  }

  async stat(uri: vscode.Uri): Promise<vscode.FileStat> {
    const { headers } = await ask(uri, { method: 'HEAD' });
    const type = headers.has('X-Folder') ? vscode.FileType.Directory : vscode.FileType.File;
    const modified = Number(headers.get('X-Modified'));
    return { type, ctime: modified, mtime: modified, size: Number(headers.get('X-Size')) };
  }

  async readDirectory(uri: vscode.Uri): Promise<[string, vscode.FileType][]> {
    return (await ask(uri)).json() as Promise<[string, vscode.FileType][]>;
  }

  async readFile(uri: vscode.Uri): Promise<Uint8Array> {
    return new Uint8Array(await (await ask(uri)).arrayBuffer());
  }

  async writeFile(uri: vscode.Uri, content: Uint8Array): Promise<void> {
    await ask(uri, { method: 'PUT', body: new Uint8Array(content) });
    this.#fire(vscode.FileChangeType.Changed, uri);
  }

  async createDirectory(uri: vscode.Uri): Promise<void> {
    await ask(uri, { method: 'PUT' }, '?folder');
  }

  async rename(from: vscode.Uri, to: vscode.Uri): Promise<void> {
    await ask(to, { method: 'PUT' }, `?from=${encodeURIComponent(from.path)}`);
    this.#fire(vscode.FileChangeType.Deleted, from);
    this.#fire(vscode.FileChangeType.Created, to);
  }

  async delete(uri: vscode.Uri): Promise<void> {
    await ask(uri, { method: 'DELETE' });
    this.#fire(vscode.FileChangeType.Deleted, uri);
  }

  #fire(type: vscode.FileChangeType, uri: vscode.Uri): void {
    this.#changed.fire([{ type, uri }]);
  }
}

async function allIn(files: HttpFiles, folder: vscode.Uri): Promise<vscode.Uri[]> {
  const found: vscode.Uri[] = [];
  for (const [name, type] of await files.readDirectory(folder)) {
    const uri = vscode.Uri.joinPath(folder, name);
    found.push(...(type === vscode.FileType.Directory ? await allIn(files, uri) : [uri]));
  }
  return found;
}

async function ask(uri: vscode.Uri, request: RequestInit = {}, query = ''): Promise<Response> {
  const response = await fetch(`http://${uri.authority}${encodeURI(uri.path)}${query}`, request);
  if (response.status === 404) throw vscode.FileSystemError.FileNotFound(uri);
  if (!response.ok) throw vscode.FileSystemError.Unavailable(uri);
  return response;
}
