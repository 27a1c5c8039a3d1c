/** Preloaded into Node, this stands in for Electron and notes on standard output what the desktop bundle does with it. */

const Module = require('node:module');
const { EventEmitter } = require('node:events');

const note = (what, ...more) => process.stdout.write(`${JSON.stringify([what, ...more])}\n`);
const windows = new Set();
const schemes = {};
const calls = {};

/** Sends an event that its hearers may stop; true where one did. */
function stopped(source, name, ...more) {
  let stop = false;
  source.emit(
    name,
    {
      preventDefault: () => {
        stop = true;
      },
    },
    ...more,
  );
  return stop;
}

/** Notes every setter that is called, by its name. */
const noting = (what, made = {}) =>
  new Proxy(made, {
    get: (target, name) =>
      target[name] ?? ((...given) => note(what, name, ...given.filter((one) => typeof one === 'string'))),
  });

class WebContents extends EventEmitter {
  session = noting('session', { webRequest: noting('session'), on: (name) => note('session', name) });
  mainFrame = { url: '' };
  setWindowOpenHandler(handler) {
    note('openHandler', handler({ url: 'https://example.org' }).action);
  }
  setWebRTCIPHandlingPolicy() {}
  send(channel) {
    note('send', channel);
  }
}

class BrowserWindow extends EventEmitter {
  webContents = new WebContents();
  gone = false;
  constructor({ webPreferences }) {
    super();
    note('window', webPreferences.sandbox, webPreferences.preload);
    windows.add(this);
    app.emit('web-contents-created', {}, this.webContents);
  }
  async loadURL(address) {
    this.webContents.mainFrame.url = address;
    const answer = await schemes.augerwright(new Request(address));
    note('page', address, answer.status);
    app.emit('page-loaded', this);
  }
  close() {
    if (!stopped(this, 'close')) this.destroy();
  }
  destroy() {
    if (this.gone) return;
    this.gone = true;
    windows.delete(this);
    note('closed');
    this.emit('closed');
    if (windows.size === 0) app.emit('window-all-closed');
  }
  isDestroyed() {
    return this.gone;
  }
  getBounds() {
    return { x: 10, y: 20, width: 1000, height: 700 };
  }
  getNormalBounds() {
    return this.getBounds();
  }
  isMaximized() {
    return false;
  }
}
for (const name of [
  'show',
  'focus',
  'restore',
  'maximize',
  'setMenu',
  'setDocumentEdited',
  'isVisible',
  'isMinimized',
]) {
  BrowserWindow.prototype[name] = () => undefined;
}

const app = Object.assign(new EventEmitter(), {
  name: 'augerwright',
  isPackaged: false,
  commandLine: { hasSwitch: () => false, appendSwitch: (name) => note('switch', name) },
  requestSingleInstanceLock: () => process.env.STUB_SECOND !== '1',
  whenReady: async () => note('ready'),
  isReady: () => true,
  getName: () => 'augerwright',
  getVersion: () => '0',
  getAppPath: () => process.cwd(),
  getPath: () => process.env.STUB_USER_DATA,
  setAppLogsPath: () => undefined,
  enableSandbox: () => note('sandbox'),
  quit() {
    if (stopped(app, 'before-quit')) return;
    for (const window of windows) window.close();
    if (windows.size === 0 && !stopped(app, 'will-quit')) app.exit(0);
  },
  exit(status) {
    note('exit', status);
    process.exit(status);
  },
});

const display = { id: 1, workArea: { x: 0, y: 0, width: 1920, height: 1040 } };
const electron = {
  app,
  BrowserWindow,
  dialog: {
    /** The tests' next answers, in order. */
    answers: [],
    async showMessageBox(...given) {
      note('ask', given.at(-1).buttons ?? given.at(-1).message);
      return { response: electron.dialog.answers.shift() ?? 0 };
    },
    showErrorBox: (...told) => note('error', ...told),
  },
  ipcMain: {
    handle: (name, handler) => {
      calls[name] = handler;
      note('handle', name);
    },
  },
  Menu: { buildFromTemplate: (template) => template, setApplicationMenu: (menu) => note('menu', menu?.length ?? null) },
  nativeTheme: { shouldUseDarkColors: false },
  screen: { getPrimaryDisplay: () => display, getAllDisplays: () => [display], getDisplayMatching: () => display },
  shell: {},
  protocol: {
    registerSchemesAsPrivileged: ([{ scheme }]) => note('scheme', scheme),
    handle: (scheme, handler) => {
      schemes[scheme] = handler;
    },
  },
};

const load = Module._load;
Module._load = (name, ...rest) => (name === 'electron' ? electron : load(name, ...rest));

/** Calls the host as the page of a window would. */
const call = (window, name, argument = null, senderFrame = window.webContents.mainFrame) =>
  calls[name]({ sender: window.webContents, senderFrame }, argument);

module.exports = { app, call, dialog: electron.dialog, note };
