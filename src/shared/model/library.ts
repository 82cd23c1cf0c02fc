import type { LabelChange } from '../collect/labels'
import type { Plan } from '../collect/plan'
import type { Session } from '../collect/session'
import type { Withdrawal } from '../collect/withdrawal'
import type { Answer, LightSettings } from './light'
import type { SampleBlock } from './sample'
import type { Target } from './target'

/** Version of the library as stored and exported; not the version of the app. */
export const LIBRARY_FORMAT_VERSION = 3

export type Hand = 'left' | 'right' | 'unknown'
export type Source = 'phone' | 'simulated' | 'generated' | 'imported' | 'board'
/** +1: W3C sign (flat, screen up, reads +9.8 on z); -1: inverted, as iOS does; 0: not found out. */
export type AccelSign = 1 | -1 | 0

/** What is known of the sensor that made a recording. */
export interface DeviceFacts {
  /** Free text for people, such as the browser's platform; never used in a decision. */
  label: string
  /** Median rate, Hz; 0 when not known. */
  rateHz: number
  /** Step the readings are rounded to; 0 when not known. */
  accelStepMps2: number
  gyroStepDps: number
  accelSign: AccelSign
  hasGyro: boolean
}

/** A hole in the samples, longer than the gap limit of `shared/conditioning`. */
export interface Gap {
  startMs: number
  endMs: number
}

/** Part of a recording that counts; raw samples outside stay stored. */
export interface Trim {
  startMs: number
  endMs: number
}

interface RecordingFacts {
  id: string
  libraryId: string
  testerCode: string
  hand: Hand
  source: Source
  /** RFC 3339 in UTC. */
  recordedAt: string
  device: DeviceFacts
  sampleCount: number
  durationMs: number
  gaps: Gap[]
  note: string
  /** Set while a deletion can still be undone. */
  deletedAt: string | null
  /** Session it was performed in; absent where there was none. */
  sessionId?: string
  /** `contentId` of its samples, once somebody asked; absent until then. */
  contentId?: string
  /** Changes of its labels, those it began with included; absent while nothing was changed. */
  history?: LabelChange[]
}

/** One performance of one gesture by one tester. */
export interface Take extends RecordingFacts {
  kind: 'take'
  gestureId: string
  trim: Trim | null
}

/** A long recording of everything that is not a gesture. */
export interface Background extends RecordingFacts {
  kind: 'background'
}

export type Recording = Take | Background

export interface Gesture {
  id: string
  name: string
  note: string
  /** How the prop answers; without it, as `answerOf` of `shared/light` says. */
  answer?: Answer
}

export const MATCHER_WISHES = ['template', 'kernel', 'auto'] as const
/** What training may compare segments with. */
export type MatcherWish = (typeof MATCHER_WISHES)[number]

/** Choices that training follows. */
export interface TrainingSettings {
  /** Templates a gesture may have at most; 1 to 16. */
  templatesPerGesture: number
  /** Points of a normalised segment; 8 to 128. */
  length: number
  /** Half width of the warping window as a share of the length; 0 to 1. */
  bandShare: number
  rollAlign: boolean
  segmentation: 'motion' | 'button'
  /** Smaller rejects more; factor on the learned thresholds, 0.5 to 2, 1 as learned. */
  thresholdFactor: number
  /** How segments are compared: 'template' when missing; 'auto' takes what held-out testers speak for. */
  matcher?: MatcherWish
}

/** Gestures, settings and target. Recordings refer to it by id. */
export interface Library {
  id: string
  name: string
  createdAt: string
  /** Made by the app from a seed and not by people. */
  generated: boolean
  gestures: Gesture[]
  target: Target
  training: TrainingSettings
  /** Light, LED and cells; without it, as `lightOf` of `shared/light` says. */
  light?: LightSettings
  /** What testers are asked for. */
  plans?: Plan[]
  /** Testers' sittings whose recordings were brought home. */
  sessions?: Session[]
  /** What was withdrawn or dropped and must not come back. */
  withdrawals?: Withdrawal[]
}

export interface RecordingWithSamples<R extends Recording = Recording> {
  recording: R
  samples: SampleBlock
}

/** A library with everything in it; the unit of export, training and evaluation. */
export interface FullLibrary {
  library: Library
  recordings: RecordingWithSamples[]
}

export const DEFAULT_TRAINING: TrainingSettings = {
  templatesPerGesture: 4,
  length: 24,
  bandShare: 0.125,
  rollAlign: true,
  segmentation: 'motion',
  thresholdFactor: 1,
}
