/** The list of pictures that people look at before a release, and how each is reached. */

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { launchBrowser, outFolder } from '../e2e/browser.ts';
import { openWorkbench, screenshotLimit, settled } from '../e2e/harness.ts';

/** One view: what to press or click, from the freshly opened workbench. */
interface Shot {
  readonly name: string;
  /** Project file; the demo when absent. */
  readonly file?: string;
  /** Id of the revision to work on; the open one when absent. */
  readonly revision?: string;
  reach?(page: Page): Promise<void>;
}

const press = (name: string) => (page: Page) => page.getByRole('button', { name }).first().click();
const tab = (name: string) => (page: Page) => page.getByRole('tab', { name }).click();

/** Brings a group of the granulate's panel to its top. */
function scrolledTo(title: string) {
  return async (page: Page): Promise<void> => {
    await tab('Granulate')(page);
    await page.getByRole('heading', { name: title, exact: true }).evaluate((heading) => heading.scrollIntoView());
  };
}

async function openedSource(page: Page): Promise<void> {
  await scrolledTo('Density and heat')(page);
  await page.getByRole('button', { name: /^Source and doubt of Melt density/ }).click();
}

async function openedLibrary(page: Page): Promise<void> {
  await tab('Granulate')(page);
  await press('Add from library')(page);
  await page.getByRole('menuitem').first().waitFor();
}

/** Readings of a filled melt at three temperatures, with a slip and a reading that cannot be read. */
const readings = [
  'shear rate (1/s)\ttemperature (°C)\tviscosity (Pa·s)',
  ...[175, 185, 195].flatMap((celsius, row) =>
    [1, 3, 10, 30, 100, 300, 1000].map((rate, column) => {
      const noise = 1 + 0.06 * Math.sin(7 * row + 3 * column);
      const slip = row === 1 && column === 4 ? 1.6 : 1;
      const level = 3200 * Math.exp(-0.024 * (celsius - 185));
      return `${rate}\t${celsius}\t${(slip * noise * (level / (1 + (0.06 * rate) ** 0.68))).toFixed(1)}`;
    }),
  ),
  '3000\t195\tn.a.',
].join('\n');

async function fitted(page: Page): Promise<void> {
  await tab('Granulate')(page);
  await press('Fit viscosity …')(page);
  await page.getByLabel('Table of readings').fill(readings);
  await page.locator('.fit-constants').waitFor();
}

async function openedTopic(page: Page): Promise<void> {
  await tab('Granulate')(page);
  const heading = page.getByRole('heading', { name: 'What can be predicted with it' });
  await heading.evaluate((element) => element.scrollIntoView());
  await page.locator('.known-chip', { hasText: 'Pumping' }).click();
}

/** Brings a part of the right side into sight. */
const scroll = (selector: string) => (page: Page) =>
  page
    .locator(selector)
    .first()
    .evaluate((element) => element.scrollIntoView());

const meltAge = press('Melt age');

/** Several steps, one after the other. */
const all =
  (...steps: readonly ((page: Page) => Promise<unknown>)[]) =>
  async (page: Page): Promise<void> => {
    for (const step of steps) await step(page);
  };

/** Opens the bench log at a part of it. */
const bench = (part: string) => all(press('Bench log …'), tab(part));

async function calibratedOnce(page: Page): Promise<void> {
  await bench('Calibrate')(page);
  await press('Find the factors')(page);
  await page.getByTestId('factors').waitFor();
}

async function proposed(page: Page): Promise<void> {
  await bench('Next trials')(page);
  await press('Propose trials')(page);
  await page.getByTestId('plan').waitFor();
}

const measured = (page: Page) => page.getByTestId('measured').waitFor();

const chooseSpot = (page: Page) => page.locator('.spot').first().click();
const colourBy = (quantity: string) => (page: Page) => page.getByLabel('Coloured by').selectOption(quantity);

/** Opens the colour dialog and waits until all revisions are worked out. */
async function openedColour(page: Page): Promise<void> {
  await press('Colour')(page);
  await page.locator('.layers').waitFor();
}

/** Opens the study of doubt, runs few samples and waits for the answer. */
async function openedDoubt(page: Page): Promise<void> {
  await press('How sure')(page);
  const samples = page.getByLabel('Samples', { exact: true });
  await samples.fill('24');
  await samples.press('Enter');
  await press('Run the samples')(page);
  await page.getByText('24 of 24').waitFor({ state: 'hidden' });
  await page.getByRole('button', { name: 'Run the samples' }).waitFor();
}

