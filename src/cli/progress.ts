/** Tells on stderr how far a command is: on a terminal in a line that is written over, else line by line if it is asked for. */

/** Shortest time between two lines about the same step, in ms. */
const pauseMs = { line: 100, lines: 1000 } as const;

const eraseLine = '\r\u001b[2K';

/** What is used of a stream of the process. */
export interface Output {
  write(text: string): boolean;
  readonly isTTY?: boolean;
  readonly columns?: number;
}

export class Progress {
  readonly #how: 'line' | 'lines' | 'none';
  readonly #columns: number;
  readonly #write: (text: string) => unknown;
  readonly #restore: (() => void)[] = [];
  #step = '';
  #last = 0;
  #isShown = false;

  /** `beside`: what else is seen on the same terminal. */
  constructor(isAsked: boolean, output: Output = process.stderr, beside: readonly Output[] = [process.stdout]) {
    this.#how = output.isTTY === true ? 'line' : isAsked ? 'lines' : 'none';
    this.#columns = output.columns ?? 80;
    this.#write = output.write.bind(output);
    if (this.#how === 'line') for (const each of [output, ...beside]) this.#clearBefore(each);
  }

  /** `step`: what is under way. It is told at once, and again after a pause. */
  tell(step: string, words: string): void {
    if (this.#how === 'none') return;
    const now = performance.now();
    if (step === this.#step && now - this.#last < pauseMs[this.#how]) return;
    [this.#step, this.#last] = [step, now];
    if (this.#how === 'lines') {
      this.#write(`${words}\n`);
      return;
    }
    this.#clear();
    this.#write(words.slice(0, this.#columns - 1));
    this.#isShown = true;
  }

  end(): void {
    this.#clear();
    for (const restore of this.#restore.splice(0)) restore();
  }

  /** Other output begins where the line stands. */
  #clearBefore(output: Output): void {
    const write = output.write.bind(output);
    output.write = (...given) => {
      this.#clear();
      return write(...given);
    };
    this.#restore.push(() => (output.write = write));
  }

  #clear(): void {
    if (this.#isShown) this.#write(eraseLine);
    this.#isShown = false;
  }
}
