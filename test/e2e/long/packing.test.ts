import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { mostArchiveMb, packedFiles, packerModule, packingConfig } from '../../helpers/packed.ts';
import { layStandIn, readFuses, type System, type WindowsResource, windowsPrograms } from '../../helpers/standIns.ts';

/**
 * Packs for real for three systems, with stand-ins where Electron's binaries belong. What follows packing (installers,
 * signatures) needs tools from elsewhere and is left to whoever makes a release.
 */

/** What is used of the packer. */
interface Packer {
  build(options: object): Promise<readonly string[]>;
  readonly Platform: Readonly<
    Record<'LINUX' | 'WINDOWS' | 'MAC', { createTarget(names: string[], arch: number): unknown }>
  >;
}
/** What is used of the reader of archives. */
interface Archives {
  listPackage(path: string, options: object): string[];
  extractFile(path: string, name: string): Buffer;
  getRawHeader(path: string): { readonly headerString: string };
}

const packer = packerModule('electron-builder') as Packer;
const archives = packerModule('@electron/asar') as Archives;
const x64 = 1;
const config = packingConfig();
let home: string;

/** What the packer would tell the makers of installers, which themselves are not run. */
const told: unknown[] = [];

beforeAll(() => {
  home = mkdtempSync(join(tmpdir(), 'augerwright-packing-'));
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

async function pack(system: System): Promise<string> {
  layStandIn(system, join(home, `${system}-electron`));
  const { LINUX, WINDOWS, MAC } = packer.Platform;
  const targets = {
    linux: () => LINUX.createTarget(['deb', 'AppImage'], x64),
    win: () => WINDOWS.createTarget(['dir'], x64),
    mac: () => MAC.createTarget(['dir'], x64),
  };
  await packer.build({
    targets: targets[system](),
    publish: 'never',
    config: { electronDist: join(home, `${system}-electron`), directories: { output: join(home, system) } },
    effectiveOptionComputed: async (options: unknown) => {
      told.push(options);
      return true;
    },
  });
  const places = { linux: 'linux-unpacked', win: 'win-unpacked', mac: 'mac/Augerwright.app/Contents' };
  return join(home, system, places[system]);
}

/** The archive's list, what lies beside it left out, and the digest of its head, which the program is checked against. */
function readArchive(resources: string) {
  const path = join(resources, 'app.asar');
  const names = archives.listPackage(path, { isPack: false }).map((name) => name.slice(1));
  const head = createHash('sha256').update(archives.getRawHeader(path).headerString).digest('hex');
  return { path, names, head };
}

/** Fuses in the order of Electron's wire; the last one is not ours to set. */
const fuses = '0100110' + '01';

describe('for Linux', () => {
  let folder: string;
  beforeAll(async () => {
    folder = await pack('linux');
  });

  test('the archive holds the files of the list, and the solid kernel lies beside it', () => {
    const { names, path } = readArchive(join(folder, 'resources'));
    const files = packedFiles();
    expect(files.filter((file) => !names.includes(file))).toEqual([]);
    const folders = names.filter((name) => names.some((other) => other.startsWith(`${name}/`)));
    expect(names.filter((name) => !files.includes(name) && !folders.includes(name))).toEqual([]);
    const beside = readdirSync(join(folder, 'resources/app.asar.unpacked/dist/renderer/assets'));
    expect(beside).toEqual([expect.stringMatching(/^replicad_single-.*\.wasm$/), 'solid-kernel-licence.txt']);
    const manifest = JSON.parse(archives.extractFile(path, 'package.json').toString()) as Record<string, unknown>;
    expect(manifest).toMatchObject({ main: 'dist/electron/main.cjs', name: 'augerwright' });
    expect(manifest).not.toHaveProperty('devDependencies');
    expect(manifest).not.toHaveProperty('scripts');
  });

  test('the archive is small, and holds what was built', () => {
    const { path } = readArchive(join(folder, 'resources'));
    expect(readFileSync(path).length / 1e6).toBeLessThan(mostArchiveMb);
    const main = archives.extractFile(path, 'dist/electron/main.cjs');
    expect(main.equals(readFileSync('dist/electron/main.cjs'))).toBe(true);
  });

  test('the fuses are set in the program itself', () => {
    expect(readFuses(readFileSync(join(folder, 'augerwright')))).toBe(fuses);
  });

  test('licences lie where a person finds them', () => {
    expect(readdirSync(join(folder, 'resources/licences'))).toEqual(['augerwright.txt', 'host.txt', 'window.txt']);
    expect(readdirSync(folder)).toContain('LICENSE.electron.txt');
  });

  test('both installers start it sandboxed, open its project files, and look for no updates', () => {
    const text = JSON.stringify(told);
    expect(text).toContain('application/vnd.augerwright+json');
    expect(text).toContain('Exec=AppRun %U');
    expect(text).not.toContain('--no-sandbox');
    expect(text).toContain('Categories=Science;Engineering;');
    expect(text).toContain('StartupWMClass=augerwright');
    expect(text).toContain('512x512.png=/usr/share/icons');
    expect(readdirSync(join(folder, 'resources'))).not.toContain('app-update.yml');
  });
});

describe('for Windows', () => {
  test('program and archive belong together, with our icon, and the fuses are set', async () => {
    const folder = await pack('win');
    const bytes = readFileSync(join(folder, 'Augerwright.exe'));
    const { NtExecutable, NtExecutableResource } = windowsPrograms();
    const { entries } = NtExecutableResource.from(NtExecutable.from(bytes, { ignoreCert: true }));
    const textOf = (one: WindowsResource | undefined) => Buffer.from(one?.bin ?? new ArrayBuffer(0)).toString('utf8');
    const integrity = entries.find(({ type, id }) => type === 'INTEGRITY' && id === 'ELECTRONASAR');
    expect(JSON.parse(textOf(integrity))).toEqual([
      { file: 'resources\\app.asar', alg: 'SHA256', value: readArchive(join(folder, 'resources')).head },
    ]);
    // group of icons
    expect(entries.filter(({ type }) => type === 14)).toHaveLength(1);
    expect(readFuses(bytes)).toBe(fuses);
  });
});

describe('for macOS', () => {
  test('program and archive belong together, project files are its own, and the fuses are set', async () => {
    const contents = await pack('mac');
    const list = readFileSync(join(contents, 'Info.plist'), 'utf8');
    expect(list).toContain(readArchive(join(contents, 'Resources')).head);
    expect(list).toMatch(/<key>CFBundleTypeExtensions<\/key>\s*<array>\s*<string>augerwright<\/string>/);
    expect(list).toMatch(/<key>CFBundleIdentifier<\/key>\s*<string>org\.augerwright\.workbench<\/string>/);
    const framework = 'Frameworks/Electron Framework.framework/Electron Framework';
    expect(readFuses(readFileSync(join(contents, framework)))).toBe(fuses);
    const icon = readFileSync(join(contents, 'Resources/icon.icns'));
    expect(icon.equals(readFileSync('assets/packaging/icon.icns'))).toBe(true);
  });
});

test('the order of the fuses tested above is that of the setting', () => {
  const wire = ['runAsNode', 'enableCookieEncryption', 'enableNodeOptionsEnvironmentVariable'];
  wire.push('enableNodeCliInspectArguments', 'enableEmbeddedAsarIntegrityValidation', 'onlyLoadAppFromAsar');
  wire.push('loadBrowserProcessSpecificV8Snapshot', 'grantFileProtocolExtraPrivileges');
  expect(wire.map((name) => (config.electronFuses[name] ? '1' : '0')).join('')).toBe(fuses.slice(0, 8));
});
