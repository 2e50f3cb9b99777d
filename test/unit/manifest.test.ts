/** What the extension tells the editor of itself: nothing that leads nowhere, nothing in the way of other files. */

import assert from 'node:assert/strict';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { samplesHtml } from '../../src/vscode/samples/samples-html.ts';

const root = join(import.meta.dirname, '..', '..');

interface Shown {
  readonly command: string;
  readonly when?: string;
}

interface Manifest {
  readonly contributes: {
    readonly commands: readonly { readonly command: string; readonly category?: string }[];
    readonly menus: Readonly<Record<string, readonly Shown[]>>;
    readonly keybindings: readonly (Shown & { readonly key: string })[];
    readonly walkthroughs: readonly {
      readonly steps: readonly {
        readonly description: string;
        readonly media: { readonly image: string; readonly altText: string };
        readonly completionEvents: readonly string[];
      }[];
    }[];
    readonly yamlValidation: readonly { readonly fileMatch: readonly string[]; readonly url: string }[];
    readonly languages: readonly { readonly id: string; readonly extensions: readonly string[] }[];
  };
}

const { contributes } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as Manifest;
const commands = contributes.commands.map(({ command }) => command);
const onTagFiles = /resourceFilename =~ \/\\\\?\.(tag|job)\\\\?\.ya\?ml\$\//;

describe('The manifest', () => {
  it('has its commands in one category', () => {
    assert.ok(contributes.commands.length > 8);
    for (const { command, category } of contributes.commands) assert.equal(category, 'Tagwright', command);
  });

  it('shows and binds only commands that there are', () => {
    const shown = [...Object.values(contributes.menus).flat(), ...contributes.keybindings];
    assert.ok(shown.length > 10);
    for (const { command } of shown) assert.ok(commands.includes(command), command);
  });

  it('shows in the menus of editors and files, and binds keys, on tag files and jobs alone', () => {
    const menus = ['editor/title', 'editor/context', 'explorer/context'];
    const shown = [...menus.flatMap((menu) => contributes.menus[menu] ?? []), ...contributes.keybindings];
    assert.ok(shown.length > 4);
    for (const { command, when = '' } of shown) assert.match(when, onTagFiles, command);
  });

  it('gives tag and workshop files, jobs and offcuts, and no others, their language, and their schemas', () => {
    assert.deepEqual(
      contributes.languages.map(({ extensions }) => extensions),
      [['tag', 'workshop', 'job', 'offcuts'].flatMap((kind) => [`.${kind}.yaml`, `.${kind}.yml`])],
    );
    assert.equal(contributes.yamlValidation.length, 3);
    for (const { fileMatch, url } of contributes.yamlValidation) {
      const kind = /schemas\/(\w+)\.schema\.json$/.exec(url)![1]!;
      assert.deepEqual(fileMatch, [`*.${kind}.yaml`, `*.${kind}.yml`]);
      assert.ok(existsSync(join(root, url)), url);
    }
  });

  it('has a walkthrough that is ticked off by what was done, not by what was asked for', () => {
    const done = readFileSync(join(root, 'src', 'vscode', 'features', 'walkthrough.ts'), 'utf8');
    const contexts = contributes.walkthroughs
      .flatMap(({ steps }) => steps)
      .flatMap(({ completionEvents }) => completionEvents)
      .filter((event) => event.startsWith('onContext:'));
    assert.equal(contexts.length, 3);
    for (const context of contexts)
      assert.ok(done.includes(`'${context.replace('onContext:tagwright.', '')}'`), context);
    for (const { description } of contributes.walkthroughs.flatMap(({ steps }) => steps))
      assert.doesNotMatch(description, /`/, 'shown as it stands');
  });

  it('has a walkthrough whose pictures and commands are there', () => {
    const steps = contributes.walkthroughs.flatMap((walkthrough) => walkthrough.steps);
    assert.equal(steps.length, 5);
    for (const { description, media, completionEvents } of steps) {
      // Copied there when it is built.
      const picture = join(root, media.image.replace(/^dist\//, 'src/'));
      assert.ok(statSync(picture).size < 200_000, media.image);
      assert.ok(media.altText.length > 20);
      const named = [...description.matchAll(/\(command:([\w.]+)\)/g)].map(([, command]) => command!);
      const awaited = completionEvents
        .filter((event) => event.startsWith('onCommand:'))
        .map((event) => event.slice(10));
      for (const command of [...named, ...awaited]) assert.ok(commands.includes(command), command);
    }
  });
});

describe('The shell of the list of samples', () => {
  it('allows its own script and style sheet and nothing else', () => {
    const html = samplesHtml({
      cspSource: 'https://own.invalid',
      scriptUri: 'https://own.invalid/s.js',
      styleUri: 'https://own.invalid/s.css',
    });
    const policy = /Content-Security-Policy" content="([^"]+)"/.exec(html)![1]!.replaceAll('&#39;', "'");
    assert.equal(policy, "default-src 'none'; style-src https://own.invalid; script-src https://own.invalid");
    assert.ok(!/ on\w+=| style=|<script>/.test(html));
  });
});
