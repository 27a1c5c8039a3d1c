/** The program's own scheme, which serves the built renderer and nothing else. */

import type { Protocol } from 'electron';
import { securityHeaders } from './services/contentPolicy.ts';
import { readStatic } from './services/staticFiles.ts';

const scheme = 'augerwright';
const host = 'app';

/** Origin of every page of ours. */
export const appOrigin = `${scheme}://${host}`;
/** Address of the first page. */
export const startAddress = `${appOrigin}/index.html`;

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
  const file = method === 'GET' && url.host === host ? await readStatic(rendererFolder, url.pathname) : null;
  if (!file) return new Response('404', { status: 404, headers: securityHeaders });
  return new Response(file.bytes, { headers: { ...securityHeaders, 'Content-Type': file.contentType } });
}
