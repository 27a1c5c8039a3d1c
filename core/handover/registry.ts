/** All kinds of hand-over files, in the order of the dialogue. The window and the headless command read this list. */

import { controllerModule, gcodeModule, weighingSheetModule } from './controller/controllerModules.ts';
import { csvModule, dataModule, jsonModule } from './data/dataModules.ts';
import { dxfModule, pdfModule, svgModule } from './drawing/modules.ts';
import { stlModule, threeMfModule } from './mesh/meshModules.ts';
import { htmlModule, reportModule } from './report/reportModules.ts';
import { partsListModule, shopSheetModule, shopTableModule } from './shop/shopModules.ts';
import { stepModule } from './step/stepModule.ts';
import type { HandoverModule } from './types.ts';

/** Every module. */
export const handoverModules: readonly HandoverModule[] = [
  threeMfModule,
  stlModule,
  stepModule,
  pdfModule,
  dxfModule,
  svgModule,
  shopTableModule,
  shopSheetModule,
  partsListModule,
  controllerModule,
  gcodeModule,
  weighingSheetModule,
  reportModule,
  htmlModule,
  csvModule,
  jsonModule,
  dataModule,
];
