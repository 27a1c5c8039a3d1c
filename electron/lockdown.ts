/** What is denied to whatever runs in our windows, and to whoever starts the program with switches. */

import type { App, Session, WebContents } from 'electron';
import { appOrigin, startAddress } from './protocol.ts';

/** Switches of the browser engine that would open a packed program to others, or lower its guards. */
export const deniedSwitches: readonly string[] = [
  'remote-debugging-port',
  'remote-debugging-pipe',
  'remote-debugging-address',
  'remote-allow-origins',
  'inspect',
  'inspect-brk',
  'inspect-port',
  'inspect-publish-uid',
  'js-flags',
  'load-extension',
  'disable-web-security',
  'disable-site-isolation-trials',
  'allow-running-insecure-content',
  'ignore-certificate-errors',
  'unsafely-treat-insecure-origin-as-secure',
  'proxy-server',
  'proxy-pac-url',
  'host-rules',
];

/** Takes dangerous switches off a packed program, and the network off every one. Must run before the app is ready. */
export function lockSwitches({ commandLine, isPackaged }: Pick<App, 'commandLine' | 'isPackaged'>): readonly string[] {
  const found = isPackaged ? deniedSwitches.filter((name) => commandLine.hasSwitch(name)) : [];
  for (const name of found) commandLine.removeSwitch(name);
  // Nothing of ours has a name in the network: no name is ever looked up, by prefetching least of all.
  commandLine.appendSwitch('host-resolver-rules', 'MAP * ~NOTFOUND');
  commandLine.appendSwitch('no-proxy-server');
  commandLine.appendSwitch('disable-background-networking');
  return found;
}

/** Denies every certificate and every sign-in: no page of ours comes from a network. */
export function lockApp(app: Pick<App, 'on'>): void {
  app.on('certificate-error', (event, _contents, _url, _error, _certificate, decide) => {
    event.preventDefault();
    decide(false);
  });
  app.on('select-client-certificate', (event, _contents, _url, _list, choose) => {
    event.preventDefault();
    choose();
  });
  app.on('login', (event, _contents, _details, _info, answer) => {
    event.preventDefault();
    answer();
  });
}

/** Whether a request may go out: our own scheme, what the page made itself, and the tools of an unpacked build. */
function isOurs(address: string, packed: boolean): boolean {
  if (address.startsWith(`${appOrigin}/`) || address.startsWith(`blob:${appOrigin}/`)) return true;
  return address.startsWith('data:') || (!packed && address.startsWith('devtools:'));
}

/** The one permission there is: our own page may put text and pictures on the clipboard; it may read nothing there. */
const mayWriteClipboard = (permission: string, address: string, isMainFrame: boolean): boolean =>
  permission === 'clipboard-sanitized-write' && isMainFrame && `${address}/`.startsWith(`${appOrigin}/`);

/** Denies a session every request outwards, permissions and devices, every download, and the spelling service. */
export function lockSession(session: Session, packed: boolean): void {
  session.webRequest.onBeforeRequest(({ url }, decide) => decide({ cancel: !isOurs(url, packed) }));
  session.setPermissionRequestHandler((_contents, permission, decide, { requestingUrl, isMainFrame }) =>
    decide(mayWriteClipboard(permission, requestingUrl, isMainFrame)),
  );
  session.setPermissionCheckHandler((_contents, permission, origin, { isMainFrame }) =>
    mayWriteClipboard(permission, origin, isMainFrame),
  );
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler((_request, decide) => decide(null));
  session.setBluetoothPairingHandler((_details, decide) => decide({ confirmed: false }));
  // -2 refuses the certificate whatever the engine thinks of it.
  session.setCertificateVerifyProc((_request, decide) => decide(-2));
  session.setSpellCheckerEnabled(false);
  session.on('will-download', (event) => event.preventDefault());
}

const locked = new WeakSet<Session>();

/** Denies new windows, navigation, embedded views, and peer-to-peer traffic; locks the contents' session. */
export function lockDown(contents: WebContents, packed = true): void {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  contents.on('will-navigate', (event) => {
    // The page may start itself again, and nothing else.
    if (event.url !== startAddress || !event.isMainFrame) event.preventDefault();
  });
  contents.on('will-frame-navigate', (event) => {
    if (event.url !== startAddress || !event.isMainFrame) event.preventDefault();
  });
  contents.on('will-redirect', (event) => event.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWebRTCIPHandlingPolicy('disable_non_proxied_udp');
  if (locked.has(contents.session)) return;
  locked.add(contents.session);
  lockSession(contents.session, packed);
}
