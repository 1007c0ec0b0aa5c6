/** Stands in for the package that keeps server code out of browsers: tests are neither. */
export {};
