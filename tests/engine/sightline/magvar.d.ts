/** The oracle for the magnetic model ships without types. */
declare module "magvar" {
  interface Field {
    /** Degrees, east positive, rounded to 0.01. */
    readonly declination: number;
    /** Horizontal field in nT, rounded to 0.1. */
    readonly h: number;
  }
  /** Altitude in km. */
  export function magneticField(latitude: number, longitude: number, altitude: number, when: Date): Field;
}
