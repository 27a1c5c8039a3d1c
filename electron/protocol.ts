/** The program's own scheme, which serves the built renderer and nothing else. */

import type { Protocol } from 'electron';
import { securityHeaders } from './services/contentPolicy.ts';
import { readStatic } from './services/staticFiles.ts';
import { words } from './words.ts';

const scheme = 'augerwright';
const host = 'app';

/** Origin of every page of ours. */
export const appOrigin = `${scheme}://${host}`;
/** Address of the first page. */
export const startAddress = `${appOrigin}/index.html`;
/** Address of the page that says that another could not be loaded; it needs no file. */
export const failedAddress = `${appOrigin}/not-loaded.html`;

const headers = { ...securityHeaders, 'X-DNS-Prefetch-Control': 'off' };

/** A page in words, for the policy lets it have neither script nor style of its own. */
const messagePage = (): string => {
  const { title, detail, kept } = words.missing;
  const head = `<meta charset="utf-8"><meta name="color-scheme" content="light dark"><title>Augerwright</title>`;
  return `<!doctype html><html lang="en"><head>${head}</head><body><h1>${title}</h1><p>${detail}</p><p>${kept}</p></body></html>`;
};

/** Makes the scheme a proper origin; must run before the app is ready. */
export function declareScheme(protocol: Pick<Protocol, 'registerSchemesAsPrivileged'>): void {
  const privileges = { standard: true, secure: true, supportFetchAPI: true, corsEnabled: true, stream: true };
  protocol.registerSchemesAsPrivileged([{ scheme, privileges }]);
}

/** Answers the scheme's addresses from the renderer's folder. */
export function serveScheme(protocol: Pick<Protocol, 'handle'>, rendererFolder: string): void {
  protocol.handle(scheme, (request) => respond(request.method, request.url, rendererFolder));
}

async function respond(method: string, address: string, rendererFolder: string): Promise<Response> {
  const url = new URL(address);
  const ours = method === 'GET' && url.host === host;
  const file = ours ? await readStatic(rendererFolder, url.pathname) : null;
  if (file) return new Response(file.bytes, { headers: { ...headers, 'Content-Type': file.contentType } });
  // A page that is missing says so, rather than leave the window white.
  const isPage = ours && /(?:\.html|\/)$/.test(url.pathname);
  const contentType = isPage ? 'text/html; charset=utf-8' : 'text/plain; charset=utf-8';
  return new Response(isPage ? messagePage() : '404', {
    status: 404,
    headers: { ...headers, 'Content-Type': contentType },
  });
}
