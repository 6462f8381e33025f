/**
 * Names for the units that the engine works in, so that a signature can be
 * read without its docstring. They are aliases: the compiler does not convert.
 */

/** Length or distance in metres. */
export type Metres = number;
/** Distance in kilometres (slant range only). */
export type Kilometres = number;
/** Angle in degrees; azimuth clockwise from true north, elevation above the horizontal. */
export type Degrees = number;
/** Angle in radians; only inside a function, never in a public signature. */
export type Radians = number;
/** Frequency in megahertz. */
export type Megahertz = number;
/** Frequency in gigahertz. */
export type Gigahertz = number;
/** Ratio in decibels; a loss is positive. */
export type Decibels = number;
/** Level in dBµV across 75 Ω. */
export type DecibelMicrovolts = number;
/** Temperature in degrees Celsius. */
export type Celsius = number;
/** Absolute temperature in kelvin. */
export type Kelvin = number;
/** Resistance in ohms. */
export type Ohms = number;
/** Electrical potential in volts. */
export type Volts = number;
/** Current in amperes. */
export type Amperes = number;
/** Power in watts. */
export type Watts = number;
/** Magnetic flux density in nanotesla. */
export type Nanoteslas = number;
/** Cross-section of a conductor in mm². */
export type SquareMillimetres = number;
/** Length in millimetres: tubes and walls. */
export type Millimetres = number;
/** Force in newtons. */
export type Newtons = number;
/** Stress in megapascals, which is N/mm². */
export type Megapascals = number;
/** Speed in metres per second. */
export type MetresPerSecond = number;
/** Density in kilograms per cubic metre. */
export type KilogramsPerCubicMetre = number;
