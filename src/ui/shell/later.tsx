import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { SHELL } from '../../shared/words/en/shell'
import { Button, Notice, Screen } from '../common'

type Loaded<P> = { state: 'loading' | 'failed' } | { state: 'ready'; Shown: ComponentType<P> }

/** Fetches of screens not shown yet, in the order of `later` calls. */
const ahead: (() => Promise<void>)[] = []

/**
 * A screen whose code is fetched when it is first shown, or before by `fetchAhead`: less to load
 * before the first screen. Afterwards it is there at once; without a network it comes from what is
 * kept offline.
 */
export function later<P extends object>(
  title: string,
  load: () => Promise<ComponentType<P>>,
): ComponentType<P> {
  let known: Loaded<P> = { state: 'loading' }
  const fetched = async () => {
    if (known.state !== 'ready') known = { state: 'ready', Shown: await load() }
  }
  ahead.push(fetched)
  return function Later(props: P) {
    const [loaded, setLoaded] = useState(known)
    useEffect(() => {
      if (loaded.state === 'ready') return
      fetched().then(
        () => setLoaded(known),
        () => setLoaded({ state: 'failed' }),
      )
    }, [])
    if (loaded.state === 'ready') return <loaded.Shown {...props} />
    if (loaded.state === 'loading') return null
    return (
      <Screen title={title}>
        <Notice tone="trouble" live>
          <p>{SHELL.screenNotLoaded}</p>
        </Notice>
        <Button wide onClick={() => location.reload()}>
          {SHELL.reload}
        </Button>
      </Screen>
    )
  }
}

/** Fetches the screens one after the other while nothing else is to do, so that a tap shows them. */
export async function fetchAhead(): Promise<void> {
  for (const fetched of ahead.splice(0)) {
    await idle()
    // Away now: fetched again when it is shown, and the screen says so if that fails too.
    await fetched().catch(() => undefined)
  }
}

function idle(): Promise<void> {
  return new Promise((resolve) => {
    if (typeof requestIdleCallback === 'function') requestIdleCallback(() => resolve())
    else setTimeout(resolve, 200)
  })
}
