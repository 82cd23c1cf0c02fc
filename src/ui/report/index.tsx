import './report.css'
import { useEffect, useState } from 'preact/hooks'
import type { Result } from '../../shared/model/result'
import type { ReportData } from '../../shared/report/report-data'
import { REPORT_SCREEN } from '../../shared/words/en/report-screen'
import { Button, NextStep, Notice, Progress, Screen, useApp } from '../common'
import { saveFile } from '../common/save-file'
import { plotsFile } from './plots-file'
import { htmlFile } from './report-file'
import { Sheet } from './sheet'

/** '#/report': everything measured of the open library on one page, to print and to keep. */
export function ReportScreen() {
  const app = useApp()
  const library = app.library.current.value
  const report = useReport()
  const takes = app.library.recordings.value.filter(({ kind }) => kind === 'take').length
  if (library === null || takes === 0) {
    return (
      <Screen title={REPORT_SCREEN.title} back="#/proof">
        <NextStep text={REPORT_SCREEN.noTakes} action={REPORT_SCREEN.recordTakes} href="#/moves" />
      </Screen>
    )
  }
  const model = app.model.value
  const foot = report?.ok ? <Ways data={report.value} /> : undefined
  return (
    <Screen title={REPORT_SCREEN.title} back="#/proof" foot={foot}>
      {report === null && model.state === 'running' && (
        <Progress progress={model.progress} cancel={model.cancel} />
      )}
      {report === null && model.state !== 'running' && (
        <p class="quiet">{REPORT_SCREEN.preparing}</p>
      )}
      {report?.ok === false && (
        <Notice tone="trouble" live>
          <p>{report.message}</p>
        </Notice>
      )}
      {report?.ok && report.value.evaluation === null && (
        <div class="report-aside">
          <Notice>
            <p>{REPORT_SCREEN.notMeasured}</p>
            <Button href="#/proof">{REPORT_SCREEN.toProof}</Button>
          </Notice>
        </div>
      )}
      {report?.ok && <Sheet data={report.value} />}
    </Screen>
  )
}

/** The report, gathered again when something was measured; null until it is there. */
function useReport(): Result<ReportData> | null {
  const app = useApp()
  const [report, setReport] = useState<Result<ReportData> | null>(null)
  const id = app.library.current.value?.id
  const measured = [app.evaluation.value, app.grip.value].map((job) =>
    job.state === 'done' ? job.value : null,
  )
  useEffect(() => {
    if (id === undefined) return
    let wanted = true
    void app.report().then((gathered) => {
      if (wanted) setReport(gathered)
    })
    return () => {
      wanted = false
    }
  }, [app, id, ...measured])
  return report
}

/** What can be done with the page: print it, keep it, take its plots. */
function Ways({ data }: { data: ReportData }) {
  const [busy, setBusy] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  const save = async (make: () => Promise<Parameters<typeof saveFile>[0]>) => {
    setBusy(true)
    const saved = await saveFile(await make())
    setTrouble(saved.ok ? null : saved.message)
    setBusy(false)
  }
  return (
    <div class="report-ways">
      <Button tone="amber" onClick={() => print()}>
        {REPORT_SCREEN.print}
      </Button>
      <Button
        label={REPORT_SCREEN.htmlFile}
        disabled={busy}
        onClick={() => void save(async () => htmlFile(data))}
      >
        {REPORT_SCREEN.html}
      </Button>
      <Button disabled={busy} onClick={() => void save(() => plotsFile(data))}>
        {REPORT_SCREEN.plots}
      </Button>
      {trouble !== null && <p role="alert">{trouble}</p>}
    </div>
  )
}
