import { useState } from 'preact/hooks'
import { conflictKey } from '../../shared/collect/merge'
import { keptOutText, mergeText } from '../../shared/words/en/collect-words'
import { plural } from '../../shared/words/en/numbers'
import type { BringReport, CollectState } from '../../state/collect'
import { Button, FileButton, Notice, navigate, Progress, Screen, Section } from '../common'
import { bringFiles } from './bring-files'
import { Conflicts } from './conflicts'
import { SharedCodes, Strangers } from './strangers'

/** What files would bring, what is to be decided, and the one button that stores it. */
export function BringScreen({ collect }: { collect: CollectState }) {
  const bringing = collect.bringing.value
  if (bringing.state === 'report') return <Report collect={collect} report={bringing.report} />
  return (
    <Screen title="Bring home" back="#/collect">
      {bringing.state === 'reading' ? (
        <Progress progress={bringing.progress} />
      ) : (
        <>
          {bringing.state === 'failed' && (
            <Notice tone="trouble" live>
              {bringing.message}
            </Notice>
          )}
          <p class="quiet">Session files and library files, several at once.</p>
          <FileButton
            accept=".zip,application/zip"
            multiple
            onFiles={(files) => bringFiles(collect, files)}
          >
            Choose session files
          </FileButton>
        </>
      )}
    </Screen>
  )
}

function Report({ collect, report }: { collect: CollectState; report: BringReport }) {
  const [wrong, setWrong] = useState<string | null>(null)
  const [storing, setStoring] = useState(false)
  const { merge, files } = report
  const read = files.filter((file) => file.wrong === null).length
  const undecided = merge.conflicts.filter((one) => !report.decided.has(conflictKey(one))).length
  const changes =
    merge.added.length + merge.relabelled.length + merge.leaving.length + merge.conflicts.length
  const agree = async () => {
    setStoring(true)
    const stored = await collect.agree()
    setStoring(false)
    setWrong(stored.ok ? null : stored.message)
    if (stored.ok) navigate('#/collect')
  }
  const leave = () => {
    collect.forget()
    navigate('#/collect')
  }
  return (
    <Screen
      title="Bring home"
      back="#/collect"
      foot={
        <div class="bring-foot">
          {changes > 0 && (
            <Button
              tone="amber"
              big
              wide
              disabled={undecided > 0 || storing}
              onClick={() => void agree()}
            >
              {undecided > 0
                ? `Decide ${plural('label', undecided)} first`
                : merge.added.length > 0
                  ? `Store ${plural('recording', merge.added.length)}`
                  : 'Store the changes'}
            </Button>
          )}
          <Button tone="quiet" wide onClick={leave}>
            {changes > 0 ? 'Store nothing' : 'Done'}
          </Button>
        </div>
      }
    >
      {wrong !== null && (
        <Notice tone="trouble" live>
          {wrong} Nothing was stored; the files are still here.
        </Notice>
      )}
      {read > 0 && (
        <p role="status">
          {mergeText(merge)} For the library {report.library.name}.
        </p>
      )}
      {keptOutText(merge) !== '' && <p class="quiet">{keptOutText(merge)}</p>}
      <Files files={files} />
      <Strangers collect={collect} report={report} />
      <SharedCodes collect={collect} report={report} />
      <Conflicts collect={collect} report={report} />
      <Consequences report={report} />
    </Screen>
  )
}

function Files({ files }: { files: BringReport['files'] }) {
  const wrong = files.filter((file) => file.wrong !== null)
  const read = files.length - wrong.length
  return (
    <>
      {wrong.map((file) => (
        <Notice key={file.name} tone="trouble">
          {file.name}: {file.wrong}
        </Notice>
      ))}
      {wrong.length > 0 && read > 0 && (
        <p class="quiet">The other {plural('file', read)} can be stored all the same.</p>
      )}
    </>
  )
}

/** What happens to recordings that are here, before it does. */
function Consequences({ report: { merge } }: { report: BringReport }) {
  const testers = [...new Set(merge.leaving.map(({ testerCode }) => testerCode))]
  return (
    <>
      {merge.leaving.length > 0 && (
        <Section title={`${plural('recording', merge.leaving.length)} here will go`}>
          <p>
            They were withdrawn or dropped where the file comes from. Testers: {testers.join(', ')}.
          </p>
        </Section>
      )}
      {merge.relabelled.length > 0 && (
        <p class="quiet">
          {plural('recording', merge.relabelled.length)} here will take over labels that were
          changed later elsewhere.
        </p>
      )}
      {merge.renamed.length > 0 && (
        <p class="quiet">
          Two phones gave one code to two testers, who are kept apart:{' '}
          {[
            ...new Set(merge.renamed.map(({ code, shownAs }) => `${code} is shown as ${shownAs}`)),
          ].join(', ')}
          .
        </p>
      )}
    </>
  )
}
