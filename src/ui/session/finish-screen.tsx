import { useEffect, useState } from 'preact/hooks'
import { encodePlanLink } from '../../shared/collect/plan-link'
import { progressOf } from '../../shared/collect/session-progress'
import { DENSITIES, runMs } from '../../shared/frames/pace'
import { SESSION_RUN } from '../../shared/words/en/session-run'
import { countDownText } from '../../shared/words/en/session-words'
import type { SessionRunner, SessionsState } from '../../state/session'
import { SendToFolder } from '../collect/send-to-folder'
import { Button, HOME, Notice, navigate, route, Screen } from '../common'
import { saveFile } from '../common/save-file'
import { ShowFrames } from '../frames/show-frames'
import { BigButton } from './big-button'

/** After the last prompt: thanks, the code, and the ways home for the takes. */
export function FinishScreen({
  runner,
  sessions,
}: {
  runner: SessionRunner
  sessions: SessionsState
}) {
  const run = runner.run.value
  const { kept, total } = progressOf(run)
  const [file, setFile] = useState<{ fileName: string; bytes: Uint8Array } | null>(null)
  const [said, setSaid] = useState<string | null>(null)
  const [coded, setCoded] = useState(false)
  useEffect(() => {
    // Made beforehand: a share sheet opens only straight from a tap.
    void sessions.finish(run.id).then((made) => {
      if (made.ok) setFile(made.value)
      else setSaid(made.message)
    })
  }, [run.id, sessions])
  const share = async () => {
    if (file === null) return
    const saved = await saveFile(file)
    setSaid(saved.ok ? null : saved.message)
  }
  if (coded && file !== null) return <Codes file={file} onBack={() => setCoded(false)} />
  return (
    <Screen
      title={SESSION_RUN.finish.title}
      back={HOME}
      foot={
        kept > 0 && (
          <BigButton tone="amber" meaning="share" onTap={() => void share()}>
            {file === null ? SESSION_RUN.finish.packing : SESSION_RUN.finish.handOver}
          </BigButton>
        )
      }
    >
      <p class="join-lead" role="status">
        {SESSION_RUN.finish.kept(kept, total)}
      </p>
      <p>
        {SESSION_RUN.finish.code.before} <strong class="session-code">{run.testerCode}</strong>
        {SESSION_RUN.finish.code.after}
      </p>
      {said !== null && (
        <Notice tone="trouble" live>
          {said}
        </Notice>
      )}
      {run.plan.folder !== undefined && file !== null && (
        <SendToFolder folder={run.plan.folder} file={file} />
      )}
      <FinishActions
        runner={runner}
        sessions={sessions}
        bytes={file?.bytes.length ?? 0}
        onCodes={() => setCoded(true)}
      />
    </Screen>
  )
}

/** The session for another phone's camera; nothing else on the screen that could be tapped by mistake. */
function Codes({ file, onBack }: { file: { bytes: Uint8Array }; onBack: () => void }) {
  return (
    <Screen
      title={SESSION_RUN.finish.forCamera}
      foot={
        <Button big wide onClick={onBack}>
          {SESSION_RUN.finish.back}
        </Button>
      }
    >
      <ShowFrames content={file.bytes} />
    </Screen>
  )
}

function FinishActions({
  runner,
  sessions,
  bytes,
  onCodes,
}: {
  runner: SessionRunner
  sessions: SessionsState
  /** Of the session's file. */
  bytes: number
  onCodes: () => void
}) {
  const run = runner.run.value
  const link = encodePlanLink(run.plan)
  const withdraw = async () => {
    const removed = await sessions.withdraw(run.id)
    if (removed.ok) navigate(HOME)
  }
  return (
    <div class="session-ways">
      {progressOf(run).kept > 0 && (
        <Button big wide onClick={onCodes}>
          {SESSION_RUN.finish.showToCamera(countDownText(runMs(bytes, DENSITIES[0]!)))}
        </Button>
      )}
      {link.ok && (
        <Button big wide href={route('join', link.value)}>
          {SESSION_RUN.finish.nextTester}
        </Button>
      )}
      <Button wide onClick={() => void runner.undo()}>
        {SESSION_RUN.buttons.undo}
      </Button>
      <Button tone="quiet" wide onClick={() => void withdraw()}>
        {SESSION_RUN.finish.remove}
      </Button>
    </div>
  )
}
