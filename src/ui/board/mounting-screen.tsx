import { useState } from 'preact/hooks'
import type { FoundMounting } from '../../shared/board/mounting/find-mounting'
import type { Result } from '../../shared/model/result'
import { BOARD_NEXT } from '../../shared/words/en/board-next'
import { Button, Notice, Screen, Section } from '../common'
import { BesideFields } from './beside-fields'
import { useBoard } from './use-board'

/** Within this the mounting was meant to be along the axes, deg. */
const SNAP_DEG = 5

/** Mounting of the sensor from a phone strapped to the same prop. */
export function MountingScreen() {
  const { beside } = useBoard()
  const [recordingId, setRecordingId] = useState('')
  const [found, setFound] = useState<Result<FoundMounting> | null>(null)
  return (
    <Screen
      title={BOARD_NEXT.mounting.title}
      back="#/board"
      foot={
        <Button
          tone="amber"
          big
          wide
          disabled={recordingId === ''}
          onClick={() => void beside.findMounting(recordingId).then(setFound)}
        >
          {BOARD_NEXT.mounting.find}
        </Button>
      }
    >
      <p>{BOARD_NEXT.mounting.about}</p>
      <BesideFields recordingId={recordingId} onRecording={setRecordingId} />
      {found !== null && !found.ok && (
        <Notice tone="trouble" live>
          {found.message}
        </Notice>
      )}
      {found?.ok && <Found found={found.value} />}
    </Screen>
  )
}

function Found({ found }: { found: FoundMounting }) {
  const { beside } = useBoard()
  const [kept, setKept] = useState(false)
  const { nearest, nearestAngleDeg, rotation } = found
  const near = nearestAngleDeg <= SNAP_DEG
  const keep = (matrix: typeof rotation) =>
    void beside.keepMounting(matrix).then(() => setKept(true))
  return (
    <Section title={BOARD_NEXT.mounting.result}>
      <p>
        {(near ? BOARD_NEXT.mounting.near : BOARD_NEXT.mounting.ofItsOwn)(
          nearestAngleDeg,
          nearest.name,
        )}
      </p>
      <pre class="board-tail">{rowsOf(rotation)}</pre>
      <p class="quiet small">{BOARD_NEXT.mounting.evidence(found)}</p>
      <Button onClick={() => keep(nearest.matrix)}>
        {BOARD_NEXT.mounting.takeNearest(nearest.name)}
      </Button>
      <Button onClick={() => keep(rotation)}>{BOARD_NEXT.mounting.takeFound}</Button>
      {kept && <Notice live>{BOARD_NEXT.mounting.kept}</Notice>}
    </Section>
  )
}

function rowsOf(m: FoundMounting['rotation']): string {
  const row = (i: number) =>
    m
      .slice(3 * i, 3 * i + 3)
      .map((value) => value.toFixed(4).padStart(8))
      .join(' ')
  return [row(0), row(1), row(2)].join('\n')
}
