/** A sitting at the desktop program, played over the stub of Electron, one step each time that a page has loaded. */

const { app, call, dialog, note } = require('./electronStub.cjs');

const soon = () => new Promise((wake) => setTimeout(wake, 20));

const steps = [
  async (window) => {
    note('project', (await call(window, 'readStartProject')).value.name);
    note('listens', ...app.eventNames(), ...process.eventNames());
    setImmediate(() => {
      throw new Error(`odd fault at ${process.env.STUB_USER_DATA}/mine.json`);
    });
    await soon();
    note('foreign', (await call(window, 'listExamples', null, { url: 'augerwright://app/frame.html' })).ok);
    app.emit('second-instance', {}, ['augerwright', '--some-switch', 'mine.json'], process.env.STUB_USER_DATA);
  },
  async (window) => {
    note('project', (await call(window, 'readStartProject')).value.name);
    await call(window, 'setEdited', { edited: true });
    dialog.answers.push(2, 0);
    for (let i = 0; i < 2; i += 1) {
      window.close();
      await soon();
    }
    note('open', !window.isDestroyed());
    window.webContents.emit('render-process-gone', {}, { reason: 'crashed', exitCode: 5 });
  },
  async (window) => {
    note('project', (await call(window, 'readStartProject')).value.name);
    await call(window, 'setEdited', { edited: true });
    window.emit('move');
    dialog.answers.push(1);
    app.quit();
  },
];

app.on('page-loaded', (window) => void steps.shift()?.(window));
