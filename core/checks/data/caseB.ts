/**
 * Part of the reference solutions, case B (residence in a straight channel), in their own layout: entries 0, 12 and 13,
 * named by their places in test/reference/flow/caseB.json, with some of their rows and quantities. Solved with an
 * independent general finite-element package (P2/P1 Taylor-Hood elements). SI.
 */
export const caseB = {
  0: {
    inputs: {
      H_m: 0.002,
      W_m: 0.1,
      H_over_W: 0.02,
      phi_deg: 17.66,
      V_barrel_m_per_s: 0.0125,
      fillet_over_H: 0,
      material: { model: 'newtonian', eta: 1000.0 },
    },
    rows: [
      {
        G_fraction_of_closed: 0.0,
        G_dimensionless: 0.0,
        Q_over_V_H2: 23.563249146072117,
        t_min_over_mean: 0.7285234622088658,
        t_center_over_mean: 0.7508672467302154,
        F: { '1.0': 0.7769610387712148 },
        area_frac_dwell_gt: { '3': 0.07553778148365253 },
      },
    ],
  },
  12: {
    inputs: {
      H_m: 0.002,
      W_m: 0.0033333333333333335,
      H_over_W: 0.6,
      phi_deg: 17.66,
      V_barrel_m_per_s: 0.0125,
      fillet_over_H: 0.5,
      material: { model: 'power_law', m: 10000.0, n: 0.5, reg_shear_rate: 0.00625 },
    },
    rows: [
      {
        G_fraction_of_closed: 0.0,
        G_dimensionless: 0.0,
        Q_over_V_H2: 0.4424143823128492,
        t_min_over_mean: 0.5554242276834197,
        t_center_over_mean: 0.5554242276834197,
        F: { '1.0': 0.7831573616664599, '2.0': 0.9432812442653689 },
        area_frac_dwell_gt: { '3': 0.17482179887612426 },
      },
    ],
  },
  13: {
    inputs: {
      H_m: 0.002,
      W_m: 0.0033333333333333335,
      H_over_W: 0.6,
      phi_deg: 17.66,
      V_barrel_m_per_s: 0.0125,
      fillet_over_H: 0,
      material: { model: 'newtonian', eta: 1000.0 },
    },
    rows: [
      {
        G_fraction_of_closed: 0.5,
        G_dimensionless: 3.09517075777,
        Q_over_V_H2: 0.2690372387696228,
        t_min_over_mean: 0.5609386956652161,
        t_center_over_mean: 0.5617667760490012,
        F: { '1.0': 0.8391485506886803, '1.5': 0.9261602915341827 },
        area_frac_dwell_gt: { '3': 0.23967110978886985 },
      },
      {
        G_fraction_of_closed: 0.0,
        G_dimensionless: 0.0,
        Q_over_V_H2: 0.5380748228111059,
        t_min_over_mean: 0.562606680902382,
        t_center_over_mean: 0.562606680902382,
        F: { '1.0': 0.7942423952233181, '1.5': 0.9073556267768055 },
        area_frac_dwell_gt: { '3': 0.18462814183105025 },
      },
    ],
  },
};
