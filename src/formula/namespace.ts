/** The namespace in which people type our functions: RIG.AZIMUTH. */
export const NAMESPACE = "RIG";
