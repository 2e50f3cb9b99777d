import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, eventually, replace, show } from './support.ts';

/** What is told at the start of a word, as it is shown: escapes are for the renderer. */
async function hoverText(document: vscode.TextDocument, word: string, enough: string): Promise<string> {
  const position = document.positionAt(document.getText().indexOf(word) + 1);
  const text = await eventually(
    `a hover on ${word}`,
    async () => {
      const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
        'vscode.executeHoverProvider',
        document.uri,
        position,
      );
      return hovers.flatMap(({ contents }) => contents.map((each) => (each as vscode.MarkdownString).value)).join('\n');
    },
    (hover) => hover.includes(enough),
  );
  return text.replaceAll(/\\(.)/g, '$1');
}

describe('Hovering over a spec', () => {
  afterEach(closeAll);

  it('tells what a hanger bears, as an estimate with its caution', async () => {
    const { document } = await show('5-stacked-plate.tag.yaml');
    const shown = await hoverText(document, 'slot:', 'Load');
    assert.match(shown, /Bears a short pull of about/);
    assert.match(shown, /estimate/i);
    assert.match(shown, /Try it on scrap/);
  });

  it('tells what a key does, and a length in both units', async () => {
    const { document } = await show('5-stacked-plate.tag.yaml');
    const key = await hoverText(document, 'thickness:', 'thickness');
    assert.match(key, /Measured thickness of the sheet/);
    assert.match(key, /\[In the guide\]\(command:tagwright\.openGuide\?%5B%22reference%22%2C%22stock%22%5D\)$/);
    // 1 in = 25.4 mm exactly (CSS Values and Units).
    assert.match(await hoverText(document, '10 mm}', 'mm'), /10 mm = 0\.394 in/);
  });

  it('shows a shape with its size and a picture, and a piece with all that is known of it', async () => {
    const { document } = await show('5-stacked-plate.tag.yaml');
    const shape = await hoverText(document, 'neck:  {', 'Finished size');
    assert.match(shape, /26\.0 × 18\.0 mm/);
    assert.match(shape, /!\[\]\(data:image\/svg\+xml,/);
    const piece = await hoverText(document, 'tag:\n', 'Finished size');
    assert.match(piece, /84\.0 × 5\d\.\d mm/);
    assert.match(piece, /1 part, 1 hole/);
    assert.match(piece, /Load \(estimate\)/);
  });

  it('shows what a spec says as text, whatever it says', async () => {
    const editor = await show('5-stacked-plate.tag.yaml');
    await replace(editor, '  tag:\n', '  tag:\n    title: "<b>![x](http://127.0.0.1/x.png)"\n');
    const { document } = editor;
    const position = document.positionAt(document.getText().indexOf('tag:\n') + 1);
    const text = await eventually(
      'the title',
      async () => {
        const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
          'vscode.executeHoverProvider',
          document.uri,
          position,
        );
        return hovers.map(({ contents }) => (contents[0] as vscode.MarkdownString).value).join('\n');
      },
      (hover) => hover.includes('x.png') || hover.includes('x\\.png'),
    );
    assert.ok(text.includes('&#60;b&#62;\\!\\[x\\]\\('), text);
  });

  it('helps with the figures of a list', async () => {
    const { document } = await show('5-stacked-plate.tag.yaml');
    const position = document.positionAt(document.getText().indexOf('18 mm]') + 2);
    const help = await vscode.commands.executeCommand<vscode.SignatureHelp>(
      'vscode.executeSignatureHelpProvider',
      document.uri,
      position,
    );
    assert.equal(help.signatures[0]?.label, 'rectangle: [width, height]');
    assert.equal(help.activeParameter, 1);
  });
});
