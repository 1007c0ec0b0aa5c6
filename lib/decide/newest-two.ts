/**
 * The last two things that a list yields, in their order; fewer where it yields fewer. Older ones are not looked at.
 *
 * @param list oldest first
 * @param pick what an item yields; null passes it over
 * @example newestTwo([1, 2, 3, 4], (one) => (one === 4 ? null : one)) // [2, 3]
 */
export function newestTwo<Item, Yield>(list: readonly Item[], pick: (item: Item) => Yield | null): Yield[] {
  const found: Yield[] = [];
  for (let at = list.length - 1; at >= 0 && found.length < 2; at--) {
    const picked = pick(list[at]);
    if (picked !== null) found.unshift(picked);
  }
  return found;
}

/**
 * The last two items of a list that pass.
 *
 * @param list oldest first
 * @param passes which items count
 * @example newestTwoOf([1, 2, 3, 4], (one) => one !== 4) // [2, 3]
 */
export const newestTwoOf = <Item>(list: readonly Item[], passes: (item: Item) => boolean): Item[] => newestTwo(list, (one) => (passes(one) ? one : null));
