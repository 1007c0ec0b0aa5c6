/** What the lockfile may say: which packages, never from where; and none below the floor of a known hole. */

interface Lockfile {
  readonly packages: Readonly<Record<string, { readonly version?: string; readonly resolved?: string }>>;
}

/**
 * First version without remote code execution through the App Router: CVE-2025-55182 (react) and CVE-2025-66478
 * (next), read in the advisories of December 2025.
 */
export const FLOORS: Readonly<Record<string, string>> = { next: '16.0.7', react: '19.2.1', 'react-dom': '19.2.1' };

/** Compares release numbers; a pre-release counts as older than its release. `isAtLeast('16.0.7', '16.0.6')` */
export function isAtLeast(version: string, floor: string): boolean {
  const [release, preRelease] = version.split('-', 2);
  const [has, wants] = [release, floor].map((text) => text.split('.').map(Number));
  const at = has.findIndex((part, index) => part !== wants[index]);
  return at === -1 ? preRelease === undefined : has[at] > wants[at];
}

/**
 * What is wrong with a lockfile, one sentence each.
 * @example lockfileBreaches('{"packages":{}}') // []
 */
export function lockfileBreaches(text: string): string[] {
  const { packages } = JSON.parse(text) as Lockfile;
  return Object.entries(packages).flatMap(([place, { version, resolved }]) => {
    const floor = FLOORS[place.replace(/^.*node_modules\//, '')];
    return [
      ...(resolved?.startsWith('http') ? [`${place}: says where it was fetched`] : []),
      ...(floor && version && !isAtLeast(version, floor) ? [`${place}: ${version} is below ${floor}`] : []),
    ];
  });
}
