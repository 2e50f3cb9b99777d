/** Questions in the editor's input at the top, alone or each of several, with what is pointed at told before it is chosen. */

import * as vscode from 'vscode';

/** The way to the question before. */
export const back = Symbol('back');

/** `undefined`: called off. */
export type Answer<T> = T | typeof back | undefined;

interface Question {
  readonly title: string;
  /** Of several questions, counting from 1. */
  readonly step?: number;
  readonly totalSteps?: number;
}

interface Choice<T> extends vscode.QuickPickItem {
  readonly value: T;
}

export function pick<T>(
  question: Question & {
    readonly placeholder: string;
    readonly items: readonly Choice<T>[];
    /** Other items for what is typed. */
    readonly itemsFor?: (typed: string) => readonly Choice<T>[];
  },
  follow: (value: T) => void,
): Promise<Answer<T>> {
  const input = vscode.window.createQuickPick<Choice<T>>();
  input.placeholder = question.placeholder;
  input.items = question.items;
  input.matchOnDetail = true;
  input.matchOnDescription = true;
  const { itemsFor } = question;
  if (itemsFor) {
    input.onDidChangeValue((typed) => {
      input.items = itemsFor(typed).map((item) => ({ ...item, alwaysShow: true }));
    });
  }
  input.onDidChangeActive(([item]) => {
    if (item) follow(item.value);
  });
  return answered(input, question, () => input.activeItems[0]?.value);
}

export function type<T>(
  question: Question & { readonly prompt: string; readonly value: string },
  valueOf: (typed: string) => T,
  follow: (value: T) => void,
): Promise<Answer<T>> {
  const input = vscode.window.createInputBox();
  input.prompt = question.prompt;
  input.value = question.value;
  input.valueSelection = [0, question.value.length];
  input.onDidChangeValue((typed) => {
    follow(valueOf(typed));
  });
  return answered(input, question, () => (input.value.trim() === '' ? undefined : valueOf(input.value)));
}

/** Accepts nothing while there is nothing to accept. */
function answered<T>(
  input: vscode.QuickPick<Choice<T>> | vscode.InputBox,
  { title, step = 1, totalSteps = 1 }: Question,
  answer: () => T | undefined,
): Promise<Answer<T>> {
  input.title = title;
  if (totalSteps > 1) {
    input.step = step;
    input.totalSteps = totalSteps;
  }
  // The preview takes a moment to come, and must not close the question by coming.
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
