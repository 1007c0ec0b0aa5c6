export function missingPackages(root?: string): string[];
export function isDriverBuilt(root?: string): boolean;
export function ensureInstalled(root?: string): Promise<void>;
