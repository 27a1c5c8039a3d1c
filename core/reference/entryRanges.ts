/** What the numbers of reference entries may be: wide enough for any small screw, narrow enough for a mesh to exist. */

/** Least and most of a number; the third mark says that it may be left out. */
export type EntryRange = readonly [least: number, most: number, optional?: 'optional'];

/** Ranges by the names of numbers. */
export type EntryRanges = Readonly<Record<string, EntryRange>>;

const length: EntryRange = [1e-5, 1];
const angleDeg: EntryRange = [1, 89];
const viscosity: EntryRange = [1e-6, 1e12];

const flat: EntryRanges = {
  H_m: length,
  W_m: length,
  phi_deg: angleDeg,
  V_barrel_m_per_s: [1e-6, 100],
  fillet_over_H: [0, 0.99, 'optional'],
};

/** Numbers of `inputs`, by the case of the file. */
export const inputRanges: Readonly<Record<string, EntryRanges>> = {
  A: flat,
  B: flat,
  C: {
    R_barrel_m: length,
    R_root_m: length,
    gap_m: length,
    annulus_length_m: length,
    contraction_included_angle_deg: [20, 180],
    nozzle_diameter_m: length,
    land_m: length,
    Q_m3_per_s: [1e-15, 1e-2],
  },
  D: {
    D_barrel_m: length,
    D_root_m: length,
    pitch_m: length,
    flight_axial_width_m: length,
    N_rev_per_s: [1e-4, 100],
    starts: [1, 6, 'optional'],
  },
};

/** Numbers that every row states, by the case of the file; any finite ones. */
export const rowNumbers: Readonly<Record<string, readonly string[]>> = {
  A: ['G_Pa_per_m', 'Q_m3_per_s'],
  B: ['G_dimensionless', 'Q_over_V_H2'],
  D: ['dpdz_axial_Pa_per_m', 'Q_m3_per_s'],
};

/** Numbers of `inputs.material`, by its model; the names of case C differ where two are given. */
export const materialRanges: Readonly<Record<string, EntryRanges>> = {
  newtonian: { eta: viscosity },
  power_law: { m: viscosity, n: [0.05, 2], reg_shear_rate: [1e-12, 1e6, 'optional'] },
  carreau_yasuda: {
    eta0: viscosity,
    eta_inf: [0, 1e12, 'optional'],
    lambda_s: [1e-9, 1e9, 'optional'],
    lambda: [1e-9, 1e9, 'optional'],
    a: [0.05, 10],
    n: [0.05, 2],
  },
  cross: {
    eta0: viscosity,
    tau_star_Pa: [1e-3, 1e12, 'optional'],
    tau_star: [1e-3, 1e12, 'optional'],
    n: [0.05, 2],
  },
};
