import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseRheologyTable } from '../../../core/project/rheologyTable.ts';
import { pathText } from '../../../core/result.ts';
import { pinned } from '../../helpers/arbitraries.ts';
import { codesOf, expectOk } from '../../helpers/projects.ts';

const wanted = [
  { shearRate: 10, temperature: 463.15, viscosity: 1250.5 },
  { shearRate: 100, temperature: 463.15, viscosity: 400.25 },
];

const read = (text: string, temperatureC?: number) => expectOk(parseRheologyTable(text, temperatureC));
const bare = (text: string, temperatureC?: number) =>
  read(text, temperatureC).points.map(({ line: _, shearRate, temperature, viscosity }) => ({
    shearRate,
    temperature: Number(temperature.toFixed(6)),
    viscosity: Number(viscosity.toFixed(6)),
  }));

describe('a pasted table', () => {
  it.each<[string, string]>([
    ['tabs and units', 'Shear rate (1/s)\tTemperature (°C)\tViscosity (Pa·s)\n10\t190\t1250.5\n100\t190\t400.25'],
    ['semicolons, commas as decimal marks', 'γ [s⁻¹];T [°C];η [Pa·s]\n10,0;190,0;1250,5\n100,0;190,0;400,25\n'],
    ['commas between', 'shear rate 1/s,temperature C,viscosity Pa.s\n10,190,1250.5\n100,190,400.25'],
    ['kelvin, mPa·s and another order', 'viscosity mPa s\tT (K)\trate (1/s)\n1250500\t463.15\t10\n400250\t463.15\t100'],
    [
      'units in a row of their own',
      'Rate\tTemperature\tViscosity\n1/s\tK\tkPa·s\n10\t463.15\t1.2505\n100\t463.15\t0.40025',
    ],
    ['spaces and no headings', '10 190 1250.5\n100  190   400.25'],
    ['no headings, kelvin by size', '10\t463.15\t1250.5\n100\t463.15\t400.25'],
    ['a column that is not wanted', 'stress Pa\tshear rate\tT °C\tviscosity\n1\t10\t190\t1250.5\n2\t100\t190\t400.25'],
  ])('with %s', (_, text) => {
    expect(bare(text)).toEqual(wanted);
  });

  it('without temperatures takes the one that is given, and asks where none is', () => {
    const text = 'shear rate 1/s\tviscosity Pa·s\n10\t1250.5\n100\t400.25';
    expect(bare(text, 190)).toEqual(wanted);
    expect(codesOf(parseRheologyTable(text))).toEqual(['column-missing']);
    expect(bare('10;1250,5\n100;400,25', 190)).toEqual(wanted);
  });

  it('says what it assumed', () => {
    expect(read('10 190 1250.5\n100 190 400.25').notes).toEqual([
      'Columns set apart by tabs or spaces.',
      'No headings: read as shear rate, temperature, viscosity.',
      'No unit for the shear rate: 1/s assumed.',
      'No unit for the temperature: °C assumed.',
      'No unit for the viscosity: Pa·s assumed.',
    ]);
  });

  it('names the rows it cannot read and drops none silently', () => {
    const { points, issues } = read('1/s\t°C\tPa·s\n10\t190\t1250.5\n20\tabout 190\t1000\n\n100\t190\t\n200\t190\t300');
    expect(points.map(({ line }) => line)).toEqual([2, 6]);
    expect(issues.map(({ path, code }) => [pathText(path), code])).toEqual([
      ['rows[3].temperature', 'bad-number'],
      ['rows[5].viscosity', 'bad-number'],
    ]);
  });

  it('refuses what is no table', () => {
    expect(codesOf(parseRheologyTable(''))).toEqual(['no-numbers']);
    expect(codesOf(parseRheologyTable('nothing here'))).toEqual(['no-numbers']);
    expect(codesOf(parseRheologyTable('a\tb\tc\n1\t2\t3'))).toEqual(['column-missing']);
  });

  it('never throws, whatever is pasted', () => {
    const piece = fc.constantFrom(
      '1',
      '1,5',
      '2.5',
      '\t',
      ';',
      ',',
      '\n',
      '"',
      '°C',
      'Pa·s',
      '1/s',
      'x',
      ' ',
      '-',
      '1e999',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
        const result = parseRheologyTable(pieces.join(''), 200);
        if (!result.ok) expect(result.issues).toHaveLength(1);
        else for (const { viscosity } of result.value.points) expect(viscosity).not.toBeNaN();
      }),
      pinned(300),
    );
  });
});
