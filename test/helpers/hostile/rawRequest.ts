/** Raw requests to a loopback host of our own, which is started at the first of them. */

import { connect } from 'node:net';
import { join } from 'node:path';
import { ok } from '../../../core/result.ts';
import { argumentChecks, type FileChannel, type HostApi } from '../../../electron/contract.ts';
import { type Loopback, startLoopback } from '../../../electron/services/loopback.ts';

const api = Object.fromEntries(
  Object.keys(argumentChecks).map((name) => [name, async (argument: unknown) => ok(argument)]),
) as unknown as HostApi<FileChannel>;

let started: Promise<Loopback> | null = null;
const host = (): Promise<Loopback> => {
  started ??= startLoopback(() => api, join(import.meta.dirname, '../../electron/examples'));
  return started;
};

/** Ends the host, if one was started. */
export async function closeRaw(): Promise<void> {
  const running = started;
  started = null;
  await (await running)?.close();
}

const requests: readonly string[] = [
  'GET /TOKEN/demo.json HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\n\r\n',
  'GET /TOKEN/../package.json HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nOrigin: http://127.0.0.1:PORT\r\n\r\n',
  'POST /TOKEN/api/listExamples HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nOrigin: http://127.0.0.1:PORT\r\nContent-Type: application/json\r\nContent-Length: 4\r\n\r\nnull',
  'POST /TOKEN/api/readExample HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nOrigin: http://127.0.0.1:PORT\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\nd\r\n{"id":"demo"}\r\n0\r\n\r\n',
  'POST /TOKEN/api/__proto__ HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nOrigin: http://127.0.0.1:PORT\r\nContent-Type: application/json\r\nContent-Length: 16\r\n\r\n{"__proto__":{}}',
];

/** A request in good shape, its token and port left open. */
export const goodRequest = (pick: number): string => requests[pick % requests.length] as string;

/** Status of the answer to a text sent as it stands; 0 where the connection was closed without one. */
export async function askRaw(text: string): Promise<number> {
  const { port, token } = await host();
  const whole = text.replaceAll('TOKEN', token).replaceAll('PORT', String(port));
  return new Promise((resolve) => {
    let got = '';
    const socket = connect({ port, host: '127.0.0.1' }, () => socket.end(Buffer.from(whole, 'latin1')));
    const finish = () => {
      socket.destroy();
      resolve(Number(/^HTTP\/1\.1 (\d{3})/.exec(got)?.[1] ?? 0));
    };
    socket.setTimeout(1500, finish);
    socket.on('data', (part) => {
      got += part.toString('latin1');
      if (/^HTTP\/1\.1 \d{3}/.test(got)) finish();
    });
    socket.on('error', finish).on('close', finish);
  });
}
