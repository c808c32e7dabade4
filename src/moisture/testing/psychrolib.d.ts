/** The part of psychrolib that the tests use as a witness; the package ships no types. */
declare module 'psychrolib' {
  interface Psychrometrics {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(temperatureC: number): number;
    GetTDewPointFromRelHum(temperatureC: number, relativeHumidity: number): number;
    GetVapPresFromRelHum(temperatureC: number, relativeHumidity: number): number;
    GetHumRatioFromVapPres(vaporPressurePa: number, airPressurePa: number): number;
    GetStandardAtmPressure(elevationM: number): number;
  }
  const psychrometrics: Psychrometrics;
  export default psychrometrics;
}
