import type { Result } from '../model/result'
import type { OnProgress } from '../protocol/recogniser'
import type { PartJob } from './parts'

/** All jobs in parts, by the name under which threads ask for them; each loaded when needed. */
export const PART_JOBS = {
  curve: async () => (await import('../decide/curve-part')).curvePart,
  condition: async () => (await import('../training/condition-part')).conditionPart,
  evaluate: async () => (await import('../evaluation/evaluate-part')).evaluatePart,
  gestures: async () => (await import('../decide/gesture-part')).gesturePart,
  grip: async () => (await import('../grip/grip-part')).gripPart,
  teach: async () => (await import('../teach/teach-part')).teachPart,
  sensor: async () => (await import('../decide/sensor-part')).sensorPart,
}

export type PartJobName = keyof typeof PART_JOBS

type JobOf<N extends PartJobName> = Awaited<ReturnType<(typeof PART_JOBS)[N]>>
export type SharedOf<N extends PartJobName> =
  JobOf<N> extends PartJob<infer Shared, infer _Part, infer _Value> ? Shared : never
export type PartOf<N extends PartJobName> =
  JobOf<N> extends PartJob<infer _Shared, infer Part, infer _Value> ? Part : never
export type ValueOf<N extends PartJobName> =
  JobOf<N> extends PartJob<infer _Shared, infer _Part, infer Value> ? Value : never

/**
 * Runs parts of a job, on this thread or on several, and answers with their values in the order of
 * the parts: the same to the digit wherever they ran. The first part that fails, in that order, is
 * the answer of all. Progress is the sum over the parts: `done` of `parts.length`, with fractions.
 */
export type RunParts = <N extends PartJobName>(
  name: N,
  shared: SharedOf<N>,
  parts: readonly PartOf<N>[],
  onProgress?: OnProgress,
) => Promise<Result<ValueOf<N>[]>>

/** The job of that name where its types do not matter: a thread is handed copies of anything. */
export async function loadPartJob(name: PartJobName): Promise<PartJob<unknown, unknown, unknown>> {
  return (await PART_JOBS[name]()) as PartJob<unknown, unknown, unknown>
}
