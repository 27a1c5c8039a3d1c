/** Every sentence that the desktop shell says itself; the workbench has its own. */

/** Sentences and buttons of the shell's dialogs. */
export const words = {
  unsaved: {
    message: (name: string | null) => (name === null ? 'Save the project?' : `Save the changes of ${name}?`),
    detail: 'Without saving, the edits since the last save are lost.',
    save: 'Save',
    discard: "Don't save",
    keep: 'Keep editing',
  },
  stopped: {
    message: 'This window stopped working.',
    detail: 'It was started again several times and stopped each time. Your work is kept and will be offered again.',
    again: 'Start again',
    close: 'Close',
  },
  hanging: {
    message: 'This window does not answer.',
    detail: 'It may be busy. If you start it again, your work up to the last edit is kept and will be offered again.',
    wait: 'Wait',
    again: 'Start it again',
  },
  fault: {
    title: 'A fault in Augerwright',
    detail: 'The program goes on. Save your work, then start it again. The log has the details.',
  },
  noStart: {
    title: 'Augerwright cannot start',
    detail: 'Install it again. If that does not help, report the newest lines of the log.',
  },
  missing: {
    title: 'This page could not be loaded',
    detail: 'A part of the program is missing or cannot be read. Close the window and install Augerwright again.',
    kept: 'Your work is kept and will be offered again when the program starts.',
  },
} as const;
