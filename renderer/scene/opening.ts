/** Angles about the axis, up from the viewer, between which barrel and nozzle are opened, rad. */
export const opening = [-0.5, 1.1] as const;
