import { request } from 'node:http';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { maxProjectLength } from '../../electron/contract.ts';
import { createHost } from '../../electron/services/host.ts';
import { type Loopback, startLoopback } from '../../electron/services/loopback.ts';

let host: Loopback;
const places = {
  examplesFolder: 'test/electron/examples',
  materialsFolder: 'assets/materials',
  startPath: null,
  recentListPath: null,
};

beforeAll(async () => {
  host = await startLoopback(createHost(places).apiFor, 'renderer');
});

afterAll(() => host.close());

interface Asked {
  readonly path: string;
  readonly method?: string;
  readonly headers?: Record<string, string>;
  readonly body?: string;
}

/** Asks with exactly these words: fetch would tidy the path and forbid the headers under test. */
function ask({
  path,
  method = 'GET',
  headers = {},
  body,
}: Asked): Promise<{ status: number; text: string; headers: object }> {
  return new Promise((resolve, reject) => {
    const outgoing = request({ host: '127.0.0.1', port: host.port, path, method, headers }, (answer) => {
      let text = '';
      answer
        .on('data', (part) => (text += part))
        .on('end', () => {
          resolve({ status: answer.statusCode ?? 0, text, headers: answer.headers });
        });
    });
    outgoing.on('error', reject).end(body);
  });
}

const at = (path: string) => `/${host.token}/${path}`;
const callHeaders = () => ({ Origin: `http://127.0.0.1:${host.port}`, 'Content-Type': 'application/json' });
const call = (name: string, body = 'null', headers: Record<string, string> = callHeaders()) =>
  ask({ path: at(`api/${name}`), method: 'POST', headers, body });

test('the page comes with its policy, isolated from other origins', async () => {
  const answer = await ask({ path: at('') });
  expect(answer.status).toBe(200);
  expect(answer.text).toContain('<div id="root">');
  expect(answer.headers).toMatchObject({
    'content-security-policy': expect.stringMatching(/^default-src 'none'; .*frame-ancestors 'none'$/),
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-embedder-policy': 'require-corp',
    'referrer-policy': 'no-referrer',
    'x-content-type-options': 'nosniff',
  });
});

test('a call from our own page is answered', async () => {
  const answer = await call('listExamples');
  expect(answer.status).toBe(200);
  expect(JSON.parse(answer.text)).toEqual({ ok: true, value: [{ id: 'demo', title: 'A demo', note: 'Invented.' }] });
});

test.each(['localhost', 'attacker.example', '127.0.0.1', '[::1]'])('the host name %s is refused', async (name) => {
  const named = name === '127.0.0.1' ? name : `${name}:${host.port}`;
  expect((await ask({ path: at(''), headers: { Host: named } })).status).toBe(421);
  expect((await call('listExamples', 'null', { ...callHeaders(), Host: named })).status).toBe(421);
});

test.each(['https://attacker.example', 'null', 'http://127.0.0.1:1', 'http://localhost'])(
  'the origin %s is refused',
  async (origin) => {
    expect((await call('listExamples', 'null', { ...callHeaders(), Origin: origin })).status).toBe(403);
    expect((await ask({ path: at(''), headers: { Origin: origin } })).status).toBe(403);
  },
);

test('a call without an origin, or embedded by another site, is refused', async () => {
  const bare = { 'Content-Type': 'application/json' };
  expect((await call('listExamples', 'null', bare)).status).toBe(403);
  expect((await ask({ path: at(''), headers: { 'Sec-Fetch-Site': 'cross-site' } })).status).toBe(403);
});

test('nothing is served without the token of this start', async () => {
  for (const path of ['/', '/index.html', '/api/listExamples', `/${'0'.repeat(48)}/`, `/${host.token}`]) {
    expect((await ask({ path })).status, path).toBe(403);
    expect((await ask({ path, method: 'POST', headers: callHeaders(), body: 'null' })).status, path).toBe(403);
  }
});

test.each([
  '../package.json',
  '..%2fpackage.json',
  '%2e%2e/package.json',
  '..%5cpackage.json',
  'panels/../../package.json',
  '/etc/passwd.json',
  '%2fetc%2fpasswd',
  '.stamp',
  'index.html%00.json',
  '%zz.html',
  'C:/x.json',
])('the path %s is not found', async (path) => {
  expect((await ask({ path: at(path) })).status).toBe(404);
});

test('an oversize body is refused, declared or not', async () => {
  const declared = { ...callHeaders(), 'Content-Length': String(3 * maxProjectLength) };
  const refusal = await call('saveProject', '', declared).catch((error: NodeJS.ErrnoException) => ({
    status: error.code,
  }));
  expect([413, 'ECONNRESET', 'EPIPE']).toContain(refusal.status);
  const long = JSON.stringify({ handle: 'a'.repeat(32), text: 'x'.repeat(2 * maxProjectLength) });
  const chunked = { ...callHeaders(), 'Transfer-Encoding': 'chunked' };
  const cut = await call('saveProject', long, chunked).catch((error: NodeJS.ErrnoException) => ({
    status: error.code,
  }));
  expect([413, 'ECONNRESET', 'EPIPE']).toContain(cut.status);
});

test('calls need POST and JSON, and the page GET', async () => {
  expect((await ask({ path: at('api/listExamples') })).status).toBe(405);
  expect((await call('listExamples', 'null', { ...callHeaders(), 'Content-Type': 'text/plain' })).status).toBe(415);
  expect((await call('listExamples', '{')).status).toBe(400);
  expect((await ask({ path: at(''), method: 'PUT' })).status).toBe(405);
});

test('a call comes from the window that its page names; a malformed name is refused', async () => {
  const asked: string[] = [];
  const services = createHost(places);
  const named = await startLoopback((windowId) => {
    asked.push(windowId);
    return services.apiFor(windowId);
  }, 'renderer');
  const from = async (names: Record<string, string>) => {
    const headers = { ...names, Origin: `http://127.0.0.1:${named.port}`, 'Content-Type': 'application/json' };
    return (await fetch(`${named.address}api/listExamples`, { method: 'POST', headers, body: 'null' })).status;
  };
  expect(await from({})).toBe(200);
  expect(await from({ 'X-Augerwright-Window': 'b'.repeat(32) })).toBe(200);
  expect(await from({ 'X-Augerwright-Window': '../b' })).toBe(400);
  await named.close();
  expect(asked).toEqual(['nameless', 'b'.repeat(32)]);
});

test.each([
  ['readExample', '{"id":"../package"}', 'call-argument'],
  ['readExample', '{"id":"nowhere"}', 'example-unknown'],
  ['readMaterial', '{"id":"../examples/demo"}', 'call-argument'],
  ['readMaterial', '{"id":"nowhere"}', 'material-unknown'],
  ['saveProject', `{"handle":"${'a'.repeat(32)}","text":"","version":null,"evenIfChanged":true}`, 'file-unknown'],
  ['saveProject', `{"handle":"${'a'.repeat(32)}","text":""}`, 'call-argument'],
  ['openProject', 'null', 'call-unknown'],
  ['constructor', 'null', 'call-unknown'],
  ['__proto__', 'null', 'call-unknown'],
])('the call %s with %s is refused', async (name, body, code) => {
  const result = JSON.parse((await call(name, body)).text);
  expect(result).toMatchObject({ ok: false, issues: [{ code }] });
});

test('it listens on 127.0.0.1 alone, at an address that carries the token', () => {
  expect(host.address).toBe(`http://127.0.0.1:${host.port}/${host.token}/`);
  expect(host.token).toMatch(/^[0-9a-f]{48}$/);
});
