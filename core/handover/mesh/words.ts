/** Sentences that go with bodies for making. */

/** Where a body is printed: common practice of printers and machine shops, no assessment. */
export const printCautions: readonly string[] = [
  'A printed body is not what was predicted: printed plastic creeps and softens near its own print temperature, and printed metal holds what its maker says, not what bar stock holds.',
  'Do not heat a printed plastic screw, barrel or nozzle to melt granulate, and do not put it under melt pressure: it can burst or throw hot melt. Use it as a mock-up, for fits and cold trials.',
  'Layers leave gaps in which granulate stays and ages: nothing printed is fit for contact with food unless it was made, finished and approved for that.',
];

/** Where the shape was changed after predicting. */
export const changedCaution =
  'The bodies carry features (run-outs, grooves, flats or cuts) that the prediction, its strength and its sealing do not know.';

/** Where a body is cut in two. */
export const splitCaution =
  'A split screw or barrel is for looking, fitting and cold trials: pins align the halves, they do not hold pressure or torque.';
