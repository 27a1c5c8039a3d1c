/** Sources that checks of several stages name. */

/** Where the numbers of the 85 mm screw stand. */
export const answer85 =
  'Answer page to a problem of Groover, ch. 13, worked through: 94.305 less 85.2 give 9.10 cm³/s (its last line misprints the power of ten)';
