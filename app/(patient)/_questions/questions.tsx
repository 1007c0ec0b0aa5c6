'use client';

import type { ComponentType } from 'react';
import type { Messages } from '../../_messages/message-keys';
import { FeverQuestion } from './fever-question';
import { PainQuestion } from './pain-question';
import type { QuestionProps } from './question-props';
import { RednessQuestion } from './redness-question';
import { SmellQuestion } from './smell-question';
import { WetnessQuestion } from './wetness-question';
import { WorryQuestion } from './worry-question';

/** The six questions in the order they are asked. */
export const QUESTIONS: readonly { readonly title: (messages: Messages) => string; readonly Question: ComponentType<QuestionProps> }[] = [
  { title: ({ questions }) => questions.pain.title, Question: PainQuestion },
  { title: ({ questions }) => questions.wetness.title, Question: WetnessQuestion },
  { title: ({ questions }) => questions.smell.title, Question: SmellQuestion },
  { title: ({ questions }) => questions.fever.title, Question: FeverQuestion },
  { title: ({ questions }) => questions.redness.title, Question: RednessQuestion },
  { title: ({ questions }) => questions.worry.title, Question: WorryQuestion },
];
