import type { Background, Gesture, Recording, Take } from '../model/library'

export interface GestureCounts {
  gesture: Gesture
  /** Newest first, as the recordings came. */
  takes: Take[]
  /** Codes in order of the alphabet. */
  testers: string[]
}

export interface LibraryCounts {
  gestures: GestureCounts[]
  takes: number
  testers: string[]
  backgrounds: Background[]
  backgroundMs: number
}

/** What a library holds, gesture by gesture. */
export function countLibrary(gestures: Gesture[], recordings: Recording[]): LibraryCounts {
  const takesOf = new Map<string, Take[]>(gestures.map((gesture) => [gesture.id, []]))
  const backgrounds: Background[] = []
  for (const recording of recordings) {
    if (recording.kind === 'background') backgrounds.push(recording)
    else takesOf.get(recording.gestureId)?.push(recording)
  }
  const counted = gestures.map((gesture) => {
    const takes = takesOf.get(gesture.id) ?? []
    return { gesture, takes, testers: testersOf(takes) }
  })
  return {
    gestures: counted,
    takes: counted.reduce((sum, one) => sum + one.takes.length, 0),
    testers: testersOf(counted.flatMap((one) => one.takes)),
    backgrounds,
    backgroundMs: backgrounds.reduce((sum, one) => sum + one.durationMs, 0),
  }
}

function testersOf(takes: Take[]): string[] {
  return [...new Set(takes.map((take) => take.testerCode))].sort()
}

/** The lowest code of the form T01 that nobody has. */
export function freeTesterCode(taken: string[]): string {
  const used = new Set(taken)
  for (let count = 1; ; count++) {
    const code = `T${String(count).padStart(2, '0')}`
    if (!used.has(code)) return code
  }
}
