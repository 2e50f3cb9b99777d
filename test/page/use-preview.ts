/** Opens pages for the tests of a `describe` and closes them; a page with errors fails its test. */

import assert from 'node:assert/strict';
import type { Page } from 'playwright-core';
import type { SceneMessage, ToHost, ToPage } from '../../src/protocol/preview.ts';
import { openPage, type PageOptions, type PreviewPage } from './harness.ts';
import { sceneMessage } from './scenes.ts';

export function usePreview(): Preview {
  const preview = new Preview();
  afterEach(async () => {
    await preview.close();
  });
  return preview;
}

class Preview {
  private opened: PreviewPage | undefined;

  async open(options: PageOptions = {}, message: SceneMessage = sceneMessage()): Promise<void> {
    this.opened = await openPage(options);
    await this.opened.send(message);
  }

  async close(): Promise<void> {
    const { opened } = this;
    this.opened = undefined;
    await opened?.close();
    assert.deepEqual(opened?.errors ?? [], []);
  }

  get page(): Page {
    return this.opened!.page;
  }

  send(message: ToPage): Promise<void> {
    return this.opened!.send(message);
  }

  messages(): Promise<ToHost[]> {
    return this.opened!.messages();
  }

  state(): Promise<unknown> {
    return this.opened!.state();
  }

  transform(): Promise<string> {
    return this.opened!.transform();
  }

  elapse(): Promise<void> {
    return this.opened!.elapse();
  }

  /** By the menu, or by its pill where the row has room for those. */
  async toggleLayer(layer: string): Promise<void> {
    const pill = this.page.locator(`[data-layer=${layer}]`);
    if (await pill.isVisible()) {
      await pill.click();
      return;
    }
    const name = await pill.textContent();
    await this.page.locator('#layers-button').click();
    await this.page.getByRole('menuitemcheckbox', { name: new RegExp(`^${name!}`) }).click();
    await this.page.keyboard.press('Escape');
  }

  /** Marks elements; `branded` then counts those that are still the same ones. */
  brand(selector: string): Promise<number> {
    return this.page.locator(selector).evaluateAll((elements) => {
      for (const element of elements) Object.assign(element, { branded: true });
      return elements.length;
    });
  }

  branded(selector: string): Promise<number> {
    return this.page
      .locator(selector)
      .evaluateAll((elements) => elements.filter((element) => 'branded' in element).length);
  }
}
