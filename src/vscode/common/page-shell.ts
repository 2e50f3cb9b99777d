/** HTML shell shared by all pages of the extension. */

import { escaped } from './escape-html.ts';

export interface PageSources {
  /** Source of the script and the style sheet, for the content security policy. */
  readonly cspSource: string;
  readonly scriptUri: string;
  readonly styleUri: string;
}

export interface PageParts {
  readonly title: string;
  /** HTML of the body, before the script. */
  readonly body: string;
  readonly attributes?: Readonly<Record<string, string>>;
  /** If given, only a script with this nonce may run. */
  readonly nonce?: string;
}

export function pageShell(
  { cspSource, scriptUri, styleUri }: PageSources,
  { title, body, attributes = {}, nonce }: PageParts,
): string {
  const scripts = nonce === undefined ? cspSource : `'nonce-${nonce}'`;
  const policy = `default-src 'none'; style-src ${cspSource}; script-src ${scripts}`;
  const given = Object.entries(attributes).map(([name, value]) => ` ${name}="${escaped(value)}"`);
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${escaped(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${escaped(styleUri)}">
<title>${escaped(title)}</title>
</head>
<body${given.join('')}>
${body}
<script${nonce === undefined ? '' : ` nonce="${escaped(nonce)}"`} src="${escaped(scriptUri)}"></script>
</body>
</html>`;
}
