import './replay.css'
import { useEffect, useState } from 'preact/hooks'
import type { Recording } from '../../shared/model/library'
import type { Replay as Replayed } from '../../shared/model/replay'
import type { Result } from '../../shared/model/result'
import { REPLAY_VIEW } from '../../shared/words/en/replay-view'
import { Mark, Notice, Progress, Screen, useApp } from '../common'
import { ReplayView } from './replay-view'

/** '#/replay/<recording id>': one recording run through the recogniser. */
export function Replay({ rest }: { rest: string[] }) {
  const app = useApp()
  const id = rest[0] ?? ''
  const recording = app.library.recordings.value.find((candidate) => candidate.id === id)
  if (recording !== undefined) return <Recorded key={recording.id} recording={recording} />
  return (
    <Screen title={REPLAY_VIEW.title} back="#/moves">
      <Notice tone="trouble">
        <p>{REPLAY_VIEW.gone}</p>
      </Notice>
    </Screen>
  )
}

function Recorded({ recording }: { recording: Recording }) {
  const app = useApp()
  const answer = useReplay(recording.id)
  const model = app.model.value
  const library = app.library.current.value
  const title = titleOf(recording, library?.gestures ?? [])
  const aside = recording.source !== 'phone' && <Mark kind={recording.source} />
  if (answer?.ok && model.state === 'done' && library !== null) {
    return (
      <ReplayView
        title={title}
        aside={aside}
        replay={answer.value}
        model={model.value.model}
        library={library}
        recording={recording}
      />
    )
  }
  return (
    <Screen title={title} back="#/moves" aside={aside}>
      {answer === null && model.state === 'running' && (
        <Progress progress={model.progress} cancel={model.cancel} />
      )}
      {answer === null && model.state !== 'running' && <p class="quiet">{REPLAY_VIEW.replaying}</p>}
      {answer?.ok === false && (
        <Notice tone="trouble" live>
          <p>{answer.message}</p>
        </Notice>
      )}
    </Screen>
  )
}

/** The answer for a recording; null until it is there. */
function useReplay(recordingId: string): Result<Replayed> | null {
  const app = useApp()
  const [answer, setAnswer] = useState<Result<Replayed> | null>(null)
  useEffect(() => {
    let wanted = true
    void app.replay(recordingId).then((replayed) => {
      if (wanted) setAnswer(replayed)
    })
    return () => {
      wanted = false
    }
  }, [app, recordingId])
  return answer
}

function titleOf(recording: Recording, gestures: { id: string; name: string }[]): string {
  const { testerCode, hand } = recording
  if (recording.kind === 'background') return REPLAY_VIEW.background(testerCode, hand)
  const gesture = gestures.find((candidate) => candidate.id === recording.gestureId)
  return REPLAY_VIEW.take(gesture?.name ?? REPLAY_VIEW.removedGesture, testerCode, hand)
}
