import type { CardColour } from './read-card-colour';

/** What one photo told of a printed card, as far as later photos of the same card need it. */
export type CardBaseline = Pick<CardColour, 'kind' | 'patches' | 'paperLight'>;
