/** “New Tag…”: asks for kind, words, font and size; the preview shows each answer before it is given. */

import * as vscode from 'vscode';
import type { Engine } from '../../engine/engine.ts';
import { withEdits, findFixes } from '../../fixes/find-fixes.ts';
import type { Fix } from '../../core/issue.ts';
import { fromWorkshop, isOnePiece, kindNames, letteringOf, sampleIn, tagOf } from '../../language/new-tag.ts';
import { plainName } from '../../export/file-names.ts';
import { SpecSource } from '../../spec/yaml/source.ts';
import { computeOptions } from '../service/compute-options.ts';
import { inBackground } from '../common/background.ts';
import { DraftDocument } from './draft.ts';
import { back, askPick, askText } from '../common/quick-input.ts';
import type { Answer } from '../common/quick-input.ts';
import { withoutFirstComment } from '../samples/sample-library.ts';
import type { Sample, SampleLibrary } from '../samples/sample-library.ts';
import type { WorkspaceContext } from '../service/workspace-context.ts';
import type { SpecMoves } from '../service/spec-moves.ts';
import type { Units } from '../../core/units.ts';
import type { SharedGroup } from '../../language/shared-values.ts';
import { pathFrom, sharedEntries, unitsOfNewTags } from './workshop-files.ts';
import { kinds, fontItems, workshopItems, fixItem, widthItems } from './new-tag-items.ts';
import type { Answers, AnswerItem, WorkshopNote } from './new-tag-items.ts';

export interface NewTagServices {
  readonly samples: SampleLibrary;
  readonly engine: Engine;
  readonly moves: SpecMoves;
  readonly surroundings: WorkspaceContext;
  /** Keeps the drawing in a preview below a list of so many rows at the top of the window; 0: no longer. */
  readonly cover: (spec: vscode.Uri, rows: number) => void;
}

const title = 'New tag';
/** Rows below a text that is typed: its prompt, and a warning. */
const rowsOfText = 2;
/** Rows of the fixes that come, most of which take two. */
const rowsOfFixes = 8;

/** Creates an unsaved spec named after its words; leaves nothing behind if it is cancelled. */
export async function newTag(services: NewTagServices): Promise<vscode.Uri | undefined> {
  const { samples, engine, moves, surroundings, cover } = services;
  const units = await unitsOfNewTags();
  const all = (await samples.all())
    .filter(({ fileName }) => fileName in kindNames)
    .map((sample) => ({ ...sample, text: sampleIn(units, sample.text) }));
  const first = all[0];
  if (!first) return undefined;
  // Files of a workshop lie in folders, so without one there are none.
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  const notes = async (group: SharedGroup) =>
    folder ? (await sharedEntries(group)).map((each) => ({ ...each, file: pathFrom(folder, each.uri) })) : [];
  const workshop = { units, stock: await notes('stocks'), tie: await notes('ties') };
  // The question comes at once, lest what is typed goes into a text.
  const opening = DraftDocument.open('tag.tag.yaml', withoutFirstComment(first.text), true);
  // Fonts are listed until they are asked for.
  const listing = opening.then((draft) => surroundings.withFiles(draft.home));
  inBackground(listing, 'list the fonts');
  const coverDraft = (rows: number): void => {
    const covering = opening.then((draft) => {
      cover(draft.uri, rows);
    });
    inBackground(covering, 'make room for a question');
  };
  const answers = await new Questions(opening, engine, all, surroundings, workshop, coverDraft).ask();
  const draft = await opening;
  if (!answers) {
    await draft.discard();
    return undefined;
  }
  cover(draft.uri, 0);
  await draft.set(specTextOf(answers));
  await draft.rename(`${plainName(sampleTexts(answers).join(' '))}.tag.yaml`, moves);
  await draft.show();
  return draft.uri;
}

interface Workshop {
  readonly units: Units;
  readonly stock: readonly WorkshopNote[];
  readonly tie: readonly WorkshopNote[];
}

/** Asked only where the workshop has any. */
const workshopQuestions = {
  stock: 'What is it cut from? Stocks of your workshop file',
  tie: 'What does it hang on? Ties of your workshop file',
} as const;
const workshopKeys = ['stock', 'tie'] as const;

class Questions {
  #answers: Answers;
  /** Aborts what is being tried for the present question. */
  #trying = new AbortController();

  constructor(
    private readonly opening: Promise<DraftDocument>,
    private readonly engine: Engine,
    private readonly samples: readonly Sample[],
    private readonly surroundings: WorkspaceContext,
    private readonly workshop: Workshop,
    private readonly cover: (rows: number) => void,
  ) {
    this.#answers = { sample: samples[0]!, texts: [] };
  }

  async ask(): Promise<Answers | undefined> {
    try {
      return await this.#askAll();
    } finally {
      this.#trying.abort();
    }
  }

  /** Asks question by question, forwards and back. */
  async #askAll(): Promise<Answers | undefined> {
    for (let step = 1; ;) {
      // The question about loose parts is asked only if there are any.
      const fixes = step > this.#steps ? await this.#fixes() : undefined;
      if (step > this.#steps && !fixes) return this.#answers;
      const change = fixes ? await this.#askHold(step, fixes.found) : await this.#askStep(step);
      this.#trying.abort();
      this.#trying = new AbortController();
      if (change === undefined) return undefined;
      if (change === back) {
        step--;
        continue;
      }
      this.#answers = { ...this.#answers, ...change };
      if (step > this.#steps) return this.#answers;
      step++;
    }
  }

  get #words() {
    return letteringOf(new SpecSource(this.#answers.sample.text));
  }

  /** Number of questions: kind, each text, font, width, and what the workshop has. */
  get #steps(): number {
    return this.#words.length + 3 + this.#ofWorkshop.length;
  }

  get #ofWorkshop() {
    return workshopKeys.filter((key) => this.workshop[key].length > 0);
  }

