import { useState } from 'preact/hooks'
import type { FoundMounting } from '../../shared/board/mounting/find-mounting'
import type { Result } from '../../shared/model/result'
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
      title="Mounting from data"
      back="#/board"
      foot={
        <Button
          tone="amber"
          big
          wide
          disabled={recordingId === ''}
          onClick={() => void beside.findMounting(recordingId).then(setFound)}
        >
          Find the mounting
        </Button>
      }
    >
      <p>
        Strap the phone to the prop as it is held when recording. Record background on the phone and
        log the board at the same time: rest, turn slowly about every axis, rest in between in
        different poses. Half a minute is enough; the clocks need not agree.
      </p>
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
  const { nearest, nearestAngleDeg, rotation, times, residualShare, gyroRatio } = found
  const near = nearestAngleDeg <= SNAP_DEG
  const keep = (matrix: typeof rotation) =>
    void beside.keepMounting(matrix).then(() => setKept(true))
  return (
    <Section title="Mounting">
      <p>
        {nearestAngleDeg.toFixed(1)}° from “{nearest.name}”
        {near ? ': most likely it was meant to be that.' : ': it stands at an angle of its own.'}
      </p>
      <pre class="board-tail">{rowsOf(rotation)}</pre>
      <p class="quiet small">
        From {found.turnPairs} moments of turning and {found.poses} poses at rest. The rotation
        leaves {(100 * residualShare).toFixed(1)} % of the angular rate. The board’s gyroscope reads{' '}
        {gyroRatio.toFixed(3)} times the phone’s. Its log began {(-times.lagMs / 1000).toFixed(2)} s
        after the phone’s; its clock runs at {(1 / times.rateRatio).toFixed(4)} of it.
      </p>
      <Button onClick={() => keep(nearest.matrix)}>Take “{nearest.name}”</Button>
      <Button onClick={() => keep(rotation)}>Take the rotation as found</Button>
      {kept && <Notice live>It is in the target now. Train again before the next export.</Notice>}
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
