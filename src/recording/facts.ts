import type { MotionFacts, MotionSource } from '../sensors/motion-source'
import { findGaps } from '../shared/conditioning/timing'
import type { Background, DeviceFacts, Recording, Take } from '../shared/model/library'
import type { SampleBlock } from '../shared/model/sample'
import { durationMs } from '../storage/chunk'
import type { UnfinishedRecording } from '../storage/store'
import type { RecordSetup } from './types'

/** What a recording is made with. */
export interface Circumstances {
  id: string
  setup: RecordSetup
  source: MotionSource
  deviceLabel: string
}

/** Facts of a recording that begins now; counts, gaps and rate are filled in when it ends. */
export function newBackground({ id, setup, source, deviceLabel }: Circumstances): Background {
  return {
    kind: 'background',
    id,
    libraryId: setup.libraryId,
    testerCode: setup.testerCode,
    hand: setup.hand,
    source: source.kind,
    recordedAt: new Date().toISOString(),
    device: deviceFacts(source.facts(), deviceLabel),
    sampleCount: 0,
    durationMs: 0,
    gaps: [],
    note: '',
    deletedAt: null,
    ...(setup.sessionId === undefined ? {} : { sessionId: setup.sessionId }),
  }
}

export function newTake(circumstances: Circumstances, gestureId: string): Take {
  return { ...newBackground(circumstances), kind: 'take', gestureId, trim: null }
}

/** The same recording with what is known of it once its samples are all there. */
export function completed<R extends Recording>(
  recording: R,
  samples: SampleBlock,
  facts: MotionFacts,
): R {
  return {
    ...withSampleFacts(recording, samples),
    device: deviceFacts(facts, recording.device.label),
  }
}

/** An interrupted recording made fit to be kept: its gaps are found again from the samples. */
export function recovered({ recording, samples }: UnfinishedRecording): Recording {
  return withSampleFacts(recording, samples)
}

function withSampleFacts<R extends Recording>(recording: R, samples: SampleBlock): R {
  return {
    ...recording,
    sampleCount: samples.tMs.length,
    durationMs: durationMs(samples),
    gaps: findGaps(samples.tMs),
  }
}

function deviceFacts(facts: MotionFacts, label: string): DeviceFacts {
  const { rateHz, accelStepMps2, gyroStepDps, accelSign, hasGyro } = facts
  return { label, rateHz, accelStepMps2, gyroStepDps, accelSign, hasGyro }
}
