import type { GripTolerance } from '../grip/grip-tolerance'
import type { SafetyFinding } from '../light/safety'
import type { Evaluation, TrainedModel } from '../model/evaluation'
import type { Library, Recording } from '../model/library'
import type { Ribbon } from '../ribbon/ribbon'

/** Something that was measured, when, and whether the library has changed since. */
export interface Measured<T> {
  value: T
  /** RFC 3339 in UTC; null when not known. */
  at: string | null
  stale: boolean
}

/** What an engineer needs to know that the same things are compared. SHA-256 in hex. */
export interface Versions {
  app: string
  /** Of the source tree the app was built from; null when the build did not know it. */
  commit: string | null
  /** Of the core's sources, by `coreSourceHash`. */
  coreHash: string
  /** Of the library file with everything in it, as this version writes it. */
  libraryHash: string
}

/** What of the light was counted. */
export interface LightReport {
  /** Every rule of every answer, then the PWM. */
  findings: SafetyFinding[]
}

/** Everything a report says, before it is put into words. */
export interface ReportData {
  library: Library
  /** Those that were deleted are left out. */
  recordings: Recording[]
  /** By gesture id. */
  ribbons: ReadonlyMap<string, Ribbon>
  evaluation: Measured<Evaluation> | null
  grip: Measured<GripTolerance> | null
  /** The model trained on all takes; null where training failed, with the reason. */
  trained: TrainedModel | null
  trainingFailure: string
  light: LightReport | null
  versions: Versions
  /** RFC 3339 in UTC. */
  madeAt: string
}
