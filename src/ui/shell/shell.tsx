import './shell.css'
import { useEffect } from 'preact/hooks'
import type { App } from '../../state/app'
import { AppContext, HOME, path, replace } from '../common'
import { Bar } from './bar'
import { Notices } from './notices'
import { PLACES } from './places'

/** Places of testers: one thing at a time, and nothing to be lost in. */
const ALONE = ['join', 'session']

export function Shell({ app }: { app: App }) {
  const [place = 'moves', ...rest] = path.value
  const isKnown = Object.hasOwn(PLACES, place)
  // An address that nobody knows would stay over a screen that it does not name.
  useEffect(() => {
    if (!isKnown) replace(HOME)
  }, [isKnown])
  const show = isKnown ? PLACES[place] : PLACES.moves
  return (
    <AppContext.Provider value={app}>
      <div class="shell">
        <main class="shell-place">{show?.(rest)}</main>
        <Notices />
        {!ALONE.includes(place) && <Bar />}
      </div>
    </AppContext.Provider>
  )
}
