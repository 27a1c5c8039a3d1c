/** Clearance of the flight in the barrel against what the trade holds. */

/** Radial clearance of a new industrial screw over its diameter; worn out at about twice that (screw-wear article). */
export const newClearanceShare = 0.001;

/** Guideline of the plastics industry's trade body: 0.0015 in per inch of diameter and side (coatings maker's answers). */
const guidelineClearanceShare = 0.0015;

/**
 * Radial clearance of a guideline.
 * @param bore m; @param share clearance per side over diameter
 * @returns m
 */
export const guidelineClearance = (bore: number, share = guidelineClearanceShare): number => share * bore;

/**
 * Growth of a diameter with temperature.
 * @param diameter m; @param expansion 1/K; @param rise K
 * @returns m
 */
export const thermalGrowth = (diameter: number, expansion: number, rise: number): number => diameter * expansion * rise;
