/** Status bar item: the state of the tag in the active editor; a click opens the Problems view. */

import * as vscode from 'vscode';
import { stateOf } from '../../language/hover/tag-state.ts';
import type { TagState } from '../../language/hover/tag-state.ts';
import { isTagSpec } from '../common/documents.ts';
import { tagsToCheck } from '../service/results.ts';
import type { TagService } from '../service/service.ts';

const icons: Readonly<Record<TagState['kind'], string>> = {
  ok: 'check',
  info: 'info',
  warning: 'warning',
  error: 'error',
  'out-of-date': 'history',
  checking: 'ellipsis',
  nothing: 'tag',
};

export function registerStatus(service: TagService): vscode.Disposable {
  const item = vscode.window.createStatusBarItem('tagwright.status', vscode.StatusBarAlignment.Right, 90);
  item.name = 'Tag';
  item.command = 'workbench.actions.view.problems';
  const update = () => {
    const uri = vscode.window.activeTextEditor?.document.uri;
    const result = uri && isTagSpec(uri) ? service.get(uri) : undefined;
    if (!result) {
      item.hide();
      return;
    }
    const { kind, short, long } = stateOf(result.issues, result.tag, result.stale, tagsToCheck(result));
    item.text = `$(${icons[kind]}) ${short}`;
    item.tooltip = `Tag: ${long}`;
    item.accessibilityInformation = { label: item.tooltip };
    item.show();
  };
  update();
  return vscode.Disposable.from(
    item,
    vscode.window.onDidChangeActiveTextEditor(update),
    service.onDidChange(update),
    service.onDidRemove(update),
  );
}
