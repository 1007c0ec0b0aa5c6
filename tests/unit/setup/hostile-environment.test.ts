import net from 'node:net';
import { describe, expect, it } from 'vitest';
import { complaints } from '../../hostile/complaints';
import { outsideHost } from '../../hostile/outside-host';
import { seededRandom } from '../../seeded-random';

describe('the time zone and the locale', () => {
  it('lie 5 h 45 min east of Greenwich, where no offset in whole hours works', () => {
    expect(Intl.DateTimeFormat().resolvedOptions().timeZone).toMatch(/^Asia\/Kat(h)?mandu$/);
    expect(new Date('2026-03-01T20:00:00Z').getTimezoneOffset()).toBe(-345);
    expect(new Date('2026-03-01T20:00:00Z').getDate()).toBe(2);
  });

  it('are pinned, whatever the machine prefers', () => {
    expect(Intl.NumberFormat().resolvedOptions().locale).toBe('en-GB');
  });
});

describe('the network', () => {
  // 192.0.2.0/24 is set aside for documentation (RFC 5737): nobody is there.
  it('refuses an address outside this machine at once', () => {
    expect(() => net.connect(80, '192.0.2.1')).toThrow('192.0.2.1');
    expect(() => net.connect({ host: 'photos.example', port: 443 })).toThrow('photos.example');
    expect(() => new net.Socket().connect(80, '192.0.2.1')).toThrow('192.0.2.1');
  });

  it('refuses a fetch, which uses the same sockets', async () => {
    await expect(fetch('http://192.0.2.1/')).rejects.toThrow();
    const cause = await fetch('http://192.0.2.1/').catch((error: Error) => String((error.cause as Error | undefined)?.message));
    expect(cause).toContain('tests use this machine only');
  });

  it('lets a test reach a server of its own', async () => {
    const server = net.createServer((socket) => socket.end('here')).listen(0, '127.0.0.1');
    await new Promise((resolve) => server.once('listening', resolve));
    const { port } = server.address() as net.AddressInfo;
    const said = await new Promise((resolve) => net.connect(port, '127.0.0.1').once('data', (data) => resolve(data.toString())));
    server.close();
    expect(said).toBe('here');
  });

  it.each([
    [[{ host: '192.0.2.1', port: 1 }], '192.0.2.1'],
    [[[{ host: 'photos.example', port: 1 }, null]], 'photos.example'],
    [[443, 'photos.example'], 'photos.example'],
    [[443, '10.0.0.1', () => undefined], '10.0.0.1'],
    [[443, '127.example'], '127.example'],
    [[{ port: 1 }], null],
    [[{ path: '/run/socket' }], null],
    [['/run/socket'], null],
    [[80], null],
    [[80, '127.0.0.9'], null],
    [[80, '::1'], null],
    [[80, '::ffff:127.0.0.1'], null],
    [[80, 'localhost'], null],
  ])('reads from the arguments %j that the host outside is %s', (args, host) => {
    expect(outsideHost(args)).toBe(host);
  });
});

describe('console.error', () => {
  it('fails the test that caused it, and only that one', () => {
    const { hear, expectNone } = complaints();
    hear('lost', 3);
    expect(expectNone).toThrow('console.error was called: lost 3');
    expect(expectNone).not.toThrow();
  });

  it('is the listening one in every test', () => {
    expect(console.error.name).toBe('hear');
  });
});

describe('chance', () => {
  const firstDraws = () => [Math.random(), Math.random()];
  const drawn: number[][] = [];

  it.each([1, 2])('is the same in every test (%i)', () => {
    drawn.push(firstDraws());
    expect(drawn.every(([first]) => first === seededRandom(1)())).toBe(true);
  });

  it('differs between seeds and fills 0…1 evenly', () => {
    const draw = seededRandom(7);
    const draws = Array.from({ length: 10_000 }, draw);
    expect(draws[0]).not.toBe(seededRandom(8)());
    expect(Math.min(...draws)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...draws)).toBeLessThan(1);
    // The mean of n even draws scatters by 1/√(12 n) = 0.0029; four of those.
    expect(Math.abs(draws.reduce((sum, one) => sum + one, 0) / draws.length - 0.5)).toBeLessThan(0.012);
  });
});
