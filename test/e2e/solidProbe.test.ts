import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { createHost } from '../../electron/services/host.ts';
import { startLoopback } from '../../electron/services/loopback.ts';
import { kernelGlue } from '../../renderer/kernelGlue.ts';
import { launchBrowser, outFolder } from './browser.ts';

const root = resolve(import.meta.dirname, '../..');
const built = join(outFolder, 'solidProbe');

/** The probe page, bundled as the window is. */
async function buildProbe(): Promise<void> {
  const { build } = await import('vite');
  await build({
    configFile: false,
    root: join(import.meta.dirname, 'solidProbe'),
    base: './',
    logLevel: 'error',
    publicDir: false,
    plugins: [kernelGlue()],
    worker: { format: 'es', plugins: () => [kernelGlue()] },
    build: {
      outDir: built,
      emptyOutDir: true,
      target: 'chrome140',
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
    },
  });
}

test('STEP is made in a worker under the content policy, the kernel a file of its own with its licence', async () => {
  await buildProbe();
  const assets = readdirSync(join(built, 'assets'));
  expect(assets.filter((name) => name.endsWith('.wasm'))).toHaveLength(1);
  expect(readFileSync(join(built, 'assets/solid-kernel-licence.txt'), 'utf8')).toContain('LESSER GENERAL PUBLIC');
  const places = {
    examplesFolder: join(root, 'assets/examples'),
    materialsFolder: join(root, 'assets/materials'),
    startPath: null,
    recentListPath: null,
  };
  const host = await startLoopback(createHost(places).apiFor, built);
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage();
    const problems: string[] = [];
    page.on('pageerror', (error) => problems.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') problems.push(message.text());
    });
    await page.goto(host.address);
    await page.waitForSelector('#said[data-done]', { timeout: 90_000 });
    const said = page.locator('#said');
    const text = (await said.textContent()) ?? '';
    if (process.env.SAY) console.log(text, problems);
    expect(await said.getAttribute('data-policy')).toBe('closed');
    expect(problems).toEqual([]);
    const [file] = JSON.parse(text) as { size: number; facts: { label: string; text: string }[] }[];
    expect(file?.size).toBeGreaterThan(5e5);
    const off = file?.facts.filter(({ label }) => label.endsWith('relative difference')) ?? [];
    expect(off).toHaveLength(3);
    for (const fact of off) expect(Math.abs(Number(fact.text))).toBeLessThan(2e-5);
  } finally {
    await browser.close();
    await host.close();
  }
});
