import { useState } from 'preact/hooks'
import { rowCount } from '../../shared/board/log/board-log'
import { durationText, groupDigits } from '../../shared/words/en/numbers'
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
        ? 'background'
        : (gestures.find(({ id }) => id === recording.gestureId)?.name ?? 'take')
    const when = recording.recordedAt.slice(0, 16).replace('T', ' ')
    const text = `${name}, ${when}, ${recording.testerCode}, ${durationText(recording.durationMs)}`
    return { value: recording.id, text }
  })
  return (
    <>
      {options.length === 0 ? (
        <Notice>There is no recording of the phone in this library.</Notice>
      ) : (
        <SelectField
          label="Recording of the phone"
          value={recordingId}
          options={[{ value: '', text: 'choose one' }, ...options]}
          onChange={onRecording}
        />
      )}
      {free !== undefined && (
        <p class="quiet">Log of the board: {groupDigits(rowCount(free.log))} samples.</p>
      )}
      <AddLog step="free" fixed columns={columns} onColumns={setColumns} onDone={() => undefined} />
    </>
  )
}
