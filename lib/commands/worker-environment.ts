/**
 * What a process that measures photos is started with. The C library keeps a pool of memory for every thread, and pictures that were freed in one
 * are no room for the next in another: two are enough (`npm run bench -- speed`).
 */
export const WORKER_ENVIRONMENT = { GLIBC_TUNABLES: 'glibc.malloc.arena_max=2' } as const;
