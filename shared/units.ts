/**
 * Conversions at the edges (files, screen, command line). Inside the engine everything is SI.
 * Each pair of functions is an exact inverse; no other file holds these factors.
 * Factors: international yard and pound agreement as in NIST SP 811 (mile 1609.344 m, US gallon 3.785411784 L,
 * pound-force 4.4482216152605 N, international-table Btu 1055.05585262 J).
 */

const METRES_PER_MILE = 1609.344;
const MPS_PER_MPH = METRES_PER_MILE / 3600;
const RADPS_PER_RPM = Math.PI / 30;
const LITRES_PER_GALLON = 3.785411784;
/** L/100 km times mpg (US): 100 km in miles times litres a gallon = 235.214583… */
const L100KM_TIMES_MPG = (100_000 / METRES_PER_MILE) * LITRES_PER_GALLON;
const NEWTONS_PER_LBF = 4.4482216152605;
/** With the international foot, 0.3048 m. */
const NM_PER_LBF_FT = NEWTONS_PER_LBF * 0.3048;

/** rev/min and rad/s. */
export const rpmToRadPerS = (rpm: number): number => rpm * RADPS_PER_RPM;
export const radPerSToRpm = (radPerS: number): number => radPerS / RADPS_PER_RPM;

/** km/h and m/s. */
export const kmhToMps = (kmh: number): number => kmh / 3.6;
export const mpsToKmh = (mps: number): number => mps * 3.6;

/** mph and m/s. */
export const mphToMps = (mph: number): number => mph * MPS_PER_MPH;
export const mpsToMph = (mps: number): number => mps / MPS_PER_MPH;

/** International miles and metres. */
export const milesToMetres = (miles: number): number => miles * METRES_PER_MILE;
export const metresToMiles = (metres: number): number => metres / METRES_PER_MILE;

/** kWh and joules. */
export const kwhToJoules = (kwh: number): number => kwh * 3.6e6;
export const joulesToKwh = (joules: number): number => joules / 3.6e6;

/** Ampere-hours and coulombs. */
export const ampHoursToCoulombs = (ah: number): number => ah * 3600;
export const coulombsToAmpHours = (coulombs: number): number => coulombs / 3600;

/** US gallons and litres. */
export const gallonsToLitres = (gallons: number): number => gallons * LITRES_PER_GALLON;
export const litresToGallons = (litres: number): number => litres / LITRES_PER_GALLON;

/** L/100 km to miles per US gallon; the same function turns it back. Zero gives infinity. */
export const litresPer100KmToMpg = (litres: number): number => L100KM_TIMES_MPG / litres;
export const mpgToLitresPer100Km = (mpg: number): number => L100KM_TIMES_MPG / mpg;

/** Coast-down coefficients in US units: lbf, lbf/mph, lbf/mph². */
export const lbfToNewtons = (lbf: number): number => lbf * NEWTONS_PER_LBF;
export const newtonsToLbf = (newtons: number): number => newtons / NEWTONS_PER_LBF;
export const lbfPerMphToNPerMps = (b: number): number => (b * NEWTONS_PER_LBF) / MPS_PER_MPH;
export const nPerMpsToLbfPerMph = (b: number): number => (b * MPS_PER_MPH) / NEWTONS_PER_LBF;
export const lbfPerMph2ToNPerMps2 = (c: number): number =>
  (c * NEWTONS_PER_LBF) / (MPS_PER_MPH * MPS_PER_MPH);
export const nPerMps2ToLbfPerMph2 = (c: number): number => (c * MPS_PER_MPH * MPS_PER_MPH) / NEWTONS_PER_LBF;

/** Torque: pound-force feet and newton metres. */
export const poundFeetToNewtonMetres = (lbFt: number): number => lbFt * NM_PER_LBF_FT;
export const newtonMetresToPoundFeet = (nm: number): number => nm / NM_PER_LBF_FT;

/** Degrees Celsius and kelvin. */
export const celsiusToKelvin = (celsius: number): number => celsius + 273.15;
export const kelvinToCelsius = (kelvin: number): number => kelvin - 273.15;

/** A share (0–1) and per cent. */
export const shareToPercent = (share: number): number => share * 100;
export const percentToShare = (percent: number): number => percent / 100;
