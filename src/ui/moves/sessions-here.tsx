import { useEffect, useState } from 'preact/hooks'
import { MOVES } from '../../shared/words/en/moves'
import type { SessionsState, WaitingSession } from '../../state/session'
import { Button, Notice, route, useApp } from '../common'

/** Testers' sessions on this phone that wait for something: to go on, or to be handed over. */
export function SessionsHere() {
  const app = useApp()
  const [sessions, setSessions] = useState<SessionsState | null>(null)
  useEffect(() => {
    let wanted = true
    void app.openSessions().then(async (opened) => {
      await opened.read()
      if (wanted) setSessions(opened)
    })
    return () => {
      wanted = false
    }
  }, [app])
  return (
    <>
      {sessions?.waiting.value.map((one) => (
        <SessionNotice key={one.id} session={one} />
      ))}
    </>
  )
}

function SessionNotice({ session }: { session: WaitingSession }) {
  const { id, testerCode, isOver, done, kept, total } = session
  return (
    <Notice>
      <p>
        {isOver
          ? MOVES.sessionOver(testerCode, kept, total)
          : MOVES.sessionStands(testerCode, done, total)}
      </p>
      <div class="buttons">
        <Button href={route('session', id)}>{isOver ? MOVES.handItOver : MOVES.goOn}</Button>
      </div>
    </Notice>
  )
}
