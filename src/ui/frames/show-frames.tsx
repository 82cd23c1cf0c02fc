import './frames.css'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { DENSITIES, type Density, FRAME_MS, runMs } from '../../shared/frames/pace'
import { createSender } from '../../shared/frames/sender'
import { FRAMES } from '../../shared/words/en/frames'
import { Button, Choice, Notice, useWakeLock } from '../common'
import { QrCode } from './qr-code'

const NAMES: Record<Density['name'], string> = {
  fine: FRAMES.fine,
  medium: FRAMES.medium,
  coarse: FRAMES.coarse,
}

/** Content as codes one after the other, for another phone's camera. */
export function ShowFrames({ content }: { content: Uint8Array }) {
  const [density, setDensity] = useState<Density>(DENSITIES[0]!)
  const [number, setNumber] = useState(0)
  // Whoever asked for little motion starts the change of codes by a tap.
  const [running, setRunning] = useState(
    () => !matchMedia('(prefers-reduced-motion: reduce)').matches,
  )
  const sender = useMemo(() => createSender(content, density.blockBytes), [content, density])
  useWakeLock(running)
  useEffect(() => {
    if (!running) return
    const timer = setInterval(() => setNumber((before) => before + 1), FRAME_MS)
    return () => clearInterval(timer)
  }, [running])
  if (!sender.ok) {
    return (
      <Notice tone="trouble" live>
        {sender.message}
      </Notice>
    )
  }
  const { blocks } = sender.value
  return (
    <div class="show-frames">
      <QrCode text={sender.value.text(number)} label={FRAMES.codeTitle} />
      <p class="show-frames-count">
        {FRAMES.roundsAndTime(number + 1, blocks, runMs(content.length, density))}
      </p>
      <div class="show-frames-controls">
        <Button big onClick={() => setRunning(!running)}>
          {running ? FRAMES.pauseTheCodes : FRAMES.changeTheCodes}
        </Button>
        <Choice
          legend={FRAMES.sizeOfTheSquares}
          value={density.name}
          options={DENSITIES.map(({ name }) => ({ value: name, text: NAMES[name] }))}
          onChange={(name) => {
            setDensity(DENSITIES.find((one) => one.name === name) ?? density)
            setNumber(0)
          }}
        />
      </div>
      <p class="quiet small">{FRAMES.showHint}</p>
    </div>
  )
}
