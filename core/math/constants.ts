/** Constants of nature that several rooms need. */

/** Fall of bodies near the ground, m/s²; 9.78 to 9.83 by place (textbooks). */
export const gravity = 9.81;
