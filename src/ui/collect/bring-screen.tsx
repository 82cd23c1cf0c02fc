import { useState } from 'preact/hooks'
import { conflictKey } from '../../shared/collect/merge'
import { COLLECT_HOME } from '../../shared/words/en/collect-home'
import { keptOutText, mergeText } from '../../shared/words/en/collect-words'
import type { BringReport, CollectState } from '../../state/collect'
import {
  Button,
  FileButton,
  Notice,
  navigate,
  Progress,
  Screen,
  Section,
  wayFromHere,
} from '../common'
import { bringFiles } from './bring-files'
import { Conflicts } from './conflicts'
import { SharedCodes, Strangers } from './strangers'

/** What files would bring, what is to be decided, and the one button that stores it. */
export function BringScreen({ collect }: { collect: CollectState }) {
  const bringing = collect.bringing.value
  if (bringing.state === 'report') return <Report collect={collect} report={bringing.report} />
  return (
    <Screen title={COLLECT_HOME.bring.title} back="#/collect">
      {bringing.state === 'reading' ? (
        <Progress progress={bringing.progress} />
      ) : (
        <>
          {bringing.state === 'failed' && (
            <Notice tone="trouble" live>
              {bringing.message}
            </Notice>
          )}
          <p class="quiet">{COLLECT_HOME.bring.hint}</p>
          <FileButton
            accept=".zip,application/zip"
            multiple
            onFiles={(files) => bringFiles(collect, files)}
          >
            {COLLECT_HOME.bring.chooseFiles}
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
    const lead = wayFromHere()
    setStoring(true)
    const stored = await collect.agree()
    setStoring(false)
    setWrong(stored.ok ? null : stored.message)
    if (stored.ok) lead('#/collect')
  }
  const leave = () => {
    collect.forget()
    navigate('#/collect')
  }
  return (
    <Screen
      title={COLLECT_HOME.bring.title}
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
                ? COLLECT_HOME.bring.decide(undecided)
                : merge.added.length > 0
                  ? COLLECT_HOME.bring.store(merge.added.length)
                  : COLLECT_HOME.bring.storeChanges}
            </Button>
          )}
          <Button tone="quiet" wide onClick={leave}>
            {changes > 0 ? COLLECT_HOME.bring.storeNothing : COLLECT_HOME.bring.done}
          </Button>
        </div>
      }
    >
      {wrong !== null && (
        <Notice tone="trouble" live>
          {COLLECT_HOME.bring.notStored(wrong)}
        </Notice>
      )}
      {read > 0 && (
        <p role="status">{COLLECT_HOME.bring.found(mergeText(merge), report.library.name)}</p>
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
          {COLLECT_HOME.bring.fileTrouble(file.name, file.wrong)}
        </Notice>
      ))}
      {wrong.length > 0 && read > 0 && <p class="quiet">{COLLECT_HOME.bring.otherFiles(read)}</p>}
    </>
  )
}

/** What happens to recordings that are here, before it does. */
function Consequences({ report: { merge } }: { report: BringReport }) {
  const testers = [...new Set(merge.leaving.map(({ testerCode }) => testerCode))]
  return (
    <>
      {merge.leaving.length > 0 && (
        <Section title={COLLECT_HOME.bring.willGo(merge.leaving.length)}>
          <p>{COLLECT_HOME.bring.goneThere(testers)}</p>
        </Section>
      )}
      {merge.relabelled.length > 0 && (
        <p class="quiet">{COLLECT_HOME.bring.relabelled(merge.relabelled.length)}</p>
      )}
      {merge.renamed.length > 0 && (
        <p class="quiet">
          {COLLECT_HOME.bring.keptApart([
            ...new Set(
              merge.renamed.map(({ code, shownAs }) => COLLECT_HOME.bring.shownAs(code, shownAs)),
            ),
          ])}
        </p>
      )}
    </>
  )
}
