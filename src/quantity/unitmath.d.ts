/** The part of unitmath that the tests use as an oracle; the package ships no types. */
declare module 'unitmath' {
  interface MeasuredUnit {
    readonly value: number;
    to(unit: string): MeasuredUnit;
  }
  export default function unit(value: number, unit: string): MeasuredUnit;
}
