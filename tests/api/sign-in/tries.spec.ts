import { type TestApp, passwordOf, postListed, startTestApp } from '../../support/test-app.js';

/** Who guesses waits, longer each time; whoever is known by the device or the address is not made to wait for it. */
describe('tries at the door', () => {
  let now = Date.parse('2027-02-26T09:00:00Z');
  let test: TestApp;
  let email: string;
  beforeAll(async () => {
    test = await startTestApp({ clock: { now: () => new Date(now) }, config: { trustProxy: 1 } });
    email = (await (await test.as('warehouse')).graphql('{ me { email } }')).data.me.email;
  });
  afterAll(() => test.close());

  const minutes = (count: number) => (now += count * 60_000);
  const send = (password: string, address: string, cookie = '', who = email) =>
    postListed(test.address, 'SignIn', { email: who, password }, { 'x-forwarded-for': address, cookie });
  const says = async (reply: Promise<Response>): Promise<string> => {
    const { data } = (await (await reply).json()) as { data: { signIn: { __typename: string; sentence?: string } } };
    return data.signIn.sentence?.replace(/^No account.*/, 'wrong') ?? data.signIn.__typename;
  };
  const wait = (time: string) => `Too many tries. Wait ${time}, then try again.`;

  it('of one person from one address wait a minute after five, then twice as long each time up to 15 minutes, and that is what is said', async () => {
    const address = '192.0.2.1';
    for (let turn = 0; turn < 5; turn++) expect(await says(send('wrong', address))).toBe('wrong');
    for (const [time, length] of [
      ['a minute', 1],
      ['2 minutes', 2],
      ['4 minutes', 4],
    ] as const) {
      expect(await says(send('wrong', address))).toBe(wait(time));
      // A try that has to wait makes nobody wait longer.
      expect(await says(send('wrong', address))).toBe(wait(time));
      minutes(length);
      expect(await says(send('wrong', address))).toBe('wrong');
    }
    expect(await says(send('wrong', address))).toBe(wait('8 minutes'));
    minutes(8);
    // A quarter of an hour after the first it is forgotten.
    for (let turn = 0; turn < 5; turn++) expect(await says(send('wrong', address))).toBe('wrong');
    minutes(60);
  });

  it('thirty from anywhere make new addresses wait a minute, neither an address nor a device of that person', async () => {
    const home = '203.0.113.1';
    expect(await says(send(passwordOf('warehouse'), home))).toBe('Account');
    const cookies = (await send(passwordOf('warehouse'), home)).headers.getSetCookie().map((each) => each.split(';')[0] ?? '');
    const device = cookies.find((each) => each.startsWith('cartwright_device='));
    expect(device).toMatch(/=[\w-]{43}$/);
    for (let turn = 0; turn < 30; turn++) expect(await says(send('wrong', `198.51.100.${turn}`))).toBe('wrong');
    expect(await says(send(passwordOf('warehouse'), '192.0.2.77'))).toBe(wait('a minute'));
    expect(await says(send(passwordOf('warehouse'), home))).toBe('Account');
    expect(await says(send(passwordOf('warehouse'), '192.0.2.77', device))).toBe('Account');
    minutes(1);
    expect(await says(send(passwordOf('warehouse'), '192.0.2.77'))).toBe('Account');
    minutes(60);
  });

  it('from its own address shut a known device out no more, whoever is tried there', async () => {
    const [address, other] = ['192.0.2.99', 'Nobody@cartwright.example'];
    const device = (await send(passwordOf('warehouse'), address)).headers.getSetCookie().at(1)?.split(';')[0];
    for (let turn = 0; turn < 5; turn++) await send('wrong', address);
    await test.dataSource.query(`UPDATE sign_in_try SET count = 100, wait_until = until WHERE key LIKE 'address %'`);
    expect(await says(send('wrong', address, '', other))).toBe(wait('10 minutes'));
    expect(await says(send(passwordOf('warehouse'), address))).toContain('Too many tries');
    expect(await says(send(passwordOf('warehouse'), address, device))).toBe('Account');
    // The cookie of a device is no way to guess: it has its own five.
    for (let turn = 0; turn < 5; turn++) expect(await says(send('wrong', address, device))).toBe('wrong');
    expect(await says(send(passwordOf('warehouse'), address, device))).toBe(wait('a minute'));
    // A cookie that nobody was given makes nothing known.
    expect(await says(send('wrong', address, 'cartwright_device=made-up', other))).toContain('Too many tries');
  });
});
