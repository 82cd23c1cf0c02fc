import { useState } from 'preact/hooks'
import { rowCount } from '../../shared/board/log/board-log'
import { BOARD_LOGS } from '../../shared/words/en/board-logs'
import { durationText } from '../../shared/words/en/numbers'
import { Notice, SelectField, useApp } from '../common'
import { AddLog } from './add-log'
import type { ChosenColumns } from './board-screen'
import { useBoard } from './use-board'

export interface BesideFieldsProps {
  recordingId: string
  onRecording: (id: string) => void
}

/** A recording of the phone and a log of the board, of the same movement. */
export function BesideFields({ recordingId, onRecording }: BesideFieldsProps) {
  const board = useBoard()
  const { library } = useApp()
  const [columns, setColumns] = useState<ChosenColumns | null>(null)
  const free = board.bench.parts.value.find(({ step }) => step === 'free')
  const gestures = library.current.value?.gestures ?? []
  const options = library.recordings.value.map((recording) => {
    const name =
      recording.kind === 'background'
        ? BOARD_LOGS.beside.background
        : (gestures.find(({ id }) => id === recording.gestureId)?.name ?? BOARD_LOGS.beside.take)
    const when = recording.recordedAt.slice(0, 16).replace('T', ' ')
    const text = BOARD_LOGS.beside.recording(
      name,
      when,
      recording.testerCode,
      durationText(recording.durationMs),
    )
    return { value: recording.id, text }
  })
  return (
    <>
      {options.length === 0 ? (
        <Notice>{BOARD_LOGS.beside.noRecording}</Notice>
      ) : (
        <SelectField
          label={BOARD_LOGS.beside.recordingLabel}
          value={recordingId}
          options={[{ value: '', text: BOARD_LOGS.beside.chooseOne }, ...options]}
          onChange={onRecording}
        />
      )}
      {free !== undefined && (
        <p class="quiet">{BOARD_LOGS.beside.logSamples(rowCount(free.log))}</p>
      )}
      <AddLog step="free" fixed columns={columns} onColumns={setColumns} onDone={() => undefined} />
    </>
  )
}