  readonly #follow = (change: Partial<Answers>): void => {
    const text = specTextOf({ ...this.#answers, fix: undefined, ...change });
    inBackground(
      this.opening.then((draft) => draft.set(text)),
      'show an answer',
    );
  };

  /** A choice from a list, below which the drawing stands. */
  #pick(question: Parameters<typeof askPick<Partial<Answers>>>[0]): Promise<Answer<Partial<Answers>>> {
    this.cover(question.items.length + (question.moreItems ? rowsOfFixes : 0));
    return askPick(question, this.#follow);
  }

  #askStep(step: number): Promise<Answer<Partial<Answers>>> {
    const words = this.#words;
    const place = { title, step, totalSteps: this.#steps };
    if (step === 1) {
      return this.#pick({ ...place, prompt: 'What kind of tag?', items: kinds(this.samples) });
    }
    if (step <= words.length + 1) {
      const index = step - 2;
      const value = this.#answers.texts[index] ?? words[index]!.text;
      const withWord = (word: string) => ({ texts: Object.assign([...this.#answers.texts], { [index]: word }) });
      const prompt = words.length > 1 ? `Words ${index + 1} of ${words.length}` : 'The words on it';
      const emptiness = 'Type the words for the tag.';
      const warningOf = (change: Partial<Answers>) => this.#missingLetters(change);
      this.cover(rowsOfText);
      return askText({ ...place, prompt, value, emptiness, warningOf }, withWord, this.#follow);
    }
    if (step === words.length + 2) {
      return this.#askFont(place, words[0]?.font);
    }
    const key = this.#ofWorkshop[step - words.length - 4];
    if (key) {
      const items = workshopItems(key, this.workshop[key]);
      return this.#pick({ ...place, prompt: workshopQuestions[key], items });
    }
    const whole = isOnePiece(new SpecSource(this.#answers.sample.text));
    const what = whole ? 'How wide is the finished tag?' : `How wide is “${sampleTexts(this.#answers)[0] ?? ''}”?`;
    const { units } = this.workshop;
    const prompt = `${what} Choose, or type a length such as ${units === 'mm' ? '75 mm or 3 in' : '3 1/4 in or 80 mm'}`;
    const itemsFor = (typed: string) => widthItems(typed, units);
    return this.#pick({ ...place, prompt, items: itemsFor(''), itemsFor });
  }

  async #askFont(place: { title: string; step: number; totalSteps: number }, current: string | undefined) {
    const { fonts, files } = await this.surroundings.withFiles((await this.opening).home);
    const items = fontItems(current, fonts, files);
    return this.#pick({ ...place, prompt: 'Which font?', items });
  }

  #askHold(step: number, fixes: Promise<readonly Fix[]>): Promise<Answer<Partial<Answers>>> {
    const items: AnswerItem[] = [{ label: 'Leave it as it is', description: 'marked in the preview', value: {} }];
    const found = fixes.then(
      (all) => all.map(fixItem),
      () => [],
    );
    const moreItems = { note: 'Looking for what holds it…', found };
    const prompt = 'A part of it would fall out. What holds it?';
    return this.#pick({ title, step, totalSteps: step, prompt, items, moreItems });
  }

  async #missingLetters(change: Partial<Answers>): Promise<string | undefined> {
    const report = await this.#report({ ...this.#answers, ...change }).catch(() => undefined);
    return report?.issues.find(({ code }) => code === 'missing-glyph')?.message;
  }

  /**
   * `undefined` if nothing would drop out. Trying the fixes takes a while, during which the question is already shown.
   */
  async #fixes(): Promise<{ readonly found: Promise<readonly Fix[]> } | undefined> {
    this.#answers = { ...this.#answers, fix: undefined };
    const report = await this.#report(this.#answers);
    const loose = report.issues.find(({ code }) => code === 'loose-part');
    return loose && { found: findFixes(this.engine, report, loose, await this.#options()) };
  }

  async #report(answers: Answers) {
    return this.engine.compute(specTextOf(answers), await this.#options());
  }

  async #options() {
    const { signal } = this.#trying;
    return computeOptions((await this.opening).uri, signal);
  }
}

function specTextOf({ sample, texts, font, width, fix, ...answers }: Answers): string {
  const made = tagOf(withoutFirstComment(sample.text), {
    texts,
    ...(font === undefined ? {} : { font }),
    ...(width === undefined ? {} : { width }),
  });
  const text = workshopKeys.reduce((spec, key) => {
    const chosen = answers[key];
    return chosen ? fromWorkshop(spec, key, chosen.file, chosen.name) : spec;
  }, made);
  return fix ? withEdits(text, fix.edits) : text;
}

function sampleTexts({ sample, texts }: Answers): string[] {
  return letteringOf(new SpecSource(sample.text)).map(({ text }, index) => texts[index]?.trim() || text);
}