/** Opens the dialog of hand-over files at a kind, by its name, and works it out where wanted. */
const handedOver = (kind: string, workOut: boolean) =>
  all(press('Hand over …'), async (page) => {
    await page.getByRole('radio', { name: kind }).first().click({ force: true });
    if (!workOut) return;
    await page.getByRole('button', { name: 'Work it out' }).click();
    await page.locator('.handover-file, .handover-refused').first().waitFor({ timeout: 60_000 });
    await scroll('.handover-acts')(page);
  });

/** Adds an input of a search by its name. */
async function addInput(page: Page, name: string): Promise<void> {
  if (!(await page.locator('.pick-input input').isVisible())) await page.locator('.pick-input summary').click();
  await page.locator('.pick-input input').fill(name);
  await page.locator('.pick-input .command').first().click();
}

const searchEnds = async (page: Page): Promise<void> => {
  await page
    .getByText(/designs looked at\.$/)
    .first()
    .waitFor({ timeout: 120_000 });
};

/** Sweeps the named inputs over their proposed ranges. */
const swept =
  (...names: readonly string[]) =>
  async (page: Page): Promise<void> => {
    await press('Better screw …')(page);
    for (const name of names) await addInput(page, name);
    for (const steps of await page.getByLabel('Values', { exact: true }).all()) {
      await steps.fill('9');
      await steps.press('Enter');
    }
    await page.getByRole('button', { name: /^Try them/ }).click();
    await searchEnds(page);
    await scroll('.search-bar')(page);
  };

async function mapped(page: Page): Promise<void> {
  await swept('whole metering part', 'screw speed')(page);
  const map = await page.locator('.map-box').boundingBox();
  if (map) await page.mouse.move(map.x + 0.4 * map.width, map.y + 0.5 * map.height);
}

async function goalSet(page: Page): Promise<void> {
  await press('Better screw …')(page);
  await tab('Reach a goal')(page);
  for (const name of ['whole metering part', 'lead of all', 'screw speed']) await addInput(page, name);
}

async function sought(page: Page): Promise<void> {
  await goalSet(page);
  await page.getByLabel('Designs at most').fill('40');
  await page.getByLabel('Designs at most').press('Enter');
  await page.getByLabel('Confirm the best three by solved fields').uncheck();
  await page.getByRole('button', { name: 'Search', exact: true }).click();
  await searchEnds(page);
  await page.getByRole('button', { name: 'Show candidate 1' }).first().click();
  await page.getByRole('button', { name: 'Work it out' }).click();
  await page.getByText('One step down').waitFor({ timeout: 60_000 });
}

/** Points at the plot along the axis, where granulate melts. */
async function pointedAtMelting(page: Page): Promise<void> {
  const plot = await page.locator('.axial .u-over').boundingBox();
  if (plot) await page.mouse.move(plot.x + 0.42 * plot.width, plot.y + 0.4 * plot.height);
}

/** Opens the comparison at a part of it, once all revisions have estimates, or solved fields. */
const compared = (part: string, till: 'estimates' | 'solved' = 'estimates') => {
  return async (page: Page): Promise<void> => {
    await press('Compare')(page);
    await page.getByRole('tab', { name: part }).click();
    await page.locator('.better-for-what').waitFor({ timeout: 60_000 });
    if (till === 'solved') await page.getByText('From solved flow fields.').waitFor({ timeout: 240_000 });
  };
};

/** Puts the cursor into a field. */
const lookedAt = (label: string) => (page: Page) => page.getByLabel(label, { exact: true }).focus();

async function askedForCut(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Actions: Section 2' }).click();
  await page.getByRole('menuitem', { name: 'Split at a place' }).click();
  await page.getByLabel('Distance').fill('20');
}

async function openedNew(page: Page): Promise<void> {
  await page.keyboard.press('Control+Alt+N');
  await page.getByRole('img', { name: 'Side view of the first screw' }).waitFor();
}

async function warmingUp(page: Page): Promise<void> {
  const group = page.locator('[data-group="warmUp"]');
  await group.locator('summary').click();
  await group.getByRole('button', { name: /^Show as a curve/ }).click();
}

/** The drawing with dimensions instead of the 3D view. */
const drawing = press('Drawing');

