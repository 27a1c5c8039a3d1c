/**
 * Part of the reference solutions, case D (helical channel), in their own layout: entries 1 and 3, named by their
 * places in test/reference/flow/caseD.json, with some of their rows and quantities. Solved with an independent general
 * finite-element package (P2/P1 Taylor-Hood elements). SI.
 */
export const caseD = {
  1: {
    inputs: {
      D_barrel_m: 0.008,
      D_root_m: 0.004,
      pitch_m: 0.008,
      flight_axial_width_m: 0.001,
      N_rev_per_s: 0.5,
      material: { model: 'newtonian', eta: 1000.0 },
    },
    rows: [
      { G_fraction_of_closed: 1.0, dpdz_axial_Pa_per_m: 50214140.07361715, Q_m3_per_s: 1.023927896541836e-21 },
      { G_fraction_of_closed: 0.5, dpdz_axial_Pa_per_m: 25107070.036808576, Q_m3_per_s: 3.357430008468338e-8 },
      { G_fraction_of_closed: 0.0, dpdz_axial_Pa_per_m: 0.0, Q_m3_per_s: 6.714860016936676e-8 },
    ],
  },
  3: {
    inputs: {
      D_barrel_m: 0.008,
      D_root_m: 0.0045000000000000005,
      pitch_m: 0.008,
      flight_axial_width_m: 0.001,
      N_rev_per_s: 0.5,
      material: { model: 'power_law', m: 10000.0, n: 0.5, reg_shear_rate: 0.0031415926535897933 },
    },
    rows: [
      { G_fraction_of_closed: 1.0, dpdz_axial_Pa_per_m: 161369757.65220514, Q_m3_per_s: 1.4041064488876678e-15 },
      { G_fraction_of_closed: 0.5, dpdz_axial_Pa_per_m: 80684878.82610257, Q_m3_per_s: 3.226626541434456e-8 },
      { G_fraction_of_closed: 0.0, dpdz_axial_Pa_per_m: 0.0, Q_m3_per_s: 6.005091757951622e-8 },
    ],
  },
};
