import { useEffect, useState } from 'preact/hooks'
import { SESSION_RUN } from '../../shared/words/en/session-run'
import type { SessionRunner, SessionsState } from '../../state/session'
import { HOME, Notice, Screen, useApp, useWakeLock } from '../common'
import { FinishScreen } from './finish-screen'
import { FlatStep } from './flat-step'
import { PromptScreen } from './prompt-screen'
import { useSessionCues } from './use-session-cues'

/** A session where it stands: from the store, so also after a reload or a kill. */
export function SessionScreen({ id, sessions }: { id: string; sessions: SessionsState }) {
  const [runner, setRunner] = useState<SessionRunner | null>(null)
  const [wrong, setWrong] = useState<string | null>(null)
  useEffect(() => {
    let opened: SessionRunner | null = null
    let wanted = true
    void sessions.open(id).then((answer) => {
      if (!answer.ok) {
        setWrong(answer.message)
        return
      }
      opened = answer.value
      if (wanted) setRunner(opened)
      else opened.close()
    })
    return () => {
      wanted = false
      opened?.close()
    }
  }, [id, sessions])
  if (wrong !== null) {
    return (
      <Screen title={SESSION_RUN.noSession} back={HOME}>
        <Notice tone="trouble" live>
          {wrong}
        </Notice>
      </Screen>
    )
  }
  return runner === null ? null : <Running runner={runner} sessions={sessions} />
}

function Running({ runner, sessions }: { runner: SessionRunner; sessions: SessionsState }) {
  const { motion } = useApp()
  const [hasNoTable, setHasNoTable] = useState(false)
  useSessionCues(runner)
  const phase = runner.phase.value
  useWakeLock(phase.name !== 'ended')
  if (phase.name === 'ended') return <FinishScreen runner={runner} sessions={sessions} />
  const { accelSign, simulated } = motion.facts.value
  const isRunning = motion.status.value === 'running'
  const asksFlat = isRunning && accelSign === 0 && !simulated && !hasNoTable
  if (asksFlat && phase.name === 'waiting') return <FlatStep onSkip={() => setHasNoTable(true)} />
  return <PromptScreen runner={runner} />
}
