import { useState } from 'preact/hooks'
import type { EventPair } from '../../shared/board/decision/compare-events'
import type { SameDecision } from '../../shared/board/decision/same-decision'
import type { Result } from '../../shared/model/result'
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
      title="Same decision?"
      back="#/board"
      foot={
        <Button
          tone="amber"
          big
          wide
          disabled={recordingId === '' || busy}
          onClick={() => void compare()}
        >
          {busy ? 'Comparing…' : 'Compare decisions'}
        </Button>
      }
    >
      <p>
        The board’s samples go through the same model as they are, and the phone’s recording of the
        same movements beside them.
      </p>
      <BesideFields recordingId={recordingId} onRecording={setRecordingId} />
      {compared !== null && !compared.ok && (
        <Notice tone="trouble" live>
          {compared.message}
        </Notice>
      )}
      {compared?.ok && <Pairs compared={compared.value} />}
      <OwnLog />
      <p class="quiet">
        The exported self-test, which asks the same of made samples, is compared on{' '}
        <a href="#/prop">Prop</a>.
      </p>
    </Screen>
  )
}

function Pairs({ compared }: { compared: SameDecision }) {
  const model = useModel()
  return (
    <Section title="Side by side">
      <p>{decisionWords(compared)}</p>
      <table class="decisions">
        <thead>
          <tr>
            <th scope="col">s</th>
            <th scope="col">phone</th>
            <th scope="col">board</th>
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
