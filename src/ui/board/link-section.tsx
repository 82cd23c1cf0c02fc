import { useState } from 'preact/hooks'
import { groupDigits } from '../../shared/words/en/numbers'
import { Button, Notice, SelectField } from '../common'
import { useBoard } from './use-board'

const BAUD_RATES = ['9600', '57600', '115200', '230400', '460800', '921600', '1000000', '2000000']

/** The cable: baud rate, connect, and what comes in as it comes. */
export function LinkSection() {
  const { link } = useBoard()
  const [baud, setBaud] = useState('115200')
  const [wrong, setWrong] = useState<string | null>(null)
  const state = link.state.value
  const connect = async () => {
    const opened = await link.open(Number(baud))
    setWrong(opened.ok ? null : opened.message)
  }
  if (!link.possible) {
    return (
      <Notice>
        <p>
          This browser cannot read a serial port. On a desk, browsers built on Chromium can; or log
          with a terminal program and bring the file.
        </p>
      </Notice>
    )
  }
  return (
    <>
      <SelectField
        label="Baud rate, as in the firmware"
        value={baud}
        options={BAUD_RATES.map((value) => ({ value, text: value }))}
        onChange={setBaud}
      />
      {state.state === 'on' ? (
        <Button onClick={() => link.close()}>Disconnect</Button>
      ) : (
        <Button wide disabled={state.state === 'opening'} onClick={() => void connect()}>
          Connect the board
        </Button>
      )}
      {wrong !== null && <Notice tone="trouble">{wrong}</Notice>}
      {state.state === 'lost' && (
        <Notice tone="trouble" live>
          {state.message}
        </Notice>
      )}
      {state.state === 'on' && <Incoming />}
    </>
  )
}

function Incoming() {
  const { link } = useBoard()
  const count = link.lineCount.value
  const preview = link.preview.value
  if (count === 0) {
    return (
      <p class="quiet">
        Connected; no line has come yet. A board that prints only after a reset wants one now.
      </p>
    )
  }
  return (
    <>
      <pre class="board-tail">{link.tail.value.join('\n')}</pre>
      <p class="quiet small">{groupDigits(count)} lines</p>
      {typeof preview === 'string' && (
        <Notice tone="trouble">
          {preview} If the lines above look like noise, the baud rate is another.
        </Notice>
      )}
    </>
  )
}
