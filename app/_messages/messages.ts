import { en } from './en';
import { es } from './es';
import type { Language, Messages } from './message-keys';

const ALL: Readonly<Record<Language, Messages>> = { en, es };

/** Every text of the patient's pages in one language. */
export const messagesIn = (language: Language): Messages => ALL[language];
