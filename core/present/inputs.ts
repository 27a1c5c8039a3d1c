/** The inputs that a reader wants to see beside the results. */

import type { Design } from '../design/types.ts';
import { quantityRow, textRow } from './row.ts';
import type { PresentedGroup } from './types.ts';

/** Material and running conditions of a design. */
export function inputsGroup(design: Design): PresentedGroup {
  const { material, process, nozzle } = design;
  const name = material.invented ? `${material.name} (invented data)` : material.name;
  return {
    id: 'inputs',
    title: 'Run with',
    rows: [
      ...(design.invented
        ? [
            textRow(
              { id: 'invented', label: 'Project', help: 'Machine and figures of this project are made up.' },
              'invented: no such machine was built or measured',
            ),
          ]
        : []),
      textRow({ id: 'material', label: 'Material', help: 'The granulate this was predicted for.' }, name),
      quantityRow(
        { id: 'setSpeed', label: 'Set screw speed', help: 'As entered; the drive may hold less.' },
        process.screwSpeed,
        'rpm',
      ),
      quantityRow(
        { id: 'nozzleTemperature', label: 'Nozzle set temperature', help: 'As entered.' },
        nozzle.setTemperature,
        '°C',
      ),
    ],
  };
}
