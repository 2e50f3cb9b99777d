/** Snippets in the syntax of editors, with tab stops, and the plain text that they start as. */

/** Numbers the tab stops of a snippet in the order in which they are visited. */
export class Stops {
  #next = 1;

  stop(text: string): string {
    return `\${${this.#next++}:${literal(text)}}`;
  }

  /** The first option is the initial text. */
  choice(options: readonly string[]): string {
    if (options.length < 2) return this.stop(options[0] ?? '');
    return `\${${this.#next++}|${options.map((option) => option.replace(/[\\,|$}]/g, '\\$&')).join(',')}|}`;
  }
}

/** Escapes text that stands for itself. */
export function literal(text: string): string {
  return text.replace(/[\\$}]/g, '\\$&');
}

const stopOrEscape = /\$\{\d+\|((?:\\.|[^\\|])*)\|\}|\$\{\d+:((?:\\.|[^\\}])*)\}|\$\d+|\\([\\$}])/g;

export function plainOf(snippet: string): string {
  return snippet.replace(stopOrEscape, (_, choice?: string, stop?: string, escaped?: string) => {
    if (choice !== undefined) return unescaped(/^(?:\\.|[^\\,])*/.exec(choice)![0]);
    return stop === undefined ? (escaped ?? '') : unescaped(stop);
  });
}

const unescaped = (text: string): string => text.replace(/\\(.)/g, '$1');

/** Text as a YAML value: plain if it cannot be misread in block or flow style, else quoted. */
export function yamlText(text: string): string {
  const plain = /^[A-Za-z][\w.+&'’() -]*$/.test(text) && !/ $|^(?:true|false|null)$/i.test(text);
  return plain ? text : JSON.stringify(text);
}
