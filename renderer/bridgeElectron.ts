/** The window's calls over the functions of the preload script. */

import type { Bridge, MenuGroup, PreloadApi } from './bridge.ts';
import { bytesOf } from './bridgeFiles.ts';

/** The calls that ask for a place, and those on the window itself. */
const ownCalls = (api: PreloadApi) => ({
  openProject: () => api.openProject(null),
  saveProjectAs: (text: string, suggestedName: string) => api.saveProjectAs({ text, suggestedName }),
  importText: (kind: 'csv' | 'json') => api.importText({ kind }),
  exportFile: (suggestedName: string, data: Uint8Array | string) =>
    api.exportFile({ suggestedName, data: bytesOf(data) }),
  printReport: (suggestedName: string) => api.printReport({ suggestedName }),
  openDropped: (file: File) => api.openDropped(file),
  setEdited: (edited: boolean) => void api.setEdited({ edited }),
  setMenu: (groups: readonly MenuGroup[]) =>
    void api.setMenu({
      groups: groups.map((group) => ({ ...group, items: group.items.map((item) => ({ ...item })) })),
    }),
  newWindow: () => void api.newWindow(null),
  showLogFolder: () => void api.showLogFolder(null),
  closeWindow: () => void api.closeWindow(null),
  onCommand: (listener: (commandId: string) => void) => api.onCommand(listener),
  onSaveAndClose: (listener: () => void) => api.onSaveAndClose(listener),
});

/** Bridge over the functions of the preload script. */
export function electronBridge(api: PreloadApi): Bridge {
  return {
    host: 'electron',
    platform: api.platform,
    readStartProject: () => api.readStartProject(null),
    listExamples: () => api.listExamples(null),
    readExample: (id) => api.readExample({ id }),
    listMaterials: () => api.listMaterials(null),
    readMaterial: (id) => api.readMaterial({ id }),
    listRecent: () => api.listRecent(null),
    openRecent: (handle) => api.openRecent({ handle }),
    saveProject: ({ handle, name, text, version, evenIfChanged }) =>
      handle === null
        ? api.saveProjectAs({ text, suggestedName: name })
        : api.saveProject({ handle, text, version, evenIfChanged }),
    lookAtFile: (handle, version) => api.lookAtFile({ handle, version }),
    takeOverFile: (handle) => api.takeOverFile({ handle }),
    leaveFile: (handle) => api.leaveFile({ handle }),
    openPrevious: (handle) => api.openPrevious({ handle }),
    writeJournal: (journal, entry) => api.writeJournal({ journal, entry }),
    closeJournal: (journal) => api.closeJournal({ journal }),
    listRecoveries: (journal) => api.listRecoveries({ journal }),
    readRecovery: (id) => api.readRecovery({ id }),
    dropRecovery: (id) => api.dropRecovery({ id }),
    readAbout: () => api.readAbout(null),
    logFault: (message, where) => api.logFault({ message, where }),
    ...ownCalls(api),
  };
}
