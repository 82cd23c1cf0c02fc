import { strToU8 } from 'fflate'
import { sha256Hex } from '../format/sha256'
import { answersInOrder } from '../light/library-light'
import type { LightPlayer } from '../light/player'
import { checkAnswer, checkPwm } from '../light/safety'
import type { FullLibrary, Gesture, Library, RecordingWithSamples } from '../model/library'
import { spread } from '../present/spread'
import { computeRibbon, type Ribbon } from '../ribbon/ribbon'
import { tipInPhone } from '../target/board'
import type { LightReport } from './report-data'

/** Takes drawn in one picture, as on the screens. */
const TAKES_DRAWN = 16

/** Ribbons of all gestures, newest takes first as the screens have them. */
export function ribbonsOf({ library, recordings }: FullLibrary): Map<string, Ribbon> {
  const tip = tipInPhone(library.target)
  return new Map(
    library.gestures.map((gesture) => {
      const takes = spread(takesOf(gesture, recordings), TAKES_DRAWN)
      const samples = takes.map((take) => take.samples)
      const accelSigns = takes.map((take) => take.recording.device.accelSign)
      return [gesture.id, computeRibbon(samples, { tip, accelSigns })]
    }),
  )
}

function takesOf(gesture: Gesture, recordings: readonly RecordingWithSamples[]) {
  return recordings
    .filter(({ recording }) => recording.kind === 'take' && recording.gestureId === gesture.id)
    .sort((a, b) => b.recording.recordedAt.localeCompare(a.recording.recordedAt))
}

/** Every answer against every limit. */
export function lightReport(player: LightPlayer, library: Library): LightReport {
  const answers = answersInOrder(library).flatMap(({ key }) => checkAnswer(player, library, key))
  return { findings: [...answers, checkPwm(library)] }
}

/**
 * SHA-256 of the core's files one behind the other in the order of their names, byte by byte: what
 * `cat core/*.[ch] | sha256sum` prints in an exported bundle with LC_ALL=C.
 * @param files text by name
 */
export function coreSourceHash(files: Readonly<Record<string, string>>): string {
  const names = Object.keys(files).sort((a, b) => (a < b ? -1 : 1))
  return sha256Hex(strToU8(names.map((file) => files[file]).join('')))
}
