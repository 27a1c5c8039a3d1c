/** Serves the workbench to this machine alone, where there is no desktop window to put it in. */

import { randomBytes, timingSafeEqual } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { findJsonFault } from '../../core/index.ts';
import { type FileChannel, type HostApi, maxProjectLength } from '../contract.ts';
import { answer } from './answer.ts';
import { securityHeaders } from './contentPolicy.ts';
import { readStatic } from './staticFiles.ts';

/** Room for a project's text in JSON, where a character may take several bytes. */
const maxBodyBytes = 2 * maxProjectLength;

/** A running loopback host. */
export interface Loopback {
  /** The address to open; it carries the token of this start. */
  readonly address: string;
  readonly port: number;
  readonly token: string;
  close(): Promise<void>;
}

/** Name that a page gives its window, so that two pages are two writers of a file. */
const windowHeader = 'x-augerwright-window';
/** Window of pages that give no name. */
const namelessWindow = 'nameless';

/** Answers with the calls of one window. */
export type ApiFor = (windowId: string) => HostApi<FileChannel>;

/** Starts on 127.0.0.1 at a port the system picks. Every address below /token/ needs the right host, origin and token. */
export async function startLoopback(apiFor: ApiFor, rendererFolder: string): Promise<Loopback> {
  const token = randomBytes(24).toString('hex');
  const server = createServer((request, response) => {
    respond(request, response, { apiFor, rendererFolder, token, port: portOf(server) }).catch(() => {
      if (!response.headersSent) refuse(response, 500);
      response.end();
    });
  });
  server.requestTimeout = 30_000;
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject).listen(0, '127.0.0.1', resolve);
  });
  const port = portOf(server);
  return { address: `http://127.0.0.1:${port}/${token}/`, port, token, close: () => closeServer(server) };
}

interface Scene {
  readonly apiFor: ApiFor;
  readonly rendererFolder: string;
  readonly token: string;
  readonly port: number;
}

const portOf = (server: Server): number => (server.address() as AddressInfo).port;

function closeServer(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}

async function respond(request: IncomingMessage, response: ServerResponse, scene: Scene): Promise<void> {
  const refusal = whyRefused(request, scene.port);
  if (refusal !== null) return refuse(response, refusal);
  // The raw target, not a parsed URL: a parser would resolve `..` before it could be refused.
  const target = (request.url ?? '').split('?')[0] ?? '';
  const [, token = '', ...rest] = target.split('/');
  if (!sameToken(token, scene.token) || rest.length === 0) return refuse(response, 403);
  const path = rest.join('/');
  if (path.startsWith('api/')) return respondToCall(request, response, path.slice('api/'.length), scene.apiFor);
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(response, 405);
  const file = await readStatic(scene.rendererFolder, `/${path}`);
  if (!file) return refuse(response, 404);
  response.writeHead(200, { ...securityHeaders, 'Content-Type': file.contentType, 'Cache-Control': 'no-store' });
  response.end(request.method === 'HEAD' ? undefined : file.bytes);
}

/** Status of the refusal, or null: a foreign name for this host (DNS rebinding) and foreign pages are kept out. */
function whyRefused(request: IncomingMessage, port: number): number | null {
  const { host, origin } = request.headers;
  if (host !== `127.0.0.1:${port}`) return 421;
  if (origin !== undefined && origin !== `http://127.0.0.1:${port}`) return 403;
  const site = request.headers['sec-fetch-site'];
  return site === undefined || site === 'same-origin' || site === 'none' ? null : 403;
}

async function respondToCall(
  request: IncomingMessage,
  response: ServerResponse,
  name: string,
  apiFor: ApiFor,
): Promise<void> {
  if (request.method !== 'POST') return refuse(response, 405);
  // A call must name its origin: browsers always do on POST, and other pages cannot forge it.
  if (request.headers.origin === undefined) return refuse(response, 403);
  if (request.headers['content-type'] !== 'application/json') return refuse(response, 415);
  const windowId = windowOf(request);
  if (windowId === null) return refuse(response, 400);
  const body = await readBody(request);
  if (body === null) return refuse(response, 413);
  let argument: unknown;
  // calls are shallow; a parser takes seconds over millions of open brackets
  if (findJsonFault(body, 100) !== null) return refuse(response, 400);
  try {
    argument = JSON.parse(body);
  } catch {
    return refuse(response, 400);
  }
  const result = await answer(apiFor(windowId), name, argument);
  response.writeHead(200, { ...securityHeaders, 'Content-Type': 'application/json', 'Cache-Control': 'no-store' });
  response.end(JSON.stringify(result));
}

/** The window a call comes from; null where its name is malformed. */
function windowOf(request: IncomingMessage): string | null {
  const given = request.headers[windowHeader];
  if (given === undefined) return namelessWindow;
  return typeof given === 'string' && /^[0-9a-f]{32}$/.test(given) ? given : null;
}

/** The body as text, or null as soon as it is too long. */
async function readBody(request: IncomingMessage): Promise<string | null> {
  if (Number(request.headers['content-length'] ?? 0) > maxBodyBytes) return null;
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    size += part.length;
    if (size > maxBodyBytes) return null;
    parts.push(part);
  }
  return Buffer.concat(parts).toString('utf8');
}

function sameToken(given: string, wanted: string): boolean {
  const [a, b] = [Buffer.from(given), Buffer.from(wanted)];
  return a.length === b.length && timingSafeEqual(a, b);
}

/** Ends an answer with a status and no detail; the connection closes, so that an oversize body is not read on. */
function refuse(response: ServerResponse, status: number): void {
  response.writeHead(status, { ...securityHeaders, 'Content-Type': 'text/plain; charset=utf-8', Connection: 'close' });
  response.end(`${status}\n`);
}
