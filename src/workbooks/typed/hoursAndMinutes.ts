const HOURS = "h|hr|hrs|hour|hours|std|stunde|stunden|heure|heures|tim|timmar";
const MINUTES = "m|min|mins|minute|minutes|minuten|minuter";
const BOTH = new RegExp(`^(\\d+) ?(?:${HOURS})\\.? ?(\\d{1,2}) ?(?:(?:${MINUTES})\\.?)?$`, "i");

/**
 * `1h 30`, `1 h 30 min`, `1h30m`.
 * @param text as `asFigures` gives it
 * @returns minutes; NaN for 60 minutes and more behind the hours; undefined for what has no hours and minutes
 */
export function hoursAndMinutes(text: string): number | undefined {
  const [, hours, minutes] = BOTH.exec(text) ?? [];
  if (hours === undefined) return undefined;
  return Number(minutes) < 60 ? 60 * Number(hours) + Number(minutes) : NaN;
}
