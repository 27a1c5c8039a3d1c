/**
 * Part of the reference solutions, case A (straight channel), in their own layout: entries 8 and 17, named by their
 * places in test/reference/flow/caseA.json, with some of their rows and quantities. Solved with an independent general
 * finite-element package (P2/P1 Taylor-Hood elements). SI.
 */
export const caseA = {
  8: {
    inputs: {
      H_m: 0.002,
      W_m: 0.006666666666666667,
      H_over_W: 0.3,
      phi_deg: 17.66,
      V_barrel_m_per_s: 0.0125,
      V_bz: 0.011910918802455634,
      V_bx: 0.0037920987963539206,
      material: { model: 'power_law', m: 10000.0, n: 0.5, reg_shear_rate: 0.00625 },
    },
    rows: [
      {
        G_fraction_of_closed: 1.0,
        G_Pa_per_m: 46430036.554124996,
        Q_m3_per_s: -5.147699364400001e-16,
        stream_extremum_abs_m2_per_s: 8.7075717454e-7,
        total_dissipation_W_per_m: 5.64936847365625,
        lid_shear_down_mid_Pa: 57957.325377500005,
      },
      {
        G_fraction_of_closed: 0.5,
        G_Pa_per_m: 23215018.277,
        Q_m3_per_s: 3.019441027325e-8,
        stream_extremum_abs_m2_per_s: 8.748194795375e-7,
        total_dissipation_W_per_m: 4.014989292487501,
        lid_shear_down_mid_Pa: 42615.564849999995,
      },
    ],
  },
  17: {
    inputs: {
      H_m: 0.002,
      W_m: 0.002,
      H_over_W: 1.0,
      phi_deg: 17.66,
      V_barrel_m_per_s: 0.0125,
      V_bz: 0.011910918802455634,
      V_bx: 0.0037920987963539206,
      material: { model: 'newtonian', eta: 1000.0 },
    },
    rows: [
      {
        G_fraction_of_closed: 1.0,
        G_Pa_per_m: 21182197.5213125,
        Q_m3_per_s: -1.0374615842000002e-22,
        stream_extremum_abs_m2_per_s: 7.590009634875e-7,
        lid_shear_down_mid_Pa: 26304.71697875,
      },
      {
        G_fraction_of_closed: 0.0,
        G_Pa_per_m: 0.0,
        Q_m3_per_s: 1.1910920123300001e-8,
        stream_extremum_abs_m2_per_s: 7.590009634875e-7,
        lid_shear_down_mid_Pa: 12000.09741475,
      },
    ],
  },
};
