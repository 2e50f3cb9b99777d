/** The questions of “New Tag…”, one after the other, forwards and back; each answer is followed in the draft. */

import type { Fix } from '../../core/issue.ts';
import { eachReport } from '../../engine/batch.ts';
import type { Engine } from '../../engine/engine.ts';
import { findFixes } from '../../fixes/find-fixes.ts';
import { isOnePiece, kindNames, letteringOf, namesToAsk, wordsToAsk } from '../../language/new-tag.ts';
import { namesIn, withPastedLines } from '../../language/names-of-batch.ts';
import { isSound, mostTimesFor, widthThatHolds } from '../../language/width-that-holds.ts';
import { SpecSource } from '../../spec/yaml/source.ts';
import { computeOptions } from '../service/compute-options.ts';
import { inBackground } from '../common/background.ts';
import { back, askPick, askText } from '../common/quick-input.ts';
import type { Answer, Question } from '../common/quick-input.ts';
import type { WorkspaceContext } from '../service/workspace-context.ts';
import type { Units } from '../../core/units.ts';
import type { DraftDocument } from './draft.ts';
import { kinds, fontItems, workshopItems, workshopKeys, fixItem, widerItem, widthItems } from './new-tag-items.ts';
import type { Answers, AnswerItem, WorkshopNote } from './new-tag-items.ts';
import { specTextOf, wordsOf } from './new-tag-text.ts';
import type { Sample } from '../samples/sample-library.ts';

/** What is read before the second question. */
export interface Prepared {
  readonly samples: readonly Sample[];
  readonly units: Units;
  readonly stock: readonly WorkshopNote[];
  readonly tie: readonly WorkshopNote[];
}

const title = 'New tag';
/** Rows below a text that is typed: its prompt, and a warning. */
const rowsOfText = 2;
/** Rows of the fixes that come, most of which take two. */
const rowsOfFixes = 8;

/** Asked only where the workshop has any. */
const workshopQuestions = {
  stock: 'What is it cut from? Stocks of your workshop file',
  tie: 'What does it hang on? Ties of your workshop file',
} as const;

type Given = Answer<Partial<Answers>>;
type Ask = (place: Question) => Promise<Given>;

export class Questions {
  /** Empty until the first is answered, with a sample. */
  #answers = {} as Answers;
  /** Aborts what is being tried for the present question. */
  #trying = new AbortController();

  constructor(
    private readonly opening: Promise<DraftDocument>,
    private readonly engine: Engine,
    private readonly prepared: Promise<Prepared>,
    private readonly surroundings: WorkspaceContext,
    private readonly cover: (rows: number) => void,
  ) {}

  async ask(): Promise<Answers | undefined> {
    try {
      return await this.#askAll();
    } finally {
      this.#trying.abort();
    }
  }

