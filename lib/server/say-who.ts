/** An actor of the audit list by name: `sayWho('lead:s1', names)` → 'Pavel Lind, lead'. */
export function sayWho(actor: string, names: ReadonlyMap<string, string>): string {
  const [role, id = ''] = actor.split(':');
  const name = names.get(id);
  return name === undefined ? role : `${name}, ${role}`;
}
