import './frames.css'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { DENSITIES, type Density, FRAME_MS, runMs } from '../../shared/frames/pace'
import { createSender } from '../../shared/frames/sender'
import { plural } from '../../shared/words/en/numbers'
import { countDownText } from '../../shared/words/en/session-words'
import { Button, Choice, Notice, useWakeLock } from '../common'
import { QrCode } from './qr-code'

const NAMES: Record<Density['name'], string> = { fine: 'Fine', medium: 'Medium', coarse: 'Coarse' }

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
  const rounds = number < blocks ? `Code ${number + 1} of ${blocks}` : `Extra code ${number + 1}`
  return (
    <div class="show-frames">
      <QrCode text={sender.value.text(number)} label="Code for the other phone's camera" />
      <p class="show-frames-count">
        {rounds}, {countDownText(runMs(content.length, density))} for all {plural('code', blocks)}
      </p>
      <div class="show-frames-controls">
        <Button big onClick={() => setRunning(!running)}>
          {running ? 'Pause the codes' : 'Change the codes'}
        </Button>
        <Choice
          legend="Size of the squares"
          value={density.name}
          options={DENSITIES.map(({ name }) => ({ value: name, text: NAMES[name] }))}
          onChange={(name) => {
            setDensity(DENSITIES.find((one) => one.name === name) ?? density)
            setNumber(0)
          }}
        />
      </div>
      <p class="quiet small">
        The other phone needs as many codes as there are, in any order. If it sees few of them, take
        coarser squares and turn this screen brighter.
      </p>
    </div>
  )
}
