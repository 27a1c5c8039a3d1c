/** A host in memory, for tests: serves texts, and keeps what is saved and what is journalled. */

import type { Result } from '../../core/index.ts';
import type {
  Bridge,
  ExampleInfo,
  JournalEntry,
  MaterialInfo,
  OpenedProject,
  SavedFile,
} from '../../renderer/bridge.ts';
import { bytesOf, readFile } from '../../renderer/bridgeFiles.ts';

/** What a test says of a project; a file of its own comes with a version. */
export type MemoryProject = Pick<OpenedProject, 'handle' | 'path' | 'name' | 'text'> & Partial<OpenedProject>;

const done = async () => ({ ok: true, value: null }) as const;
const whole = (project: MemoryProject): OpenedProject => ({ version: null, holder: null, ...project });
const text = (name: string, content: string) => whole({ handle: null, path: null, name, text: content });

/** The calls that a host in memory has nothing to do for, or little. */
function quietCalls(journals: Map<string, JournalEntry>) {
  return {
    lookAtFile: async (_handle: string, version: string | null) =>
      ({ ok: true, value: { state: 'same', version, holder: null } }) as const,
    takeOverFile: done,
    leaveFile: done,
    writeJournal: (journal: string, entry: JournalEntry) => {
      journals.set(journal, entry);
      return done();
    },
    closeJournal: (journal: string) => {
      journals.delete(journal);
      return done();
    },
    listRecoveries: async () => ({ ok: true, value: [] }) as const,
    readRecovery: async () =>
      ({
        ok: false,
        issues: [{ path: [], code: 'recovery-unknown', message: 'Nothing was kept.', remedy: '' }],
      }) as const,
    dropRecovery: done,
    readAbout: async () =>
      ({ ok: true, value: { version: '0', runtime: [], licence: '', notices: '', logFolder: null } }) as const,
    logFault: done,
    newWindow: () => undefined,
    showLogFolder: () => undefined,
    closeWindow: () => undefined,
    onSaveAndClose: () => () => undefined,
    setEdited: () => undefined,
    setMenu: () => undefined,
    onCommand: () => () => undefined,
  };
}

/** Bridge that serves texts from memory and keeps what is saved; for tests, where there is no host. */
export function memoryBridge(
  start: MemoryProject,
  examples: readonly (ExampleInfo & { text: string })[] = [],
  materials: readonly (MaterialInfo & { text: string })[] = [],
) {
  const saved = new Map<string, Uint8Array>();
  const journals = new Map<string, JournalEntry>();
  const keep = async (name: string, data: Uint8Array | string): Promise<Result<SavedFile>> => {
    saved.set(name, bytesOf(data));
    return { ok: true, value: { handle: null, path: null, name, version: null } };
  };
  const textOf = (id: string, from: readonly { id: string; text: string }[]) =>
    from.find((one) => one.id === id)?.text ?? '';
  const bridge: Bridge = {
    host: 'memory',
    platform: 'browser',
    readStartProject: async () => ({ ok: true, value: whole(start) }),
    listExamples: async () => ({ ok: true, value: examples.map(({ id, title, note }) => ({ id, title, note })) }),
    readExample: async (id) => ({ ok: true, value: text(`${id}.json`, textOf(id, examples)) }),
    listMaterials: async () => ({ ok: true, value: materials.map(({ id, title, note }) => ({ id, title, note })) }),
    readMaterial: async (id) => ({ ok: true, value: { name: `${id}.json`, text: textOf(id, materials) } }),
    listRecent: async () => ({ ok: true, value: [] }),
    openRecent: async () => ({ ok: true, value: whole(start) }),
    openPrevious: async () => ({ ok: true, value: whole(start) }),
    openProject: async () => ({ ok: true, value: null }),
    openDropped: async (file) => {
      const read = await readFile(file);
      return read.ok ? { ok: true, value: text(read.value.name, read.value.text) } : read;
    },
    saveProject: ({ name, text: written }) => keep(name, written),
    saveProjectAs: (written, name) => keep(name, written),
    importText: async () => ({ ok: true, value: null }),
    exportFile: keep,
    printReport: async () => ({ ok: true, value: null }),
    ...quietCalls(journals),
  };
  return { bridge, saved, journals };
}
