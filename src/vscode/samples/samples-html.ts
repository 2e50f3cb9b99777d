/** The static shell of the list of samples. */

export interface SamplesShell {
  /** What the content security policy calls the place of the script and the style sheet. */
  readonly cspSource: string;
  readonly scriptUri: string;
  readonly styleUri: string;
}

export function samplesHtml({ cspSource, scriptUri, styleUri }: SamplesShell): string {
  const policy = `default-src 'none'; style-src ${cspSource}; script-src ${cspSource}`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${styleUri}">
<title>Tag samples</title>
</head>
<body>
<main>
  <input id="filter" type="search" placeholder="Filter" aria-label="Filter samples" autocomplete="off" spellcheck="false">
  <ul id="samples" aria-label="Tag samples"></ul>
  <p id="none" role="status" hidden>No sample is like that.</p>
</main>
<script src="${scriptUri}"></script>
</body>
</html>`;
}
