/** Temperatures in words of doubt and range. */

/** Kelvin to `185 °C`, rounded to whole degrees. */
export const celsiusText = (temperature: number): string => `${Math.round(temperature - 273.15)} °C`;
