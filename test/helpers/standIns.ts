/** Folders that stand in for Electron's own, so that packing can be tried where its binaries cannot be had. */

import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { packerModule } from './packed.ts';

/** Systems that are packed for. */
export type System = 'linux' | 'win' | 'mac';

/** The mark before the fuses in Electron's binary, then version, length, and nine fuses, all as Electron ships them. */
const fuseMark = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
const fuses = Buffer.concat([Buffer.from(fuseMark), Buffer.from([1, 9]), Buffer.from('101100111')]);

/** Fuses of a packed stand-in as text, one sign each: 0 off, 1 on. */
export function readFuses(binary: Buffer): string {
  const at = binary.indexOf(fuseMark) + fuseMark.length;
  return binary.toString('latin1', at + 2, at + 2 + binary[at + 1]);
}

/** What is used of the library that reads and writes Windows programs. */
export interface WindowsPrograms {
  readonly NtExecutable: {
    createEmpty(is32Bit: boolean, isDll: boolean): { generate(): ArrayBuffer };
    from(bytes: Uint8Array, options?: { readonly ignoreCert: boolean }): { generate(): ArrayBuffer };
  };
  readonly NtExecutableResource: {
    from(program: unknown): { readonly entries: WindowsResource[]; outputResource(program: unknown): void };
  };
  readonly Resource: {
    readonly VersionInfo: {
      createEmpty(): {
        setStringValues(lang: object, values: object): void;
        outputToResourceEntries(to: unknown): void;
      };
    };
  };
}
/** One resource of a Windows program. */
export interface WindowsResource {
  readonly type: string | number;
  readonly id: string | number;
  readonly bin: ArrayBuffer;
}

/** The library that reads and writes Windows programs. */
export const windowsPrograms = () => packerModule('resedit') as WindowsPrograms;

function windowsProgram(): Buffer {
  const { NtExecutable, NtExecutableResource, Resource } = windowsPrograms();
  const program = NtExecutable.createEmpty(false, false);
  const resources = NtExecutableResource.from(program);
  const version = Resource.VersionInfo.createEmpty();
  version.setStringValues({ lang: 1033, codepage: 1200 }, { ProductName: 'stand-in' });
  version.outputToResourceEntries(resources.entries);
  resources.outputResource(program);
  return Buffer.concat([Buffer.from(program.generate()), fuses]);
}

const propertyList = (values: Readonly<Record<string, string>>) =>
  `<?xml version="1.0" encoding="UTF-8"?><plist version="1.0"><dict>${Object.entries(values)
    .map(([key, value]) => `<key>${key}</key><string>${value}</string>`)
    .join('')}</dict></plist>`;

function macFiles(): Readonly<Record<string, string | Buffer>> {
  const contents = 'Electron.app/Contents';
  const files: Record<string, string | Buffer> = {
    [`${contents}/Info.plist`]: propertyList({ CFBundleExecutable: 'Electron', CFBundleIconFile: 'electron.icns' }),
    [`${contents}/MacOS/Electron`]: '',
    [`${contents}/Resources/electron.icns`]: '',
    [`${contents}/Frameworks/Electron Framework.framework/Electron Framework`]: fuses,
  };
  for (const kind of ['', ' (Renderer)', ' (GPU)', ' (Plugin)']) {
    const helper = `${contents}/Frameworks/Electron Helper${kind}.app/Contents`;
    files[`${helper}/Info.plist`] = propertyList({ CFBundleExecutable: `Electron Helper${kind}` });
    files[`${helper}/MacOS/Electron Helper${kind}`] = '';
  }
  return files;
}

const filesOf: Readonly<Record<System, () => Readonly<Record<string, string | Buffer>>>> = {
  linux: () => ({ electron: fuses, 'locales/en-US.pak': '', 'resources/.keep': '', LICENSE: 'Stand-in.' }),
  win: () => ({ 'electron.exe': windowsProgram(), 'locales/en-US.pak': '', 'resources/.keep': '' }),
  mac: macFiles,
};

/** Lays the stand-in for a system into a folder. */
export function layStandIn(system: System, folder: string): void {
  for (const [name, content] of Object.entries(filesOf[system]())) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), content, { mode: 0o755 });
  }
}
