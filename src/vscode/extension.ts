/** Composes the extension for any kind of host; `start.ts` loads it. */

import * as vscode from 'vscode';
import { reportTo } from './common/background.ts';
import { registerColours } from './features/colours.ts';
import { registerCompletions } from './features/completions.ts';
import { registerProblemPages } from './features/problem-pages.ts';
import { registerGuide } from './features/guide.ts';
import { registerExports } from './export/commands.ts';
import { fixAllProblems } from './features/fix-all.ts';
import { editorFontFiles } from './service/font-files.ts';
import { IssueHelp } from './features/issue-help.ts';
import { registerHovers, registerSignatures } from './features/hovers.ts';
import { registerStatus } from './features/status.ts';
import { newTag } from './features/new-tag.ts';
import { setKerf } from './features/kerf-test.ts';
import { registerNavigation } from './features/navigation.ts';
import { registerProblems } from './features/problems.ts';
import { registerQuickFixes } from './features/quick-fixes.ts';
import { registerRefactorings } from './features/refactorings.ts';
import { insertSample, openSample, SampleLibrary } from './samples/sample-library.ts';
import { SamplesView } from './samples/samples-view.ts';
import { TagService } from './service/service.ts';
import { SheetsView } from './sheets/sheets-view.ts';
import { registerLensesAndHints } from './features/lenses-and-hints.ts';
import { WorkspaceContext } from './service/workspace-context.ts';
import { SpecMoves } from './service/spec-moves.ts';
import { CommandTarget } from './common/target.ts';
import { EditTrial } from './service/trial.ts';
import { wholeWriter } from './common/write-whole.ts';
import { Engine } from '../engine/engine.ts';
import { NestThreads } from '../nesting/threads/nest-threads.ts';
import type { ThreadSource } from '../nesting/threads/nest-threads.ts';
import type { ExportKind } from '../protocol/preview.ts';
import { enterMeasurement } from './features/enter-measurement.ts';
import { recordApproval } from './features/record-approval.ts';
import type { Given } from './features/enter-measurement.ts';
import { newTestPiece } from './features/new-test-piece.ts';
import { newWorkshopFile } from './features/new-workshop-file.ts';
import { putValuesIn } from './features/put-values-in.ts';
import type { TestPieceName } from '../test-pieces/all.ts';
import { registerSharedProblems } from './features/shared-problems.ts';
import { JobChecks } from './jobs/job-checks.ts';
import { registerJobs } from './jobs/register.ts';
import { registerPreview } from './preview/register.ts';
import type { InstalledFonts } from '../text/font-files.ts';

/** Services of the extension host besides the editor. */
export interface Host {
  readonly installedFonts: InstalledFonts;
  /** Writes a local file atomically. */
  readonly writeOnDisk?: (path: string, content: Uint8Array) => Promise<void>;
  /** Lays sheets out beside everything else. */
  readonly nestThreads?: ThreadSource | undefined;
}

/** Results kept of what the tags of a job share; what only one of them has is not needed again. */
const jobStages = 300;

/** Commands behind the preview's export button. */
const exportCommands: Readonly<Record<ExportKind, string>> = {
  svg: 'tagwright.exportSvg',
  formats: 'tagwright.export',
  sheets: 'tagwright.exportSheets',
  pack: 'tagwright.makePack',
  job: 'tagwright.newJob',
};

/** Returns the serializer that restores previews when a window is reloaded. */
export function compose(context: vscode.ExtensionContext, host: Host): vscode.WebviewPanelSerializer {
  const log = vscode.window.createOutputChannel('Tagwright', { log: true });
  reportTo(log);
  const files = editorFontFiles(context.extensionUri, host.installedFonts);
  const engine = new Engine(files);
  const service = new TagService(engine, log);
  const help = new IssueHelp(engine);
  const samples = new SampleLibrary(context.extensionUri);
  const workspaceContext = new WorkspaceContext(service, engine, samples);
  const moves = new SpecMoves();
  const jobs = new JobChecks(new Engine(files, { fonts: engine.fonts, stages: jobStages }));
  const target = new CommandTarget(() => previews.inFront);
  const threads = new NestThreads(host.nestThreads);
  const { nest } = threads;
  const sheets = new SheetsView(context.extensionUri, service, { engine, nest }, moves);
  context.subscriptions.push(
    log,
    new vscode.Disposable(() => {
      threads.end();
    }),
    moves,
    service,
    registerProblems(service),
    registerSharedProblems(service, engine),
    registerJobs(context.extensionUri, engine, jobs, nest, target, (spec) => {
      sheets.show(spec);
    }),
    registerQuickFixes(service, engine, help),
    registerProblemPages(context.extensionUri),
    registerGuide(context.extensionUri),
    workspaceContext,
    registerCompletions(workspaceContext, jobs),
    registerHovers(service, workspaceContext),
    registerSignatures(),
    registerNavigation(service),
    registerLensesAndHints(service),
    registerColours(),
    registerRefactorings(service),
    target.command('tagwright.fixAll', (spec) => fixAllProblems(spec, service, engine)),
    registerStatus(service),
    vscode.window.registerWebviewViewProvider(
      'tagwright.samples',
      new SamplesView(context.extensionUri, samples, engine),
    ),
    sheets,
    registerExports(context, target, service, { engine, nest }, wholeWriter(host.writeOnDisk)),
    target.command('tagwright.setKerf', (spec, measured?: { readonly slots: string; readonly pieces: string }) =>
      setKerf(spec, service, measured),
    ),
    target.command('tagwright.recordApproval', (spec, note?: string) =>
      recordApproval(spec, engine, wholeWriter(host.writeOnDisk), note),
    ),
    vscode.commands.registerCommand('tagwright.newTestPiece', (argument?: unknown, which?: TestPieceName) =>
      newTestPiece(engine, service, target.known(argument), which),
    ),
    vscode.commands.registerCommand('tagwright.enterMeasurement', (argument?: unknown, given?: Given) =>
      enterMeasurement(service, target.known(argument), given),
    ),
    vscode.commands.registerCommand('tagwright.newWorkshopFile', newWorkshopFile),
    target.command('tagwright.putValuesIn', (spec) => putValuesIn(spec, service)),
    vscode.commands.registerCommand('tagwright.browseSamples', () => openSample(samples)),
    vscode.commands.registerCommand('tagwright.openSample', (name?: unknown) => openSample(samples, name)),
    vscode.commands.registerCommand('tagwright.insertSample', (name?: unknown) =>
      insertSample(samples, target.known(undefined), name),
    ),
    vscode.commands.registerCommand('tagwright.newTag', () =>
      newTag({
        samples,
        engine,
        moves,
        surroundings: workspaceContext,
        cover: (spec, rows) => previews.get(spec)?.cover(rows),
      }),
    ),
  );
  const previews = registerPreview(
    context,
    target,
    moves,
    { results: service, help, trial: new EditTrial(engine) },
    { makeFiles: (uri, what) => void vscode.commands.executeCommand(exportCommands[what], uri) },
  );
  return previews;
}
