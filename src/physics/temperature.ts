/**
 * Celsius and Fahrenheit. The scales are fixed by definition: 0 °C is 32 °F
 * and one kelvin is 1.8 Fahrenheit degrees (NIST SP 811, appendix B.8; from memory).
 */
const FREEZING_F = 32;
const F_PER_C = 1.8;

/** A temperature in °F, from °C. */
export function toFahrenheit(celsius: number): number {
  return celsius * F_PER_C + FREEZING_F;
}

/** A temperature in °C, from °F. */
export function toCelsius(fahrenheit: number): number {
  return (fahrenheit - FREEZING_F) / F_PER_C;
}

/** A temperature *difference* in Fahrenheit degrees, from kelvins: no offset. */
export function differenceInFahrenheit(kelvins: number): number {
  return kelvins * F_PER_C;
}

/** Kelvins, from a temperature *difference* in Fahrenheit degrees: no offset. */
export function differenceInKelvins(fahrenheit: number): number {
  return fahrenheit / F_PER_C;
}
