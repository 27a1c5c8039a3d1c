/**
 * Part of the reference solutions, case C (between tip and nozzle), in their own layout: entries 9, 13 and 14, named by
 * their places in test/reference/flow/caseC.json, with some of their rows and quantities. Solved with an independent
 * general finite-element package (P2/P1 Taylor-Hood elements). SI.
 */
export const caseC = {
  9: {
    inputs: {
      R_barrel_m: 0.004,
      R_root_m: 0.00225,
      tip: 'flat',
      gap_m: 0.003,
      annulus_length_m: 0.003,
      contraction_included_angle_deg: 120,
      nozzle_diameter_m: 0.0012,
      land_m: 0.001,
      Q_m3_per_s: 1e-8,
      material: { model: 'newtonian', eta: 1000.0 },
    },
    outputs: {
      dp_total_Pa: 271547.9710466915,
      barrel_corner_eddy_length_m: 5.4e-5,
      age_Pe1e5: { vol_frac_age_gt_3: 0.1049031218 },
    },
  },
  13: {
    inputs: {
      R_barrel_m: 0.004,
      R_root_m: 0.00225,
      tip: 'flat',
      gap_m: 0.003,
      annulus_length_m: 0.003,
      contraction_included_angle_deg: 180,
      nozzle_diameter_m: 0.0008,
      land_m: 0.001,
      Q_m3_per_s: 1e-8,
      material: { model: 'newtonian', eta: 1000.0 },
    },
    outputs: {
      dp_total_Pa: 1230123.7872800312,
      barrel_corner_eddy_length_m: 0.00047799999999999996,
      age_Pe1e5: { vol_frac_age_gt_3: 0.1499897759 },
    },
  },
  14: {
    inputs: {
      R_barrel_m: 0.004,
      R_root_m: 0.00225,
      tip: 'flat',
      gap_m: 0.003,
      annulus_length_m: 0.003,
      contraction_included_angle_deg: 180,
      nozzle_diameter_m: 0.0012,
      land_m: 0.001,
      Q_m3_per_s: 1e-8,
      material: { model: 'power_law', m: 10000.0, n: 0.5, reg_shear_rate: 4.973591971621729e-5 },
    },
    outputs: {
      dp_total_Pa: 534396.8095769711,
      barrel_corner_eddy_length_m: 0.00031800000000000003,
      age_Pe1e5: { vol_frac_age_gt_3: 0.148685934 },
    },
  },
};
