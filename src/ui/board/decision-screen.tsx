import { useState } from 'preact/hooks'
import type { EventPair } from '../../shared/board/decision/compare-events'
import type { SameDecision } from '../../shared/board/decision/same-decision'
import type { Result } from '../../shared/model/result'
import { BOARD_NEXT } from '../../shared/words/en/board-next'
import { decisionWords, pairWords, sideWords } from '../../shared/words/en/decision-words'
import { Button, Notice, Screen, Section, useApp } from '../common'
import { BesideFields } from './beside-fields'
import { OwnLog } from './own-log'
import { useBoard } from './use-board'

/** Does the board decide as the phone did, and does its own log agree to the bit? */
export function DecisionScreen() {
  const { beside } = useBoard()
  const [recordingId, setRecordingId] = useState('')
  const [compared, setCompared] = useState<Result<SameDecision> | null>(null)
  const [busy, setBusy] = useState(false)
  const compare = async () => {
    setBusy(true)
    setCompared(await beside.compare(recordingId))
    setBusy(false)
  }
  return (
    <Screen
      title={BOARD_NEXT.decision.title}
      back="#/board"
      foot={
        <Button
          tone="amber"
          big
          wide
          disabled={recordingId === '' || busy}
          onClick={() => void compare()}
        >
          {busy ? BOARD_NEXT.decision.comparing : BOARD_NEXT.decision.compare}
        </Button>
      }
    >
      <p>{BOARD_NEXT.decision.about}</p>
      <BesideFields recordingId={recordingId} onRecording={setRecordingId} />
      {compared !== null && !compared.ok && (
        <Notice tone="trouble" live>
          {compared.message}
        </Notice>
      )}
      {compared?.ok && <Pairs compared={compared.value} />}
      <OwnLog />
      <p class="quiet">
        {BOARD_NEXT.decision.selfTest.before}{' '}
        <a href="#/prop">{BOARD_NEXT.decision.selfTest.link}</a>
        {BOARD_NEXT.decision.selfTest.after}
      </p>
    </Screen>
  )
}

function Pairs({ compared }: { compared: SameDecision }) {
  const model = useModel()
  return (
    <Section title={BOARD_NEXT.decision.sideBySide}>
      <p>{decisionWords(compared)}</p>
      <table class="decisions">
        <thead>
          <tr>
            <th scope="col">{BOARD_NEXT.decision.seconds}</th>
            <th scope="col">{BOARD_NEXT.decision.phone}</th>
            <th scope="col">{BOARD_NEXT.decision.board}</th>
            <th scope="col" />
          </tr>
        </thead>
        <tbody>
          {compared.pairs.map((pair) => (
            <Row
              key={`${pair.phone?.atMs} ${pair.board?.atMs}`}
              pair={pair}
              model={model}
              first={pair === compared.firstDifference}
            />
          ))}
        </tbody>
      </table>
    </Section>
  )
}

function useModel() {
  const job = useApp().model.value
  return job.state === 'done' ? job.value.model : null
}

interface RowProps {
  pair: EventPair
  model: ReturnType<typeof useModel>
  first: boolean
}

function Row({ pair, model, first }: RowProps) {
  const atMs = pair.phone?.atMs ?? pair.board?.atMs ?? 0
  return (
    <tr class={first ? 'decision-first' : ''}>
      <td>{(atMs / 1000).toFixed(1)}</td>
      <td>{sideWords(pair.phone?.event ?? null, model)}</td>
      <td>{sideWords(pair.board?.event ?? null, model)}</td>
      <td>{pairWords(pair)}</td>
    </tr>
  )
}
