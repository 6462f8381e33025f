import type { Drawn, GeneratedJob } from "./generatedJobs";

export function slipsInto(job: GeneratedJob, draw: Drawn, seed: number): void {
  void job;
  void draw;
  void seed;
}
