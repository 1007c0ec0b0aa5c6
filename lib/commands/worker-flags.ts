/** How Node runs a process that measures photos. */
export const WORKER_FLAGS = ['--max-semi-space-size=32'] as const;

/** Pools of the C library's allocator: with one for every thread, pictures that were freed in one are no room for the next in another. */
export const WORKER_ENVIRONMENT = { GLIBC_TUNABLES: 'glibc.malloc.arena_max=2' } as const;
