import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, eventually, show } from './support.ts';

describe('Hovering over a hanger', () => {
  afterEach(closeAll);

  it('tells what it bears, as an estimate with its caution', async () => {
    const { document } = await show('5-stacked-plate.tag.yaml');
    const offset = document.getText().indexOf('slot:');
    const text = await eventually(
      'a hover',
      async () => {
        const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
          'vscode.executeHoverProvider',
          document.uri,
          document.positionAt(offset + 1),
        );
        return hovers
          .flatMap(({ contents }) => contents.map((each) => (each as vscode.MarkdownString).value))
          .join('\n');
      },
      (said) => said.includes('Load'),
    );
    // Escapes are for the renderer; what it shows is the text without them.
    const shown = text.replaceAll(/\\(.)/g, '$1');
    assert.match(shown, /Bears a short pull of about/);
    assert.match(shown, /estimate/i);
    assert.match(shown, /Try it on scrap/);
  });
});
