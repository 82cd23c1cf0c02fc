import { useState } from 'preact/hooks'
import { BOARD_NEXT } from '../../shared/words/en/board-next'
import { shortNumber } from '../../shared/words/en/numbers'
import { Button, Figure, NextStep, Notice, Screen, useApp } from '../common'
import { useBoard } from './use-board'

const AXES = ['x', 'y', 'z']

/** Offsets and gains of one board from the faces it was logged in. */
export function CalibrationScreen() {
  const board = useBoard()
  const { library } = useApp()
  const [square, setSquare] = useState(false)
  const parts = board.bench.parts.value
  const stored = library.current.value?.target.calibration
  const found = parts.length === 0 ? null : board.beside.calibrate(square)
  const keep = found?.ok ? found.value : null
  return (
    <Screen
      title={BOARD_NEXT.calibration.title}
      back="#/board"
      foot={
        keep !== null &&
        !board.bench.simulated.value && (
          <Button tone="amber" big wide onClick={() => void board.beside.keepCalibration(keep)}>
            {BOARD_NEXT.calibration.takeOver}
          </Button>
        )
      }
    >
      <p>{BOARD_NEXT.calibration.about}</p>
      {board.bench.simulated.value && <Notice>{BOARD_NEXT.calibration.simulated}</Notice>}
      {stored !== undefined && (
        <Notice>
          <p>{BOARD_NEXT.calibration.inTarget(stored.zero)}</p>
          <Button tone="quiet" onClick={() => void board.beside.keepCalibration(null)}>
            {BOARD_NEXT.calibration.takeAway}
          </Button>
        </Notice>
      )}
      {found === null && (
        <NextStep
          text={BOARD_NEXT.calibration.madeOf}
          action={BOARD_NEXT.calibration.logThem}
          href="#/board"
        />
      )}
      {found !== null && !found.ok && <Notice tone="trouble">{found.message}</Notice>}
      {keep !== null && (
        <>
          <label class="board-tick">
            <input
              type="checkbox"
              checked={square}
              onChange={(event) => setSquare(event.currentTarget.checked)}
            />
            {BOARD_NEXT.calibration.square}
          </label>
          <div class="figures">
            {AXES.map((axis, i) => (
              <Figure
                key={axis}
                label={BOARD_NEXT.calibration.accelerometer(axis)}
                value={String(keep.stored.zero[i])}
                unit={BOARD_NEXT.calibration.countsAtZero}
                note={BOARD_NEXT.calibration.offsetAndGain(
                  1000 * (keep.accelZeroG[i] ?? 0),
                  keep.gains[i] ?? 1,
                )}
              />
            ))}
            {AXES.map((axis, i) => (
              <Figure
                key={axis}
                label={BOARD_NEXT.calibration.gyroscope(axis)}
                value={String(keep.stored.zero[i + 3])}
                unit={BOARD_NEXT.calibration.countsAtZero}
                note={`${shortNumber(keep.gyroZeroDps[i] ?? 0)} °/s`}
              />
            ))}
          </div>
          <p class="quiet small">
            {BOARD_NEXT.calibration.quality(100 * keep.crossAxis, 1000 * keep.residualG)}
          </p>
        </>
      )}
    </Screen>
  )
}
