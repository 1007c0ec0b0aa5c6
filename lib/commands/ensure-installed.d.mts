export function missingPackages(root?: string): string[];
export function ensureInstalled(root?: string): void;
