import { existsSync, readFileSync, statSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { mostArchiveMb, packedFiles, packingConfig } from '../helpers/packed.ts';

/** What would be packed, by the packer's own rules; `long/packing.test.ts` packs for real, around stand-ins. */

const files = packedFiles();
const config = packingConfig();
const isKernel = (file: string) => /\/replicad_single-[\w-]+\.wasm$/.test(file);
const megabytes = (chosen: readonly string[]) => chosen.reduce((sum, file) => sum + statSync(file).size, 0) / 1e6;

describe('what is packed', () => {
  test('is what the program runs on', () => {
    const needed = [
      'package.json',
      'dist/electron/main.cjs',
      'dist/electron/preload.cjs',
      'dist/renderer/index.html',
      'dist/renderer/icon.png',
      'dist/renderer/assets/solid-kernel-licence.txt',
      'assets/examples/demo.json',
      'assets/materials/pla.json',
    ];
    expect(needed.filter((file) => !files.includes(file))).toEqual([]);
    expect(files.filter(isKernel)).toHaveLength(1);
  });

  test('is nothing else: no sources, tests, maps, packages, lists of the build', () => {
    const fine =
      /^(package\.json|dist\/electron\/(main|preload)\.cjs|dist\/renderer\/(index\.html|icon\.(png|svg)|assets\/[\w.-]+\.(css|icc|js|txt|wasm|webp))|assets\/(examples|materials)\/[\w-]+\.json)$/;
    expect(files.filter((file) => !fine.test(file))).toEqual([]);
    expect(files.filter((file) => /\.(map|tsx?|mjs)$|node_modules|(^|\/)\.|\.test\./.test(file))).toEqual([]);
  });

  test('holds every file that its page and its code name', () => {
    const page = readFileSync('dist/renderer/index.html', 'utf8');
    const named = [...page.matchAll(/(?:src|href)="\.\/([^"]+)"/g)].map((match) => `dist/renderer/${match[1]}`);
    const scripts = files.filter((file) => file.endsWith('.js')).map((file) => readFileSync(file, 'utf8'));
    // names with the build's mark of contents, as code writes them
    const inCode = scripts.flatMap((code) => [
      ...code.matchAll(/["'`./]([\w.-]+-[\w-]{8}\.(?:js|css|wasm|icc|webp))["'`]/g),
    ]);
    const assets = inCode.map((match) => `dist/renderer/assets/${match[1]}`);
    expect(assets.length).toBeGreaterThan(20);
    expect([...named, ...assets].filter((file) => !files.includes(file))).toEqual([]);
  });

  test('stays within its size, the solid kernel counted apart', () => {
    expect(megabytes(files.filter((file) => !isKernel(file)))).toBeLessThan(mostArchiveMb);
    expect(megabytes(files.filter(isKernel))).toBeLessThan(24);
  });

  test('requires nothing but Electron and Node', () => {
    for (const script of ['main', 'preload']) {
      const code = readFileSync(`dist/electron/${script}.cjs`, 'utf8');
      const wanted = [...code.matchAll(/\brequire\("([^"]+)"\)/g)].map((match) => match[1]);
      expect(wanted.filter((name) => name !== 'electron' && !isBuiltin(name))).toEqual([]);
    }
  });
});

describe('the notices', () => {
  test('lie beside the archive, where a person can read them', () => {
    expect(config.extraResources).toEqual([
      { from: 'LICENSE', to: 'licences/augerwright.txt' },
      { from: 'dist/renderer/third-party.txt', to: 'licences/window.txt' },
      { from: 'dist/electron/third-party.txt', to: 'licences/host.txt' },
    ]);
  });

  const notices = readFileSync('dist/renderer/third-party.txt', 'utf8');

  test.each(['react', 'react-dom', 'three', 'zod', 'uplot', 'pdfkit', 'manifold-3d', '@tarikjabiri/dxf', 'fflate'])(
    'name %s with its licence',
    (name) => expect(notices).toMatch(new RegExp(`^${name} \\d[\\w.]* \\((MIT|ISC|Apache-2\\.0)\\)$`, 'm')),
  );

  test('carry the terms, those of the solid kernel whole', () => {
    expect(notices).toContain('replicad-opencascadejs 1.1.0 (LGPL-2.1-only)');
    expect(notices).toContain('GNU LESSER GENERAL PUBLIC LICENSE');
    expect(notices.match(/Permission is hereby granted, free of charge/g)?.length).toBeGreaterThan(20);
    expect(readFileSync('dist/electron/third-party.txt', 'utf8')).toMatch(/^electron-log \d/m);
  });
});

describe('the packing part of package.json', () => {
  test('switches off every way past the archive, and checks the archive', () => {
    // the names are those of the fuses in Electron's own documentation
    expect(config.electronFuses).toEqual({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
    });
    expect(config).toMatchObject({ asar: true, publish: null });
    expect(config).not.toHaveProperty('disableAsarIntegrity');
  });

  test('asks macOS for compiled code and nothing more', () => {
    const mac = config.mac as Record<string, string>;
    expect(mac.hardenedRuntime).toBe(true);
    for (const file of [mac.entitlements, mac.entitlementsInherit]) {
      const keys = [...readFileSync(file, 'utf8').matchAll(/<key>([^<]+)<\/key>/g)].map((match) => match[1]);
      expect(keys).toEqual(['com.apple.security.cs.allow-jit']);
    }
  });

  test('gives the project files one ending on every system', () => {
    expect(config.fileAssociations).toEqual([
      expect.objectContaining({ ext: 'augerwright', mimeType: 'application/vnd.augerwright+json', role: 'Editor' }),
    ]);
  });
});

describe('the icons', () => {
  const logo = PNG.sync.read(readFileSync('assets/public/icon.png'));
  const meanOf = ({ data }: PNG) => {
    const sum = [0, 0, 0, 0];
    for (let at = 0; at < data.length; at += 4) for (let k = 0; k < 4; k++) sum[k] += data[at + k] / (data.length / 4);
    return sum;
  };

  test.each([16, 24, 32, 48, 64, 128, 256, 512])('are there at %s px, and show the logo', (edge) => {
    const icon = PNG.sync.read(readFileSync(`assets/packaging/icons/${edge}x${edge}.png`));
    expect([icon.width, icon.height]).toEqual([edge, edge]);
    for (const [k, value] of meanOf(icon).entries()) expect(Math.abs(value - meanOf(logo)[k])).toBeLessThan(3);
  });

  test('are there for Windows up to 256 px, and for macOS up to 512 px', () => {
    const ico = readFileSync('assets/packaging/icon.ico');
    const edges = Array.from({ length: ico.readUInt16LE(4) }, (_, k) => ico[6 + 16 * k] || 256);
    expect(edges).toEqual([16, 24, 32, 48, 64, 128, 256]);
    const icns = readFileSync('assets/packaging/icon.icns');
    expect(icns.toString('latin1', 0, 4)).toBe('icns');
    expect(icns.readUInt32BE(4)).toBe(icns.length);
    const types: string[] = [];
    for (let at = 8; at < icns.length; at += icns.readUInt32BE(at + 4)) types.push(icns.toString('latin1', at, at + 4));
    expect(types).toContain('ic09');
  });
});

test('every path the packing part names is there', () => {
  const text = JSON.stringify(config);
  const paths = [...text.matchAll(/"((?:assets|electron|dist)\/[^"*{]+\.\w+)"/g)].map((match) => match[1]);
  expect(paths.length).toBeGreaterThan(8);
  expect(paths.filter((path) => !existsSync(path))).toEqual([]);
});
