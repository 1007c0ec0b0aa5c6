import { randomBytes } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startStaff } from '../../../lib/edges/db/start-staff';
import { sessionCookie } from '../../../lib/edges/session/session-cookie';
import { staffAuth } from '../../../lib/edges/session/staff-auth';
import { hashPassword } from '../../../lib/edges/session/staff-password';
import { treeFiles } from '../../architecture/source-tree';
import { MADE_AT, type TestDatabase, testClinic, testDatabase } from '../db/test-database';

let test: TestDatabase;
const person = { email: 'ada@clinic.test', password: 'four words in a row' };
beforeAll(async () => {
  test = await testDatabase();
  const clinicId = await testClinic(test.database);
  await startStaff(test.database, { clinicId, name: 'Ada Reed', role: 'nurse', email: person.email, passwordHash: await hashPassword(person.password) }, MADE_AT);
});
afterAll(() => test.close());
const place = (origin: string | null) => staffAuth({ database: test.database, key: randomBytes(32), origin });

describe('the sign-in library', () => {
  it('has its cookie sent back over https only, where the clinic has https', async () => {
    for (const [origin, form] of [['https://clinic.example', /^__Secure-foldwatch_staff=.*; Secure/], [null, /^foldwatch_staff=(?!.*Secure)/]] as const) {
      const auth = place(origin);
      const { headers } = await auth.api.signInEmail({ body: person, headers: new Headers(), returnHeaders: true });
      expect(await sessionCookie(auth, headers)).toMatch(form);
    }
  });

  it('keeps neither from where nor with what somebody works, and reports to nobody', async () => {
    await place(null).api.signInEmail({ body: person, headers: new Headers({ 'user-agent': 'a browser', 'x-forwarded-for': '192.0.2.7' }) });
    const kept = await test.database.staffSession.findMany();
    expect(Object.keys(kept[0]).sort()).toEqual(['endsAt', 'id', 'staffId', 'startedAt', 'tokenHash']);
    const { options } = place(null);
    expect(options.telemetry).toEqual({ enabled: false });
  });

  it('makes no account for whoever asks', async () => {
    const asked = { body: { ...person, email: 'stranger@elsewhere.test', name: 'Stranger' } };
    await expect(place(null).api.signUpEmail(asked)).rejects.toThrow();
    expect(await test.database.staff.count()).toBe(1);
  });

  it('has no route of its own', () => {
    expect(treeFiles('app').filter((file) => file.includes('[...') || /\/auth\//.test(file))).toEqual([]);
  });
});
