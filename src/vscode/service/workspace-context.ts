/**
 * The surroundings of a spec in the editor: fonts, files beside it, samples. Cached, because completion cannot wait for
 * disks.
 */

import * as vscode from 'vscode';
import { inBackground } from '../common/background.ts';
import type { Engine } from '../../engine/engine.ts';
import { fontNotes } from '../../language/completion/fonts.ts';
import { noWorkspaceNames } from '../../language/workspace-names.ts';
import type { FontNote, SampleNote, WorkspaceNames } from '../../language/workspace-names.ts';
import { companionGlob } from '../common/documents.ts';
import type { SampleLibrary } from '../samples/sample-library.ts';
import type { TagService } from './service.ts';

/** More than anyone would look through in a list. */
const mostFiles = 300;

/** Later than this, a list of suggestions would come into the way of the typing. */
const patienceMs = 400;

export class WorkspaceContext implements vscode.Disposable {
  readonly #service: TagService;
  readonly #engine: Engine;
  readonly #samples: SampleLibrary;
  readonly #watcher = vscode.workspace.createFileSystemWatcher(companionGlob, false, true, false);
  readonly #listings = new Map<string, Listing>();
  #fonts: readonly FontNote[] | undefined;
  #sampleNotes: readonly SampleNote[] = [];

  constructor(service: TagService, engine: Engine, samples: SampleLibrary) {
    this.#service = service;
    this.#engine = engine;
    this.#samples = samples;
    const forget = () => {
      this.#listings.clear();
    };
    this.#watcher.onDidCreate(forget);
    this.#watcher.onDidDelete(forget);
  }

  dispose(): void {
    this.#watcher.dispose();
  }

  get fonts(): readonly FontNote[] {
    if (!this.#fonts) {
      this.#fonts = fontNotes();
      void this.#engine.fonts.installed().then((installed) => {
        this.#fonts = fontNotes(installed);
      });
    }
    return this.#fonts;
  }

  /** Waits for the samples, which matter most in an empty file. */
  async withSamples(spec: vscode.Uri): Promise<WorkspaceNames> {
    this.#sampleNotes = await this.#samples.all();
    return this.withFiles(spec);
  }

  /** Waits for the names of the files beside the spec, unless the disk is slow. */
  async withFiles(spec: vscode.Uri): Promise<WorkspaceNames> {
    const listing = this.#listingBeside(spec);
    if (!listing.names) await Promise.race([listing.done, new Promise((resolve) => setTimeout(resolve, patienceMs))]);
    return this.of(spec);
  }

  /** What is known by now; anything missing is requested and available the next time. */
  of(spec: vscode.Uri): WorkspaceNames {
    if (this.#sampleNotes.length === 0) void this.#samples.all().then((samples) => (this.#sampleNotes = samples));
    const uses = this.#service.get(spec)?.report.uses ?? noWorkspaceNames.uses;
    return {
      fonts: this.fonts,
      uses,
      files: (this.#listingBeside(spec).names ?? []).filter((file) => !spec.path.endsWith(`/${file}`)),
      samples: this.#sampleNotes,
    };
  }

  #listingBeside(spec: vscode.Uri): Listing {
    const folder = vscode.Uri.joinPath(spec, '..');
    const key = folder.toString();
    const known = this.#listings.get(key);
    if (known) return known;
    const found = namesIn(folder);
    inBackground(found, 'list the files of the folder');
    const listing: Listing = {
      done: found.then(
        (names) => {
          listing.names = names;
        },
        () => undefined,
      ),
    };
    this.#listings.set(key, listing);
    return listing;
  }
}

/** The files beside a spec, once they are known. */
interface Listing {
  /** Never rejects. */
  readonly done: Promise<void>;
  names?: readonly string[];
}

/** Files that a spec may refer to, with those of subfolders; none outside of the workspace. */
async function namesIn(folder: vscode.Uri): Promise<readonly string[]> {
  if (!vscode.workspace.getWorkspaceFolder(folder)) return [];
  const pattern = new vscode.RelativePattern(folder, companionGlob);
  const found = await vscode.workspace.findFiles(pattern, undefined, mostFiles);
  const start = `${folder.path.replace(/\/$/, '')}/`;
  const names = found.filter(({ path }) => path.startsWith(start)).map(({ path }) => path.slice(start.length));
  return names.sort();
}