/** Pulls a handle of the drawing sideways and keeps hold of it. */
async function pulling(page: Page): Promise<void> {
  await drawing(page);
  const handle = await page.locator('[data-grip="section/1/lengthMm"] .grip-hit').boundingBox();
  if (!handle) return;
  await page.mouse.move(handle.x + handle.width / 2, handle.y + handle.height / 2);
  await page.mouse.down();
  await page.mouse.move(handle.x + 30, handle.y + 4, { steps: 5 });
}

/** Granules to scale at the feed opening, once they are placed. */
async function grainsShown(page: Page): Promise<void> {
  await press('Granules')(page);
  await page.locator('.grains-card').waitFor();
  // tools of the section table name the feed too
  await page.locator('.view-tools').getByRole('button', { name: 'Feed' }).click();
  await page.waitForTimeout(900);
}

/** Measures from the outside of the feed to the nozzle by clicking twice. */
async function measuredByClicks(page: Page): Promise<void> {
  await press('Measure')(page);
  const box = await page.locator('.scene canvas').boundingBox();
  if (!box) return;
  await page.mouse.click(box.x + 0.35 * box.width, box.y + 0.5 * box.height);
  await page.mouse.click(box.x + 0.66 * box.width, box.y + 0.46 * box.height);
}

/** The menu of the plot along the axis, zoomed in once by key. */
async function plotMenuOpen(page: Page): Promise<void> {
  await page.locator('.axial .chart').focus();
  await page.keyboard.press('+');
  await page.getByRole('button', { name: /^Actions for the plot: Along the axis/ }).click();
  await page.getByRole('menuitem').first().waitFor();
}

const enlargedSection = async (page: Page): Promise<void> => {
  await page.locator('.across-picture').focus();
  for (const key of ['+', '+', 'ArrowRight']) await page.keyboard.press(key);
};

const shots: readonly Shot[] = [
  { name: 'start' },
  { name: 'help-sketch', reach: lookedAt('Section 2, Root Ø end') },
  { name: 'inch-display', reach: all(press('Millimetres or inches'), lookedAt('Section 2, Lead start')) },
  { name: 'split-at', reach: askedForCut },
  { name: 'templates', reach: press('Screw templates') },
  { name: 'new-project', reach: openedNew },
  { name: 'axial', reach: pointedAtMelting },
  { name: 'print-side', reach: scroll('.print-side') },
  { name: 'controller', reach: scroll('.print-topic:last-child') },
  { name: 'cautions', reach: scroll('.cautions-head') },
  { name: 'warming-up', reach: warmingUp },
  { name: 'granulate', reach: tab('Granulate') },
  { name: 'granulate-law', reach: scrolledTo('Melt flow') },
  { name: 'granulate-source', reach: openedSource },
  { name: 'granulate-aging', reach: scrolledTo('Changes with time and heat') },
  { name: 'granulate-library', reach: openedLibrary },
  { name: 'granulate-complete', reach: openedTopic },
  { name: 'granulate-fit', reach: fitted },
  { name: 'barrel', reach: tab('Barrel') },
  { name: 'tip-and-nozzle', reach: press('Tip & nozzle') },
  { name: 'slice', reach: press('Slice') },
  { name: 'drawing', reach: drawing },
  { name: 'drawing-outlet', reach: all(drawing, press('Tip & nozzle')) },
  { name: 'drawing-dragging', reach: pulling },
  { name: 'grains', reach: grainsShown },
  { name: 'grains-slice', reach: all(press('Slice'), grainsShown) },
  { name: 'misfit-grains', file: 'assets/examples/pla-pellet-misfit.json', reach: grainsShown },
  { name: 'melt-front', reach: press('Melting') },
  { name: 'measure', reach: measuredByClicks },
  { name: 'plot-menu', reach: plotMenuOpen },
  { name: 'across-close', reach: all(scroll('.across'), enlargedSection) },
  { name: 'melt-age', reach: meltAge },
  { name: 'melt-outlet', reach: all(meltAge, press('Tip & nozzle')) },
  { name: 'melt-wedge', reach: all(meltAge, press('Slice'), press('Screw')) },
  { name: 'dead-spot', reach: all(chooseSpot, scroll('.spots')) },
  { name: 'dead-spot-first-screw', revision: 'A', reach: all(chooseSpot, scroll('.spots')) },
  { name: 'across-speed', reach: all(scroll('.across'), colourBy('speed')) },
  { name: 'residence', reach: scroll('.curve:has(.landmarks)') },
  { name: 'revisions', reach: press('Revisions …') },
  { name: 'compare', reach: compared('Predicted numbers', 'solved') },
  { name: 'compare-described', reach: compared('Description') },
  { name: 'compare-drawings', reach: compared('Drawings') },
  { name: 'compare-outlet', reach: all(compared('Drawings'), press('Outlet')) },
  { name: 'compare-curves', reach: compared('Curves') },
  { name: 'compare-3d', reach: compared('In 3D', 'solved') },
  { name: 'colour', reach: openedColour },
  { name: 'colour-charts', reach: all(openedColour, scroll('.colour-studies')) },
  { name: 'colour-change', reach: all(openedColour, scroll('[aria-label^="Changing over"]')) },
  { name: 'colour-unknown', file: 'assets/examples/hdpe-regrind.json', reach: press('Colour') },
  { name: 'doubt', reach: openedDoubt },
  { name: 'doubt-rank', reach: all(openedDoubt, scroll('.colour-pair')) },
  { name: 'doubt-inputs', reach: all(openedDoubt, scroll('[aria-label^="What is not known"]')) },
  { name: 'search-sweep', reach: swept('whole metering part') },
  { name: 'search-map', reach: mapped },
  { name: 'search-goal', reach: goalSet },
  { name: 'search-candidates', reach: all(sought, scroll('.search-result')) },
  { name: 'search-candidate', reach: all(sought, scroll('.candidate-detail')) },
  { name: 'bench-trials', reach: press('Bench log …') },
  { name: 'bench-form', reach: all(press('Bench log …'), press('Add a trial')) },
  { name: 'bench-import', reach: bench('Import') },
  { name: 'bench-measured', reach: all(bench('Measured & predicted'), measured) },
  { name: 'bench-calibrate', reach: calibratedOnce },
  { name: 'bench-plan', reach: proposed },
  { name: 'bench-picture', reach: bench('Colour from a picture') },
  { name: 'handover', reach: handedOver('3MF', false) },
  { name: 'handover-mesh', reach: handedOver('STL', true) },
  { name: 'handover-controller', reach: handedOver('Flow test', true) },
  { name: 'examples', reach: press('Examples') },
  { name: 'wax', file: 'assets/examples/wax-head.json' },
  { name: 'misfit', file: 'assets/examples/pla-pellet-misfit.json' },
];

