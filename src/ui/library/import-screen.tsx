import './library.css'
import { useState } from 'preact/hooks'
import { applyMapping, type CsvPreview, previewCsv } from '../../shared/format/csv-import'
import type { CsvMapping } from '../../shared/format/csv-mapping'
import { CSV_IMPORT } from '../../shared/words/en/csv-import'
import type { Log, LogLabels } from '../../state/app'
import { Button, FileButton, HOME, Notice, route, Screen, useApp, wayFromHere } from '../common'
import { CsvTable } from './csv-table'
import { LabelFields } from './label-fields'
import { MappingFields } from './mapping-fields'

interface Opened {
  files: { name: string; text: string }[]
  preview: CsvPreview
}

/** Brings in plain logs: what the columns mean, and whose movement they are. */
export function ImportScreen() {
  const app = useApp()
  const [opened, setOpened] = useState<Opened | null>(null)
  const [wrong, setWrong] = useState<string | null>(null)
  const library = app.library.current.value
  const open = async (chosen: File[]) => {
    const files = await Promise.all(
      chosen.map(async (file) => ({ name: file.name, text: await file.text() })),
    )
    const [first] = files
    if (first === undefined) return
    const preview = previewCsv(first.text, library?.target ?? null, first.name)
    setWrong(preview.ok ? null : preview.message)
    setOpened(preview.ok ? { files, preview: preview.value } : null)
  }
  return (
    <Screen title={CSV_IMPORT.title} back="#/library">
      <p class="quiet">{CSV_IMPORT.lead}</p>
      <FileButton
        accept=".csv,.txt,.tsv,text/csv,text/plain"
        multiple
        onFiles={(f) => void open(f)}
      >
        {opened === null ? CSV_IMPORT.chooseFiles : CSV_IMPORT.chooseOtherFiles}
      </FileButton>
      {wrong !== null && (
        <Notice tone="trouble" live>
          {wrong}
        </Notice>
      )}
      {opened !== null && library !== null && (
        <MapAndLabel key={opened.files.map((file) => file.name).join()} opened={opened} />
      )}
    </Screen>
  )
}

function MapAndLabel({ opened: { files, preview } }: { opened: Opened }) {
  const app = useApp()
  const gestures = app.library.current.value?.gestures ?? []
  const [mapping, setMapping] = useState<CsvMapping>(preview.mapping)
  const [labels, setLabels] = useState<LogLabels>({
    gestureId: gestures[0]?.id ?? null,
    testerCode: app.record.testerCode.value,
    hand: 'unknown',
  })
  const [wrong, setWrong] = useState<string | null>(null)
  const add = async () => {
    const lead = wayFromHere()
    const logs: Log[] = []
    for (const { name, text } of files) {
      const samples = applyMapping(text, mapping, name)
      if (!samples.ok) return setWrong(samples.message)
      logs.push({ fileName: name, samples: samples.value, hasGyro: mapping.gyro !== null })
    }
    const added = await app.library.addLogs(logs, labels)
    if (!added.ok) return setWrong(added.message)
    lead(labels.gestureId === null ? '#/background' : route('gesture', labels.gestureId))
  }
  return (
    <>
      <CsvTable preview={preview} mapping={mapping} />
      <p class="quiet small">
        {CSV_IMPORT.fileRows(files[0]?.name ?? '', preview.rowCount, preview.notes.join(' '))}
      </p>
      <MappingFields preview={preview} mapping={mapping} onChange={setMapping} />
      <LabelFields gestures={gestures} labels={labels} onChange={setLabels} />
      {wrong !== null && (
        <Notice tone="trouble" live>
          {CSV_IMPORT.nothingWasAdded(wrong)}
        </Notice>
      )}
      <Button tone="amber" big wide disabled={labels.testerCode === ''} onClick={() => void add()}>
        {CSV_IMPORT.add(files.length)}
      </Button>
      <Button tone="quiet" href={HOME}>
        {CSV_IMPORT.cancel}
      </Button>
    </>
  )
}
