/**
 * The last two of a list, in their order; fewer where there are fewer.
 * @example newestTwo([1, 2, 3]) // [2, 3]
 */
export const newestTwo = <Item>(list: readonly Item[]): Item[] => list.slice(Math.max(0, list.length - 2));
