/**
 * Rises whenever a golden result moves. Every analysis names the version it was made by; DEVELOPERS.md lists what
 * changed, before and after.
 */
export const METHOD_VERSION = '0.6.0';
