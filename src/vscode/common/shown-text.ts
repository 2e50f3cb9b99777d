/** Which text a view shows, for changes by hand that have to wait until it shows the present one. */

export class ShownText {
  readonly #mostMs: number;
  #text: string | undefined;
  #waiting = new Set<() => void>();

  /** @param mostMs Longest wait: a text may never be shown. */
  constructor(mostMs: number) {
    this.#mostMs = mostMs;
  }

  set(text: string): void {
    this.#text = text;
    for (const look of [...this.#waiting]) look();
  }

  /** Resolves once what is shown is of the present text, which may change meanwhile, or with false after the longest wait. */
  until(present: () => string): Promise<boolean> {
    const isShown = () => this.#text === present();
    if (isShown()) return Promise.resolve(true);
    return new Promise((resolve) => {
      const end = (result: boolean) => {
        clearTimeout(timer);
        this.#waiting.delete(look);
        resolve(result);
      };
      const look = () => {
        if (isShown()) end(true);
      };
      const timer = setTimeout(() => {
        end(false);
      }, this.#mostMs);
      this.#waiting.add(look);
    });
  }
}
