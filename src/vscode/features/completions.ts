/** Completion in tag specs. */

import * as vscode from 'vscode';
import { completionsAt } from '../../language/completion/complete.ts';
import type { Completion, SuggestionKind } from '../../language/completion/suggestion.ts';
import { tagSpecSelector } from '../common/documents.ts';
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

/** After these something new begins; within a word the editor asks by itself. */
const triggers = [':', ' ', '{', '[', ','];

export function registerCompletions(surroundings: WorkspaceContext): vscode.Disposable {
  return vscode.languages.registerCompletionItemProvider(
    tagSpecSelector,
    {
      async provideCompletionItems(document, position) {
        const isEmpty = !/^[^#\r\n]*\S+.*:/m.test(document.getText());
        const around = await (isEmpty ? surroundings.withSamples(document.uri) : surroundings.of(document.uri));
        const offered = completionsAt(document.getText(), document.offsetAt(position), around);
        const items = offered.map((each, index) => toItem(each, index, document));
        // What goes under the name that is being typed is other with every letter.
        return new vscode.CompletionList(
          items,
          offered.some(({ kind }) => kind === 'snippet'),
        );
      },
    },
    ...triggers,
  );
}

function toItem(
  { kind, label, detail, docs, snippet, filter, replace, rank }: Completion,
  index: number,
  document: vscode.TextDocument,
): vscode.CompletionItem {
  const item = new vscode.CompletionItem(detail === undefined ? label : { label, description: detail }, kinds[kind]);
  item.insertText = new vscode.SnippetString(snippet);
  item.range = new vscode.Range(document.positionAt(replace.start), document.positionAt(replace.end));
  item.filterText = filter;
  item.sortText = `${rank}${String(index).padStart(4, '0')}`;
  if (docs) item.documentation = new vscode.MarkdownString(docs);
  return item;
}
