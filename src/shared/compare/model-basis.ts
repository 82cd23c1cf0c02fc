import type { FullLibrary, TrainingSettings } from '../model/library'

/** A take that the library had when the model was trained. */
export interface KeptTake {
  id: string
  gestureId: string
  testerCode: string
}

/** What a model was made of. */
export interface ModelBasis {
  /** Which core, and which code around it, it was trained and measured with. */
  core: string
  training: TrainingSettings
  /** What of the target decides what the recogniser sees. */
  target: { name: string; rateHz: number; accelFullScale: number; gyroFullScale: number }
  gestures: { id: string; name: string }[]
  takes: KeptTake[]
  backgrounds: number
}

export function basisOf(core: string, { library, recordings }: FullLibrary): ModelBasis {
  const { target, training, gestures } = library
  return {
    core,
    training,
    target: {
      name: target.name,
      rateHz: target.rateHz,
      accelFullScale: target.accel.fullScale,
      gyroFullScale: target.gyro.fullScale,
    },
    gestures: gestures.map(({ id, name }) => ({ id, name })),
    takes: recordings.flatMap(({ recording }) => {
      if (recording.kind !== 'take') return []
      const { id, gestureId, testerCode } = recording
      return [{ id, gestureId, testerCode }]
    }),
    backgrounds: recordings.filter(({ recording }) => recording.kind === 'background').length,
  }
}
