/** “New Tag…”: kind, words, font and size by a few questions, with the preview following each answer before it is given. */

import * as vscode from 'vscode';
import { letteringOf, tagOf } from '../language/new-tag.ts';
import type { FontNote } from '../language/surroundings.ts';
import { parseLength } from '../spec/length.ts';
import { SpecSource } from '../spec/source.ts';
import { Draft } from './draft.ts';
import { back, pick, type } from './questions.ts';
import type { Answer } from './questions.ts';
import type { Sample, SampleLibrary } from './samples.ts';

interface Answers {
  readonly sample: Sample;
  readonly texts: readonly string[];
  readonly font?: string;
  readonly width?: string;
}

const title = 'New tag';
const widths = ['60 mm', '80 mm', '100 mm', '120 mm'];

/** Leaves an unsaved spec; nothing at all when it is called off. */
export async function newTag(library: SampleLibrary, fonts: readonly FontNote[]): Promise<vscode.Uri | undefined> {
  const samples = await library.all();
  const first = samples[0];
  if (!first) return undefined;
  const draft = await Draft.open('tag.tag.yaml', first.text);
  const answers = await ask(draft, samples, fonts);
  if (!answers) {
    await draft.discard();
    return undefined;
  }
  await draft.set(textOf(answers));
  await draft.show();
  return draft.uri;
}

/** Question by question, forwards and back. */
async function ask(draft: Draft, samples: readonly Sample[], fonts: readonly FontNote[]): Promise<Answers | undefined> {
  let answers: Answers = { sample: samples[0]!, texts: [] };
  const follow = (change: Partial<Answers>) => void draft.set(textOf({ ...answers, ...change }));
  for (let step = 1; ;) {
    const words = letteringOf(new SpecSource(answers.sample.text));
    const totalSteps = words.length + 3;
    const place = { title, step, totalSteps };
    let change: Answer<Partial<Answers>>;
    if (step === 1) {
      change = await pick({ ...place, placeholder: 'What kind of tag?', items: kinds(samples) }, follow);
    } else if (step <= words.length + 1) {
      const index = step - 2;
      const value = answers.texts[index] ?? words[index]!.text;
      const withWord = (word: string) => ({ texts: Object.assign([...answers.texts], { [index]: word }) });
      const prompt = words.length > 1 ? `Words ${index + 1} of ${words.length}` : 'The words on it';
      change = await type({ ...place, prompt, value }, withWord, follow);
    } else if (step === words.length + 2) {
      change = await pick({ ...place, placeholder: 'Which font?', items: fontItems(words[0]?.font, fonts) }, follow);
    } else {
      const placeholder = 'How wide, finished? Choose, or type a length such as 75 mm or 3 in';
      change = await pick({ ...place, placeholder, items: widthItems(''), itemsFor: widthItems }, follow);
    }
    if (change === undefined) return undefined;
    if (change === back) {
      step--;
      continue;
    }
    answers = { ...answers, ...change };
    if (step === totalSteps) return answers;
    step++;
  }
}

function textOf({ sample, texts, font, width }: Answers): string {
  return tagOf(sample.text, {
    texts,
    ...(font === undefined ? {} : { font }),
    ...(width === undefined ? {} : { width }),
  });
}

interface Item extends vscode.QuickPickItem {
  readonly value: Partial<Answers>;
}

/** Another kind has other words. */
function kinds(samples: readonly Sample[]): Item[] {
  return samples.map((sample) => ({ label: sample.title, detail: sample.purpose, value: { sample, texts: [] } }));
}

function fontItems(current: string | undefined, fonts: readonly FontNote[]): Item[] {
  const items = fonts.map(({ family, note }) => ({
    label: family,
    ...(note === undefined ? {} : { description: note }),
    value: { font: family },
  }));
  // The one it has comes first, so that Enter leaves it.
  return items.sort((a, b) => Number(b.label === current) - Number(a.label === current));
}

function widthItems(typed: string): Item[] {
  const length = typed.trim() === '' ? undefined : parseLength(typed, 'mm');
  if (length && 'mm' in length && length.mm > 0) {
    const width = /[a-z]$/.test(typed.trim()) ? typed.trim() : `${typed.trim()} mm`;
    return [{ label: width, value: { width } }];
  }
  return [
    { label: 'As it is', description: 'the size of the sample', value: {} },
    ...widths.map((width) => ({ label: width, value: { width } })),
  ];
}
