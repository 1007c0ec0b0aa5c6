/**
 * What stands between the library and the database. Who reads the database cannot use what is in it: of a session's token
 * only the hash is there, and by its hash it is looked up. And whoever's access was ended is nobody to the library.
 */
import { createHash } from 'node:crypto';
import type { DBAdapter, DBTransactionAdapter, Where } from 'better-auth';

interface Asked {
  readonly model: string;
  readonly where?: readonly Where[];
}

const ACTIVE: Where = { field: 'active', value: true };

const hashToken = (token: string): string => createHash('sha256').update(token).digest('hex');
const hashAny = (value: Where['value']): Where['value'] => (Array.isArray(value) ? value.map((one) => hashToken(String(one))) : hashToken(String(value)));
const isSession = ({ model }: Asked): boolean => model === 'session';

const asKept = <Kind extends Asked>(asked: Kind): Kind =>
  isSession(asked) ? { ...asked, where: asked.where?.map((one) => (one.field === 'token' ? { ...one, value: hashAny(one.value) } : one)) } : asked;

/** A session that was looked up by its token comes back with it: the library deletes it by that again. */
function asAsked<Row>(asked: Asked, row: Row): Row {
  const token = isSession(asked) && asked.where?.find(({ field }) => field === 'token')?.value;
  return row !== null && typeof token === 'string' ? { ...row, token } : row;
}

function withoutTransaction(inner: DBTransactionAdapter): DBTransactionAdapter {
  return {
    ...inner,
    async create<Given extends Record<string, unknown>, Row = Given>(asked: Parameters<typeof inner.create<Given, Row>>[0]): Promise<Row> {
      if (!isSession(asked)) return inner.create<Given, Row>(asked);
      const { token } = asked.data as unknown as { token: string };
      return { ...(await inner.create<Given, Row>({ ...asked, data: { ...asked.data, token: hashToken(token) } })), token };
    },
    findOne: async (asked) => asAsked(asked, await inner.findOne(asked.model === 'user' ? { ...asked, where: [...asked.where, ACTIVE] } : asKept(asked))),
    findMany: (asked) => inner.findMany(asKept(asked)),
    count: (asked) => inner.count(asKept(asked)),
    update: async (asked) => asAsked(asked, await inner.update(asKept(asked))),
    updateMany: (asked) => inner.updateMany(asKept(asked)),
    delete: (asked) => inner.delete(asKept(asked)),
    deleteMany: (asked) => inner.deleteMany(asKept(asked)),
    consumeOne: (asked) => inner.consumeOne(asKept(asked)),
    incrementOne: (asked) => inner.incrementOne(asKept(asked)),
  };
}

/** The library's own adapter, seen through this. */
export const staffAdapter = (inner: DBAdapter): DBAdapter => ({
  ...withoutTransaction(inner),
  transaction: (work) => inner.transaction((open) => work(withoutTransaction(open))),
});
