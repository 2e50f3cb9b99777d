import assert from 'node:assert/strict';
import * as vscode from 'vscode';

describe('The extension in a real editor', () => {
  it('starts when a spec is opened', async () => {
    const [uri] = await vscode.workspace.findFiles('*.tag.yaml');
    assert.ok(uri, 'the samples hold at least one spec');
    await vscode.window.showTextDocument(uri);
    const extension = vscode.extensions.getExtension('tagwright.tagwright');
    assert.ok(extension, 'the extension is installed');
    await extension.activate();
    assert.equal(extension.isActive, true);
  });
});