  async #askAll(): Promise<Answers | undefined> {
    for (let step = 1; ;) {
      const questions = step === 1 ? [this.#askKind] : await this.#questions();
      const ask = questions[step - 1];
      // The question about loose parts is asked only if there are any.
      const fixes = ask ? undefined : await this.#fixes();
      if (!ask && !fixes) return this.#answers;
      const change = await (ask?.({ title, step, totalSteps: questions.length }) ??
        this.#askHold({ title, step, totalSteps: step }, fixes!.found));
      this.#tryAnew();
      if (change === undefined) return undefined;
      if (change === back) {
        step--;
        continue;
      }
      this.#answers = { ...this.#answers, ...change };
      if (fixes) return this.#answers;
      step++;
    }
  }

  async #questions(): Promise<Ask[]> {
    const source = this.#sample;
    const workshop = await this.prepared;
    return [
      this.#askKind,
      ...(namesToAsk(source) ? [this.#askNames] : []),
      ...wordsToAsk(source).map(
        (_, index): Ask =>
          (place) =>
            this.#askWords(place, index),
      ),
      this.#askFont,
      this.#askWidth,
      ...workshopKeys
        .filter((key) => workshop[key].length > 0)
        .map((key): Ask => (place) => {
          const items = workshopItems(key, workshop[key]);
          return this.#pick({ ...place, prompt: workshopQuestions[key], items });
        }),
    ];
  }

  get #sample(): SpecSource {
    return new SpecSource(this.#answers.sample.text);
  }

  #tryAnew(): void {
    this.#trying.abort();
    this.#trying = new AbortController();
  }

  readonly #follow = (change: Partial<Answers>): void => {
    const text = specTextOf({ ...this.#answers, fix: undefined, ...change });
    inBackground(
      this.opening.then((draft) => draft.set(text)),
      'show an answer',
    );
  };

  /** A choice from a list, below which the drawing stands. */
  #pick(question: Parameters<typeof askPick<Partial<Answers>>>[0], rows?: number): Promise<Given> {
    const { items } = question;
    this.cover(rows ?? ('length' in items ? items.length : 0) + (question.moreItems ? rowsOfFixes : 0));
    return askPick(question, this.#follow);
  }

  /** Asked before anything is read, lest what is typed at once is lost. */
  readonly #askKind: Ask = () => {
    const items = this.prepared.then(({ samples }) => kinds(samples));
    return this.#pick({ title, prompt: 'What kind of tag?', items }, Object.keys(kindNames).length);
  };

  readonly #askNames: Ask = (place) => {
    const { names } = namesToAsk(this.#sample)!;
    const value = (this.#answers.names ?? names).join(', ');
    const prompt = 'The names, separated by commas, or pasted one a line';
    const emptiness = 'Type the names for the tags.';
    const warningOf = (change: Partial<Answers>) => this.#missingLetters(change);
    this.cover(rowsOfText);
    const asked = { ...place, prompt, value, emptiness, warningOf, pasted: withPastedLines };
    return askText(asked, (typed) => ({ names: namesIn(typed) }), this.#follow);
  };

  #askWords(place: Question, index: number): Promise<Given> {
    const words = wordsToAsk(this.#sample);
    const value = this.#answers.texts[index] ?? words[index]!.text;
    const withWord = (word: string) => ({ texts: Object.assign([...this.#answers.texts], { [index]: word }) });
    const prompt = words.length > 1 ? `Words ${index + 1} of ${words.length}` : 'The words on it';
    const emptiness = 'Type the words for the tag.';
    const warningOf = (change: Partial<Answers>) => this.#missingLetters(change);
    this.cover(rowsOfText);
    return askText({ ...place, prompt, value, emptiness, warningOf }, withWord, this.#follow);
  }

  readonly #askFont: Ask = async (place) => {
    const { fonts, files } = await this.surroundings.withFiles((await this.opening).home);
    const items = fontItems(letteringOf(this.#sample)[0]?.font, fonts, files);
    return this.#pick({ ...place, prompt: 'Which font?', items });
  };

  readonly #askWidth: Ask = async (place) => {
    const { units } = await this.prepared;
    const what = isOnePiece(this.#sample)
      ? 'How wide is the finished tag?'
      : `How wide is “${wordsOf(this.#answers)[0] ?? ''}”?`;
    const prompt = `${what} Choose, or type a length such as ${units === 'mm' ? '75 mm or 3 in' : '3 1/4 in or 80 mm'}`;
    const itemsFor = (typed: string) => widthItems(typed, units);
    const moreItems = await this.#widerIfNeeded(units);
    return this.#pick({ ...place, prompt, items: itemsFor(''), itemsFor, ...(moreItems ? { moreItems } : {}) });
  };

  /** Words may be too long for the width of the sample. */
  async #widerIfNeeded(units: Units) {
    const answers = { ...this.#answers, fix: undefined };
    const options = await this.#options();
    const compute = (width: string | undefined) => this.engine.compute(specTextOf({ ...answers, width }), options);
    const report = await compute(undefined);
    if (isSound(report)) return undefined;
    const own = wordsOf({ ...answers, texts: [] })[0] ?? '';
    const longer = (wordsOf(answers)[0] ?? '').length / Math.max(1, own.length);
    const found = widthThatHolds(report, compute, units, mostTimesFor(longer)).then(
      (width) => (width === undefined ? [] : [widerItem(width)]),
      () => [],
    );
    return { note: 'Looking for a width at which these words hold…', found };
  }

  #askHold(place: Question, fixes: Promise<readonly Fix[]>): Promise<Given> {
    const items: AnswerItem[] = [{ label: 'Leave it as it is', description: 'marked in the preview', value: {} }];
    const found = fixes.then(
      (all) => all.map(fixItem),
      () => [],
    );
    const moreItems = { note: 'Looking for what holds it…', found };
    const prompt = 'A part of it would fall out. What holds it?';
    return this.#pick({ ...place, prompt, items, moreItems });
  }

  /** Of any tag that is made of the answers. */
  async #missingLetters(change: Partial<Answers>): Promise<string | undefined> {
    this.#tryAnew();
    const options = await this.#options();
    try {
      const first = await this.engine.compute(specTextOf({ ...this.#answers, ...change }), options);
      for await (const { issues } of eachReport(this.engine, first, options)) {
        const missing = issues.find(({ code }) => code === 'missing-glyph');
        if (missing) return missing.message;
      }
    } catch {
      // Something else has been typed.
    }
    return undefined;
  }

  /**
   * `undefined` if nothing would drop out. Trying the fixes takes a while, during which the question is already shown.
   */
  async #fixes(): Promise<{ readonly found: Promise<readonly Fix[]> } | undefined> {
    this.#answers = { ...this.#answers, fix: undefined };
    const options = await this.#options();
    const report = await this.engine.compute(specTextOf(this.#answers), options);
    const loose = report.issues.find(({ code }) => code === 'loose-part');
    return loose && { found: findFixes(this.engine, report, loose, options) };
  }

  async #options() {
    const { signal } = this.#trying;
    return computeOptions((await this.opening).uri, signal);
  }
}