const sizes = [
  [1280, 800],
  [1920, 1080],
] as const;
const schemes = ['light', 'dark'] as const;

/** Takes the named shots, or all, in every size and scheme; one that cannot be reached does not keep the others back. */
async function takeShots(names: readonly string[]): Promise<void> {
  const folder = join(outFolder, 'shots');
  mkdirSync(folder, { recursive: true });
  const browser = await launchBrowser();
  for (const shot of shots.filter(({ name }) => names.length === 0 || names.includes(name))) {
    try {
      await takeShot(browser, shot, folder);
    } catch (fault) {
      console.error(`${shot.name}: ${String(fault)}`);
      process.exitCode = 1;
    }
  }
  await browser.close();
}

/** Works on another revision and waits for its results. */
async function openRevision(page: Page, id: string): Promise<void> {
  await page.getByRole('button', { name: new RegExp(`^${id}: `) }).click();
  await page.locator('.run-state.busy').waitFor();
  await settled(page);
}

/** One opening of the window serves all sizes and schemes: solved fields take many seconds. */
async function takeShot(browser: Browser, shot: Shot, folder: string): Promise<void> {
  const workbench = await openWorkbench({ ...(shot.file === undefined ? {} : { file: shot.file }), browser });
  const { page } = workbench;
  try {
    await settled(page);
    if (shot.revision !== undefined) await openRevision(page, shot.revision);
    await shot.reach?.(page);
    for (const [width, height] of sizes) {
      await page.setViewportSize({ width, height });
      for (const scheme of schemes) await picture(page, scheme, join(folder, `${shot.name}-${width}-${scheme}.png`));
    }
  } finally {
    for (const problem of workbench.problems) console.error(`${shot.name}: ${problem}`);
    await workbench.close();
  }
}

async function picture(page: Page, scheme: string, path: string): Promise<void> {
  await page.evaluate((theme) => {
    document.documentElement.dataset.theme = theme;
  }, scheme);
  // Software rendering needs a moment for the scene after a change of view.
  await page.waitForTimeout(700);
  const calculating = page.getByText(/: calculating …$/).first();
  await calculating.waitFor({ state: 'hidden', timeout: 90_000 });
  await page.screenshot({ path, timeout: screenshotLimit });
  console.log(path);
}

await takeShots(process.argv.slice(2));
