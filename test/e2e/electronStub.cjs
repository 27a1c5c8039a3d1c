/** Preloaded into Node, this stands in for Electron and notes on standard output what the desktop bundle does with it. */

const Module = require('node:module');
const { EventEmitter } = require('node:events');

const note = (what, ...more) => process.stdout.write(`${JSON.stringify([what, ...more])}\n`);

class WebContents extends EventEmitter {
  session = new Proxy({}, { get: (_target, name) => () => note('session', name) });
  setWindowOpenHandler(handler) {
    note('openHandler', handler({ url: 'https://example.org' }).action);
  }
  send() {}
}

class BrowserWindow extends EventEmitter {
  webContents = new WebContents();
  constructor(options) {
    super();
    note('window', options.webPreferences.sandbox, options.webPreferences.preload);
    app.emit('web-contents-created', {}, this.webContents);
  }
  static fromWebContents() {
    return null;
  }
  static getAllWindows() {
    return [];
  }
  async loadURL(address) {
    const answer = await handlers.augerwright(new Request(address));
    note('page', address, answer.status);
    app.emit('window-all-closed');
  }
}

const handlers = {};
const app = Object.assign(new EventEmitter(), {
  name: 'augerwright',
  isPackaged: false,
  whenReady: async () => note('ready'),
  isReady: () => true,
  getName: () => 'augerwright',
  getVersion: () => '0',
  getAppPath: () => process.cwd(),
  getPath: () => process.env.STUB_USER_DATA,
  setAppLogsPath: () => undefined,
  enableSandbox: () => note('sandbox'),
  quit: () => process.exit(0),
  exit: (status) => process.exit(status),
});

const electron = {
  app,
  BrowserWindow,
  dialog: {},
  ipcMain: Object.assign(new EventEmitter(), { handle: (name) => note('handle', name) }),
  Menu: { buildFromTemplate: (template) => template, setApplicationMenu: (menu) => note('menu', menu.length) },
  protocol: {
    registerSchemesAsPrivileged: ([{ scheme }]) => note('scheme', scheme),
    handle: (scheme, handler) => {
      handlers[scheme] = handler;
    },
  },
};

const load = Module._load;
Module._load = (name, ...rest) => (name === 'electron' ? electron : load(name, ...rest));
