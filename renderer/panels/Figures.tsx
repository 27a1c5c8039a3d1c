/** placeholder until the presentation lands */
export const Figures = () => null;
