/** Questions in the editor's quick input, single or in a series; the item in focus is previewed before it is chosen. */

import * as vscode from 'vscode';

/** Answer that goes back to the previous question. */
export const back = Symbol('back');

/** `undefined`: cancelled. */
export type Answer<T> = T | typeof back | undefined;

export interface Question {
  readonly title: string;
  /** Position in a series of questions, from 1. */
  readonly step?: number;
  readonly totalSteps?: number;
}

/** A choice without a value is a note that cannot be chosen. */
interface ChoiceItem<T> extends vscode.QuickPickItem {
  readonly value: T | undefined;
}

export function askPick<T>(
  question: Question & {
    readonly prompt: string;
    /** May come later than the list, which then takes what is typed meanwhile. */
    readonly items: readonly ChoiceItem<T>[] | Promise<readonly ChoiceItem<T>[]>;
    /** Put in front of the items once they are known. Until then the note stands there, so that nothing is chosen by itself. */
    readonly moreItems?: { readonly note: string; readonly found: Promise<readonly ChoiceItem<T>[]> };
    /** Items for the typed text. */
    readonly itemsFor?: (typed: string) => readonly ChoiceItem<T>[];
  },
  follow: (value: T) => void,
): Promise<Answer<T>> {
  const input = vscode.window.createQuickPick<ChoiceItem<T>>();
  input.matchOnDetail = true;
  input.matchOnDescription = true;
  const { itemsFor, moreItems } = question;
  let isTyped = false;
  const list = (items: readonly ChoiceItem<T>[]): void => {
    const isNew = moreItems !== undefined;
    input.items = isNew ? [{ label: moreItems.note, value: undefined }, ...items] : items;
    input.busy = isNew;
    void moreItems?.found.then((more) => {
      input.busy = false;
      if (isTyped) return;
      const chosen = input.activeItems.filter(({ value }) => value !== undefined);
      input.items = [...more, ...items];
      if (chosen.length > 0) input.activeItems = chosen;
    });
  };
  if ('then' in question.items) {
    input.busy = true;
    question.items.then(list, () => {
      input.hide();
    });
  } else list(question.items);
  if (itemsFor) {
    input.onDidChangeValue((typed) => {
      isTyped = true;
      input.items = itemsFor(typed).map((item) => ({ ...item, alwaysShow: true }));
    });
  }
  input.onDidChangeActive(([item]) => {
    if (item?.value !== undefined) follow(item.value);
  });
  // A placeholder would be shown as a tooltip as well, over the title.
  const asked = { ...question, title: `${question.title}: ${question.prompt}` };
  return answered(input, asked, () => input.activeItems[0]?.value);
}

export function askText<T>(
  question: Question & {
    readonly prompt: string;
    readonly value: string;
    /** Error message for an empty input, which is not allowed. */
    readonly emptiness: string;
    /** Warning about a typed value, which is accepted all the same. */
    readonly warningOf: (value: T) => Promise<string | undefined>;
    /** What becomes of what is typed if it was pasted, given the clipboard; an input of one line makes spaces of line ends. */
    readonly pasted?: (typed: string, clipboard: string) => string | undefined;
  },
  valueOf: (typed: string) => T,
  follow: (value: T) => void,
): Promise<Answer<T>> {
  const input = vscode.window.createInputBox();
  input.prompt = question.prompt;
  input.value = question.value;
  input.valueSelection = [0, question.value.length];
  const { Warning, Error: error } = vscode.InputBoxValidationSeverity;
  const isBlank = () => input.value.trim() === '';
  const judge = async () => {
    input.validationMessage = isBlank() ? { message: question.emptiness, severity: error } : undefined;
    if (isBlank()) return;
    const judged = input.value;
    const message = await question.warningOf(valueOf(judged));
    if (message !== undefined && input.value === judged) input.validationMessage = { message, severity: Warning };
  };
  let before = input.value;
  input.onDidChangeValue(async (typed) => {
    const mayBePasted = Math.abs(typed.length - before.length) > 1 && /\s/.test(typed);
    before = typed;
    const { pasted } = question;
    // A browser may not allow it.
    const clipboard = pasted && mayBePasted ? await vscode.env.clipboard.readText().then(String, () => '') : '';
    const meant = pasted?.(typed, clipboard);
    if (meant !== undefined && input.value === typed) input.value = before = meant;
    if (!isBlank()) follow(valueOf(input.value));
    void judge();
  });
  void judge();
  return answered(input, question, () => (isBlank() ? undefined : valueOf(input.value)));
}

/** Ignores Enter while there is no answer to accept. */
function answered<T>(
  input: vscode.QuickPick<ChoiceItem<T>> | vscode.InputBox,
  { title, step = 1, totalSteps = 1 }: Question,
  answer: () => T | undefined,
): Promise<Answer<T>> {
  input.title = title;
  if (totalSteps > 1) {
    input.step = step;
    input.totalSteps = totalSteps;
  }
  // The preview takes a moment to open, and must not close the question when it does.
  input.ignoreFocusOut = true;
  if (step > 1) input.buttons = [vscode.QuickInputButtons.Back];
  return new Promise((resolve) => {
    const settle = (result: Answer<T>) => {
      resolve(result);
      input.dispose();
    };
    input.onDidTriggerButton(() => {
      settle(back);
    });
    input.onDidAccept(() => {
      const result = answer();
      if (result !== undefined) settle(result);
    });
    input.onDidHide(() => {
      settle(undefined);
    });
    input.show();
  });
}
