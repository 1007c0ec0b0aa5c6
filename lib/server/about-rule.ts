import { ruleWords } from '../report/rule-words';
import { bookOfVersion } from '../review/book-of-version';
import { PHOTO_NOT_MEASURED } from '../review/constants';

/** A rule's name for people, without its limits: `aboutRule('dry')`. */
export const aboutRule = (rule: string): string => (rule === PHOTO_NOT_MEASURED ? 'Newest photo not measured' : ruleWords(rule, bookOfVersion(''), 'unknown').name);
