import './session.css'
import { useEffect, useState } from 'preact/hooks'
import type { SessionsState } from '../../state/session'
import { useApp } from '../common'
import { JoinScreen } from './join-screen'
import { SessionScreen } from './session-screen'

/** '#/join/<plan>' and '#/session/<id>': what a tester sees. */
export function TesterPlace({ place, rest }: { place: 'join' | 'session'; rest: string[] }) {
  const app = useApp()
  const [sessions, setSessions] = useState<SessionsState | null>(null)
  useEffect(() => {
    void app.openSessions().then(setSessions)
  }, [app])
  const [what = ''] = rest
  if (sessions === null) return null
  return place === 'join' ? (
    <JoinScreen key={what} fragment={what} sessions={sessions} />
  ) : (
    <SessionScreen key={what} id={what} sessions={sessions} />
  )
}
