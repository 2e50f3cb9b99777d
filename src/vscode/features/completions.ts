/** Completion in tag specs, jobs and files of offcuts. */

import * as vscode from 'vscode';
import { completionsAt } from '../../language/completion/complete.ts';
import type { Completion, SuggestionKind } from '../../language/completion/suggestion.ts';
import { isJob, isOffcutsFile, jobGlob, offcutsGlob, tagSpecSelector } from '../common/documents.ts';
import type { JobChecks } from '../jobs/job-checks.ts';
import { sampleIn } from '../../language/new-tag.ts';
import { jobGrammar, offcutsGrammar } from '../../language/grammar.ts';
import type { WorkspaceNames } from '../../language/workspace-names.ts';
import { noUses } from '../../spec/files/used-files.ts';
import { unitsOfNewTags } from './workshop-files.ts';
import type { WorkspaceContext } from '../service/workspace-context.ts';

const { CompletionItemKind: Kind } = vscode;

const kinds: Readonly<Record<SuggestionKind, vscode.CompletionItemKind>> = {
  key: Kind.Property,
  generator: Kind.Class,
  value: Kind.EnumMember,
  unit: Kind.Unit,
  font: Kind.Text,
  shape: Kind.Variable,
  piece: Kind.Module,
  file: Kind.File,
  snippet: Kind.Snippet,
};

/** Characters after which something new begins; within a word the editor asks without them. */
const triggers = [':', ' ', '{', '[', ','];

export function registerCompletions(workspaceContext: WorkspaceContext, jobs: JobChecks): vscode.Disposable {
  const around = (uri: vscode.Uri): WorkspaceNames => ({
    ...workspaceContext.of(uri),
    samples: [],
    uses: jobs.get(uri)?.uses ?? noUses,
    products: jobs.get(uri)?.products ?? new Map(),
    grammar: isJob(uri) ? jobGrammar : offcutsGrammar,
  });
  return vscode.languages.registerCompletionItemProvider(
    [...tagSpecSelector, { pattern: jobGlob }, { pattern: offcutsGlob }],
    {
      async provideCompletionItems(document, position) {
        const { uri } = document;
        const isEmpty = !/^[^#\r\n]*\S+.*:/m.test(document.getText());
        const names =
          isJob(uri) || isOffcutsFile(uri)
            ? around(uri)
            : await (isEmpty ? inUsualUnits(workspaceContext.withSamples(uri)) : workspaceContext.withFiles(uri));
        const offered = completionsAt(document.getText(), document.offsetAt(position), names);
        const items = offered.map((each, index) => toItem(each, index, document));
        // Suggestions that use the typed text as a name change with every letter.
        return new vscode.CompletionList(
          items,
          offered.some(({ kind }) => kind === 'snippet'),
        );
      },
    },
    ...triggers,
  );
}

/** The samples in the unit of new tags. */
async function inUsualUnits(finding: Promise<WorkspaceNames>): Promise<WorkspaceNames> {
  const [names, units] = await Promise.all([finding, unitsOfNewTags()]);
  return { ...names, samples: names.samples.map((each) => ({ ...each, text: sampleIn(units, each.text) })) };
}

function toItem(
  { kind, label, detail, docs, snippet, filter, replace, rank }: Completion,
  index: number,
  document: vscode.TextDocument,
): vscode.CompletionItem {
  const item = new vscode.CompletionItem(detail === undefined ? label : { label, description: detail }, kinds[kind]);
  // Of a plain text the editor knows whether it would change anything; if not, Enter makes a line.
  item.insertText = /[$\\}]/.test(snippet) ? new vscode.SnippetString(snippet) : snippet;
  item.range = new vscode.Range(document.positionAt(replace.start), document.positionAt(replace.end));
  item.filterText = filter;
  item.sortText = `${String(rank).padStart(2, '0')}${String(index).padStart(4, '0')}`;
  if (docs) item.documentation = new vscode.MarkdownString(docs);
  return item;
}
