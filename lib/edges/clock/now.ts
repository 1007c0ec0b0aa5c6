/** The moment, as a Date for the database. `now().toISOString()` for everything else. */
export const now = (): Date => new Date();
