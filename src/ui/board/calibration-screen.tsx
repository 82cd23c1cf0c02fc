import { useState } from 'preact/hooks'
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
      title="Calibration"
      back="#/board"
      foot={
        keep !== null &&
        !board.bench.simulated.value && (
          <Button tone="amber" big wide onClick={() => void board.beside.keepCalibration(keep)}>
            Take over into the target
          </Button>
        )
      }
    >
      <p>
        Counts at zero are subtracted on this one board, so they go into its exported example. The
        phone and the model do not change.
      </p>
      {board.bench.simulated.value && (
        <Notice>
          These logs are of a simulated board: its offsets are nobody’s and cannot be taken over.
        </Notice>
      )}
      {stored !== undefined && (
        <Notice>
          <p>In the target now: zero at {stored.zero.join(', ')} counts.</p>
          <Button tone="quiet" onClick={() => void board.beside.keepCalibration(null)}>
            Take it away
          </Button>
        </Notice>
      )}
      {found === null && (
        <NextStep
          text="A calibration is made of the rest and the six faces of the board check."
          action="Log them"
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
            The faces stood against a square block, so cross-axis terms are the sensor’s own
          </label>
          <div class="figures">
            {AXES.map((axis, i) => (
              <Figure
                key={axis}
                label={`Accelerometer ${axis}`}
                value={String(keep.stored.zero[i])}
                unit="counts at zero"
                note={`${shortNumber(1000 * (keep.accelZeroG[i] ?? 0))} mg, gain ${(keep.gains[i] ?? 1).toFixed(3)}`}
              />
            ))}
            {AXES.map((axis, i) => (
              <Figure
                key={axis}
                label={`Gyroscope ${axis}`}
                value={String(keep.stored.zero[i + 3])}
                unit="counts at zero"
                note={`${shortNumber(keep.gyroZeroDps[i] ?? 0)} °/s`}
              />
            ))}
          </div>
          <p class="quiet small">
            Largest cross-axis term {(100 * keep.crossAxis).toFixed(1)} %; a face one degree off
            looks like 1.7 %. The fit leaves {shortNumber(1000 * keep.residualG)} mg rms. Measured
            once, at one temperature.
          </p>
        </>
      )}
    </Screen>
  )
}
