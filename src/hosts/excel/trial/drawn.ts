/** Numbers that no file can hold: drawn in this trial, with what the engine in the pane says of them. */
import { allFunctions } from "../../../functions/all";

const SITE_LONGITUDE = -100;
const SLOT = -90;

/** A latitude from 20 to 60 with four decimals. */
export const drawn = (): number => Math.round(200_000 + Math.random() * 400_000) / 10_000;

const { call } = allFunctions.find(({ name }) => name === "AZIMUTH")!;

/** @param latitude in degrees @returns degrees, as the engine of the pane has it */
export const azimuthOf = (latitude: number): number => Number(call([latitude, SITE_LONGITUDE, SLOT]));

/** @param latitude a number, a cell or a range */
export const azimuthFormula = (latitude: string | number): string =>
  `=RIG.AZIMUTH(${latitude},${SITE_LONGITUDE},${SLOT})`;
