import { useState } from 'preact/hooks'
import { BOARD_LOGS } from '../../shared/words/en/board-logs'
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
        <p>{BOARD_LOGS.link.noSerial}</p>
      </Notice>
    )
  }
  return (
    <>
      <SelectField
        label={BOARD_LOGS.link.baudRate}
        value={baud}
        options={BAUD_RATES.map((value) => ({ value, text: value }))}
        onChange={setBaud}
      />
      {state.state === 'on' ? (
        <Button onClick={() => link.close()}>{BOARD_LOGS.link.disconnect}</Button>
      ) : (
        <Button wide disabled={state.state === 'opening'} onClick={() => void connect()}>
          {BOARD_LOGS.link.connect}
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
    return <p class="quiet">{BOARD_LOGS.link.noLine}</p>
  }
  return (
    <>
      <pre class="board-tail">{link.tail.value.join('\n')}</pre>
      <p class="quiet small">{BOARD_LOGS.link.lines(count)}</p>
      {typeof preview === 'string' && (
        <Notice tone="trouble">{BOARD_LOGS.link.otherBaudRate(preview)}</Notice>
      )}
    </>
  )
}
