import { freeTesterCode } from '../../shared/present/library-counts'
import type { App } from '../../state/app'

/** Takes that follow are by somebody new, under the lowest free code. */
export function startNewTester(app: App): void {
  const taken = app.library.recordings.value.map((recording) => recording.testerCode)
  app.record.setTester(freeTesterCode(taken), app.record.hand.value)
}
