/** Text to insert with stops to fill in, in the snippet syntax of editors; and the same as the plain text it starts out as. */

/** Numbers the stops of one snippet in the order in which they are asked for. */
export class Stops {
  #next = 1;

  stop(text: string): string {
    return `\${${this.#next++}:${literal(text)}}`;
  }

  /** The first is what stands there until another is chosen. */
  choice(options: readonly string[]): string {
    if (options.length < 2) return this.stop(options[0] ?? '');
    return `\${${this.#next++}|${options.map((option) => option.replace(/[\\,|$}]/g, '\\$&')).join(',')}|}`;
  }
}

/** Text that means itself. */
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

/** Text as a YAML value: plain where it cannot be taken for anything else, in whatever style stands around it. */
export function yamlText(text: string): string {
  const plain = /^[A-Za-z][\w.+&'’() -]*$/.test(text) && !/ $|^(?:true|false|null)$/i.test(text);
  return plain ? text : JSON.stringify(text);
}
