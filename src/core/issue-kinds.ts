/** Every kind of issue by its public code, with what it is about, its default severity and a short summary. */

/** `error`: the tag cannot be made as written. `warning`: it can, and will disappoint. `info`: worth a look. */
export type Severity = 'error' | 'warning' | 'info';

export interface IssueKind {
  /**
   * `text`: the spec cannot be understood, so no tag is made. `resources`: fonts, files and shapes from which nothing
   * can be made. `making`: found by a check on the finished tag.
   */
  readonly about: 'text' | 'resources' | 'making';
  readonly severity: Severity;
  readonly summary: string;
}

export const issueKinds = {
  'yaml-syntax': { about: 'text', severity: 'error', summary: 'The text is not YAML.' },
  'file-too-large': { about: 'text', severity: 'error', summary: 'The file is too large for a spec.' },
  'not-a-spec': { about: 'text', severity: 'error', summary: 'The text is not a tag spec.' },
  'unknown-key': { about: 'text', severity: 'error', summary: 'A key that does not exist.' },
  'missing-key': { about: 'text', severity: 'error', summary: 'A required key is missing.' },
  'bad-value': { about: 'text', severity: 'error', summary: 'A value that does not fit its key.' },
  'bad-length': { about: 'text', severity: 'error', summary: 'A length that cannot be read or used.' },
  'unknown-shape': { about: 'text', severity: 'error', summary: 'No shape of that name.' },
  'unknown-piece': { about: 'text', severity: 'error', summary: 'No piece of that name.' },
  'unknown-hanger': { about: 'text', severity: 'error', summary: 'No hanger of that name.' },
  'unknown-name': {
    about: 'text',
    severity: 'error',
    summary: 'No stock, tie or column of that name.',
  },
  'name-clash': { about: 'text', severity: 'error', summary: 'Two files define the same name.' },
  cycle: { about: 'text', severity: 'error', summary: 'A shape made from itself, or a piece glued on itself.' },
  'odd-comment': { about: 'making', severity: 'info', summary: 'An “accept” comment that has no effect.' },

  'bad-file': { about: 'resources', severity: 'error', summary: 'A file that cannot be read or used.' },
  'empty-shape': { about: 'resources', severity: 'error', summary: 'Nothing is left of a shape.' },
  'unknown-font': { about: 'resources', severity: 'error', summary: 'No font of that name.' },
  'bad-font': { about: 'resources', severity: 'error', summary: 'A font that cannot be used.' },
  'missing-glyph': { about: 'resources', severity: 'error', summary: 'A letter that the font does not have.' },

  'loose-part': { about: 'making', severity: 'error', summary: 'A part is joined to nothing and falls out.' },
  'weak-bridge': { about: 'making', severity: 'warning', summary: 'A bridge or wall narrower than min_web.' },
  'thin-stroke': { about: 'making', severity: 'warning', summary: 'A long stroke narrower than min_web.' },
  'hanger-weak': {
    about: 'making',
    severity: 'warning',
    summary: 'A ring whose joint or wall is narrower than min_web.',
  },
  'hole-near-edge': {
    about: 'making',
    severity: 'warning',
    summary: 'A hanger’s hole too close to an edge, or open to it.',
  },
  'hole-too-small': { about: 'making', severity: 'warning', summary: 'The tie does not fit through the hole.' },
  'hole-blocked': { about: 'making', severity: 'warning', summary: 'Something is in the way of the tie.' },
  speck: { about: 'making', severity: 'warning', summary: 'A hole or part so small that it burns out or is lost.' },
  'gap-closes': { about: 'making', severity: 'warning', summary: 'A gap narrower than the kerf.' },
  'sharp-point': { about: 'making', severity: 'warning', summary: 'A point so thin that it burns away or breaks off.' },
  'off-backing': {
    about: 'making',
    severity: 'warning',
    summary: 'A glued piece that overhangs its backing, or touches nothing.',
  },
  'pieces-overlap': {
    about: 'making',
    severity: 'warning',
    summary: 'Glued pieces that overlap, or hide something that should be seen.',
  },
  'shoulder-shows': {
    about: 'making',
    severity: 'warning',
    summary: 'A corner of a stacked shape pokes out, or what stands out of it is lost.',
  },
  'score-shows': {
    about: 'making',
    severity: 'warning',
    summary: 'A placement line that the glued piece does not hide.',
  },
  'mark-off-body': { about: 'making', severity: 'warning', summary: 'Engraving or scoring that runs off the edge.' },
  'marks-overlap': { about: 'making', severity: 'warning', summary: 'Marks on one piece that overlap.' },
  'hard-to-read': { about: 'making', severity: 'warning', summary: 'Lettering that will be hard to read.' },
  'hard-to-scan': { about: 'making', severity: 'warning', summary: 'A code that a phone may not read.' },
  'fine-mark': { about: 'making', severity: 'info', summary: 'Engraved detail finer than the beam can draw.' },
  'off-centre': {
    about: 'making',
    severity: 'info',
    summary: 'Centred by the ruler, but not to the eye; or fitted all to one side.',
  },
  'sticks-out': {
    about: 'making',
    severity: 'info',
    summary: 'A name that ends just beyond its frame, or no room for a margin at a side.',
  },
  squeezed: {
    about: 'making',
    severity: 'info',
    summary: 'Fitted words that what is in their way keeps small or puts beside others.',
  },
  'uneven-sizes': {
    about: 'making',
    severity: 'info',
    summary: 'Names of a batch that come out at very different sizes, or that one of them keeps small.',
  },
  'uneven-hanging': {
    about: 'making',
    severity: 'info',
    summary: 'Names of a batch that hang from different sides.',
  },
  'not-drawn': {
    about: 'making',
    severity: 'warning',
    summary: 'Part of a drawing is left out of the shape.',
  },
  'cut-off-body': {
    about: 'making',
    severity: 'warning',
    summary: 'A cut that misses the piece or runs off its edge.',
  },
  'across-grain': {
    about: 'making',
    severity: 'info',
    summary: 'A long narrow piece of solid wood with the grain across it.',
  },
  'hangs-askew': { about: 'making', severity: 'info', summary: 'The tag hangs at a different angle than intended.' },
  'not-measured': {
    about: 'making',
    severity: 'info',
    summary: 'A stock that lacks a measurement this tag relies on.',
  },
  'exceeds-sheet': { about: 'making', severity: 'error', summary: 'A piece that does not fit the sheet.' },
  'not-filled': { about: 'making', severity: 'warning', summary: 'A {column} in words that nothing fills in.' },
  'not-as-approved': {
    about: 'making',
    severity: 'warning',
    summary: 'The tag has changed since the customer approved it.',
  },
  'renamed-key': { about: 'making', severity: 'info', summary: 'A key that has a new name.' },
  'other-style': {
    about: 'making',
    severity: 'info',
    summary: 'A font that lacks the weight, the italic or a letter asked for.',
  },
  'font-restricted': {
    about: 'making',
    severity: 'info',
    summary: 'A font marked as not for embedding.',
  },
  'odd-value': { about: 'making', severity: 'info', summary: 'A value that looks like a slip of the hand.' },
  'unsafe-material': { about: 'making', severity: 'error', summary: 'A material that must not be laser cut.' },
} as const satisfies Readonly<Record<string, IssueKind>>;

/** The public codes, as the Problems panel, the settings, the documentation and the command line's JSON show them. */
export type IssueCode = keyof typeof issueKinds;

export const issueCodes = Object.keys(issueKinds) as IssueCode[];

/** Codes used in the previous version, still accepted in comments, settings and on the command line. */
const oldCodes = new Map<string, IssueCode>([
  ['too-big', 'file-too-large'],
  ['too-large', 'exceeds-sheet'],
]);

/** The current code for a present or former one; any other word is returned unchanged. */
export function currentCode(code: string): string {
  return oldCodes.get(code) ?? code;
}

/** The code's name in the previous version, if it had another. */
export function oldCodeOf(code: IssueCode): string | undefined {
  return [...oldCodes].find(([, current]) => current === code)?.[0];
}

export function isIssueCode(text: string): text is IssueCode {
  return Object.hasOwn(issueKinds, text);
}
