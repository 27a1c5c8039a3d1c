/** placeholder until the comparison lands */
export const Compare = () => null;
