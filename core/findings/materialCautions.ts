/** Cautions that follow from the material. */

import type { DesignMaterial } from '../design/types.ts';
import { formatQuantity } from '../units.ts';
import { type FindingRule, found } from './context.ts';

/** Grains smaller than this count as dust that can explode, m: 0.5 mm, common practice of dust safety. */
const dustSize = 0.5e-3;

/** Words in a material's own cautions that tell of fire, and of fumes. */
const fireWords = /flammab|flash point|flame|explo|\bember|ignit|\bfire/i;
const fumeWords = /fume|vapour|vapor|smoke|gas\b|gives off|monoxide|ventilat|depolymeri|styrene|aldehyde/i;

const told = (material: DesignMaterial, words: RegExp): string[] =>
  material.cautions.filter((caution) => words.test(caution));

const fumes: FindingRule = {
  code: 'caution-fumes',
  about: 'standing caution: fumes, with the material’s own products',
  check: ({ design }) => {
    const { material } = design;
    const own = told(material, fumeWords);
    return found({
      severity: 'caution',
      where: 'nozzle and hopper',
      saw:
        own.length > 0
          ? `${material.name}: ${own.join(' ')}`
          : `What ${material.name} gives off when hot is not told in its data.`,
      why: `Hot plastic, wax and wood give off fine particles and vapours, and far more above ${formatQuantity(material.maxSafe, '°C', 3)}, the highest safe temperature here. Some of them are poisonous, and melt that stays in dead corners makes more.`,
      change: 'Extract at the source and follow the material’s safety data sheet and local rules.',
    });
  },
};

const fire: FindingRule = {
  code: 'caution-fire',
  about: 'caution: fire and dust, for powders, waxes and whatever says so in its own cautions',
  check: ({ design }) => {
    const { material } = design;
    const own = told(material, fireWords);
    const dusty = material.form === 'powder' || material.grain.d10 < dustSize;
    if (own.length === 0 && !dusty) return null;
    const dust = dusty ? `Grains of ${formatQuantity(material.grain.d10, 'mm', 2)} and finer are in it. ` : '';
    return found({
      severity: 'caution',
      where: 'hopper and nozzle',
      saw: `${material.name}: ${dust}${own.join(' ')}`.trim(),
      why: 'Fine dust in air can explode, and hot wax, wood and plastic burn. A heater that runs away or an ember in a dead corner can light them.',
      change:
        'Keep flames and sparks away, keep dust down, earth hopper and hose, do not leave it running alone, and follow the safety data sheet and the local fire code.',
      value: dusty ? material.grain.d10 : null,
      limit: dusty ? dustSize : null,
      unit: dusty ? 'm' : '',
    });
  },
};

const otherCautions: FindingRule = {
  code: 'caution-material',
  about: 'the material’s own cautions that tell neither of fumes nor of fire',
  check: ({ design }) => {
    const { name, cautions } = design.material;
    const rest = cautions.filter((caution) => !fireWords.test(caution) && !fumeWords.test(caution));
    if (rest.length === 0) return null;
    return found({
      severity: 'caution',
      where: 'material',
      saw: `${name}: ${rest.join(' ')}`,
      why: 'These come with the material’s data. A lot from another maker may need other care.',
      change: 'Follow the safety data sheet of the lot in hand and local rules.',
    });
  },
};

/** Cautions of the material. */
export const materialCautionRules: readonly FindingRule[] = [fumes, fire, otherCautions];
