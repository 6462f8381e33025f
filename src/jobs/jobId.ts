const UUID = String.raw`[\da-f]{8}(?:-[\da-f]{4}){3}-[\da-f]{12}`;
const JOB_ID = new RegExp(`^job-${UUID}$`);
/** As `log.ts` and `revision.ts` name them: no folder but that of what was set aside, no sign that some system reads otherwise. */
const SEGMENT = String.raw`\.\d{1,9}\.log(?:\.[\dTZ-]{1,40})?$`;
const OF_JOB = new RegExp(String.raw`^(?:damaged/)?(job-${UUID})${SEGMENT}`);
const OF_REVISION = new RegExp(
  String.raw`^(?:damaged/)?revision-(job-${UUID})-\d{1,9}-[\da-z]{1,16}${SEGMENT}`,
);

export const isJobId = (value: unknown): value is string => typeof value === "string" && JOB_ID.test(value);

/** @returns the job whose log a thing of that name holds a part of */
export const jobOfPart = (name: string): string | undefined => OF_JOB.exec(name)?.[1];
/** @returns the job of whose revision it does */
export const jobOfRevisionPart = (name: string): string | undefined => OF_REVISION.exec(name)?.[1];
